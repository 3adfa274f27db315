// Analysing one job after another.
#include "lsp/worker.h"

#include "base/log.h"

#include <fmt/core.h>

#include <chrono>
#include <utility>
#include <vector>

namespace say::lsp {

struct Worker::Desk {
    Parser parser;
};

namespace {

using Clock = std::chrono::steady_clock;

// Null if the version was abandoned on the way.
std::shared_ptr<const Analysis> analyse_version(const Version& version, Parser& parser) {
    const Cancel cancel{version.stop.get_token()};
    if (cancel.tripped()) return nullptr;

    Document document = version.document;
    if (document.text->bytes().size() > analysis_cap) {
        document.text = std::make_shared<const Text>(std::string{});
    }
    const auto begin = Clock::now();
    const std::size_t hits = version.memo->hits();
    const std::size_t misses = version.memo->misses();
    auto analysis = analyse(document, *version.options, parser, *version.memo, cancel);
    const std::chrono::duration<double, std::milli> took = Clock::now() - begin;
    log::debug(fmt::format("analysis of version {}: {} thoughts computed, {} reused, {:.2f} ms{}",
                           document.version, version.memo->misses() - misses,
                           version.memo->hits() - hits, took.count(),
                           analysis ? "" : ", abandoned"));
    return analysis;
}

} // namespace

Worker::Worker(Mode mode, std::function<void(Task)> to_reader)
    : mode_(mode), to_reader_(std::move(to_reader)) {
    if (mode_ == Mode::beside) thread_ = std::thread([this] { run(); });
}

Worker::~Worker() {
    {
        const std::lock_guard lock(mutex_);
        ending_ = true;
        for (const Job& job : jobs_) {
            job.version->stop.request_stop();
        }
        jobs_.clear();
    }
    wake_.notify_one();
    if (thread_.joinable()) thread_.join();
}

void Worker::after_analysis(std::shared_ptr<Version> version, Work work) {
    std::vector<Job> dead; // their texts are freed outside the lock
    {
        const std::lock_guard lock(mutex_);
        // A flood of edits must not pile up texts behind one slow analysis.
        const auto is_dead = [](const Job& job) { return job.version->stop.stop_requested(); };
        for (Job& job : jobs_) {
            if (is_dead(job)) dead.push_back(std::move(job));
        }
        std::erase_if(jobs_, [](const Job& job) { return job.version == nullptr; });
        jobs_.push_back({std::move(version), std::move(work)});
    }
    wake_.notify_one();
}

void Worker::drain() {
    if (mode_ != Mode::in_step) return;
    if (!desk_) desk_ = std::make_unique<Desk>();
    while (!jobs_.empty()) {
        Job job = std::move(jobs_.front());
        jobs_.pop_front();
        do_job(job, *desk_);
        job = {}; // what it held goes without the lock
    }
}

void Worker::run() {
    desk_ = std::make_unique<Desk>();
    std::unique_lock lock(mutex_);
    while (true) {
        wake_.wait(lock, [this] { return ending_ || !jobs_.empty(); });
        if (ending_) return;
        Job job = std::move(jobs_.front());
        jobs_.pop_front();
        lock.unlock();
        do_job(job, *desk_);
        job = {}; // what it held goes without the lock
        lock.lock();
    }
}

void Worker::do_job(const Job& job, Desk& desk) {
    Version& version = *job.version;
    try {
        if (!version.analysis) version.analysis = analyse_version(version, desk.parser);
    } catch (const std::exception& bug) {
        log::error(fmt::format("analysis of {} failed: {}", version.document.uri, bug.what()));
    }
    if (Task task = job.work(version.analysis.get())) to_reader_(std::move(task));
}

} // namespace say::lsp
