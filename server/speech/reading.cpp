// Reads a thought: words become sounds, sounds and marks become a time line, the time line breath
// groups.
#include "speech/reading.h"

#include "speech/duration.h"
#include "speech/homographs.h"
#include "speech/sentences.h"
#include "speech/settle.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <optional>
#include <span>

namespace say {
namespace {

std::vector<Sentence> find_sentences(const Written& written, std::string_view source) {
    std::vector<Sentence> sentences;
    std::size_t word = 0;
    for (const Span span : split_sentences(written.plain.text)) {
        Sentence sentence;
        sentence.first = static_cast<int>(word);
        while (word < written.words.size() && written.words[word].plain.begin < span.end)
            ++word;
        sentence.last = static_cast<int>(word);
        sentence.plain = span;
        sentence.source = written.plain.to_source(span);
        // Marks that touch its first word belong to it: "*Please* call".
        const std::uint32_t low = sentences.empty() ? 0 : sentences.back().source.end.value;
        std::uint32_t& begin = sentence.source.begin.value;
        while (begin > low && !ascii::is_blank(source[begin - 1]))
            --begin;
        sentences.push_back(sentence);
    }
    return sentences;
}

// --- words and sounds ----------------------------------------------------------------------------

void say_as(Said& said, std::string_view argument, Language language) {
    const std::vector<Span> words = split_words(argument);
    said.spoken.clear();
    said.readings.clear();
    said.phones.clear();
    said.others.clear();
    for (Spoken& spoken : speak(argument, words, language)) {
        said.spoken.insert(said.spoken.end(), spoken.words.begin(), spoken.words.end());
    }
}

// The sound of what follows a pronouncer inside its word: Anna{AN-uh}'s.
void add_ending(Phones& phones, std::string_view ending) {
    const std::string folded = unicode::fold(ending);
    if (folded != "'s" && folded != "s" && folded != "s'") return;
    if (phones.empty()) return;
    switch (phones.back().sound) {
    case Sound::S:
    case Sound::Z:
    case Sound::SH:
    case Sound::ZH:
    case Sound::CH:
    case Sound::JH:
        phones.push_back({Sound::IH, 0});
        phones.push_back({Sound::Z, 0});
        return;
    case Sound::P:
    case Sound::T:
    case Sound::K:
    case Sound::F:
    case Sound::TH: phones.push_back({Sound::S, 0}); return;
    default: phones.push_back({Sound::Z, 0});
    }
}

std::string_view ending_behind(const Written& written, const Word& word, const Mark& mark) {
    const std::vector<std::uint32_t>& source = written.plain.source;
    for (std::uint32_t i = word.plain.begin.value; i < word.plain.end.value; ++i) {
        if (source[i] >= mark.span.end.value) {
            return slice(written.plain.text, {Offset{i}, word.plain.end});
        }
    }
    return {};
}

void apply_pronouncer(const Written& written, const Mark& mark, std::vector<Said>& said) {
    std::vector<Phones> parts = read_pronouncer(mark.argument);
    if (parts.empty() || mark.last < 0) return;
    const auto covered = static_cast<std::size_t>(mark.last - mark.first) + 1;
    if (parts.size() != covered) {
        // Fewer words than parts: all of it is the last word's sound.
        Phones whole;
        for (const Phones& part : parts)
            whole.insert(whole.end(), part.begin(), part.end());
        parts.assign(1, whole);
    }
    const auto first = static_cast<std::size_t>(mark.last) + 1 - parts.size();
    add_ending(parts.back(),
               ending_behind(written, written.words[static_cast<std::size_t>(mark.last)], mark));
    for (std::size_t i = 0; i < parts.size(); ++i) {
        Said& word = said[first + i];
        word.phones.assign(1, parts[i]);
        word.known = Known::writer;
        word.readings.clear();
        word.others.clear();
        word.undecided = false;
        if (word.spoken.size() != 1 || word.spoken[0].letters) {
            word.spoken.assign(
                1,
                {unicode::fold(slice(written.plain.text, written.words[first + i].plain)), false});
        }
    }
}

// --- the project's own words ---------------------------------------------------------------------

// What was taken off a word to find it in the list: nothing, "'s", "'", or the "s" of initials.
struct Listed {
    const OwnWord* word = nullptr;
    std::string ending;
};

// In capitals but for an "s": "LCVs".
bool are_initials(std::string_view word) {
    if (word.size() < 3 || !word.ends_with('s')) return false;
    word.remove_suffix(1);
    return std::all_of(word.begin(), word.end(), ascii::is_upper);
}

const OwnWord* without_ending(const WordList& list, std::vector<std::string>& stems,
                              std::string_view ending) {
    std::string& last = stems.back();
    if (!last.ends_with(ending) || last.size() == ending.size()) return nullptr;
    const std::string whole = last;
    last.resize(last.size() - ending.size());
    const OwnWord* word = list.find(stems);
    if (word != nullptr && word->words.size() == stems.size()) return word;
    last = whole;
    return nullptr;
}

// `initials` says which of the words are.
Listed find_listed(const WordList& list, std::span<const std::string> words,
                   std::span<const char> initials) {
    if (const OwnWord* word = list.find(words)) return {word, {}};
    // "Nguyen's", "the Great Barrier's": the last word may carry an ending.
    constexpr std::size_t most_words = 8;
    std::vector<std::string> stems;
    for (std::size_t i = 0; i < words.size() && i < most_words; ++i) {
        stems.push_back(words[i]);
        for (const std::string_view ending : {"'s", "'", "s"}) {
            if (ending == "s" && initials[i] == 0) continue;
            if (const OwnWord* word = without_ending(list, stems, ending))
                return {word, std::string(ending)};
        }
    }
    return {};
}

// "volunteers" takes an apostrophe alone, and is a plural already; "press" takes "'s".
std::string inflected(const std::string& alias, std::string_view ending) {
    const bool plural = alias.ends_with('s') && !alias.ends_with("ss");
    if (!plural) return alias + std::string(ending);
    return ending == "'s" ? alias + '\'' : alias;
}

void say_alias(std::span<Said> said, const Listed& listed, const OwnReading& reading,
               Language language) {
    say_as(said.front(), inflected(reading.alias, listed.ending), language);
    if (said.size() == 1) return;
    std::vector<SpokenWord> spoken = std::move(said.front().spoken);
    for (Said& word : said)
        word.spoken.clear();
    // A word for each, or all of them where the entry begins.
    const bool paired = spoken.size() == said.size();
    for (std::size_t i = 0; i < spoken.size(); ++i)
        said[paired ? i : 0].spoken.push_back(std::move(spoken[i]));
}

void say_listed(std::span<Said> said, const Listed& listed, Language language) {
    const OwnReading& reading = listed.word->readings.front();
    for (Said& word : said) {
        word.readings.clear();
        word.known = Known::list;
    }
    if (!reading.alias.empty()) return say_alias(said, listed, reading, language);

    const bool paired = reading.phones.size() == said.size();
    for (std::size_t i = 0; i < said.size(); ++i) {
        const std::size_t last = said.size() - 1;
        if (i > 0 && !paired) {
            said[i].spoken.clear();
            continue;
        }
        std::string text = listed.word->words[i];
        for (std::size_t j = 1; j <= last && !paired; ++j)
            text += ' ' + listed.word->words[j];
        if (i == last || !paired) text += listed.ending;
        said[i].spoken.assign(1, {std::move(text), false});
        said[i].phones.assign(1, reading.phones[i]);
        if ((i == last || !paired) && !listed.ending.empty())
            add_ending(said[i].phones.front(), listed.ending);
    }
    if (said.size() > 1) return;
    for (std::size_t i = 1; i < listed.word->readings.size(); ++i) {
        const OwnReading& other = listed.word->readings[i];
        if (other.phones.empty()) continue;
        said.front().others.push_back(other.phones.front());
        add_ending(said.front().others.back(), listed.ending);
    }
}

// Entries are looked for in what is written, so that "W3C" and names of several words are found.
void find_listed_words(const Written& written, const Voice& voice, std::vector<Said>& said) {
    if (!voice.words || voice.words->empty()) return;
    std::vector<std::string> folded;
    std::vector<char> initials;
    folded.reserve(said.size());
    initials.reserve(said.size());
    for (const Word& word : written.words) {
        const std::string_view text = slice(written.plain.text, word.plain);
        folded.push_back(unicode::fold(text));
        initials.push_back(are_initials(text) ? 1 : 0);
    }
    for (std::size_t i = 0; i < said.size();) {
        // An entry of several words stands in one run: nothing but a blank between them.
        std::size_t end = i + 1;
        while (end < said.size() &&
               slice(written.plain.text,
                     {written.words[end - 1].plain.end, written.words[end].plain.begin}) == " ") {
            ++end;
        }
        const std::size_t run_end = end;
        while (i < run_end) {
            const Listed listed =
                find_listed(*voice.words, std::span(folded).subspan(i, run_end - i),
                            std::span(initials).subspan(i, run_end - i));
            const std::size_t count = listed.word != nullptr ? listed.word->words.size() : 1;
            if (listed.word != nullptr)
                say_listed(std::span(said).subspan(i, count), listed, voice.language);
            i += count;
        }
    }
}

// --- sounds --------------------------------------------------------------------------------------

// "Nguyen-led": a part of a hyphened word that the project's list knows.
std::optional<Phones> with_listed_part(std::string_view word, const WordList& list) {
    if (word.find('-') == std::string_view::npos) return std::nullopt;
    Phones whole;
    bool any = false;
    for (std::size_t at = 0; at <= word.size();) {
        const std::size_t end = std::min(word.find('-', at), word.size());
        const std::string_view part = word.substr(at, end - at);
        const OwnWord* own = list.find(part);
        const bool listed = own != nullptr && !own->readings.front().phones.empty();
        any = any || listed;
        const Phones phones =
            listed ? own->readings.front().phones.front() : pronounce(part).phones;
        whole.insert(whole.end(), phones.begin(), phones.end());
        at = end + 1;
    }
    if (!any) return std::nullopt;
    return whole;
}

// The sound that the project's list gives a spoken word ("doctor" for the "Dr." of the script).
std::optional<Phones> listed_sound(const SpokenWord& word, const Voice& voice) {
    if (!voice.words || voice.words->empty()) return std::nullopt;
    const OwnWord* own = voice.words->find(word.text);
    if (own == nullptr) return with_listed_part(word.text, *voice.words);
    const OwnReading& reading = own->readings.front();
    if (reading.phones.empty()) return std::nullopt;
    return reading.phones.front();
}

void find_sounds(Said& said, const Voice& voice) {
    if (said.known == Known::list && !said.phones.empty()) return;
    said.phones.clear();
    bool guessed = false;
    for (SpokenWord& word : said.spoken) {
        if (auto own = listed_sound(word, voice)) {
            said.phones.push_back(std::move(*own));
            said.known = Known::list;
            word.letters = false;
            continue;
        }
        if (word.letters) {
            Phones all;
            for (const Phones& letter : spell_out(word.text))
                all.insert(all.end(), letter.begin(), letter.end());
            said.phones.push_back(std::move(all));
            continue;
        }
        Pronunciation pronunciation = pronounce(word.text);
        guessed = guessed || pronunciation.known == Known::guess;
        said.phones.push_back(std::move(pronunciation.phones));
    }
    if (guessed) said.known = Known::guess;
}

// --- words of two sounds -------------------------------------------------------------------------

bool is_capital(std::string_view word) {
    const auto first = unicode::decode(word, 0);
    if (!unicode::is_upper(first.value) || first.size >= word.size()) return false;
    return !unicode::is_upper(unicode::decode(word, first.size).value);
}

// What the choice looks at, made only for a thought that has a homograph.
class Neighbours {
public:
    Neighbours(const Written& written, const std::vector<Sentence>& sentences) {
        const std::size_t count = written.words.size();
        folded_.reserve(count);
        for (const Word& word : written.words)
            folded_.push_back(unicode::fold(slice(written.plain.text, word.plain)));
        for (std::size_t i = 0; i < count; ++i) {
            const Span word = written.words[i].plain;
            const bool last = i + 1 == count;
            const std::string_view between =
                last ? "."
                     : slice(written.plain.text, {word.end, written.words[i + 1].plain.begin});
            words_.push_back({.folded = folded_[i],
                              .capital = is_capital(slice(written.plain.text, word)),
                              .stops = between.find_first_not_of(' ') != std::string_view::npos});
        }
        for (const Sentence& sentence : sentences) {
            const auto first = static_cast<std::size_t>(sentence.first);
            if (first < count) words_[first].opens = true;
        }
    }

    std::span<const NearWord> words() const { return words_; }

private:
    std::vector<std::string> folded_; // what the views of words_ look into
    std::vector<NearWord> words_;
};

const Homograph* homograph_of(const Said& said) {
    if (is_given(said.known) || said.spoken.size() != 1 || said.spoken[0].letters) return nullptr;
    return find_homograph(said.spoken[0].text);
}

void choose_sounds(const Written& written, const std::vector<Sentence>& sentences,
                   std::vector<Said>& said) {
    std::optional<Neighbours> neighbours;
    for (std::size_t i = 0; i < said.size(); ++i) {
        const Homograph* homograph = homograph_of(said[i]);
        if (homograph == nullptr) continue;
        if (!neighbours) neighbours.emplace(written, sentences);
        const HomographChoice choice = choose(*homograph, neighbours->words(), i);
        const auto chosen = static_cast<std::size_t>(choice.reading);
        said[i].phones.assign(1,
                              from_arpabet(homograph->readings[chosen].arpabet).value_or(Phones()));
        said[i].others.assign(
            1, from_arpabet(homograph->readings[1 - chosen].arpabet).value_or(Phones()));
        said[i].undecided = !choice.decided;
    }
}

// What is said, without its sounds; a pronouncer may still change it.
std::vector<Said> say_words(const Written& written, const Voice& voice) {
    std::vector<Span> spans;
    spans.reserve(written.words.size());
    for (const Word& word : written.words)
        spans.push_back(word.plain);
    std::vector<Spoken> spoken = speak(written.plain.text, spans, voice.language);

    std::vector<Said> said(written.words.size());
    for (std::size_t i = 0; i < said.size() && i < spoken.size(); ++i) {
        said[i].spoken = std::move(spoken[i].words);
        said[i].readings = std::move(spoken[i].readings);
    }
    find_listed_words(written, voice, said);
    for (const Mark& mark : written.marks) {
        if (mark.kind == MarkKind::say_as && mark.last >= 0 && !mark.argument.empty()) {
            Said& word = said[static_cast<std::size_t>(mark.last)];
            say_as(word, mark.argument, voice.language);
            word.known = Known::lexicon;
        }
    }
    return said;
}

void apply_pronouncers(const Written& written, std::vector<Said>& said) {
    for (const Mark& mark : written.marks) {
        if (mark.kind == MarkKind::pronouncer) apply_pronouncer(written, mark, said);
    }
}

std::vector<Said> find_words(const Written& written, const std::vector<Sentence>& sentences,
                             const Voice& voice) {
    std::vector<Said> said = say_words(written, voice);
    for (Said& word : said)
        find_sounds(word, voice);
    choose_sounds(written, sentences, said);
    apply_pronouncers(written, said);
    for (Said& word : said) {
        for (const Phones& phones : word.phones)
            word.syllables += syllable_count(phones);
    }
    return said;
}

// --- junctures -----------------------------------------------------------------------------------

std::string_view between_words(const Written& written, std::size_t word) {
    const Offset begin = written.words[word].plain.end;
    const Offset end = word + 1 < written.words.size()
                           ? written.words[word + 1].plain.begin
                           : Offset{static_cast<std::uint32_t>(written.plain.text.size())};
    return slice(written.plain.text, {begin, end});
}

void find_junctures(const Written& written, const std::vector<Sentence>& sentences,
                    std::vector<Said>& said) {
    std::size_t sentence = 0;
    for (std::size_t i = 0; i < said.size(); ++i) {
        while (sentence < sentences.size() && static_cast<int>(i) + 1 > sentences[sentence].last)
            ++sentence;
        const bool ends =
            sentence < sentences.size() && static_cast<int>(i) + 1 == sentences[sentence].last;
        const std::string_view between = between_words(written, i);
        if (between == " ") continue;
        said[i].after = juncture_of(between, ends);
    }
    const auto at_least_comma = [&](int word) {
        if (word < 0 || word >= static_cast<int>(said.size())) return;
        Juncture& after = said[static_cast<std::size_t>(word)].after;
        after = std::max(after, Juncture::comma);
    };
    for (const Mark& mark : written.marks) {
        if (mark.kind != MarkKind::aside) continue;
        at_least_comma(mark.first - 1);
        at_least_comma(mark.last);
    }
}

// --- rates ---------------------------------------------------------------------------------------

// What the marks do to each word: a factor on its rate and seconds added to it or before it.
struct Manner {
    double tempo = 1.0;  // quick, slow
    double stress = 1.0; // the heaviest counts
    Seconds stretch{0};
    Seconds before{0};
    bool tied = false; // no pause behind it
};

// A stress over a whole sentence leans on its last content word.
int first_leant_on(const Mark& mark, const std::vector<Said>& said) {
    constexpr int most = 3;
    if (mark.last - mark.first < most) return mark.first;
    for (int i = mark.last; i > mark.first; --i) {
        const Said& word = said[static_cast<std::size_t>(i)];
        if (word.spoken.empty() || is_function_word(word.spoken.back().text)) continue;
        return i;
    }
    return mark.last;
}

std::vector<Manner> find_manners(const Written& written, const std::vector<Said>& said,
                                 const Voice& voice) {
    const PauseTable& table = voice.table;
    std::vector<Manner> manners(said.size());
    for (const Mark& mark : written.marks) {
        if (mark.first < 0 || mark.last >= static_cast<int>(said.size()) || mark.last < mark.first)
            continue;
        const auto first = static_cast<std::size_t>(mark.first);
        const auto last = static_cast<std::size_t>(mark.last);
        switch (mark.kind) {
        // Inner marks come later and win: ">a <b> c<" is slow on b.
        case MarkKind::quick:
            for (std::size_t i = first; i <= last; ++i)
                manners[i].tempo = table.quick;
            break;
        case MarkKind::slow:
            for (std::size_t i = first; i <= last; ++i)
                manners[i].tempo = table.slow;
            break;
        case MarkKind::stress:
            for (auto i = static_cast<std::size_t>(first_leant_on(mark, said)); i <= last; ++i) {
                manners[i].stress = std::min(manners[i].stress, table.stress);
            }
            break;
        case MarkKind::heavy_stress: {
            const auto lean = static_cast<std::size_t>(first_leant_on(mark, said));
            for (std::size_t i = lean; i <= last; ++i)
                manners[i].stress = std::min(manners[i].stress, table.heavy);
            manners[lean].before = table.before_heavy;
            break;
        }
        case MarkKind::stretch:
            manners[last].stretch += table.stretch * mark.seconds.count();
            break;
        case MarkKind::tie: manners[last].tied = true; break;
        default: break;
        }
    }
    return manners;
}

Seconds word_seconds(const Said& word, const Manner& manner, bool ends_phrase, const Voice& voice) {
    Seconds sound{0};
    for (std::size_t i = 0; i < word.phones.size(); ++i) {
        const SpokenWord& spoken = word.spoken[i];
        if (!spoken.letters) {
            sound += duration_of(word.phones[i], is_function_word(spoken.text));
            continue;
        }
        for (const Phones& letter : spell_out(spoken.text))
            sound += duration_of(letter, false);
    }
    sound /= manner.tempo * manner.stress;
    if (sound > Seconds{0} && ends_phrase) sound += phrase_end;
    return (sound + manner.stretch) / voice.speed;
}

// --- the time line -------------------------------------------------------------------------------

Seconds mark_pause(const Mark& mark, const PauseTable& table) {
    switch (mark.kind) {
    case MarkKind::pause: return table.pause;
    case MarkKind::beat: return table.beat * mark.seconds.count();
    case MarkKind::breath: return table.breath;
    case MarkKind::reset: return table.reset;
    case MarkKind::micropause: return table.micropause;
    case MarkKind::timed_pause:
    case MarkKind::direction: return mark.seconds;
    default: return Seconds{0};
    }
}

// Where the writer gave the seconds, nobody's pace changes them; a beat is counted by feeling.
bool says_seconds(const Mark& mark) {
    return mark.kind == MarkKind::direction || mark.kind == MarkKind::timed_pause;
}

PauseFrom from_juncture(Juncture juncture) {
    switch (juncture) {
    case Juncture::comma: return PauseFrom::comma;
    case Juncture::strong: return PauseFrom::strong;
    default: return PauseFrom::sentence;
    }
}

// The source between two words where their punctuation stands, without the blanks around it.
Span punctuation_span(const Written& written, int after) {
    const Span word = written.words[static_cast<std::size_t>(after)].plain;
    const auto size = static_cast<std::uint32_t>(written.plain.text.size());
    Span plain{word.end, word.end + 1};
    while (plain.end.value < size && written.plain.text[plain.end.value] != ' ')
        ++plain.end.value;
    plain.end.value = std::min(plain.end.value, size);
    return written.plain.to_source(plain);
}

class TimeLine {
public:
    TimeLine(const Written& written, const Voice& voice, Reading& reading)
        : written_(written), voice_(voice), reading_(reading),
          manners_(find_manners(written, reading.said, voice)) {}

    void lay() {
        place(-1);
        const int count = static_cast<int>(reading_.said.size());
        for (int i = 0; i < count; ++i) {
            Said& word = reading_.said[static_cast<std::size_t>(i)];
            const Manner& manner = manners_[static_cast<std::size_t>(i)];
            if (manner.before > Seconds{0}) {
                const Offset begin = written_.words[static_cast<std::size_t>(i)].source.begin;
                add({{begin, begin}, Seconds{0}, manner.before, PauseFrom::mark, i - 1});
            }
            const bool ends_phrase = word.after != Juncture::none || i + 1 == count;
            word.at = now_;
            word.seconds = word_seconds(word, manner, ends_phrase, voice_);
            now_ += word.seconds;
            speech_ += word.seconds;
            place(i);
        }
        reading_.timing = with_range(speech_, pause_, held_, voice_.pace_error);
        reading_.held = held_;
    }

private:
    void add(PauseAt pause) {
        pause.at = now_;
        now_ += pause.seconds;
        pause_ += pause.seconds;
        reading_.pauses.push_back(pause);
    }

    // The pauses behind a word: its punctuation or the marks there, whichever is longer.
    void place(int after) {
        Seconds marked{0};
        const std::size_t begin = mark_;
        for (; mark_ < written_.marks.size(); ++mark_) {
            const Mark& mark = written_.marks[mark_];
            if (mark.span.begin.value >= next_word_begin(after)) break;
            marked += mark_pause(mark, voice_.table);
        }
        const bool last = after + 1 >= static_cast<int>(reading_.said.size());
        Seconds written{0};
        if (after >= 0 && !last && !manners_[static_cast<std::size_t>(after)].tied) {
            written = pause_of(reading_.said[static_cast<std::size_t>(after)].after, voice_.table) *
                      voice_.pauses;
        }
        if (written > marked) {
            add({punctuation_span(written_, after), Seconds{0}, written,
                 from_juncture(reading_.said[static_cast<std::size_t>(after)].after), after});
        } else if (marked > Seconds{0}) {
            for (std::size_t i = begin; i < mark_; ++i)
                add_mark(written_.marks[i], after);
        }
        if (written > marked) {
            for (std::size_t i = begin; i < mark_; ++i) {
                if (says_seconds(written_.marks[i])) held_ += written_.marks[i].seconds;
            }
        }
    }

    void add_mark(const Mark& mark, int after) {
        const Seconds seconds = mark_pause(mark, voice_.table);
        if (seconds <= Seconds{0}) return;
        const PauseFrom from =
            mark.kind == MarkKind::direction ? PauseFrom::direction : PauseFrom::mark;
        add({mark.span, Seconds{0}, seconds, from, after});
        if (says_seconds(mark)) held_ += seconds;
    }

    std::uint32_t next_word_begin(int after) const {
        const auto next = static_cast<std::size_t>(after) + 1; // -1 stands before the first
        if (next >= written_.words.size()) return UINT32_MAX;
        return written_.words[next].source.begin.value;
    }

    const Written& written_;
    const Voice& voice_;
    Reading& reading_;
    std::vector<Manner> manners_;
    std::size_t mark_ = 0;
    Seconds now_{0};
    Seconds speech_{0};
    Seconds pause_{0};
    Seconds held_{0};
};

// --- breath groups -------------------------------------------------------------------------------

// Where pauses that are written stand, in order: a thought may hold thousands.
std::vector<Span> written_pauses(const Reading& reading) {
    std::vector<Span> spans;
    for (const PauseAt& pause : reading.pauses) {
        if (is_marked(pause)) spans.push_back(pause.span);
    }
    std::sort(spans.begin(), spans.end(), [](Span a, Span b) { return a.begin < b.begin; });
    return spans;
}

// The words of a group with the marks and punctuation that touch them, but not the pauses around
// it.
Span group_span(const Written& written, std::string_view source, std::span<const Span> pauses,
                int first, int last) {
    Span span{written.words[static_cast<std::size_t>(first)].source.begin,
              written.words[static_cast<std::size_t>(last)].source.end};
    const auto next = std::partition_point(pauses.begin(), pauses.end(),
                                           [&](Span pause) { return pause.end <= span.begin; });
    const auto behind = std::partition_point(next, pauses.end(),
                                             [&](Span pause) { return pause.begin < span.end; });
    const std::uint32_t low = next == pauses.begin() ? 0 : std::prev(next)->end.value;
    const std::uint32_t high =
        behind == pauses.end() ? static_cast<std::uint32_t>(source.size()) : behind->begin.value;
    const auto blank = [&](std::uint32_t at) {
        return source[at] == ' ' || source[at] == '\n' || source[at] == '\r' || source[at] == '\t';
    };
    while (span.begin.value > low && !blank(span.begin.value - 1))
        --span.begin.value;
    while (span.end.value < high && !blank(span.end.value))
        ++span.end.value;
    return span;
}

void find_breaths(const Written& written, std::string_view source, Reading& reading) {
    const int count = static_cast<int>(reading.said.size());
    std::vector<Seconds> behind(static_cast<std::size_t>(count) + 1, Seconds{0});
    for (const PauseAt& pause : reading.pauses)
        behind[static_cast<std::size_t>(pause.after) + 1] += pause.seconds;

    const std::vector<Span> pauses = written_pauses(reading);
    int first = 0;
    for (int i = 0; i < count; ++i) {
        const bool last = i + 1 == count;
        // A hair below the limit: the sum of tenths must not miss it by rounding.
        if (!last && behind[static_cast<std::size_t>(i) + 1] < breath_group_pause - Seconds{1e-9})
            continue;
        const Said& from = reading.said[static_cast<std::size_t>(first)];
        const Said& to = reading.said[static_cast<std::size_t>(i)];
        BreathGroup group{
            .first = first, .last = i, .span = {}, .seconds = to.at + to.seconds - from.at};
        group.span = group_span(written, source, pauses, first, i);
        reading.breaths.push_back(group);
        first = i + 1;
    }
}

// --- stress, boundaries, twisters ----------------------------------------------------------------

// Punctuation as the phrasing model knows it.
Stop stop_of(Juncture juncture, std::string_view between) {
    const auto has = [&](char sign) { return between.find(sign) != std::string_view::npos; };
    switch (juncture) {
    case Juncture::none: return Stop::none;
    case Juncture::comma: return Stop::comma;
    case Juncture::strong:
        return between.find("...") != std::string_view::npos ||
                       between.find("\xE2\x80\xA6") != std::string_view::npos
                   ? Stop::dots
                   : Stop::strong;
    case Juncture::stop: break;
    }
    if (has('?')) return Stop::question;
    return has('!') ? Stop::exclamation : Stop::full;
}

void find_phrasing(const Written& written, Reading& reading) {
    std::vector<PhrasingWord> words;
    words.reserve(reading.said.size());
    for (std::size_t i = 0; i < reading.said.size(); ++i) {
        const Said& said = reading.said[i];
        const std::string_view text = slice(written.plain.text, written.words[i].plain);
        words.push_back({.text = said.spoken.empty() ? std::string_view{} : said.spoken.back().text,
                         .syllables = static_cast<std::uint8_t>(std::clamp(said.syllables, 0, 255)),
                         .capital = !text.empty() && ascii::is_upper(text.front()),
                         .after = stop_of(said.after, between_words(written, i))});
    }
    // A marked pause parts phrases as a dash does.
    for (const PauseAt& pause : reading.pauses) {
        if (pause.from != PauseFrom::mark || pause.seconds < breath_group_pause) continue;
        if (pause.after < 0) continue;
        Stop& after = words[static_cast<std::size_t>(pause.after)].after;
        after = std::max(after, Stop::dots);
    }
    const std::vector<Phrasing> phrasing = phrase(words);
    for (std::size_t i = 0; i < reading.said.size(); ++i)
        reading.said[i].phrasing = phrasing[i];
}

void find_clash(Reading& reading) {
    std::vector<TwisterWord> words;
    std::vector<int> owner;
    for (std::size_t i = 0; i < reading.said.size(); ++i) {
        const Said& said = reading.said[i];
        for (std::size_t j = 0; j < said.spoken.size(); ++j) {
            words.push_back({said.spoken[j].text, said.phones[j]});
            owner.push_back(static_cast<int>(i));
        }
    }
    Twister twister = find_twister(words);
    if (twister.last > twister.first && !twister.sounds.empty()) {
        reading.twister_message = twister_message(twister, words);
    }
    if (twister.last > twister.first) {
        twister.first = owner[static_cast<std::size_t>(twister.first)];
        twister.last = owner[static_cast<std::size_t>(twister.last) - 1] + 1;
    }
    for (int& word : twister.words)
        word = owner[static_cast<std::size_t>(word)];
    reading.twister = std::move(twister);
}

} // namespace

int count_words(const Said& said) {
    int words = 0;
    for (const SpokenWord& word : said.spoken)
        words += word.letters ? static_cast<int>(word.text.size()) : 1;
    return words;
}

Seconds pause_of(Juncture juncture, const PauseTable& table) {
    switch (juncture) {
    case Juncture::none: return Seconds{0};
    case Juncture::comma: return table.comma;
    case Juncture::strong: return table.strong;
    case Juncture::stop: return table.sentence;
    }
    return Seconds{0};
}

std::span<const PauseAt> pauses_behind(const Reading& reading, int word) {
    const auto first =
        std::partition_point(reading.pauses.begin(), reading.pauses.end(),
                             [word](const PauseAt& pause) { return pause.after < word; });
    const auto end = std::partition_point(
        first, reading.pauses.end(), [word](const PauseAt& pause) { return pause.after == word; });
    return {first, end};
}

std::string_view name_of(PauseFrom from) {
    switch (from) {
    case PauseFrom::mark: return "mark";
    case PauseFrom::comma: return "comma";
    case PauseFrom::strong: return "strong";
    case PauseFrom::sentence: return "sentence";
    case PauseFrom::direction: return "direction";
    }
    return "mark";
}

std::vector<Said> read_words(const Written& written, const Voice& voice) {
    std::vector<Said> said = say_words(written, voice);
    for (Said& word : said) {
        for (SpokenWord& spoken : word.spoken) {
            if (spoken.letters && listed_sound(spoken, voice)) spoken.letters = false;
        }
    }
    apply_pronouncers(written, said);
    return said;
}

Reading read(const Written& written, std::string_view source, const Voice& voice) {
    Reading reading;
    reading.sentences = find_sentences(written, source);
    reading.said = find_words(written, reading.sentences, voice);
    find_junctures(written, reading.sentences, reading.said);
    TimeLine(written, voice, reading).lay();
    find_breaths(written, source, reading);
    find_phrasing(written, reading);
    find_clash(reading);
    for (const Said& word : reading.said) {
        reading.syllables += word.syllables;
        reading.has_guesses |= word.known == Known::guess;
        reading.has_taught |= word.known == Known::writer;
        reading.has_readings |= !word.readings.empty();
        reading.spoken_words += count_words(word);
    }
    return reading;
}

} // namespace say
