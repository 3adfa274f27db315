// HTTP by Boost.Beast, on one thread. Two things are to be had: the page, and server-sent events
// (HTML Living Standard, "Server-sent events") with each new text of the script.
#include "host/live.h"

#include "host/files.h"
#include "host/settings.h"

#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/ip/v6_only.hpp>
#include <boost/asio/signal_set.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/core/tcp_stream.hpp>
#include <boost/beast/http.hpp>
#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <chrono>
#include <csignal>
#include <deque>
#include <memory>
#include <optional>
#include <vector>

namespace say {
namespace {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
using asio::ip::tcp;
using boost::system::error_code;

constexpr auto look_every = std::chrono::milliseconds(250);
constexpr auto patience = std::chrono::seconds(30); // for a request, and for a slow reader
constexpr auto sign_of_life = std::chrono::seconds(15);
constexpr std::ptrdiff_t most_listeners = 32;
constexpr std::uint32_t largest_head = 16 * 1024;
constexpr std::size_t most_unsent = std::size_t{64} * 1024 * 1024; // bytes

std::string event_of(std::string_view name, std::string_view data) {
    return fmt::format("event: {}\ndata: {}\n\n", name, data);
}

std::string json_string(std::string_view text) {
    return nlohmann::json(std::string(text))
        .dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

// A page that listens for saves: it is sent strings until it goes away.
class Listener : public std::enable_shared_from_this<Listener> {
public:
    explicit Listener(beast::tcp_stream stream) : stream_(std::move(stream)) {}

    // A window says nothing more; what is read is its end.
    void watch() {
        stream_.async_read_some(asio::buffer(ignored_),
                                [self = shared_from_this()](const error_code& error, std::size_t) {
                                    if (error) return self->close();
                                    self->watch();
                                });
    }

    void send(std::string text) {
        unsent_ += text.size();
        if (unsent_ > most_unsent) return close();
        queue_.push_back(std::move(text));
        if (queue_.size() == 1) write();
    }
    bool gone() const { return gone_; }
    void close() {
        gone_ = true;
        stream_.close();
    }

private:
    void write() {
        stream_.expires_after(patience);
        asio::async_write(stream_, asio::buffer(queue_.front()),
                          [self = shared_from_this()](const error_code& error, std::size_t) {
                              if (error) return self->close();
                              self->unsent_ -= self->queue_.front().size();
                              self->queue_.pop_front();
                              if (!self->queue_.empty()) return self->write();
                              self->stream_.expires_never();
                          });
    }

    beast::tcp_stream stream_;
    std::array<char, 256> ignored_{};
    std::deque<std::string> queue_;
    std::size_t unsent_ = 0;
    bool gone_ = false;
};

using Response = http::response<http::string_body>;
using Request = http::request<http::empty_body>;

Response answer(const Request& request, http::status status, std::string_view type,
                std::string body) {
    Response response(status, request.version());
    response.set(http::field::content_type, type);
    response.set(http::field::cache_control, "no-store");
    response.set("X-Content-Type-Options", "nosniff");
    response.set("Cross-Origin-Resource-Policy", "same-origin");
    response.set("Referrer-Policy", "no-referrer");
    response.keep_alive(false);
    response.body() = std::move(body);
    response.prepare_payload();
    if (request.method() == http::verb::head) response.body().clear();
    return response;
}

Response refuse(const Request& request, http::status status, std::string why) {
    return answer(request, status, "text/plain; charset=utf-8", std::move(why) + "\n");
}

std::string_view text_of(boost::string_view text) {
    return {text.data(), text.size()};
}

class Live {
public:
    explicit Live(const LiveJob& job)
        : job_(job), first_(io_), second_(io_), signals_(io_, SIGINT, SIGTERM), look_(io_),
          life_(io_) {}

    Result<void> run() {
        stamp_ = stamp_of(job_.file);
        auto text = job_.render();
        if (!text) return text.error();
        text_ = std::move(*text);
        around_ = stamp_around();
        if (auto bound = listen(); !bound) return bound;
        job_.ready(fmt::format("http://127.0.0.1:{}/", port_));
        signals_.async_wait([this](const error_code&, int) { io_.stop(); });
        look_again();
        stay_alive();
        io_.run();
        return {};
    }

private:
    // --- coming in ---

    static void open(tcp::acceptor& acceptor, const tcp::endpoint& place, error_code& error) {
        acceptor.open(place.protocol(), error);
        if (!error) acceptor.set_option(tcp::acceptor::reuse_address(true), error);
        if (!error && place.address().is_v6()) {
            acceptor.set_option(asio::ip::v6_only(true), error);
        }
        if (!error) acceptor.bind(place, error);
        if (!error) acceptor.listen(asio::socket_base::max_listen_connections, error);
    }

    // Loopback alone, in both families where the machine has both.
    Result<void> listen() {
        error_code error;
        open(first_, {asio::ip::address_v4::loopback(), job_.port}, error);
        if (error) {
            return Error{fmt::format("port {} cannot be had ({}); give another with --port, or "
                                     "leave it out for any that is free",
                                     job_.port, error.message())};
        }
        port_ = first_.local_endpoint().port();
        accept(first_);
        error_code none;
        open(second_, {asio::ip::address_v6::loopback(), port_}, none);
        if (!none) accept(second_);
        return {};
    }

    void accept(tcp::acceptor& acceptor) {
        acceptor.async_accept([this, &acceptor](const error_code& error, tcp::socket socket) {
            if (!error) read(std::move(socket));
            // Out of descriptors: what is open goes on, and the next one waits.
            if (error) return retry(acceptor);
            accept(acceptor);
        });
    }

    void retry(tcp::acceptor& acceptor) {
        auto wait = std::make_shared<asio::steady_timer>(io_, look_every);
        wait->async_wait([this, wait, &acceptor](const error_code&) { accept(acceptor); });
    }

    struct Visit {
        explicit Visit(tcp::socket socket) : stream(std::move(socket)) {
            parser.header_limit(largest_head);
            parser.body_limit(0);
        }
        beast::tcp_stream stream;
        beast::flat_buffer buffer;
        http::request_parser<http::empty_body> parser;
        std::optional<Response> response;
    };

    void read(tcp::socket socket) {
        const auto visit = std::make_shared<Visit>(std::move(socket));
        visit->stream.expires_after(patience);
        http::async_read_header(visit->stream, visit->buffer, visit->parser,
                                [this, visit](const error_code& error, std::size_t) {
                                    if (error) return visit->stream.close();
                                    const Request& request = visit->parser.get();
                                    if (auto response = answer_to(request))
                                        return write(visit, std::move(*response));
                                    listen_for_saves(visit);
                                });
    }

    // Nothing if it is a page that asks for events.
    std::optional<Response> answer_to(const Request& request) const {
        if (!is_own_host(text_of(request[http::field::host])) || !own_origin(request)) {
            return refuse(
                request, http::status::forbidden,
                fmt::format("This page is at http://127.0.0.1:{}/ on its own machine.", port_));
        }
        if (request.method() != http::verb::get && request.method() != http::verb::head) {
            return refuse(request, http::status::method_not_allowed, "Only GET is answered.");
        }
        const std::string_view path = text_of(request.target());
        if (path == "/" || path == "/practice") {
            return answer(request, http::status::ok, "text/html; charset=utf-8",
                          path == "/" ? text_.page : text_.practice);
        }
        if (path != "/events" || request.method() == http::verb::head) {
            return refuse(request, http::status::not_found,
                          "There is only the reading page: / and the practice page: /practice");
        }
        const auto there = std::count_if(listeners_.begin(), listeners_.end(),
                                         [](const auto& listener) { return !listener->gone(); });
        if (there < most_listeners) return std::nullopt;
        return refuse(request, http::status::service_unavailable, "Too many windows are open.");
    }

    // A browser names where a request comes from when it is not the page itself.
    bool own_origin(const Request& request) const {
        std::string_view origin = text_of(request[http::field::origin]);
        constexpr std::string_view scheme = "http://";
        if (origin.empty()) return true;
        if (!origin.starts_with(scheme)) return false;
        origin.remove_prefix(scheme.size());
        return is_own_address(origin, port_);
    }

    static void write(const std::shared_ptr<Visit>& visit, Response response) {
        visit->response.emplace(std::move(response));
        http::async_write(visit->stream, *visit->response, [visit](const error_code&, std::size_t) {
            error_code ignored;
            visit->stream.socket().shutdown(tcp::socket::shutdown_send, ignored);
        });
    }

    void listen_for_saves(const std::shared_ptr<Visit>& visit) {
        visit->stream.expires_never();
        const auto listener = std::make_shared<Listener>(std::move(visit->stream));
        listener->watch();
        listener->send("HTTP/1.1 200 OK\r\nContent-Type: text/event-stream\r\n"
                       "Cache-Control: no-store\r\nConnection: close\r\n\r\nretry: 1000\n\n");
        // It may have slept through saves.
        listener->send(event_of("script", text_.json));
        if (!trouble_.empty()) listener->send(event_of("trouble", json_string(trouble_)));
        forget_gone();
        listeners_.push_back(listener);
    }

    // --- saves ---

    void forget_gone() {
        std::erase_if(listeners_, [](const auto& listener) { return listener->gone(); });
    }

    void tell(const std::string& event) {
        forget_gone();
        for (const auto& listener : listeners_)
            listener->send(event);
    }

    void look_again() {
        look_.expires_after(look_every);
        look_.async_wait([this](const error_code& error) {
            if (error) return;
            look();
            look_again();
        });
    }

    // Of all that the script is read with.
    std::uint64_t stamp_around() const { return settings_stamp(job_.file, text_.lexicons); }

    // An editor may save by putting a new file in the place of the old one: what is gone once is
    // looked for once more before anything is said.
    void look() {
        const std::uint64_t stamp = stamp_of(job_.file);
        const std::uint64_t around = stamp_around();
        if (stamp == stamp_ && around == around_) return;
        if (stamp == 0 && !missed_) {
            missed_ = true;
            return;
        }
        missed_ = false;
        stamp_ = stamp;
        around_ = around;
        auto text = job_.render();
        trouble_ = text ? "" : text.error().message;
        job_.say_result(trouble_);
        if (!text) return tell(event_of("trouble", json_string(trouble_)));
        const bool other_lists = text->lexicons != text_.lexicons;
        text_ = std::move(*text);
        if (other_lists) around_ = stamp_around();
        tell(event_of("script", text_.json));
    }

    // A comment now and then shows which windows are gone.
    void stay_alive() {
        life_.expires_after(sign_of_life);
        life_.async_wait([this](const error_code& error) {
            if (error) return;
            tell(":\n\n");
            stay_alive();
        });
    }

    const LiveJob& job_;
    asio::io_context io_{1};
    tcp::acceptor first_;
    tcp::acceptor second_;
    asio::signal_set signals_;
    asio::steady_timer look_;
    asio::steady_timer life_;
    std::vector<std::shared_ptr<Listener>> listeners_;
    LiveText text_; // the last that could be read
    std::string trouble_;
    std::uint64_t stamp_ = 0;
    std::uint64_t around_ = 0;
    std::uint16_t port_ = 0;
    bool missed_ = false;
};

} // namespace

namespace {

constexpr std::array<std::string_view, 3> own_names{"127.0.0.1", "localhost", "[::1]"};

} // namespace

bool is_own_host(std::string_view host) {
    const std::size_t colon = host.rfind(':');
    const std::size_t digits = host.find_last_not_of("0123456789");
    if (colon != std::string_view::npos && digits == colon) host = host.substr(0, colon);
    return std::find(own_names.begin(), own_names.end(), host) != own_names.end();
}

bool is_own_address(std::string_view address, std::uint16_t port) {
    return std::any_of(own_names.begin(), own_names.end(), [&](std::string_view name) {
        return address == fmt::format("{}:{}", name, port) || (port == 80 && address == name);
    });
}

Result<void> serve_live(const LiveJob& job) {
    return Live(job).run();
}

} // namespace say
