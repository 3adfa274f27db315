// The event loop: the client's bytes to the session, the session's to the client. The only file
// with sockets, descriptors and processes.
#include "lsp/serve.h"

#include "base/log.h"
#include "lsp/frame.h"
#include "lsp/session.h"
#include "lsp/worker.h"

#include <boost/asio/generic/stream_protocol.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/local/stream_protocol.hpp>
#include <boost/asio/posix/stream_descriptor.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/write.hpp>
#include <fmt/core.h>

#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <deque>
#include <fcntl.h>
#include <malloc.h>
#include <optional>
#include <sys/syscall.h>
#include <unistd.h>
#include <vector>

namespace say {
namespace {

namespace asio = boost::asio;
using boost::system::error_code;

// While more than this waits for the client to read, nothing more is read from it.
constexpr std::size_t most_unsent = std::size_t{16} * 1024 * 1024;

// Our copy of a descriptor, with the flags that other holders of the file expect put back at the
// end: a terminal's shell would choke on non-blocking input.
class Descriptor {
public:
    Descriptor(asio::io_context& io, int number)
        : number_(number), flags_(::fcntl(number, F_GETFL)), stream(io, ::dup(number)) {}
    ~Descriptor() {
        if (flags_ >= 0) ::fcntl(number_, F_SETFL, flags_);
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;

private:
    int number_;
    int flags_;

public:
    asio::posix::stream_descriptor stream;
};

// One client on a pair of streams, whatever they lead to.
class Connection {
public:
    Connection(asio::io_context& io, const ServeArguments& arguments, int input, int output)
        : io_(io), input_(io, input), output_(io, output), parent_(io), last_words_(io), quiet_(io),
          worker_(arguments.in_step ? lsp::Worker::Mode::in_step : lsp::Worker::Mode::beside,
                  [&io, in_step = arguments.in_step](lsp::Worker::Task task) {
                      if (in_step) return task();
                      asio::post(io, std::move(task));
                  }),
          session_(
              worker_,
              {.send = [this](std::string body) { send(std::move(body)); },
               .watch_parent = [this](int process) { watch_parent(process); },
               .once_quiet = [this](std::function<void()> task) { once_quiet(std::move(task)); },
               .program_version = arguments.version}) {
        if (arguments.client_process) watch_parent(*arguments.client_process);
    }

    int run() {
        read();
        io_.run();
        return status_;
    }

private:
    // --- in ---

    void read() {
        if (ending_ || reading_ || unsent_ > most_unsent) return;
        reading_ = true;
        input_.stream.async_read_some(asio::buffer(chunk_),
                                      [this](const error_code& error, std::size_t size) {
                                          reading_ = false;
                                          if (error) return end(session_.status_at_end());
                                          frames_.feed({chunk_.data(), size});
                                          take_messages();
                                          read();
                                      });
    }

    void take_messages() {
        while (const auto frame = frames_.next()) {
            if (frame->refusal.empty()) {
                session_.receive(frame->body);
            } else {
                session_.refuse(lsp::ErrorCode::invalid_request, frame->refusal);
            }
            if (session_.exit_status()) return end(*session_.exit_status());
        }
        session_.settle();
        worker_.drain();
        if (frames_.broken()) {
            session_.refuse(lsp::ErrorCode::parse_error, frames_.complaint());
            end(1);
        }
    }

    // --- out ---

    void send(std::string body) {
        unsent_ += body.size();
        queue_.push_back(lsp::frame_header(body.size()));
        queue_.push_back(std::move(body));
        if (!writing_) write();
    }

    void write() {
        writing_ = true;
        sending_.assign(std::make_move_iterator(queue_.begin()),
                        std::make_move_iterator(queue_.end()));
        queue_.clear();
        std::vector<asio::const_buffer> buffers;
        buffers.reserve(sending_.size());
        for (const std::string& piece : sending_) {
            buffers.push_back(asio::buffer(piece));
        }
        asio::async_write(output_.stream, buffers, [this](const error_code& error, std::size_t) {
            writing_ = false;
            if (error) return end(1); // nobody listens any more
            unsent_ = 0;
            for (const std::string& piece : queue_) {
                unsent_ += piece.size();
            }
            if (!queue_.empty()) {
                write();
            } else if (ending_) {
                io_.stop();
            }
            read();
        });
    }

    // --- the end ---

    // What was said before is still sent, if the client reads it; then the loop stops.
    void end(int status) {
        if (ending_) return;
        ending_ = true;
        status_ = status;
        error_code ignored;
        input_.stream.cancel(ignored);
        if (!writing_) return io_.stop();
        last_words_.expires_after(std::chrono::seconds(2));
        last_words_.async_wait([this](const error_code&) { io_.stop(); });
    }

    // Longer than between two keys, and soon enough for somebody who looks up.
    void once_quiet(std::function<void()> task) {
        quiet_.expires_after(std::chrono::milliseconds(1200)); // the task before is dropped
        quiet_.async_wait([this, task = std::move(task)](const error_code& error) {
            if (error || ending_) return;
            task();
            worker_.drain();
        });
    }

    // A client that dies without a word leaves its process id behind: the kernel wakes us.
    void watch_parent(int process) {
#ifdef SYS_pidfd_open
        const auto descriptor = static_cast<int>(::syscall(SYS_pidfd_open, process, 0));
        if (descriptor < 0) {
            // Also where the client counts processes in another container than ours.
            log::info(
                fmt::format("process {} cannot be watched; the end of input will do", process));
            return;
        }
        if (parent_.is_open()) parent_.close(); // the last one named counts
        parent_.assign(descriptor);
        parent_.async_wait(asio::posix::stream_descriptor::wait_read,
                           [this](const error_code& error) {
                               if (error) return;
                               log::warning("the client's process is gone");
                               status_ = session_.status_at_end();
                               io_.stop();
                           });
#else
        log::info(fmt::format("process {} is not watched; the end of input will do", process));
#endif
    }

    asio::io_context& io_;
    Descriptor input_;
    Descriptor output_;
    asio::posix::stream_descriptor parent_;
    asio::steady_timer last_words_;
    asio::steady_timer quiet_;
    std::array<char, 64UL * 1024> chunk_{};
    lsp::FrameReader frames_;
    std::deque<std::string> queue_;
    std::vector<std::string> sending_;
    std::size_t unsent_ = 0; // bytes
    bool reading_ = false;
    bool writing_ = false;
    bool ending_ = false;
    int status_ = 1;
    // The session goes first, so that the worker ends with nobody left to tell.
    lsp::Worker worker_;
    lsp::Session session_;
};

} // namespace

namespace {

// Every key makes rows of the script's length and drops those of the key before. The C library
// would give such pages back to the kernel each time and have them zeroed again.
void keep_pages() {
#ifdef __GLIBC__
    constexpr int threshold = 32 * 1024 * 1024;
    ::mallopt(M_MMAP_THRESHOLD, threshold);
    ::mallopt(M_TRIM_THRESHOLD, threshold);
    ::mallopt(M_TOP_PAD, 1024 * 1024);
    ::mallopt(M_ARENA_MAX, 1); // the two threads hand each other what they make
#endif
}

using Socket = asio::generic::stream_protocol::socket;

// The client listens, we come to it: that is how clients start servers.
error_code connect(Socket& socket, const asio::generic::stream_protocol::endpoint& client) {
    error_code error;
    if (socket.is_open()) socket.close();
    socket.connect(client, error);
    return error;
}

error_code connect_to_port(Socket& socket, std::uint16_t port) {
    using asio::ip::tcp;
    const error_code error = connect(socket, tcp::endpoint(asio::ip::address_v4::loopback(), port));
    if (!error) return {};
    const bool other = !connect(socket, tcp::endpoint(asio::ip::address_v6::loopback(), port));
    return other ? error_code{} : error;
}

error_code connect_to_path(Socket& socket, const std::string& path) {
    try {
        return connect(socket, asio::local::stream_protocol::endpoint(path));
    } catch (const boost::system::system_error& too_long) {
        return too_long.code();
    }
}

// Says why there is no client; nothing if there is one.
std::string connect(Socket& socket, const ServeArguments& arguments) {
    const bool by_port = arguments.transport == ServeArguments::Transport::socket;
    const error_code error =
        by_port ? connect_to_port(socket, arguments.port) : connect_to_path(socket, arguments.path);
    if (!error) return {};
    const std::string place =
        by_port ? fmt::format("port {} of this machine", arguments.port) : arguments.path;
    return fmt::format("no client listens on {}: {}; the client must listen before it starts the "
                       "server",
                       place, error.message());
}

} // namespace

int serve(const ServeArguments& arguments) {
    keep_pages();
    std::signal(SIGPIPE, SIG_IGN); // a client that stops listening is an error of the write
    asio::io_context io(1);
    if (arguments.transport == ServeArguments::Transport::stdio) {
        return Connection(io, arguments, STDIN_FILENO, STDOUT_FILENO).run();
    }
    Socket socket(io);
    const std::string problem = connect(socket, arguments);
    if (!problem.empty()) {
        log::error(problem);
        return 2;
    }
    const int number = socket.native_handle();
    return Connection(io, arguments, number, number).run();
}

} // namespace say
