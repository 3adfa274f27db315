// Times are printed to a tenth of a millisecond. They are rounded as whole numbers, so that speech
// and pause still add up to the seconds after rounding.
#include "host/explain_json.h"

#include "text/text.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace say {
namespace {

using Json = nlohmann::ordered_json;

constexpr double ticks_a_second = 10000.0;

double ticks(Seconds seconds) {
    return std::round(seconds.count() * ticks_a_second);
}

double rounded(Seconds seconds) {
    return ticks(seconds) / ticks_a_second;
}

// Scores and factors: enough digits to rank by.
double rounded(double value) {
    return std::round(value * ticks_a_second) / ticks_a_second;
}

std::string text_of(std::string_view text) {
    return std::string(text);
}

void add_span(Json& json, Span span) {
    json["begin"] = span.begin.value;
    json["end"] = span.end.value;
}

void add_timing(Json& json, const Timing& timing) {
    const double speech = ticks(timing.speech);
    const double pause = ticks(timing.pause);
    json["seconds"] = (speech + pause) / ticks_a_second;
    json["low"] = std::min(rounded(timing.low), (speech + pause) / ticks_a_second);
    json["high"] = std::max(rounded(timing.high), (speech + pause) / ticks_a_second);
    json["speech"] = speech / ticks_a_second;
    json["pause"] = pause / ticks_a_second;
}

std::string_view name_of_known(Known known) {
    switch (known) {
    case Known::lexicon: return "lexicon";
    case Known::guess: return "guess";
    case Known::writer:
    case Known::list: return "writer"; // both are given, not looked up
    }
    return "guess";
}

std::string phones_of(const Said& said) {
    std::string joined;
    for (const Phones& phones : said.phones) {
        if (!joined.empty()) joined += " | ";
        joined += to_arpabet(phones);
    }
    return joined;
}

Json word_json(const Written& written, std::size_t index, const Said& said) {
    const Word& word = written.words[index];
    Json json;
    json["text"] = text_of(slice(written.plain.text, word.plain));
    add_span(json, word.source);
    json["at"] = rounded(said.at);
    json["spoken"] = join(said.spoken);
    json["phones"] = phones_of(said);
    json["syllables"] = said.syllables;
    json["known"] = name_of_known(said.known);
    json["seconds"] = rounded(said.seconds);
    json["stress"] = rounded(static_cast<double>(said.phrasing.stress));
    json["boundary"] = rounded(static_cast<double>(said.phrasing.boundary));
    if (!said.readings.empty()) json["readings"] = said.readings;
    return json;
}

Json words_json(const Thought& thought) {
    Json list = Json::array();
    for (std::size_t i = 0; i < thought.reading.said.size(); ++i) {
        list.push_back(word_json(thought.written, i, thought.reading.said[i]));
    }
    return list;
}

Json pause_json(Span span, Seconds at, Seconds seconds, std::string_view from) {
    Json json;
    add_span(json, span);
    json["at"] = rounded(at);
    json["seconds"] = rounded(seconds);
    json["from"] = from;
    return json;
}

Json pauses_json(const Reading& reading) {
    Json list = Json::array();
    for (const PauseAt& pause : reading.pauses) {
        list.push_back(pause_json(pause.span, pause.at, pause.seconds, name_of(pause.from)));
    }
    return list;
}

Json marks_json(const Written& written) {
    Json list = Json::array();
    for (const Mark& mark : written.marks) {
        Json json;
        json["name"] = row_of(mark.kind).name;
        add_span(json, mark.span);
        json["first"] = mark.first;
        json["last"] = mark.last;
        list.push_back(std::move(json));
    }
    return list;
}

Json breaths_json(const Reading& reading) {
    Json list = Json::array();
    for (const BreathGroup& breath : reading.breaths) {
        Json json;
        add_span(json, breath.span);
        json["seconds"] = rounded(breath.seconds);
        list.push_back(std::move(json));
    }
    return list;
}

Json twister_json(const Written& written, const Twister& twister) {
    Json json;
    json["score"] = rounded(twister.score);
    Span place;
    if (twister.first < twister.last) {
        place.begin = written.words[static_cast<std::size_t>(twister.first)].source.begin;
        place.end = written.words[static_cast<std::size_t>(twister.last) - 1].source.end;
    }
    add_span(json, place);
    return json;
}

std::string spoken_of(const Reading& reading) {
    std::string joined;
    for (const Said& said : reading.said) {
        const std::string words = join(said.spoken);
        if (!joined.empty() && !words.empty()) joined += ' ';
        joined += words;
    }
    return joined;
}

Json head(std::string_view text, const Options& options) {
    Json json;
    json["schema"] = explain_schema;
    json["text"] = text_of(text);
    json["language"] = options.language;
    json["seconds_factor"] = rounded(1.0 / options.voice.speed);
    return json;
}

void add_body(Json& json, const Thought& thought) {
    Json sentences = Json::array();
    for (const Sentence& sentence : thought.reading.sentences) {
        sentences.push_back(text_of(slice(thought.source, sentence.source)));
    }
    json["sentences"] = std::move(sentences);
    json["spoken"] = spoken_of(thought.reading);
    add_timing(json, thought.reading.timing);
    json["words"] = words_json(thought);
    json["pauses"] = pauses_json(thought.reading);
    json["marks"] = marks_json(thought.written);
    json["breaths"] = breaths_json(thought.reading);
    json["twister"] = twister_json(thought.written, thought.reading.twister);
}

Json place_json(const Analysis& analysis, const Placed& placed, std::uint32_t line) {
    const auto section = static_cast<std::size_t>(placed.section);
    Json json;
    json["line"] = line + 1;
    json["section"] = placed.section < 0 ? std::string{} : analysis.script.sections[section].name;
    json["speaker"] = text_of(placed.speaker);
    return json;
}

} // namespace

Json explain_thought(const Thought& thought, const Options& options) {
    Json json = head(thought.source, options);
    add_body(json, thought);
    return json;
}

Json explain_thought(const Analysis& analysis, const Placed& placed) {
    Json json = head(placed.thought->source, analysis.options);
    json["id"] = placed.id();
    json["place"] =
        place_json(analysis, placed, analysis.document.text->line_of(placed.span().begin));
    add_body(json, *placed.thought);
    return json;
}

Json explain_gap(const Analysis& analysis, const Placed& placed) {
    Json json = head({}, analysis.options);
    const std::uint32_t line = analysis.document.text->line_of(placed.span().end);
    json["place"] = place_json(analysis, placed, line + 1);
    add_body(json, Thought{});
    const Timing timing{placed.gap, placed.gap, placed.gap, Seconds{0}, placed.gap};
    add_timing(json, timing);
    json["pauses"].push_back(pause_json(Span{}, Seconds{0}, placed.gap, "gap"));
    return json;
}

Json explain_error(std::string_view message) {
    Json json;
    json["schema"] = explain_schema;
    json["error"] = message;
    return json;
}

void explain_script(const Analysis& analysis, const std::function<void(const Json&)>& item) {
    for (const Placed& placed : analysis.script.thoughts) {
        if (placed.thought->takes_time()) item(explain_thought(analysis, placed));
        if (placed.gap > Seconds{0}) item(explain_gap(analysis, placed));
    }
}

std::string to_line(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

} // namespace say
