// How long an editor waits: drives the built server over pipes, as an editor would, and prints
// times at 1,000, 10,000 and 100,000 words. Linux only; a program to run by hand, not a test.
//
//     lsp_bench SAYLINE [words...] [--only REQUEST]
//
// The text is invented and the same every time. One key is one didChange in the middle of the
// script, followed at once by the request that an editor sends.
#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <functional>
#include <poll.h>
#include <random>
#include <string>
#include <string_view>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>
#include <vector>

namespace {

using Clock = std::chrono::steady_clock;

double milliseconds(Clock::duration duration) {
    return std::chrono::duration<double, std::milli>(duration).count();
}

// --- the script --------------------------------------------------------------------------------

std::string make_script(int words) {
    constexpr std::string_view sentences[] = {
        "Every spring we walk the *same* stretch of shore.",
        "You do not need a boat / and you do not need a degree.",
        "We lay a square of string on the rock and count what lives inside it.",
        "A limpet goes home when the tide comes back ... always to the same spot.",
        "Write the number down before you look up.",
        "Last year we counted 1,250 limpets on 14 May.",
        "Some of them are older than the people who count them.",
        "That is why the sheet has two columns, one for old and one for new.",
    };
    std::mt19937 random(11);
    std::string script = "---\ntitle: Counting limpets\ntarget: 900:00 max\n---\n";
    int written = 0;
    for (int thought = 0; written < words; ++thought) {
        if (thought % 25 == 0) script += fmt::format("# Part {}\n\n", thought / 25 + 1);
        const int count = 1 + static_cast<int>(random() % 3);
        for (int i = 0; i < count; ++i) {
            const std::string_view sentence = sentences[random() % std::size(sentences)];
            script += sentence;
            script += i + 1 < count ? " " : "\n\n";
            written += static_cast<int>(std::count(sentence.begin(), sentence.end(), ' ')) + 1;
        }
    }
    return script;
}

std::string json_string(std::string_view text) {
    std::string json = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') json += '\\';
        if (c == '\n') {
            json += "\\n";
        } else {
            json += c;
        }
    }
    return json + '"';
}

// --- the client --------------------------------------------------------------------------------

class Client {
public:
    explicit Client(const char* program) {
        int to_server[2];
        int from_server[2];
        if (::pipe(to_server) != 0 || ::pipe(from_server) != 0) std::abort();
        process_ = ::fork();
        if (process_ == 0) {
            ::dup2(to_server[0], STDIN_FILENO);
            ::dup2(from_server[1], STDOUT_FILENO);
            for (const int end : {to_server[0], to_server[1], from_server[0], from_server[1]}) {
                ::close(end);
            }
            ::execl(program, program, "serve", nullptr);
            std::_Exit(127);
        }
        ::close(to_server[0]);
        ::close(from_server[1]);
        out_ = to_server[1];
        in_ = from_server[0];
    }

    ~Client() {
        ::close(out_);
        ::close(in_);
        ::waitpid(process_, nullptr, 0);
    }
    Client(const Client&) = delete;
    Client& operator=(const Client&) = delete;

    void add(std::string_view body) {
        pending_ += fmt::format("Content-Length: {}\r\n\r\n{}", body.size(), body);
    }

    void send(std::string_view body) {
        add(body);
        flush();
    }

    // Reads while it writes: a full pipe on either side must not stop both.
    void flush() {
        std::string_view rest = pending_;
        while (!rest.empty()) {
            pollfd ends[] = {{out_, POLLOUT, 0}, {in_, POLLIN, 0}};
            ::poll(ends, 2, -1);
            if ((ends[1].revents & POLLIN) != 0) fill();
            if ((ends[0].revents & POLLOUT) == 0) continue;
            const auto done = ::write(out_, rest.data(), std::min<std::size_t>(rest.size(), 4096));
            if (done <= 0) fail("the server does not listen");
            rest.remove_prefix(static_cast<std::size_t>(done));
        }
        pending_.clear();
    }

    // The next message that holds `mark`; others are passed over.
    std::string wait_for(std::string_view mark) {
        while (true) {
            std::string message = next();
            if (message.find(mark) != std::string::npos) return message;
        }
    }

    std::string wait_for_answer(int id) { return wait_for(fmt::format("\"id\":{},", id)); }

    int process() const { return process_; }

private:
    [[noreturn]] static void fail(const char* why) {
        fmt::print(stderr, "lsp_bench: {}\n", why);
        std::exit(1);
    }

    void fill() {
        char chunk[65536];
        const auto size = ::read(in_, chunk, sizeof chunk);
        if (size <= 0) fail("the server has gone");
        bytes_.append(chunk, static_cast<std::size_t>(size));
    }

    std::string next() {
        while (true) {
            const auto end = bytes_.find("\r\n\r\n", taken_);
            if (end != std::string::npos) {
                const std::size_t size = std::strtoull(
                    bytes_.c_str() + taken_ + std::strlen("Content-Length: "), nullptr, 10);
                if (bytes_.size() >= end + 4 + size) {
                    std::string message = bytes_.substr(end + 4, size);
                    taken_ = end + 4 + size;
                    if (taken_ == bytes_.size()) {
                        bytes_.clear();
                        taken_ = 0;
                    }
                    return message;
                }
            }
            fill();
        }
    }

    int process_ = -1;
    int out_ = -1;
    int in_ = -1;
    std::string pending_;
    std::string bytes_;
    std::size_t taken_ = 0;
};

// --- what the kernel says ----------------------------------------------------------------------

double cpu_milliseconds(int process) {
    double sum = 0;
    for (const auto& task :
         std::filesystem::directory_iterator(fmt::format("/proc/{}/task", process))) {
        std::uint64_t nanoseconds = 0;
        std::ifstream(task.path() / "schedstat") >> nanoseconds;
        sum += static_cast<double>(nanoseconds) / 1e6;
    }
    return sum;
}

double peak_megabytes(int process) {
    std::ifstream status(fmt::format("/proc/{}/status", process));
    for (std::string line; std::getline(status, line);) {
        if (line.starts_with("VmHWM:")) return std::atof(line.c_str() + 6) / 1024;
    }
    return 0;
}

// --- a session ---------------------------------------------------------------------------------

constexpr const char* uri = "file:///tide/bench.say";

// A session with one open script, and a cursor in its middle.
class Editor {
public:
    Editor(const char* program, std::string_view script, bool versions)
        : begin_(Clock::now()), client(program) {
        client.send(fmt::format(
            R"({{"jsonrpc":"2.0","id":0,"method":"initialize","params":{{"processId":null,)"
            R"("rootUri":null,"capabilities":{{"workspace":{{"applyEdit":true,)"
            R"("workspaceEdit":{{"documentChanges":true}}}},"textDocument":{{)"
            R"("publishDiagnostics":{{"versionSupport":{}}},"hover":{{"contentFormat":)"
            R"(["markdown"]}},"documentSymbol":{{"hierarchicalDocumentSymbolSupport":true}},)"
            R"("codeAction":{{"codeActionLiteralSupport":{{"codeActionKind":{{"valueSet":)"
            R"(["quickfix","refactor"]}}}},"dataSupport":true,"resolveSupport":)"
            R"({{"properties":["edit"]}}}}}}}}}}}})",
            versions));
        client.wait_for_answer(0);
        started = milliseconds(Clock::now() - begin_);
        client.send(R"({"jsonrpc":"2.0","method":"initialized","params":{}})");
        const auto opening = Clock::now();
        client.send(fmt::format(
            R"({{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{{"textDocument":)"
            R"({{"uri":"{}","languageId":"sayline","version":1,"text":{}}}}}}})",
            uri, json_string(script)));
        client.wait_for("publishDiagnostics");
        opened = milliseconds(Clock::now() - opening);

        const auto middle = script.find("\n\n", script.size() / 2) + 2;
        line = static_cast<int>(
            std::count(script.begin(), script.begin() + static_cast<std::ptrdiff_t>(middle), '\n'));
        if (script.substr(middle).starts_with('#')) line += 2;
    }

    void add_key() {
        ++version;
        client.add(fmt::format(
            R"({{"jsonrpc":"2.0","method":"textDocument/didChange","params":{{"textDocument":)"
            R"({{"uri":"{}","version":{}}},"contentChanges":[{{"range":{{"start":{{"line":{},)"
            R"("character":{}}},"end":{{"line":{},"character":{}}}}},"text":"{}"}}]}}}})",
            uri, version, line, column, line, column, version % 6 == 0 ? " " : "a"));
        ++column;
    }

    int add_request(std::string_view method, std::string_view more) {
        ++last_id;
        client.add(fmt::format(
            R"({{"jsonrpc":"2.0","id":{},"method":"{}","params":{{"textDocument":{{"uri":"{}"}}{}}}}})",
            last_id, method, uri, more));
        return last_id;
    }

    std::string at_cursor() const {
        return fmt::format(R"(,"position":{{"line":{},"character":{}}})", line, column);
    }

    // Fifty lines around the cursor, as a window shows.
    std::string window() const {
        return fmt::format(
            R"(,"range":{{"start":{{"line":{},"character":0}},"end":{{"line":{},"character":0}}}})",
            std::max(0, line - 25), line + 25);
    }

private:
    Clock::time_point begin_;

public:
    Client client;
    double started = 0;
    double opened = 0;
    int line = 0;
    int column = 0;
    int version = 1;
    int last_id = 0;
};

struct Times {
    std::vector<double> all;
    double cpu = 0;

    double at(double share) {
        std::sort(all.begin(), all.end());
        const auto index = static_cast<std::size_t>(share * static_cast<double>(all.size() - 1));
        return all[index];
    }
};

void print(const char* what, Times times) {
    fmt::print("  {:34} p50 {:8.2f} ms   p99 {:8.2f} ms   server CPU {:6.2f} ms\n", what,
               times.at(0.50), times.at(0.99), times.cpu / static_cast<double>(times.all.size()));
}

// A key and a request in one write; the time until `arrived` returns.
Times type(Editor& editor, int keys, const std::function<void()>& ask,
           const std::function<void()>& arrived) {
    Times times;
    const double before = cpu_milliseconds(editor.client.process());
    for (int key = 0; key < keys; ++key) {
        // As people type: the server is asleep again before the next key.
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
        const auto begin = Clock::now();
        editor.add_key();
        ask();
        editor.client.flush();
        arrived();
        times.all.push_back(milliseconds(Clock::now() - begin));
    }
    times.cpu = cpu_milliseconds(editor.client.process()) - before;
    return times;
}

struct Asked {
    const char* what;
    const char* method;
    enum class Place { cursor, window, script } place;
    const char* more = "";
};

// The name that the server gave its last answer, for the next question.
std::string name_in(const std::string& answer, const std::string& last) {
    constexpr std::string_view member = "\"resultId\":\"";
    const auto at = answer.find(member);
    if (at == std::string::npos) return last;
    const auto begin = at + member.size();
    return answer.substr(begin, answer.find('"', begin) - begin);
}

std::string with_name(std::string more, const std::string& name) {
    if (const auto at = more.find("TOKENS"); at != std::string::npos) more.replace(at, 6, name);
    return more;
}

void bench_requests(const char* program, std::string_view script, std::string_view only) {
    constexpr Asked requests[] = {
        {"key -> hover", "textDocument/hover", Asked::Place::cursor},
        {"key -> completion", "textDocument/completion", Asked::Place::cursor},
        {"key -> code actions", "textDocument/codeAction", Asked::Place::window,
         R"(,"context":{"diagnostics":[]})"},
        {"key -> inlay hints of a window", "textDocument/inlayHint", Asked::Place::window},
        {"key -> tokens of a window", "textDocument/semanticTokens/range", Asked::Place::window},
        {"key -> all tokens", "textDocument/semanticTokens/full", Asked::Place::script},
        {"key -> tokens that are new", "textDocument/semanticTokens/full/delta",
         Asked::Place::script, R"(,"previousResultId":"TOKENS")"},
        {"key -> folds", "textDocument/foldingRange", Asked::Place::script},
        {"key -> times above headings", "textDocument/codeLens", Asked::Place::script},
        {"key -> findings pulled", "textDocument/diagnostic", Asked::Place::script},
        {"key -> document symbols", "textDocument/documentSymbol", Asked::Place::script},
        {"key -> times", "sayline/times", Asked::Place::script},
        {"key -> lenses", "textDocument/codeLens", Asked::Place::script},
        {"key -> folds", "textDocument/foldingRange", Asked::Place::script},
        {"key -> links", "textDocument/documentLink", Asked::Place::script},
        {"key -> highlights", "textDocument/documentHighlight", Asked::Place::cursor},
        {"key -> linked ends", "textDocument/linkedEditingRange", Asked::Place::cursor},
        {"key -> selections", "textDocument/selectionRange", Asked::Place::window,
         R"(,"positions":[{"line":1000,"character":9}])"},
    };
    for (const Asked& asked : requests) {
        if (std::string_view(asked.what).find(only) == std::string_view::npos) continue;
        Editor editor(program, script, false);
        const int keys = asked.place == Asked::Place::script ? 60 : 200;
        int id = 0;
        std::string tokens = "none";
        print(asked.what,
              type(
                  editor, keys,
                  [&] {
                      std::string more = with_name(asked.more, tokens);
                      if (asked.place == Asked::Place::cursor) more += editor.at_cursor();
                      if (asked.place == Asked::Place::window) more += editor.window();
                      id = editor.add_request(asked.method, more);
                  },
                  [&] { tokens = name_in(editor.client.wait_for_answer(id), tokens); }));
    }
}

void bench_diagnostics(const char* program, std::string_view script) {
    Editor editor(program, script, true);
    print("key -> diagnostics", type(
                                    editor, 100, [] {},
                                    [&] {
                                        editor.client.wait_for(fmt::format(
                                            "\"version\":{},\"diagnostics\"", editor.version));
                                    }));
}

// Thirty keys at the speed of a run on the keyboard, a completion each, the last cancelled by none.
void bench_burst(const char* program, std::string_view script) {
    Editor editor(program, script, false);
    int id = 0;
    Clock::time_point last;
    for (int key = 0; key < 30; ++key) {
        last = Clock::now();
        editor.add_key();
        id = editor.add_request("textDocument/completion", editor.at_cursor());
        editor.client.flush();
        std::this_thread::sleep_until(last + std::chrono::milliseconds(key < 29 ? 20 : 0));
    }
    editor.client.wait_for_answer(id);
    fmt::print("  {:34} {:8.2f} ms after the last key\n", "30 keys at 20 ms, completion each",
               milliseconds(Clock::now() - last));
}

void bench_flood(const char* program, std::string_view script) {
    Editor editor(program, script, true);
    const auto begin = Clock::now();
    for (int key = 0; key < 1000; ++key) {
        editor.add_key();
    }
    editor.client.flush();
    editor.client.wait_for(fmt::format("\"version\":{},\"diagnostics\"", editor.version));
    fmt::print("  {:34} {:8.2f} ms   peak memory {:.0f} MiB\n", "1,000 keys at once, caught up in",
               milliseconds(Clock::now() - begin), peak_megabytes(editor.client.process()));
}

} // namespace

int main(int argc, char** argv) {
    if (argc < 2) {
        fmt::print(stderr, "usage: lsp_bench SAYLINE [words...] [--only REQUEST]\n");
        return 1;
    }
    std::vector<int> sizes;
    std::string_view only;
    for (int i = 2; i < argc; ++i) {
        if (std::string_view(argv[i]) == "--only" && i + 1 < argc) {
            only = argv[++i];
        } else {
            sizes.push_back(std::atoi(argv[i]));
        }
    }
    if (sizes.empty()) sizes = {1'000, 10'000, 100'000};
    std::setvbuf(stdout, nullptr, _IOLBF, 0); // each figure as it comes, into a file too
    for (const int words : sizes) {
        const std::string script = make_script(words);
        Editor editor(argv[1], script, false);
        fmt::print("{} words, {} KB\n", words, script.size() / 1000);
        fmt::print("  {:34} {:8.2f} ms\n", "start -> answer to initialize", editor.started);
        fmt::print("  {:34} {:8.2f} ms   peak memory {:.0f} MiB\n", "open -> first diagnostics",
                   editor.opened, peak_megabytes(editor.client.process()));
        bench_requests(argv[1], script, only);
        if (!only.empty()) continue;
        bench_diagnostics(argv[1], script);
        bench_burst(argv[1], script);
        bench_flood(argv[1], script);
    }
    return 0;
}
