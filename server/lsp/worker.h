// The one thread that parses and analyses. What it is given comes in order; versions that nobody
// waits for any more are passed over, which takes the place of a debounce timer and is certain.
#pragma once

#include "engine/analysis.h"
#include "host/files.h"

#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <stop_token>
#include <thread>

namespace say::lsp {

class Told; // lsp/told.h

// One version of one open script, shared by the thread that reads and the one that analyses.
struct Version {
    Document document;
    std::shared_ptr<const Options> options;
    // One a script, touched by the worker alone.
    std::shared_ptr<Memo> memo;
    std::shared_ptr<Told> told;
    std::stop_source stop; // tripped once nobody wants the analysis

    // Set by the worker before it says that it is done; null while there is none.
    std::shared_ptr<const Analysis> analysis;

    // Of the reading thread alone.
    std::optional<Offset> typing; // where one key was struck last; nothing once all is quiet
    bool superseded = false;
    int waiting = 0; // requests
};

class Worker {
public:
    using Task = std::function<void()>;
    enum class Mode { beside, in_step };

    // `to_reader` runs a task on the reading thread. In step both are the same thread.
    Worker(Mode mode, std::function<void(Task)> to_reader);
    ~Worker();
    Worker(const Worker&) = delete;
    Worker& operator=(const Worker&) = delete;

    // Runs `work` behind all that was given before, once the version is analysed. It gets null if
    // the analysis was abandoned. What `work` returns then runs on the reading thread.
    using Work = std::function<Task(const Analysis* analysis)>;
    // `late`: behind all that is given until nothing else waits. What nobody asked for comes after
    // what somebody waits for.
    enum class Turn { next, late };
    void after_analysis(std::shared_ptr<Version> version, Work work, Turn turn = Turn::next);

    // Work on no open script, late; with the thread's own parser. Kept until its turn comes.
    using OtherWork = std::function<Task(Parser& parser)>;
    void add_late(OtherWork work);

    // In step: does all that was given. Beside: nothing.
    void drain();

private:
    struct Job {
        std::shared_ptr<Version> version; // null for other work
        Work work;
        OtherWork other{};
    };
    struct Desk; // what the thread keeps: the parser

    bool has_jobs() const { return !jobs_.empty() || !late_jobs_.empty(); }
    Job take_job(); // there must be one
    void run();
    void do_job(const Job& job, Desk& desk);

    const Mode mode_;
    const std::function<void(Task)> to_reader_;
    std::mutex mutex_;
    std::condition_variable wake_;
    std::deque<Job> jobs_;
    std::deque<Job> late_jobs_;
    bool ending_ = false;
    std::unique_ptr<Desk> desk_;
    std::thread thread_;
};

} // namespace say::lsp
