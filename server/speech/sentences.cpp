// Sentence ends. Every . ! ? is looked at with the word before and the word behind it; ICU is asked
// only for the full stops of other scripts, since its iterators cost more than all else here.
// Line ends inside a thought are blanks. docs/spoken-forms.md tells the rules.
#include "speech/sentences.h"

#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>

namespace say {
namespace {

using unicode::CodePoint;

template <std::size_t size> using Words = std::array<std::string_view, size>;

template <std::size_t size> constexpr bool has(const Words<size>& sorted, std::string_view word) {
    return std::binary_search(sorted.begin(), sorted.end(), word);
}

// A sentence never ends here: what follows is the name, the example, the other side.
constexpr auto leading = std::to_array<std::string_view>({
    "adm",  "amb", "approx", "asst", "attn", "atty", "brig", "ca",     "capt", "cf",
    "cmdr", "col", "cpl",    "det",  "drs",  "e.g",  "eg",   "esp",    "fr",   "gen",
    "gov",  "hon", "i.e",    "ie",   "insp", "lt",   "maj",  "messrs", "mlle", "mme",
    "mr",   "mrs", "ms",     "msgr", "mx",   "pres", "prof", "pvt",    "rep",  "rev",
    "sen",  "sgt", "sts",    "supt", "viz",  "vs",
});

// These are ordinary words or endings too, so they lead on only with a capital of their own.
constexpr auto leading_capitalised = std::to_array<std::string_view>({
    "col",
    "det",
    "fr",
    "gen",
    "gov",
    "hon",
    "pres",
    "rep",
    "rev",
    "sen",
    "sts",
});

// A sentence may end here; it does if an opener follows (see `openers`).
constexpr auto closing = std::to_array<std::string_view>({
    "al",   "ala",  "apt",  "ariz", "ark",  "assn", "ave",  "bldg", "blvd", "bros", "calif", "cie",
    "cnr",  "co",   "colo", "conn", "corp", "dept", "dist", "dr",   "esq",  "est",  "excl",  "ext",
    "fla",  "ft",   "ga",   "govt", "hwy",  "ill",  "inc",  "incl", "intl", "jct",  "jr",    "ln",
    "ltd",  "mass", "md",   "mfg",  "mgr",  "mich", "minn", "mt",   "mtn",  "nr",   "orig",  "ph.d",
    "pkwy", "pl",   "plc",  "pt",   "rd",   "reg",  "rm",   "rms",  "rte",  "sq",   "sr",    "st",
    "ste",  "tenn", "tex",  "univ", "va",   "wash", "wis",
});

// These lead on to a figure, a Roman number or a single letter, and to nothing else.
constexpr auto numbering = std::to_array<std::string_view>({
    "app",  "apps", "apt",  "art", "bldg", "c",    "ca",   "ch",  "chap", "eq",   "est",   "ex",
    "ext",  "fig",  "figs", "fl",  "gal",  "hr",   "hrs",  "hwy", "jct",  "lb",   "lbs",   "max",
    "min",  "mins", "mk",   "no",  "nos",  "n°",   "nº",   "p",   "par",  "para", "paras", "pg",
    "pp",   "pt",   "pts",  "qt",  "ref",  "refs", "reg",  "rm",  "rms",  "rt",   "rte",   "sec",
    "sect", "ste",  "tel",  "v",   "ver",  "vol",  "vols", "vv",  "yd",   "yds",
});

constexpr auto calendar = std::to_array<std::string_view>({
    "apr", "aug", "dec", "feb",  "fri", "jan", "jul",  "jun",   "mar", "mon",  "nov",
    "oct", "sat", "sep", "sept", "sun", "thu", "thur", "thurs", "tue", "tues", "wed",
});

// Words that carry a capital only because they begin a sentence.
constexpr auto openers = std::to_array<std::string_view>({
    "a",     "after",   "all",    "also",    "although", "an",     "and",   "another", "are",
    "as",    "at",      "be",     "because", "before",   "both",   "but",   "by",      "can",
    "could", "did",     "do",     "does",    "each",     "even",   "every", "for",     "from",
    "had",   "has",     "have",   "he",      "he's",     "her",    "here",  "here's",  "his",
    "how",   "however", "i",      "i'd",     "i'll",     "i'm",    "i've",  "if",      "in",
    "is",    "it",      "it's",   "its",     "just",     "let",    "let's", "many",    "maybe",
    "most",  "my",      "never",  "not",     "now",      "of",     "on",    "once",    "one",
    "only",  "or",      "our",    "perhaps", "please",   "she",    "she's", "should",  "since",
    "so",    "some",    "thank",  "thanks",  "that",     "that's", "the",   "their",   "then",
    "there", "there's", "these",  "they",    "they're",  "this",   "those", "to",      "today",
    "until", "was",     "we",     "we'll",   "we're",    "we've",  "were",  "what",    "what's",
    "when",  "where",   "which",  "while",   "who",      "why",    "with",  "would",   "yes",
    "yet",   "you",     "you'll", "you're",  "your",
});

constexpr auto speech_verbs = std::to_array<std::string_view>({
    "added",
    "answered",
    "asked",
    "asks",
    "called",
    "cried",
    "replied",
    "said",
    "says",
    "shouted",
    "whispered",
    "wrote",
});

// What may follow "6 p.m." with a capital and still belongs to it.
constexpr auto after_clock = std::to_array<std::string_view>({
    "april",   "august",   "central",   "december", "eastern",  "february", "friday",    "january",
    "july",    "june",     "march",     "may",      "monday",   "mountain", "november",  "october",
    "pacific", "saturday", "september", "sunday",   "thursday", "tuesday",  "wednesday",
});

constexpr auto time_openers = std::to_array<std::string_view>({
    "about",
    "after",
    "around",
    "at",
    "before",
    "by",
    "from",
    "on",
    "since",
    "until",
});

template <std::size_t size> constexpr bool is_sorted(const Words<size>& words) {
    return std::is_sorted(words.begin(), words.end());
}
static_assert(is_sorted(leading) && is_sorted(leading_capitalised) && is_sorted(closing) &&
              is_sorted(numbering) && is_sorted(calendar) && is_sorted(openers) &&
              is_sorted(speech_verbs) && is_sorted(after_clock) && is_sorted(time_openers));

constexpr std::u32string_view closers = U"\"'”’»›)]}*_~°<¹²³⁰⁴⁵⁶⁷⁸⁹"; // raised: footnotes
constexpr std::u32string_view quote_closers = U"\"'”’»›";
constexpr std::u32string_view leaders = U"\"'“‘„«‹([{*_~>^¿¡-–—";
constexpr std::u32string_view other_stops = U"。！？｡؟।॥۔";
constexpr std::u32string_view bullets = U"•⁃‣▪●◦";

// Bounds, in bytes, that keep the work linear whatever the text.
constexpr std::size_t longest_run = 256;
constexpr std::size_t longest_phrase = 80;

bool contains(std::u32string_view set, char32_t c) {
    return set.find(c) != std::u32string_view::npos;
}

// Folded far enough to be looked up: ASCII lower case, straight apostrophe.
std::string folded(std::string_view word) {
    constexpr std::string_view curly = "’";
    std::string result;
    for (std::size_t at = 0; at < word.size();) {
        const bool apostrophe = word.substr(at).starts_with(curly);
        result += apostrophe ? '\'' : ascii::lower(word[at]);
        at += apostrophe ? curly.size() : 1;
    }
    return result;
}

std::size_t skip_blanks(std::string_view text, std::size_t at) {
    while (at < text.size()) {
        const CodePoint point = unicode::decode(text, at);
        if (!unicode::is_blank(point.value)) break;
        at += point.size;
    }
    return at;
}

std::size_t skip(std::string_view text, std::size_t at, std::u32string_view set) {
    while (at < text.size()) {
        const CodePoint point = unicode::decode(text, at);
        if (!contains(set, point.value)) break;
        at += point.size;
    }
    return at;
}

// A run of . ! ? … with blanks inside only between dots (". . .").
struct Cluster {
    std::size_t begin = 0;
    std::size_t end = 0;
    int dots = 0;
    bool strong = false; // holds ! or ?
};

constexpr std::string_view ellipsis = "…";

bool starts_cluster(std::string_view text, std::size_t at) {
    const char c = text[at];
    return c == '.' || c == '!' || c == '?' || text.substr(at).starts_with(ellipsis);
}

Cluster read_cluster(std::string_view text, std::size_t at) {
    Cluster cluster{at, at};
    while (at < text.size()) {
        if (text.substr(at).starts_with(ellipsis)) {
            cluster.dots += 3;
            at += ellipsis.size();
        } else if (text[at] == '.') {
            ++cluster.dots;
            ++at;
        } else if (text[at] == '!' || text[at] == '?') {
            cluster.strong = true;
            ++at;
        } else if (cluster.dots > 0 && text[at] == ' ' && at + 1 < text.size() &&
                   text[at + 1] == '.' &&
                   (at + 2 == text.size() || !ascii::is_alnum(text[at + 2]))) {
            ++at;
            continue;
        } else {
            break;
        }
        cluster.end = at;
    }
    return cluster;
}

// Everything that is asked about one cluster.
struct Place {
    std::string_view text;
    Cluster cluster;
    std::size_t sentence_begin = 0;
    bool has_capitals = true; // does the text use capitals at all?

    std::string_view before() const;
    std::string_view sentence() const;
};

bool is_token_byte(char c) {
    return ascii::is_alnum(c) || ascii::is_high(c) || c == '.' || c == '\'' || c == '&' ||
           c == '@' || c == '/' || c == ':' || c == '-' || c == '_' || c == '$' || c == '%';
}

// The run of letters, dots and joined signs that the cluster stands behind.
std::string_view Place::before() const {
    std::size_t begin = cluster.begin;
    const std::size_t limit = std::max(sentence_begin, begin - std::min(begin, longest_run));
    while (begin > limit && is_token_byte(text[begin - 1]))
        --begin;
    std::string_view token = text.substr(begin, cluster.begin - begin);
    for (const std::string_view quote : {"“", "‘", "«", "•"}) {
        const std::size_t at = token.rfind(quote);
        if (at != std::string_view::npos) token.remove_prefix(at + quote.size());
    }
    return token;
}

std::string_view Place::sentence() const {
    return text.substr(sentence_begin, cluster.begin - sentence_begin);
}

// The word that begins at `at`, letters and apostrophes only.
std::string_view word_at(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && (ascii::is_letter(text[end]) || ascii::is_high(text[end]) ||
                                 (text[end] == '\'' && end > at))) {
        ++end;
    }
    return text.substr(at, end - at);
}

struct Next {
    std::size_t at = 0; // where the next word begins, behind blanks and opening signs
    CodePoint first{};
    std::string_view word;
};

Next next_of(std::string_view text, std::size_t at) {
    Next next;
    next.at = skip_blanks(text, at);
    // "— She" and "“ She": openers may stand alone.
    for (std::size_t inner = skip(text, next.at, leaders); inner > next.at;
         inner = skip(text, next.at, leaders)) {
        next.at = skip_blanks(text, inner);
    }
    if (next.at < text.size()) next.first = unicode::decode(text, next.at);
    next.word = word_at(text, next.at);
    return next;
}

bool is_upper(char32_t c) {
    return c < 0x80 ? ascii::is_upper(static_cast<char>(c)) : unicode::is_upper(c);
}

// A small letter begins the next word, and it is no name like "iPhone".
bool goes_on_small(const Next& next) {
    const char32_t c = next.first.value;
    if (!unicode::is_letter(c) || is_upper(c)) return false;
    if (c >= 0x2e80) return false; // scripts without capitals
    const std::size_t second = next.first.size;
    return second >= next.word.size() || !ascii::is_upper(next.word[second]);
}

bool is_opener(std::string_view text, const Next& next) {
    const std::string word = folded(next.word);
    if (!has(openers, word)) return false;
    // "I." and "A." are initials.
    const std::size_t end = next.at + next.word.size();
    return word.size() > 1 || end >= text.size() || text[end] != '.';
}

bool is_roman(std::string_view word) {
    return !word.empty() && word.find_first_not_of("IVXLC") == std::string_view::npos;
}

// "U.S", "a.m", "J.K": single letters with dots between.
bool is_dotted(std::string_view token) {
    if (token.size() < 3 || token.size() % 2 == 0) return false;
    for (std::size_t at = 0; at < token.size(); ++at) {
        if (at % 2 == 0 ? !ascii::is_letter(token[at]) : token[at] != '.') return false;
    }
    return true;
}

std::size_t count_words(std::string_view text) {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (!ascii::is_blank(text[at]) && (at == 0 || ascii::is_blank(text[at - 1]))) ++count;
    }
    return count;
}

// "He left at 6 P.M. Mira stayed." ends; "At 5 a.m. Mr. Hill rose." and "6 p.m. Eastern" do not.
bool ends_after_clock(const Place& place, const Next& next) {
    const std::string word = folded(next.word);
    if (has(openers, word)) return true;
    if (has(after_clock, word)) return false;
    const bool zone = next.word.size() >= 2 && next.word.size() <= 4 &&
                      std::all_of(next.word.begin(), next.word.end(), ascii::is_upper);
    if (zone && place.has_capitals) return false;
    const std::string_view so_far = place.sentence();
    const std::size_t first = skip(so_far, 0, leaders);
    const bool phrase = has(time_openers, folded(word_at(so_far, first)));
    return !(phrase && so_far.size() <= longest_phrase && count_words(so_far) <= 4);
}

// The one capital letter before the stop: an initial, or a name like "vitamin C"?
bool ends_after_letter(const Place& place, std::string_view letter, const Next& next) {
    if (is_opener(place.text, next)) return true;
    if (letter != "I" && letter != "i")
        return !ascii::is_upper(letter[0]) && !is_upper(next.first.value);
    std::size_t end = place.cluster.begin - 1;
    while (end > 0 && ascii::is_blank(place.text[end - 1]))
        --end;
    std::size_t begin = end;
    while (begin > 0 && ascii::is_letter(place.text[begin - 1]))
        --begin;
    return begin < end && ascii::is_lower(place.text[begin]);
}

// "Sept. 5", "Tues. Jan. 5"; "Sun." and "Sat." are words too.
bool ends_after_date(const Place& place, std::string_view word, const Next& next) {
    if (next.first.value >= '0' && next.first.value <= '9') return false;
    const std::string behind = folded(next.word);
    if (has(calendar, behind) || has(after_clock, behind)) return false;
    const bool is_word = word == "sun" || word == "sat" || word == "mar" || word == "mon";
    return is_word || is_opener(place.text, next) || !is_upper(next.first.value);
}

bool is_figure(char32_t c) {
    return c >= '0' && c <= '9';
}

// "5", "£5", "+44", "GB123", "A5": what is counted or numbered, up to the next blank.
bool is_number(std::string_view text, const Next& next) {
    for (std::size_t at = next.at; at < text.size() && at < next.at + longest_run; ++at) {
        if (is_figure(static_cast<unsigned char>(text[at]))) return true;
        const bool goes_on = ascii::is_upper(text[at]) || ascii::is_high(text[at]) ||
                             text[at] == '$' || text[at] == '+' || text[at] == '#';
        if (!goes_on) return false;
    }
    return false;
}

// One full stop with a blank behind it: what does the word before it say?
bool ends_at_stop(const Place& place, const Next& next) {
    const std::string_view token = place.before();
    const std::string word = folded(token);
    if (word.empty()) return true;
    if (has(leading, word) && token != "IE") {
        return has(leading_capitalised, word) && !ascii::is_upper(token[0]);
    }
    const bool number_next = is_number(place.text, next);
    const bool is_word = word == "app" || word == "art" || word == "max" || word == "min" ||
                         word == "no" || word == "par";
    const bool letter_next = next.word.size() == 1 && !(is_word && next.word == "A");
    if (has(numbering, word) && (number_next || letter_next || is_roman(next.word))) {
        return next.word == "I";
    }
    if (has(calendar, word) && ascii::is_upper(token[0])) return ends_after_date(place, word, next);
    if (word == "a.m" || word == "p.m") return ends_after_clock(place, next);
    if (word == "etc") return true;
    if (has(closing, word) || is_dotted(word)) return is_opener(place.text, next);
    if (word.size() == 1 && ascii::is_letter(word[0])) return ends_after_letter(place, token, next);
    return true;
}

// "Is it?" Mira asked.
bool is_attribution(std::string_view text, const Next& next) {
    // A capital "She said" opens a sentence; behind a quote it would be small.
    static constexpr auto pronouns = std::to_array<std::string_view>({"He", "She", "They", "We"});
    if (has(pronouns, std::string_view(next.word))) return false;
    const std::size_t second = skip_blanks(text, next.at + next.word.size());
    return has(speech_verbs, folded(word_at(text, second)));
}

// All that stands between two blanks.
std::string_view run_around(std::string_view text, std::size_t at) {
    std::size_t begin = at;
    const std::size_t first = at - std::min(at, longest_run);
    while (begin > first && !ascii::is_blank(text[begin - 1]))
        --begin;
    std::size_t end = at;
    const std::size_t last = std::min(text.size(), at + longest_run);
    while (end < last && !ascii::is_blank(text[end]))
        ++end;
    return text.substr(begin, end - begin);
}

bool is_address(std::string_view token) {
    return token.find('@') != std::string_view::npos ||
           token.find("://") != std::string_view::npos || token.starts_with("www.");
}

// No blank behind the stop: "world.Today is" and "1,000.That" lack one, "Node.js" does not.
bool ends_glued(const Place& place, std::size_t after_closers) {
    const std::string_view text = place.text;
    if (after_closers >= text.size() || !ascii::is_upper(text[after_closers])) return false;
    const char second = after_closers + 1 < text.size() ? text[after_closers + 1] : ' ';
    const bool plain = !place.cluster.strong && after_closers == place.cluster.end;
    if (plain && place.cluster.dots != 1) return false;
    if (plain && !ascii::is_lower(second) && !ascii::is_blank(second)) return false;
    const std::string_view token = place.before();
    if (token.empty() || is_address(run_around(text, place.cluster.begin))) return false;
    const char last = token.back();
    if (place.cluster.strong) return ascii::is_letter(last);
    if (!plain) return true;
    if (!ascii::is_lower(last) && !ascii::is_digit(last)) return false;
    const std::string word = folded(token);
    return word.size() >= 2 && !has(leading, word) && !has(closing, word) && !has(numbering, word);
}

// Where the sentence ends if it ends at this cluster.
std::optional<std::size_t> end_at(const Place& place) {
    const std::string_view text = place.text;
    const std::size_t end = skip(text, place.cluster.end, closers);
    const std::size_t behind = skip_blanks(text, end);
    if (behind >= text.size()) return text.size();
    if (behind == end) {
        return ends_glued(place, end) ? std::optional(end) : std::nullopt;
    }
    const Next next = next_of(text, behind);
    if (next.at >= text.size()) return std::nullopt;
    if (next.first.value < 0x80 && contains(U",;:.!?)", next.first.value)) return std::nullopt;
    const bool small = goes_on_small(next);
    if (small && place.has_capitals) return std::nullopt;
    // "zero (0!) hours": a cry in brackets, in a draft without capitals too.
    const bool bracketed = end > place.cluster.end && text[place.cluster.end] == ')';
    if (small && place.cluster.strong && bracketed) return std::nullopt;
    const bool quoted = end > place.cluster.end &&
                        contains(quote_closers, unicode::decode(text, place.cluster.end).value);
    if (quoted && is_attribution(text, next)) return std::nullopt;
    if (place.cluster.strong) return end;
    // Three dots are a pause in an open thought; a fourth ends it.
    if (place.cluster.dots == 3) return quoted ? std::optional(end) : std::nullopt;
    if (place.cluster.dots != 1) return end;
    return ends_at_stop(place, next) ? std::optional(end) : std::nullopt;
}

// The sign that opens a point of a list written in one line: "1.) ", "2. ", "b. ", "• 9. ".
struct Point {
    std::size_t begin = 0;
    std::size_t end = 0;
    char32_t bullet = 0;
    int number = -1; // letters count from 1; -1 for a bullet alone
    bool letter = false;
    int roman = -1;         // "ii" is two; "i" is both a letter and one
    std::string_view style; // ".", ")" or ".)"
};

bool is_small_numeral(char c) {
    return c == 'i' || c == 'v' || c == 'x';
}

// "iv" is 4; -1 for what is no Roman number up to 12.
int small_roman(std::string_view letters) {
    static constexpr auto numbers = std::to_array<std::string_view>(
        {"i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"});
    const auto* found = std::find(numbers.begin(), numbers.end(), letters);
    return found == numbers.end() ? -1 : static_cast<int>(found - numbers.begin()) + 1;
}

std::optional<Point> read_point(std::string_view text, std::size_t at) {
    Point point;
    point.begin = at;
    const CodePoint first = unicode::decode(text, at);
    if (contains(bullets, first.value)) {
        point.bullet = first.value;
        at = skip_blanks(text, at + first.size);
    }
    std::size_t end = at;
    while (end < text.size() && ascii::is_digit(text[end]))
        ++end;
    if (end > at && end - at <= 2) {
        point.number = 0;
        for (std::size_t i = at; i < end; ++i)
            point.number = point.number * 10 + (text[i] - '0');
    } else if (end == at && at < text.size() && ascii::is_lower(text[at])) {
        point.letter = true;
        point.number = text[at] - 'a' + 1;
        end = at + 1;
        while (end < text.size() && end < at + 5 && is_small_numeral(text[end]))
            ++end;
        point.roman = small_roman(text.substr(at, end - at));
        if (point.roman < 0) end = at + 1;
    }
    const std::size_t style = end;
    if (end < text.size() && text[end] == '.') ++end;
    if (end < text.size() && text[end] == ')') ++end;
    point.style = text.substr(style, end - style);
    point.end = end;
    const bool numbered = point.number > 0 && !point.style.empty();
    if (!numbered) {
        if (point.bullet == 0) return std::nullopt;
        point.number = -1;
        point.style = {};
        point.end = at;
        return point;
    }
    if (end < text.size() && !ascii::is_blank(text[end]) && point.bullet == 0) return std::nullopt;
    return point;
}

bool continues(const Point& last, const Point& next) {
    if (last.letter && next.letter && last.style == next.style && last.bullet == next.bullet &&
        last.roman > 0 && next.roman == last.roman + 1)
        return true;
    if (last.bullet != next.bullet || last.style != next.style || last.letter != next.letter) {
        return false;
    }
    return last.number < 0 ? next.number < 0 : next.number == last.number + 1;
}

// The points of a list that begins the text, the first of them included.
std::vector<Point> read_points(std::string_view text) {
    std::vector<Point> points;
    const std::size_t begin = skip_blanks(text, 0);
    if (begin >= text.size()) return points;
    std::optional<Point> point = read_point(text, begin);
    if (!point) return points;
    points.push_back(*point);
    for (std::size_t at = point->end; at < text.size(); ++at) {
        if (!ascii::is_blank(text[at]) || at + 1 >= text.size()) continue;
        point = read_point(text, at + 1);
        if (point && continues(points.back(), *point)) points.push_back(*point);
    }
    return points;
}

bool in_point(const std::vector<Point>& points, std::size_t at) {
    return std::any_of(points.begin(), points.end(),
                       [at](const Point& point) { return point.begin <= at && at < point.end; });
}

// Ends that only ICU knows: those after the stops of other scripts.
void add_other_ends(std::string_view text, std::vector<std::size_t>& ends) {
    std::size_t at = 0;
    for (const std::size_t end : unicode::sentence_ends(text)) {
        char32_t sign = 0;
        while (at < end) {
            const CodePoint point = unicode::decode(text, at);
            if (!unicode::is_blank(point.value) && !contains(closers, point.value) &&
                !contains(U"」』）】", point.value)) {
                sign = point.value;
            }
            at += point.size;
        }
        if (contains(other_stops, sign)) ends.push_back(end);
    }
}

// What one pass over the text tells about it, so that most texts need no second.
struct Survey {
    bool inner_stop = false;
    bool other_stop = false;
    bool list = false;
    bool capitals = false;
};

Survey survey(std::string_view text) {
    Survey found;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (ascii::is_upper(c)) {
            found.capitals = true;
        } else if (c == '.' || c == '!' || c == '?') {
            found.inner_stop |= at + 1 < text.size();
        } else if (c == ')') {
            found.list = true;
        } else if (ascii::is_high(c)) {
            const CodePoint point = unicode::decode(text, at);
            found.inner_stop |= point.value == U'…';
            found.other_stop |= contains(other_stops, point.value);
            found.list |= contains(bullets, point.value);
            found.capitals |= unicode::is_upper(point.value);
            at += point.size - 1;
        }
    }
    return found;
}

std::vector<std::size_t> find_ends(std::string_view text, const Survey& found) {
    std::vector<std::size_t> ends;
    const std::vector<Point> points = read_points(text);
    for (std::size_t i = 1; i < points.size(); ++i)
        ends.push_back(points[i].begin);
    if (found.other_stop) add_other_ends(text, ends);
    std::size_t sentence_begin = 0;
    for (std::size_t at = 0; at < text.size();) {
        if (!starts_cluster(text, at)) {
            ++at;
            continue;
        }
        const Cluster cluster = read_cluster(text, at);
        at = cluster.end;
        if (in_point(points, cluster.begin)) continue;
        const Place place{text, cluster, sentence_begin, found.capitals};
        if (const std::optional<std::size_t> end = end_at(place)) {
            ends.push_back(*end);
            sentence_begin = *end;
            at = std::max(at, *end);
        }
    }
    ends.push_back(text.size());
    std::sort(ends.begin(), ends.end());
    ends.erase(std::unique(ends.begin(), ends.end()), ends.end());
    return ends;
}

Span trimmed(std::string_view text, std::size_t begin, std::size_t end) {
    begin = std::min(skip_blanks(text, begin), end);
    std::size_t last = begin;
    for (std::size_t at = begin; at < end;) {
        const CodePoint point = unicode::decode(text, at);
        at += point.size;
        if (!unicode::is_blank(point.value)) last = std::min(at, end);
    }
    return make_span(begin, last);
}

// Has it anything to say? Brackets and dots alone join the sentence before them.
bool has_words(std::string_view text) {
    return std::any_of(text.begin(), text.end(),
                       [](char c) { return ascii::is_alnum(c) || ascii::is_high(c); });
}

} // namespace

std::vector<Span> split_sentences(std::string_view plain) {
    std::vector<Span> sentences;
    const Survey found = survey(plain);
    if (!found.inner_stop && !found.other_stop && !found.list) {
        const Span whole = trimmed(plain, 0, plain.size());
        if (!whole.empty()) sentences.push_back(whole);
        return sentences;
    }
    std::size_t begin = 0;
    for (const std::size_t end : find_ends(plain, found)) {
        const Span sentence = trimmed(plain, begin, end);
        begin = end;
        if (sentence.empty()) continue;
        if (!sentences.empty() && !has_words(slice(plain, sentence))) {
            sentences.back().end = sentence.end;
        } else {
            sentences.push_back(sentence);
        }
    }
    return sentences;
}

} // namespace say
