// sayline calibrate: learns how fast somebody reads, from text that was timed.
#include "cli/job.h"
#include "cli/json.h"
#include "cli/render.h"
#include "engine/timed_text.h"
#include "host/files.h"
#include "host/readers.h"
#include "importers/captions.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <ostream>
#include <set>

namespace say::cli {
namespace {

namespace fs = std::filesystem;

// One thing that was timed: a file of times, or a script and how long it took.
struct TimedSource {
    std::string name;
    std::string source; // as the reader's file keeps it
    Heard heard;
    std::vector<LeftOut> left_out;
};

// "2:05" and "1:02:05" as a clock says it, or any duration a direction may hold.
std::optional<Seconds> parse_took(std::string_view written) {
    if (const auto duration = parse_duration(written)) return duration;
    if (const auto target = parse_target(written); target && target->low == target->high)
        return target->high;
    const std::size_t colon = written.find(':');
    if (colon == std::string_view::npos || colon != 1 || written[0] < '0' || written[0] > '9') {
        return std::nullopt;
    }
    const auto rest = parse_target(written.substr(colon + 1));
    if (!rest || rest->low != rest->high) return std::nullopt;
    return Seconds{3600.0 * (written[0] - '0')} + rest->high;
}

std::string extension_of(const std::string& name) {
    return unicode::to_lower(fs::path(name).extension().string());
}

// --- captions and timed lines ------------------------------------------------------------------

// Whether one of several is chosen, and one who is there.
Result<void> check_voice(const std::set<std::string>& voices,
                         const std::optional<std::string>& wanted, const std::string& name,
                         std::string_view nobody) {
    std::string list;
    for (const std::string& voice : voices)
        list += (list.empty() ? "" : ", ") + printable(voice);
    if (!wanted) {
        if (voices.size() < 2) return {};
        return Error{
            fmt::format("{}: several people speak ({}); choose one with --voice", name, list)};
    }
    if (!voices.contains(*wanted)) {
        return Error{voices.empty() ? fmt::format("{}: {}; leave --voice out", name, nobody)
                                    : fmt::format("{}: nobody is called \"{}\"; there are {}", name,
                                                  *wanted, list)};
    }
    return {};
}

// The cues of one voice; others part what it says.
Result<void> choose_voice(std::vector<Cue>& cues, const std::optional<std::string>& wanted,
                          const std::string& name) {
    std::set<std::string> voices;
    for (const Cue& cue : cues) {
        if (!cue.voice.empty()) voices.insert(cue.voice);
    }
    auto fits = check_voice(voices, wanted, name, "no cue says who speaks");
    if (!fits || !wanted) return fits;
    for (Cue& cue : cues) {
        if (cue.voice != *wanted) cue.text.clear();
    }
    return {};
}

Result<TimedSource> hear_file(const std::string& name, const Arguments& arguments,
                              const Options& options, Parser& parser) {
    const auto text = read_text(name);
    if (!text) return text.error();
    const std::string_view bytes = (*text)->bytes();
    const std::string kind = extension_of(name);
    TimedSource timed{.name = name, .source = "captions", .heard = {}, .left_out = {}};
    if (kind == ".tsv" || kind == ".txt") {
        auto lines = read_timed_lines(bytes, name);
        if (!lines) return lines.error();
        timed.source = "lines";
        timed.left_out = std::move(lines->left_out);
        timed.heard = hear_lines(lines->lines, options, parser);
    } else if (kind == ".vtt" || kind == ".srt") {
        auto captions = kind == ".vtt" ? read_webvtt(bytes, name) : read_srt(bytes, name);
        if (!captions) return captions.error();
        const auto chosen = choose_voice(captions->cues, arguments.value("--voice"), name);
        if (!chosen) return chosen.error();
        timed.left_out = std::move(captions->left_out);
        timed.heard = hear_captions(captions->cues, options, parser);
    } else {
        return Error{fmt::format("{}: --from reads captions (.vtt, .srt) and lines of seconds and "
                                 "text (.tsv)",
                                 name)};
    }
    return timed;
}

// --- a script that took so long ----------------------------------------------------------------

// All of a script with one voice, or what one of several says: the whole tells of no single reader.
Result<Heard> hear_spoken(const Analysis& analysis, Seconds took,
                          const std::optional<std::string>& wanted, const std::string& name) {
    std::set<std::string> voices;
    for (const Placed& placed : analysis.script.thoughts) {
        if (placed.thought->has_words() && !placed.speaker.empty()) voices.emplace(placed.speaker);
    }
    const auto fits = check_voice(voices, wanted, name, "the script names no speaker");
    if (!fits) {
        const bool open = !wanted;
        return Error{fits.error().message +
                     (open ? ", and give in --took how long that voice spoke" : "")};
    }
    return hear_script(analysis, took, wanted.value_or(""));
}

Result<TimedSource> hear_took(const std::string& name, Seconds took,
                              const std::optional<std::string>& voice, Options options,
                              Parser& parser) {
    const auto text = name == "-" ? read_standard_input() : read_text(name);
    if (!text) return text.error();
    TimedSource timed{.name = name == "-" ? "standard input" : name,
                      .source = "script",
                      .heard = {},
                      .left_out = {}};
    options = options_of_nobody(std::move(options));
    if (extension_of(name) == ".txt") {
        timed.heard = hear_text((*text)->bytes(), took, options, parser);
    } else {
        Memo memo;
        const Document document{.uri = name, .version = 0, .text = *text};
        options.reader_is_flag = true; // the header's reader is not what is asked
        auto heard = hear_spoken(*analyse(document, options, parser, memo, Cancel{}), took, voice,
                                 timed.name);
        if (!heard) return heard.error();
        timed.heard = std::move(*heard);
    }
    // The one time there is must be right.
    if (timed.heard.stretches.empty() && !timed.heard.left_out.empty()) {
        return Error{fmt::format("{}: {}; check --took", timed.name, timed.heard.left_out[0].why)};
    }
    return timed;
}

// --- the job -----------------------------------------------------------------------------------

struct Given {
    std::string reader;
    std::vector<std::string> from;
    std::string script; // empty without --took
    Seconds took{0};
    std::string date;
    bool replace = false;
    bool write = true;
    bool json = false;
};

Result<Given> given_by(const Arguments& arguments) {
    Given given;
    given.replace = arguments.has("--replace");
    given.write = !arguments.has("--try");
    const auto json = wants_json(arguments);
    if (!json) return json.error();
    given.json = *json;
    const auto reader = arguments.value("--reader");
    if (!reader) return Error{"--reader NAME is missing: who read it?"};
    if (const auto fits = check_reader_name(*reader); !fits)
        return Error{"--reader: " + fits.error().message};
    given.reader = *reader;
    given.date = arguments.value("--date").value_or(today());
    if (const auto fits = check_date(given.date); !fits)
        return Error{"--date: " + fits.error().message};
    if (const auto from = arguments.flags.find("--from"); from != arguments.flags.end())
        given.from = from->second;
    const auto took = arguments.value("--took");
    if (took) {
        const auto seconds = parse_took(*took);
        if (!seconds || *seconds <= Seconds{0}) {
            return Error{
                fmt::format("--took cannot be \"{}\"; write a time such as 2:05 or 125s", *took)};
        }
        given.took = *seconds;
    }
    if (arguments.files.size() > 1) return Error{"one script at a time: --took is the time of one"};
    if (took.has_value() != !arguments.files.empty()) {
        return Error{took ? "--took needs the script that took so long"
                          : fmt::format("{}: how long did it take? Give --took, as in --took 2:05",
                                        arguments.files.front())};
    }
    if (took) given.script = arguments.files.front();
    if (given.from.empty() && given.script.empty()) {
        return Error{"give what was timed: --from FILE.vtt, or --took 2:05 SCRIPT"};
    }
    return given;
}

// Beside the script, where its settings are; else below the folder one stands in.
fs::path reader_file(const Given& given) {
    const fs::path near = given.script.empty() || given.script == "-" ? "-" : given.script;
    fs::path folder = find_settings_folder(near);
    std::error_code error;
    if (folder.empty()) folder = near.parent_path() / ".sayline";
    const fs::path close = fs::proximate(folder, error);
    if (!error) folder = close;
    return folder / "readers" / (given.reader + ".json");
}

double percent_of_a_minute(PaceError pace) {
    const Timing minute = with_range(Seconds{60}, Seconds{0}, Seconds{0}, pace);
    return 100 * (minute.high - minute.expected) / minute.expected;
}

void print_learnt(const Calibrated& calibrated, bool written, const Paint& paint,
                  std::ostream& out) {
    const Learnt& learnt = calibrated.learnt;
    const double speed = 1 / learnt.numbers.speech;
    out << fmt::format(
        "{} reads at {:.2f}x: running talk at about {:.0f} words a minute, pauses {:.2f} "
        "times the usual ones.\n",
        paint.strong(calibrated.reader), speed, speed * words_a_minute_at_speed_one,
        learnt.numbers.pauses);
    out << fmt::format("This rests on {} of speech in {}, the newest of {}.\n",
                       format_clock(learnt.rests_on),
                       counted(static_cast<std::size_t>(learnt.takes), "take"), learnt.newest);
    out << fmt::format(
        "A script of one minute is now known to about ±{:.0f} %; for a reader nobody has "
        "timed it is ±{:.0f} %.\n",
        calibrated.percent, percent_of_a_minute(unknown_pace));
    for (const std::string& again : calibrated.again)
        out << fmt::format("{}: this take was there already; it counts once.\n", again);
    constexpr std::size_t most_shown = 10;
    std::size_t shown = 0;
    for (const CalibratedLeftOut& left : calibrated.left_out) {
        if (++shown > most_shown) break;
        const std::string place =
            left.line == 0 ? left.file : fmt::format("{}:{}", left.file, left.line);
        out << paint.faint(fmt::format("Left out: {}: {}.", place, left.why)) << '\n';
    }
    if (calibrated.left_out.size() > most_shown) {
        out << paint.faint(
                   fmt::format("Left out: {} more.", calibrated.left_out.size() - most_shown))
            << '\n';
    }
    out << (written ? fmt::format("Written to {}.\n", calibrated.file)
                    : fmt::format("Not written to {}: this was a try.\n", calibrated.file));
}

Result<std::vector<TimedSource>> hear_all(const Given& given, const Arguments& arguments,
                                          const Options& options) {
    Parser parser;
    std::vector<TimedSource> all;
    for (const std::string& name : given.from) {
        auto timed = hear_file(name, arguments, options, parser);
        if (!timed) return timed.error();
        all.push_back(std::move(*timed));
    }
    if (!given.script.empty()) {
        auto timed =
            hear_took(given.script, given.took, arguments.value("--voice"), options, parser);
        if (!timed) return timed.error();
        all.push_back(std::move(*timed));
    }
    return all;
}

// What could not be read and what could not be used, in the order of the file.
void add_left_out(const TimedSource& timed, std::vector<CalibratedLeftOut>& all) {
    const auto begin = std::ssize(all);
    for (const std::vector<LeftOut>* list : {&timed.left_out, &timed.heard.left_out}) {
        for (const LeftOut& left : *list)
            all.push_back({timed.name, left.line, left.why});
    }
    std::stable_sort(all.begin() + begin, all.end(),
                     [](const auto& a, const auto& b) { return a.line < b.line; });
}

Result<Calibrated> calibrate(const Given& given, const Arguments& arguments,
                             const Options& options) {
    const auto all = hear_all(given, arguments, options);
    if (!all) return all.error();
    const fs::path path = reader_file(given);
    auto file = ReaderFile::open(path, given.replace);
    if (!file) return file.error();

    Calibrated calibrated{.reader = given.reader, .file = path.string()};
    bool any = false;
    for (const TimedSource& timed : *all) {
        add_left_out(timed, calibrated.left_out);
        if (timed.heard.stretches.empty()) continue;
        any = true;
        calibrated.learnt =
            file->add({.date = given.date,
                       .source = timed.source,
                       .seconds = timed.heard.seconds,
                       .words = timed.heard.words,
                       .evidence = evidence_of(timed.heard.stretches, file->evidence(given.date))});
        if (calibrated.learnt.known_take) calibrated.again.push_back(timed.name);
    }
    if (!any) {
        const std::string why =
            calibrated.left_out.empty()
                ? ""
                : fmt::format(" ({}{}: {})", calibrated.left_out[0].file,
                              calibrated.left_out[0].line > 0
                                  ? fmt::format(":{}", calibrated.left_out[0].line)
                                  : "",
                              calibrated.left_out[0].why);
        return Error{fmt::format("{}: nothing in it could be timed{}", all->front().name, why)};
    }
    calibrated.percent = percent_of_a_minute(pace_error(calibrated.learnt.rests_on));
    if (!given.write) return calibrated;
    if (const auto saved = file->save(); !saved) return saved.error();
    return calibrated;
}

int run_calibrate(const Arguments& arguments, Console& console) {
    Job job(arguments);
    const auto fail = [&](const std::string& message) {
        // A sentence that names its file needs no other beginning.
        console.err << "sayline: " << message << '\n';
        return status_failed;
    };
    const auto given = given_by(arguments);
    if (!given) return fail(given.error().message);
    const Source near{given->script, given->script == "-" ? fs::path{} : fs::path(given->script)};
    Setup setup = load_setup(near.file.empty() ? fs::path("-") : near.file, nullptr);
    if (const auto language = arguments.value("--language")) {
        if (auto set = set_option(setup.options, "language", *language); !set)
            return fail("--" + set.error().message);
        setup.options.language_is_flag = true;
    }
    const auto calibrated = calibrate(*given, arguments, setup.options);
    if (!calibrated) return fail(calibrated.error().message);
    if (given->json) {
        console.out << calibrate_json(*calibrated, given->write);
    } else {
        print_learnt(*calibrated, given->write, Paint(console.colour), console.out);
    }
    return status_clean;
}

} // namespace

const Command calibrate_command = {
    .name = "calibrate",
    .arguments = "--reader NAME --from FILE ... | --reader NAME --took TIME SCRIPT|TEXT|-",
    .summary = "Learn how fast somebody reads, from text that was timed",
    .help =
        "Learns a reader's two numbers, for speech and for pauses, and keeps them with the date\n"
        "and what they rest on in .sayline/readers/NAME.json. Calibrating again adds a take; "
        "recent\n"
        "ones count more. The text is not kept. A file written by hand is left as it is.\n\n"
        "Captions and lines are plain text: nothing in them is a mark. In a script marks and\n"
        "directions hold the time they say; .txt is plain text, a paragraph a thought.\n"
        "docs/timing.md says how it is learnt and how well.",
    .flags = {{"--reader", "NAME", "Who read it; the header's reader: and speakers: name it so"},
              {"--from", "FILE",
               "Captions (.vtt, .srt), or lines of seconds, a tab and text (.tsv)"},
              {"--took", "TIME", "How long the script took, from first word to last: 2:05 or 125s"},
              {"--voice", "NAME", "Whose words count, where several people speak"},
              {"--date", "DATE", "When it was read, as 2026-11-25 (today)"},
              {"--language", "TAG", "en-US or en-GB"},
              {"--replace", {}, "Begin anew: forget what the file holds"},
              {"--try", {}, "Show what would be learnt and write nothing"},
              as_flag},
    .run = run_calibrate,
};

} // namespace say::cli
