// sayline/speak: the guide read of a script, or of the thought at a place, into a file that the
// client names. Some stretches of talk at a time, so that a question at the cursor need not wait.
#include "exporters/guide_read.h"
#include "host/files.h"
#include "lsp/convert.h"
#include "lsp/session.h"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <utility>

namespace say::lsp {
namespace {

constexpr int parts_at_once = 16; // some milliseconds

// The thought that a writer at that place has in mind: between two it is the one above.
std::optional<std::size_t> thought_near(const Script& script, Offset at) {
    const std::vector<Placed>& thoughts = script.thoughts;
    const auto after =
        std::partition_point(thoughts.begin(), thoughts.end(),
                             [&](const Placed& placed) { return placed.block.span.begin <= at; });
    if (thoughts.empty()) return std::nullopt;
    return after == thoughts.begin() ? 0 : static_cast<std::size_t>(after - thoughts.begin()) - 1;
}

} // namespace

struct Session::Speech {
    Speech(const RequestId& asked, SpeakParams given) : id(asked), params(std::move(given)) {}

    RequestId id;
    SpeakParams params;
    std::shared_ptr<const Analysis> analysis;
    std::optional<GuideRead> read;
    std::optional<NewFile> file;
    Range range;       // of what is said
    std::string error; // why it cannot go on
    int percent = 0;   // told
    bool over = false; // answered or cancelled; of the reading thread

    // What follows runs on the worker.
    void begin(Encoding encoding);
    void go_on();
};

void Session::Speech::begin(Encoding encoding) {
    const std::vector<Placed>& thoughts = analysis->script.thoughts;
    Columns columns(*analysis->document.text, encoding);
    std::size_t first = 0;
    std::size_t last = thoughts.size();
    if (params.position) {
        const auto near = thought_near(analysis->script, columns.offset(*params.position));
        first = near.value_or(0);
        last = near ? first + 1 : 0;
    }
    if (first < last) {
        range = columns.range({thoughts[first].span().begin, thoughts[last - 1].span().end});
    }
    read.emplace(*analysis, first, last);
    const auto path = path_of(params.file);
    if (const auto fits = read->check(); !fits) {
        error = fits.error().message;
    } else if (read->done()) {
        error = "nothing is said here";
    } else if (auto kept = check_no_script(*path, path_of(params.textDocument.uri).value_or(""));
               !kept) {
        error = kept.error().message;
    } else if (!may_make_anew(*path, guide_read_sign)) {
        error = fmt::format("{}: is there already and no guide read; give another name",
                            path->string());
    } else if (auto made = NewFile::begin(*path); !made) {
        error = made.error().message;
    } else {
        file.emplace(std::move(*made));
        file->add(read->head());
    }
}

void Session::Speech::go_on() {
    bool well = true;
    for (int i = 0; i < parts_at_once && well && !read->done(); ++i)
        well = file->add(read->next());
    if (well && !read->done()) return; // else it is whole, or the file says why it cannot be
    if (const auto written = file->finish(); !written) error = written.error().message;
    file.reset();
}

void Session::speak(const RequestId& id, SpeakParams params) {
    const OpenScript* const script = find(params.textDocument.uri);
    if (script == nullptr) {
        return send_error(id, ErrorCode::invalid_params,
                          fmt::format("textDocument.uri: {} is not open", params.textDocument.uri));
    }
    if (!path_of(params.file)) {
        return send_error(id, ErrorCode::invalid_params,
                          "file: expected a file URI, where the sound is written");
    }
    const auto speech = std::make_shared<Speech>(id, std::move(params));
    speeches_.emplace(id, speech);
    begin_progress(speech->params.workDoneToken, "Speaking the script");
    const std::shared_ptr<Version> version = script->current;
    ++version->waiting; // it is analysed even if the writer types on
    worker_.after_analysis(
        version,
        [this, speech, version, client = client_](const Analysis* analysis) -> Worker::Task {
            if (analysis == nullptr) {
                speech->error = "the script could not be analysed";
            } else {
                speech->analysis = version->analysis;
                speech->begin(client->encoding);
            }
            return [this, speech, version] {
                --version->waiting;
                speak_on(speech);
            };
        },
        Worker::Turn::late);
}

void Session::speak_on(const std::shared_ptr<Speech>& speech) {
    if (speech->over) return;
    if (!speech->error.empty() || !speech->file) return finish_speech(*speech);
    tell_progress(*speech);
    worker_.add_late([this, speech](Parser& /*parser*/) -> Worker::Task {
        speech->go_on();
        return [this, speech] { speak_on(speech); };
    });
}

// In steps of ten per cent, as with folders.
void Session::tell_progress(Speech& speech) {
    const int percent = static_cast<int>(100 * speech.read->share_done());
    if (percent < speech.percent + 10) return;
    speech.percent = percent;
    report_progress(speech.params.workDoneToken, percent, {});
}

void Session::finish_speech(Speech& speech) {
    speech.over = true;
    end_progress(speech.params.workDoneToken);
    const RequestId id = speech.id;
    const std::string error = speech.error;
    Json result;
    if (error.empty()) {
        const double seconds = speech.read->seconds().count();
        result = {{"file", speech.params.file},
                  {"seconds", std::round(seconds * 1000) / 1000},
                  {"range", encode(speech.range)}};
    }
    speeches_.erase(id); // what was asked last
    if (!error.empty()) return send_error(id, ErrorCode::request_failed, error);
    answer(id, response(id, write(result)));
}

bool Session::cancel_speech(const RequestId& id) {
    const auto found = speeches_.find(id);
    if (found == speeches_.end()) return false;
    const std::shared_ptr<Speech> speech = found->second;
    speech->over = true;
    speeches_.erase(found);
    end_progress(speech->params.workDoneToken);
    send_error(speech->id, ErrorCode::request_cancelled, "cancelled");
    return true;
}

} // namespace say::lsp
