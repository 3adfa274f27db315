// Analysing one job after another.
#include "lsp/worker.h"

#include "base/log.h"
#include "lsp/told.h"

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
        for (std::deque<Job>* jobs : {&jobs_, &late_jobs_}) {
            for (const Job& job : *jobs)
                if (job.version) job.version->stop.request_stop();
            jobs->clear();
        }
    }
    wake_.notify_one();
    if (thread_.joinable()) thread_.join();
}

void Worker::after_analysis(std::shared_ptr<Version> version, Work work, Turn turn) {
    std::vector<Job> dead; // their texts are freed outside the lock
    {
        const std::lock_guard lock(mutex_);
        // A flood of edits must not pile up texts behind one slow analysis.
        const auto is_dead = [](const Job& job) {
            return job.version != nullptr && job.version->stop.stop_requested();
        };
        for (std::deque<Job>* jobs : {&jobs_, &late_jobs_}) {
            for (Job& job : *jobs) {
                if (is_dead(job)) dead.push_back(std::move(job));
            }
            std::erase_if(*jobs, [](const Job& job) { return !job.work && !job.other; });
        }
        (turn == Turn::late ? late_jobs_ : jobs_).push_back({std::move(version), std::move(work)});
    }
    wake_.notify_one();
}

void Worker::add_late(OtherWork work) {
    {
        const std::lock_guard lock(mutex_);
        late_jobs_.push_back({.version = nullptr, .work = {}, .other = std::move(work)});
    }
    wake_.notify_one();
}

Worker::Job Worker::take_job() {
    std::deque<Job>& jobs = jobs_.empty() ? late_jobs_ : jobs_;
    Job job = std::move(jobs.front());
    jobs.pop_front();
    return job;
}

void Worker::drain() {
    if (mode_ != Mode::in_step) return;
    if (!desk_) desk_ = std::make_unique<Desk>();
    while (has_jobs()) {
        Job job = take_job();
        do_job(job, *desk_);
        job = {}; // what it held goes without the lock
    }
}

void Worker::run() {
    desk_ = std::make_unique<Desk>();
    std::unique_lock lock(mutex_);
    while (true) {
        wake_.wait(lock, [this] { return ending_ || has_jobs(); });
        if (ending_) return;
        Job job = take_job();
        lock.unlock();
        do_job(job, *desk_);
        job = {}; // what it held goes without the lock
        lock.lock();
    }
}

void Worker::do_job(const Job& job, Desk& desk) {
    if (job.other) {
        if (Task task = job.other(desk.parser)) to_reader_(std::move(task));
        return;
    }
    Version& version = *job.version;
    try {
        if (!version.analysis) version.analysis = analyse_version(version, desk.parser);
    } catch (const std::exception& bug) {
        log::error(fmt::format("analysis of {} failed: {}", version.document.uri, bug.what()));
    }
    if (Task task = job.work(version.analysis.get())) to_reader_(std::move(task));
}

} // namespace say::lsp
