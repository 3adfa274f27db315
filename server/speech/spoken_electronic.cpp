// What is typed rather than said: e-mail and web addresses, file names, handles, hashtags, and at
// the end of the line any other mixture of letters, digits and signs ("C24", "COVID-19",
// "10-year-old").
#include "base/lists.h"
#include "speech/lexicon.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

// Endings of addresses and of file names that are told from a missing blank ("end.then").
constexpr auto endings = std::to_array<std::string_view>({
    "ai",    "app",   "au",   "avi", "bat",    "biz",  "blog", "br",  "ca",   "cc",   "cfg", "ch",
    "cloud", "cn",    "co",   "com", "cpp",    "cs",   "css",  "csv", "de",   "dev",  "dk",  "dll",
    "doc",   "docx",  "edu",  "es",  "eu",     "exe",  "fi",   "fm",  "fr",   "gg",   "gif", "git",
    "gl",    "go",    "gov",  "gz",  "hpp",    "htm",  "html", "ie",  "info", "ini",  "int", "io",
    "java",  "jp",    "jpeg", "jpg", "js",     "json", "log",  "ly",  "md",   "mil",  "mov", "mp3",
    "mp4",   "net",   "nl",   "nz",  "online", "org",  "pdf",  "php", "pl",   "png",  "ppt", "pptx",
    "py",    "rb",    "rs",   "rtf", "ru",     "say",  "se",   "sh",  "shop", "site", "sm",  "sql",
    "srt",   "store", "svg",  "tar", "tech",   "toml", "ts",   "tv",  "txt",  "uk",   "vtt", "wav",
    "xls",   "xlsx",  "xml",  "xyz", "yaml",   "yml",  "zip",
});
static_assert(std::is_sorted(endings.begin(), endings.end()));

// Two letters that are a word wherever they stand; all others are said as letters.
constexpr auto short_words = std::to_array<std::string_view>({
    "ad", "am", "an", "as", "at", "be", "by", "do", "go", "he", "hi", "if", "in", "is",
    "it", "me", "my", "no", "of", "oh", "on", "or", "so", "to", "up", "us", "we", "ye",
});

bool has_vowel(std::string_view word) {
    return word.find_first_of("aeiouy") != std::string_view::npos;
}

// Is the folded run of letters said as a word where it stands in an address?
bool is_said_as_word(std::string_view run) {
    if (run == "com" || run == "org" || run == "net" || run == "info" || run == "co" ||
        run == "gov")
        return true;
    if (run.size() == 1) return false;
    if (run.size() == 2) return is_one_of(run, short_words);
    if (!has_vowel(run)) return false;
    if (in_lexicon(run)) return capitals_kind(unicode::to_lower(run)) != Capitals::letters;
    return run.size() > 3;
}

// Can the whole run be cut into words of three letters and more?
bool is_made_of_words(std::string_view run, int depth = 0) {
    if (run.size() >= 3 && in_lexicon(run) && has_vowel(run)) return true;
    if (depth > 4) return false;
    for (std::size_t size = 3; size + 3 <= run.size(); ++size) {
        const std::string_view head = run.substr(0, size);
        if (has_vowel(head) && in_lexicon(head) && is_made_of_words(run.substr(size), depth + 1))
            return true;
    }
    return false;
}

void append_word_cuts(std::string& words, std::string_view run, int depth = 0) {
    if (depth < 5 && !(in_lexicon(run) && has_vowel(run))) {
        for (std::size_t size = run.size() - 3; size >= 3 && size < run.size(); --size) {
            const std::string_view head = run.substr(0, size);
            if (!has_vowel(head) || !in_lexicon(head) ||
                !is_made_of_words(run.substr(size), depth + 1))
                continue;
            append_words(words, head);
            append_word_cuts(words, run.substr(size), depth + 1);
            return;
        }
    }
    append_words(words, run);
}

// "rtxprohelp": letters that make no word, then words.
bool append_letters_and_words(std::string& words, std::string_view run) {
    if (run.size() > 40) return false;
    for (std::size_t size = 2; size <= 4 && size + 4 <= run.size(); ++size) {
        const std::string_view head = run.substr(0, size);
        if (has_vowel(head) || !is_made_of_words(run.substr(size))) continue;
        append_words(words, "." + std::string(head));
        append_word_cuts(words, run.substr(size));
        return true;
    }
    return false;
}

void append_letter_run(std::string& words, std::string_view folded) {
    if (folded.size() > 5 && !in_lexicon(folded) && append_letters_and_words(words, folded)) return;
    if (is_said_as_word(folded)) {
        append_words(words, folded);
    } else {
        append_words(words, "." + std::string(folded));
    }
}

std::string_view sign_name(char c) {
    switch (c) {
    case '.': return "dot";
    case '@': return "at";
    case '-': return "dash";
    case '_': return "underscore";
    case '/': return "slash";
    case '\\': return "backslash";
    case ':': return "colon";
    case '&': return "ampersand";
    case '+': return "plus";
    case '=': return "equals";
    case '?': return "question mark";
    case '%': return "percent";
    case '#': return "hash";
    case '*': return "asterisk";
    case '~': return "tilde";
    case '!': return "exclamation mark";
    case '$': return "dollar";
    case '^': return "caret";
    case '|': return "bar";
    case ',': return "comma";
    case ';': return "semicolon";
    case '<': return "less than";
    case '>': return "greater than";
    default: return {};
    }
}

bool is_letter_byte(char c) {
    return ascii::is_letter(c) || ascii::is_high(c);
}

// A sign beyond ASCII: its size in bytes, 0 for letters and marks on letters.
std::size_t high_sign_at(std::string_view token, std::size_t at) {
    if (!ascii::is_high(token[at])) return 0;
    const unicode::CodePoint point = unicode::decode(token, at);
    const char32_t c = point.value;
    const bool sign = (c >= 0xa1 && c <= 0xbf && !unicode::is_letter(c)) || c == 0xd7 ||
                      c == 0xf7 || (c >= 0x2000 && c <= 0x2bff && !unicode::is_letter(c)) ||
                      c >= 0x1f000 || c == 0xfffd;
    return sign ? point.size : 0;
}

bool is_raised_at(std::string_view token, std::size_t at) {
    return token.substr(at).starts_with("²") || token.substr(at).starts_with("³");
}

std::size_t letters_end(std::string_view token, std::size_t at) {
    while (at < token.size() && is_letter_byte(token[at]) && high_sign_at(token, at) == 0)
        at += unicode::decode(token, at).size;
    return at;
}

std::size_t digits_end(std::string_view token, std::size_t at) {
    while (at < token.size() && ascii::is_digit(token[at]))
        ++at;
    return at;
}

// "MeToo" to "me too", where small letters meet a capital.
std::string split_camel(std::string_view run) {
    std::string words;
    std::size_t begin = 0;
    for (std::size_t at = 1; at <= run.size(); ++at) {
        if (at < run.size() && !(ascii::is_lower(run[at - 1]) && ascii::is_upper(run[at])))
            continue;
        append_letter_run(words, unicode::to_lower(run.substr(begin, at - begin)));
        begin = at;
    }
    return words;
}

std::string spell_address(std::string_view token) {
    std::string words;
    for (std::size_t at = 0; at < token.size();) {
        if (const std::size_t size = high_sign_at(token, at)) {
            at += size;
        } else if (is_letter_byte(token[at])) {
            const std::size_t end = letters_end(token, at);
            append_letter_run(words, unicode::to_lower(token.substr(at, end - at)));
            at = end;
        } else if (ascii::is_digit(token[at])) {
            const std::size_t end = digits_end(token, at);
            append_words(words, digit_by_digit(token.substr(at, end - at)));
            at = end;
        } else {
            append_words(words, sign_name(token[at]));
            ++at;
        }
    }
    return words;
}

bool ends_like_address(std::string_view host) {
    const std::size_t dot = host.rfind('.');
    if (dot == std::string_view::npos || dot == 0 || !ascii::is_alnum(host[dot - 1])) return false;
    const std::string ending = ascii::lower(host.substr(dot + 1));
    return std::binary_search(endings.begin(), endings.end(), ending);
}

bool is_address(std::string_view token) {
    if (token.find("://") != std::string_view::npos || token.starts_with("www.")) return true;
    const std::size_t at = token.find('@');
    if (at != std::string_view::npos && at > 0)
        return token.find('.', at) != std::string_view::npos;
    const std::size_t path = token.find('/');
    const bool named = token.find_first_of("abcdefghijklmnopqrstuvwxyz") != std::string_view::npos;
    if (named && ends_like_address(token.substr(0, path))) return true;
    if (named && path != std::string_view::npos && ends_like_address(token)) return true;
    return token.size() > 3 && token[1] == ':' && token[2] == '\\';
}

// --- mixtures ---------------------------------------------------------------------------------

// A number inside a name: "24" twenty four, "320" three twenty, "05" zero five.
std::string serial_digits(std::string_view digits, Language language) {
    if (digits.size() <= 2 && !(digits.size() == 2 && digits[0] == '0'))
        return cardinal(digits, language);
    return in_pairs(digits, language);
}

bool is_capitals(std::string_view run) {
    return std::all_of(run.begin(), run.end(), ascii::is_upper);
}

// "C" in "C24" is a letter, "COVID" in "COVID-19" a word, "mini" in "mini2" too.
void append_name(std::string& words, std::string_view run) {
    // "2π": a Greek letter has a name.
    if (const std::string_view name = sign_words(run); !name.empty()) {
        append_words(words, name);
        return;
    }
    const std::string folded = unicode::to_lower(run);
    if (folded == "ctrl") {
        append_words(words, "control");
        return;
    }
    const bool letters = folded.size() == 1 || (is_capitals(run) && run.size() == 2) ||
                         (is_capitals(run) && capitals_kind(run) == Capitals::letters) ||
                         (folded.size() <= 3 && !in_lexicon(folded)) ||
                         (!has_vowel(folded) && !ascii::is_high(folded[0]));
    append_words(words, letters && ascii::is_lower(folded[0]) ? "." + folded : folded);
}

std::string_view inner_sign_name(std::string_view token, std::size_t at) {
    const char c = token[at];
    const bool between_digits = at > 0 && at + 1 < token.size() && ascii::is_digit(token[at - 1]) &&
                                ascii::is_digit(token[at + 1]);
    switch (c) {
    case '.': return between_digits ? "point" : "dot";
    case '&': return "and";
    case '"': return at > 0 && ascii::is_digit(token[at - 1]) ? "inches" : std::string_view{};
    case '-':
    case ':':
    case ',':
    case ';':
    case '!':
    case '?': return {};
    case '/': return "slash";
    default: return sign_name(c);
    }
}

std::string mixture_words(std::string_view token, Language language) {
    std::string words;
    for (std::size_t at = 0; at < token.size();) {
        const std::string_view rest = token.substr(at);
        const bool behind_figure = at > 0 && ascii::is_digit(token[at - 1]);
        if (rest == "'s" && !words.empty()) {
            words += "'s"; // "5G's"
            break;
        }
        if (rest == "s" && behind_figure) return to_plural(words); // "A320s"
        if (rest.size() == 2 && behind_figure && ascii::is_upper(rest[0]) && rest[1] == 's') {
            append_words(words, std::string(".") + ascii::lower(rest[0]) + "'s"); // "the 3Rs"
            break;
        }
        if (token[at] == '^' && at > 0 && digits_end(token, at + 1) == token.size()) {
            const std::string_view power = token.substr(at + 1);
            if (power == "2" || power == "3") {
                append_words(words, power == "2" ? "squared" : "cubed");
                break;
            }
            append_words(words, power.empty() ? "caret" : "to the power of");
            ++at;
        } else if (const FractionSign* sign = fraction_sign_at(token.substr(at))) {
            append_words(words, sign->alone);
            at += sign->sign.size();
        } else if (is_raised_at(token, at)) {
            append_words(words, token.substr(at).starts_with("²") ? "squared" : "cubed");
            at += std::string_view("²").size();
        } else if (const std::size_t size = high_sign_at(token, at)) {
            append_words(words, sign_words(token.substr(at, size)));
            at += size;
        } else if (is_letter_byte(token[at])) {
            const std::size_t end = letters_end(token, at);
            append_name(words, token.substr(at, end - at));
            at = end;
        } else if (ascii::is_digit(token[at])) {
            const std::size_t end = digits_end(token, at);
            append_words(words, serial_digits(token.substr(at, end - at), language));
            at = end;
        } else {
            append_words(words, inner_sign_name(token, at));
            ++at;
        }
    }
    return words;
}

// One part of a hyphened word: "10", "21st", "year", "1980s".
std::string part_words(std::string_view part, Language language, bool alone) {
    const std::optional<Figure> figure = read_figure(part);
    if (!figure || !figure->currency.empty()) return mixture_words(part, language);
    const std::string suffix = ascii::lower(figure->suffix);
    if (suffix == "st" || suffix == "nd" || suffix == "rd" || suffix == "th")
        return ordinal(figure->whole, language);
    if (!suffix.empty() && suffix != "s") return mixture_words(part, language);
    // No number but a fraction counts as -1: `std::optional` here makes GCC 12 warn without cause.
    const int number = figure->fraction.empty() ? to_int(figure->whole).value_or(-1) : -1;
    if (suffix == "s" && number >= 0) return decade(number, language);
    if (!suffix.empty()) return mixture_words(part, language);
    const bool year_like = figure->whole.size() == 4 && number >= 1100 && number < 2100;
    if (year_like && !figure->grouped) return year(number, language);
    // "747-style" but "B-747", where the number names a model
    return alone ? serial_digits(figure->whole, language) : number_words(*figure, language);
}

bool is_word_hyphen(std::string_view token, std::size_t at) {
    return token[at] == '-' && at > 0 && at + 1 < token.size();
}

// "7" behind "5": a range in a compound.
bool is_later_figure(std::string_view before, std::string_view part) {
    const std::optional<int> from = to_int(before);
    const std::optional<int> to = to_int(part);
    return from && to && *from < *to;
}

// "10-year-old", "COVID-19", "21st-century", "B-52", "1-on-1"
std::string hyphened_words(std::string_view token, Language language) {
    std::string words;
    std::size_t begin = 0;
    for (std::size_t at = 0; at <= token.size(); ++at) {
        if (at < token.size() && !is_word_hyphen(token, at)) continue;
        const std::string_view part = token.substr(begin, at - begin);
        if (begin > 0 && at + 1 < token.size() && ascii::is_letter(token[at + 1]) &&
            is_later_figure(token.substr(0, begin - 1), part))
            append_words(words, "to"); // "5-7-year-olds"
        append_words(words, part_words(part, language, at == token.size() && begin > 0));
        begin = at + 1;
    }
    return words;
}

// "Squats x2": so many times. "x86" is a machine, "where x1 and x2" has names.
bool say_repeats(Passage& passage, std::size_t i, std::string_view token) {
    if (token.size() < 2 || token.size() > 3 || token[0] != 'x' ||
        digits_end(token, 1) != token.size() || token == "x64" || token == "x86" || token == "x32")
        return false;
    if (!passage.follows(i)) return false;
    const std::string before = passage.folded(i - 1);
    if (before.size() < 3 || is_function_word(before) || !ascii::is_lower(before.back()))
        return false;
    passage.say(i, "times " + cardinal(token.substr(1), passage.language()));
    return true;
}

// "½-price", "¾-mile"
bool say_part_compound(Passage& passage, std::size_t i, std::string_view token) {
    const FractionSign* sign = fraction_sign_at(token);
    if (sign == nullptr || token.substr(sign->sign.size()).size() < 2 ||
        token[sign->sign.size()] != '-')
        return false;
    std::string words(sign->alone);
    if (words == "one half" || words == "one quarter")
        words.erase(0, std::string_view("one ").size());
    if (words.ends_with("quarters")) words.pop_back();
    append_words(words, hyphened_words(token.substr(sign->sign.size() + 1), passage.language()));
    passage.say(i, words);
    return true;
}

// One side of "24-bit/96kHz", "1080p/60fps", "A4/A3"; empty if it is neither measure nor name.
std::string side_words(std::string_view side, Language language) {
    const std::optional<Figure> figure = read_figure(side);
    if (!figure) {
        const bool name =
            side.size() > 1 && ascii::is_upper(side[0]) && digits_end(side, 1) == side.size();
        return name ? mixture_words(side, language) : std::string{};
    }
    if (!figure->is_bare() && (!figure->sign.empty() || !figure->currency.empty())) return {};
    if (figure->suffix.empty()) return number_words(*figure, language);
    if (figure->suffix == "-bit") return number_words(*figure, language) + " bit";
    if (figure->suffix == "K") return number_words(*figure, language) + " .k";
    if (figure->suffix == "p")
        return (is_line_count(figure->whole) ? in_pairs(figure->whole, language)
                                             : number_words(*figure, language)) +
               " .p";
    const std::string unit = unit_words(figure->suffix, Number::plural, language);
    return unit.empty() ? unit : number_words(*figure, language) + ' ' + unit;
}

// "24-bit/96kHz", "4K/60", and "48 kHz/24-bit" with its figure before it: the slash is not said.
bool say_measures_side_by_side(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t slash = token.find('/');
    if (slash == std::string_view::npos || slash == 0) return false;
    const Language language = passage.language();
    const std::string_view first = token.substr(0, slash);
    const bool counted = passage.follows(i) && ascii::is_digit(passage.raw(i - 1).back());
    const std::string left = counted && !ascii::is_digit(first[0])
                                 ? unit_words(first, Number::plural, language)
                                 : side_words(first, language);
    const std::string right = side_words(token.substr(slash + 1), language);
    if (left.empty() || right.empty()) return false;
    passage.say(i, left + ' ' + right);
    return true;
}

// "Gates A1-A9", "Q1-Q3": the same letter and a larger figure.
bool say_lettered_range(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string_view::npos || hyphen < 2) return false;
    const std::string_view from = token.substr(0, hyphen);
    const std::string_view to = token.substr(hyphen + 1);
    if (to.size() < 2 || !ascii::is_upper(from[0]) || from[0] != to[0]) return false;
    const std::optional<int> first = to_int(from.substr(1));
    const std::optional<int> last = to_int(to.substr(1));
    if (!first || !last || *first >= *last) return false;
    passage.say(i, mixture_words(from, passage.language()) + " to " +
                       mixture_words(to, passage.language()));
    return true;
}

} // namespace

bool say_electronic(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    if (token.size() < 2) return false;
    if (token[0] == '@' && is_letter_byte(token[1])) {
        passage.say(i, "at " + hyphened_words(split_camel(token.substr(1)), passage.language()));
        return true;
    }
    if (token[0] == '#' && is_letter_byte(token[1])) {
        const bool closed = token.size() > 2 && token.back() == '#';
        const std::string tag = token.substr(1, token.size() - (closed ? 2 : 1));
        const std::string words = closed && letters_end(tag, 0) == tag.size()
                                      ? unicode::to_lower(tag)
                                      : mixture_words(split_camel(tag), passage.language());
        passage.say(i, closed ? "hash " + words + " hash" : "hashtag " + words);
        return true;
    }
    if (token[0] == '.' && is_letter_byte(token[1])) {
        passage.say(i, spell_address(token));
        return true;
    }
    const bool path = token[0] == '/' && is_letter_byte(token[1]) &&
                      token.find('/', 1) != std::string::npos; // "/usr/bin"
    if (!path && !is_address(token)) return false;
    passage.say(i, spell_address(token));
    return true;
}

namespace {

// "PL34 0HE": the end of a British postcode, whose nought is "oh".
bool say_postcode_end(Passage& passage, std::size_t i, std::string_view token) {
    if (token.size() != 3 || !ascii::is_digit(token[0]) || !ascii::is_upper(token[1]) ||
        !ascii::is_upper(token[2]) || !passage.follows(i))
        return false;
    const std::string_view area = passage.raw(i - 1);
    if (area.size() < 2 || area.size() > 4 || !ascii::is_upper(area[0]) ||
        std::none_of(area.begin(), area.end(), ascii::is_digit))
        return false;
    passage.say(i, digit_by_digit(token.substr(0, 1), "oh") + " ." + ascii::lower(token.substr(1)));
    return true;
}

// "C17th", "17thC", "17th-C": the seventeenth century.
bool say_century(Passage& passage, std::size_t i, std::string_view token) {
    std::string_view number = token;
    const bool first = number.starts_with('C') || number.starts_with('c');
    const bool last = number.ends_with('C') || number.ends_with('c');
    if (first == last) return false;
    if (first) number.remove_prefix(1);
    if (last) number.remove_suffix(1);
    if (last && number.ends_with('-')) number.remove_suffix(1);
    if (number.size() < 3 || number.size() > 4) return false;
    const std::string_view ending = number.substr(number.size() - 2);
    const std::optional<int> century = to_int(number.substr(0, number.size() - 2));
    if (!century || *century < 1 || *century > 21 ||
        (ending != "st" && ending != "nd" && ending != "rd" && ending != "th"))
        return false;
    passage.say(i, ordinal(number.substr(0, number.size() - 2), passage.language()) + " century");
    return true;
}

} // namespace

void say_mixed(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    if (say_glued_number(passage, i) || say_postcode_end(passage, i, token) ||
        say_century(passage, i, token))
        return;
    if (token == "WW1" || token == "WW2") {
        passage.say(i, token.back() == '1' ? "world war one" : "world war two");
        return;
    }
    if (token == "24/7/365") {
        passage.say(i, "twenty four seven three sixty five");
        return;
    }
    if (say_repeats(passage, i, token) || say_part_compound(passage, i, token) ||
        say_measures_side_by_side(passage, i, token))
        return;
    if (say_lettered_range(passage, i, token) || say_glued_abbreviation(passage, i)) return;
    // "GMT-5" lies behind the clock, not "GMT 5".
    if ((token.starts_with("GMT-") || token.starts_with("UTC-")) && token.size() > 4 &&
        ascii::is_digit(token[4])) {
        passage.say(i, "." + ascii::lower(token.substr(0, 3)) + " minus " +
                           mixture_words(token.substr(4), passage.language()));
        return;
    }
    const bool hyphened = token.find('-') != std::string::npos;
    passage.say(i, hyphened ? hyphened_words(token, passage.language())
                            : mixture_words(token, passage.language()));
}

} // namespace say
