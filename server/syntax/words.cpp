// Written words: a fast path for plain letters, and for all else a run between blanks that is cut
// at dashes, dots and quotes and then freed of the punctuation around each piece.
#include "syntax/words.h"

#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace say {
namespace {

using unicode::CodePoint;

enum class Byte : std::uint8_t { other, letter, digit, blank, high };

constexpr std::array<Byte, 256> byte_kinds = [] {
    std::array<Byte, 256> kinds{};
    for (int c = 'a'; c <= 'z'; ++c)
        kinds[static_cast<std::size_t>(c)] = Byte::letter;
    for (int c = 'A'; c <= 'Z'; ++c)
        kinds[static_cast<std::size_t>(c)] = Byte::letter;
    for (int c = '0'; c <= '9'; ++c)
        kinds[static_cast<std::size_t>(c)] = Byte::digit;
    for (std::size_t c = 0; c < 0x80; ++c) {
        if (ascii::is_blank(static_cast<char>(c))) kinds[c] = Byte::blank;
    }
    for (int c = 0x80; c <= 0xff; ++c)
        kinds[static_cast<std::size_t>(c)] = Byte::high;
    return kinds;
}();

Byte kind_of(char c) {
    return byte_kinds[static_cast<unsigned char>(c)];
}

using ascii::is_digit;

bool is_stop(char c) {
    return c == '.' || c == ',' || c == '!' || c == '?' || c == ';' || c == ':';
}

bool contains(std::u32string_view set, char32_t c) {
    return set.find(c) != std::u32string_view::npos;
}

// How long the blank at `at` is, 0 if there is none. Only these four lead bytes can begin one.
std::size_t blank_size(std::string_view text, std::size_t at) {
    const auto byte = static_cast<unsigned char>(text[at]);
    if (byte < 0x80) return kind_of(text[at]) == Byte::blank ? 1 : 0;
    if (byte != 0xc2 && byte != 0xe1 && byte != 0xe2 && byte != 0xe3) return 0;
    const CodePoint point = unicode::decode(text, at);
    return unicode::is_blank(point.value) ? point.size : 0;
}

// The code point that ends right before `end`.
CodePoint decode_before(std::string_view text, std::size_t begin, std::size_t end) {
    for (std::size_t size = 1; size <= 4 && begin + size <= end; ++size) {
        const CodePoint point = unicode::decode(text.substr(0, end), end - size);
        if (point.size == size && (size > 1 || kind_of(text[end - 1]) != Byte::high)) return point;
    }
    return {0xfffd, 1};
}

constexpr std::u32string_view currencies = U"$£€¥₹₩₽₺₿¢₫₪₱";

// Punctuation beyond ASCII, and the shapes that nobody says.
bool is_high_punctuation(char32_t c) {
    if (c < 0xa1) return true; // controls of the C1 block
    if (c == 0xb0 || c == 0xb1 || c == 0xd7 || c == 0xf7) return false;
    if (contains(U"¡«¶·»¿¦¨¯´¸", c)) return true;
    if (c < 0x2010) return unicode::is_ignorable(c);
    if (c <= 0x2027) return true;
    if (c <= 0x205e) return c >= 0x2032 && c != 0x2044;
    if (c < 0x2190) return unicode::is_ignorable(c);
    if (c <= 0x21ff || (c >= 0x2500 && c <= 0x25ff)) return true;
    if ((c >= 0x2e00 && c <= 0x2e7f) || (c >= 0x3001 && c <= 0x3003)) return true;
    if ((c >= 0x3008 && c <= 0x301f) || c == 0x30fb) return true;
    if ((c >= 0xff01 && c <= 0xff0f) || (c >= 0xff1a && c <= 0xff20)) return true;
    if ((c >= 0xff3b && c <= 0xff40) || (c >= 0xff5b && c <= 0xff65)) return true;
    return c == 0xfffd || unicode::is_ignorable(c);
}

bool is_raised_figure(char32_t c) {
    return contains(U"¹²³⁰⁴⁵⁶⁷⁸⁹", c);
}

bool is_emoji(char32_t c) {
    return c >= 0x2300 && unicode::is_emoji(c);
}

// Is there a figure at `at`, with its sign or its currency before it?
bool figure_at(std::string_view text, std::size_t at) {
    for (int signs = 0; signs < 3 && at < text.size(); ++signs) {
        if (is_digit(text[at])) return true;
        const CodePoint point = unicode::decode(text, at);
        if (!contains(U".-−", point.value) && !contains(currencies, point.value)) return false;
        at += point.size;
    }
    return false;
}

// Web and mail addresses are one word whatever signs they hold.
bool is_address(std::string_view run) {
    if (run.find("://") != std::string_view::npos) return true;
    if (run.starts_with("www.")) return true;
    const std::size_t path = run.find('/');
    if (path != std::string_view::npos && run.find('=', path) != std::string_view::npos)
        return true;
    const std::size_t at = run.find('@');
    if (at == std::string_view::npos || at == 0 || !ascii::is_alnum(run[at - 1])) return false;
    return run.find('.', at) != std::string_view::npos;
}

// What is already behind while the words of one text are cut: needed to tell 12" from a closing
// quote.
struct Quotes {
    bool double_open = false;
    bool single_open = false;
};

struct Cutter {
    std::string_view text;
    std::vector<Span>& words;
    Quotes quotes{};

    void run(std::size_t begin, std::size_t end);
    void piece(std::size_t begin, std::size_t end);
    std::size_t cut_size(std::size_t at, std::size_t begin, std::size_t end) const;
    std::size_t dot_cut_size(std::size_t at, std::size_t begin, std::size_t end) const;
    bool keeps_leading(std::size_t at, std::size_t end) const;
    bool negates_letter(std::size_t at, std::size_t next) const;
    bool closes_sum(std::size_t bracket) const;
    bool between_formulas(std::size_t begin, std::size_t end) const;
    bool is_beside_equals(std::size_t begin, std::size_t end) const;
    bool keeps_trailing(CodePoint point, std::size_t begin, std::size_t end) const;
    bool is_lone_symbol(std::size_t begin, std::size_t end) const;
    bool between_figures(std::size_t begin, std::size_t end) const;
    bool between_terms(std::size_t begin, std::size_t end) const;
    bool compares_figure(std::size_t begin, std::size_t end) const;
};

std::size_t run_of(std::string_view text, std::size_t at, std::size_t end, char c) {
    std::size_t count = 0;
    while (at + count < end && text[at + count] == c)
        ++count;
    return count;
}

// Three dots are a pause wherever they stand; one dot parts two sentences that lack their blank
// ("world.Today", "1,000.That") and leaves names alone ("Node.js", "ASP.NET").
std::size_t Cutter::dot_cut_size(std::size_t at, std::size_t begin, std::size_t end) const {
    const std::size_t dots = run_of(text, at, end, '.');
    if (dots >= 3) return dots;
    if (dots != 1 || at < begin + 2 || at + 2 >= end) return 0;
    if (!ascii::is_upper(text[at + 1]) || !ascii::is_lower(text[at + 2])) return 0;
    const char before = text[at - 1];
    return is_digit(before) || (ascii::is_lower(before) && ascii::is_alnum(text[at - 2])) ? 1 : 0;
}

// How many bytes at `at` part two words of one run; 0 if none.
std::size_t Cutter::cut_size(std::size_t at, std::size_t begin, std::size_t end) const {
    const bool inside = at > begin && at + 1 < end;
    switch (text[at]) {
    case '.': return dot_cut_size(at, begin, end);
    case '-': {
        const std::size_t hyphens = run_of(text, at, end, '-');
        return hyphens >= 2 ? hyphens : 0;
    }
    case '"': return at > begin && is_digit(text[at - 1]) && !quotes.double_open ? 0 : 1;
    case '[':
    case ']':
    case '{':
    case '}':
    case ';': return 1;
    case ',': return inside && is_digit(text[at - 1]) && is_digit(text[at + 1]) ? 0 : 1;
    case '!':
    case '?': return inside && kind_of(text[at + 1]) == Byte::letter ? 1 : 0;
    case ':':
        return inside && at > begin + 1 && kind_of(text[at - 1]) == Byte::letter &&
                       kind_of(text[at + 1]) == Byte::letter
                   ? 1
                   : 0;
    default: break;
    }
    if (kind_of(text[at]) != Byte::high) return 0;
    const CodePoint point = unicode::decode(text, at);
    constexpr std::u32string_view cuts = U"—―…“”„«»‿↗↘↑↓、。！，；：？";
    return contains(cuts, point.value) ? point.size : 0;
}

void Cutter::run(std::size_t begin, std::size_t end) {
    const bool address = is_address(text.substr(begin, end - begin));
    std::size_t piece_begin = begin;
    for (std::size_t at = begin; at < end;) {
        const std::size_t cut = address ? 0 : cut_size(at, begin, end);
        if (text[at] == '"' && (cut || address)) quotes.double_open = !quotes.double_open;
        if (cut) {
            piece(piece_begin, at);
            piece_begin = at + cut;
        }
        at += cut ? cut : 1;
    }
    piece(piece_begin, end);
}

// Clipped words whose apostrophe is theirs.
bool is_clipping(std::string_view word) {
    constexpr std::array<std::string_view, 11> clippings = {
        "em", "tis", "twas", "cause", "til", "bout", "cos", "round", "n", "twere", "kay"};
    std::size_t size = 0;
    while (size < word.size() && ascii::is_lower(word[size]))
        ++size;
    return std::find(clippings.begin(), clippings.end(), word.substr(0, size)) != clippings.end();
}

// "±" as it is typed.
std::size_t typed_plus_or_minus(std::string_view text) {
    for (const std::string_view sign : {"+/-", "+/−", "+/–"}) {
        if (text.starts_with(sign)) return sign.size();
    }
    return 0;
}

// "°C" without a figure.
bool is_scale_at(std::string_view text, std::size_t at) {
    if (at >= text.size() || (text[at] != 'C' && text[at] != 'F' && text[at] != 'K')) return false;
    return at + 1 == text.size() || !ascii::is_alnum(text[at + 1]);
}

// "¹⁴C", "²³⁵U": the raised figures before the sign of an element; "¹Next" and "²He" open with the
// number of a footnote. Raised figures alone ("²⁄₃") are no mass.
bool is_mass_number(std::string_view word) {
    std::size_t at = 0;
    std::size_t digits = 0;
    int number = 0;
    while (at < word.size()) {
        const CodePoint point = unicode::decode(word, at);
        const std::size_t value = std::u32string_view(U"⁰¹²³⁴⁵⁶⁷⁸⁹").find(point.value);
        const bool lowered = point.value >= 0x2080 && point.value <= 0x2089; // "²³⁵₉₂U"
        if (value == std::u32string_view::npos && !lowered) break;
        if (!lowered && ++digits < 4) number = number * 10 + static_cast<int>(value);
        at += point.size;
    }
    if (at >= word.size()) return false;
    if (kind_of(word[at]) != Byte::letter) return true;
    if (!ascii::is_upper(word[at]) || digits > 3) return false;
    std::size_t letters = 1;
    while (at + letters < word.size() && ascii::is_lower(word[at + letters]))
        ++letters;
    const std::string_view symbol = word.substr(at, letters);
    if (symbol == "H") return number >= 1 && number <= 3;
    if (symbol == "He") return number == 3 || number == 4;
    // "¹²We saw it": a word, and no element of so small a mass.
    constexpr std::array<std::string_view, 29> words = {
        "Am", "An", "As", "At", "Be", "By", "Do", "Go", "Hi", "I",  "If", "In", "Is", "It", "Me",
        "My", "No", "Of", "Oh", "On", "Or", "Ok", "Pa", "So", "To", "Up", "Us", "We", "Ye"};
    if (std::find(words.begin(), words.end(), symbol) != words.end())
        return number >= 70 || (symbol == "Be" && digits == 1);
    return letters <= 2 && symbol != "A" && (number >= 10 || symbol == "Li");
}

std::size_t skip_blanks_back(std::string_view text, std::size_t at) {
    while (at > 0 && kind_of(text[at - 1]) == Byte::blank)
        --at;
    return at;
}

// "x = -b/2a": behind the sign of a sum, before a letter that is no word's.
bool Cutter::negates_letter(std::size_t at, std::size_t next) const {
    const std::size_t before = skip_blanks_back(text, at);
    if (before == 0 || text[before - 1] != '=' || kind_of(text[next]) != Byte::letter) return false;
    return next + 1 == text.size() || kind_of(text[next + 1]) != Byte::letter;
}

// Is the sign at `at` a part of the word behind it ($5, #1, -0.1, '90s)?
bool Cutter::keeps_leading(std::size_t at, std::size_t end) const {
    const CodePoint point = unicode::decode(text, at);
    const std::size_t next = at + point.size;
    if (point.value == U'⁰' && is_scale_at(text.substr(0, end), next)) return true; // "20 ⁰C"
    if (is_raised_figure(point.value)) return is_mass_number(text.substr(at, end - at));
    if (point.value == U'¶') return figure_at(text.substr(0, end), next);
    if (const std::size_t size = typed_plus_or_minus(text.substr(at, end - at)))
        return figure_at(text.substr(0, end), at + size);
    const bool sign = point.value < 0x80 || contains(currencies, point.value) ||
                      contains(U"°−–±≈≤≥×÷’‘", point.value);
    if (!sign) return !is_high_punctuation(point.value) && !is_emoji(point.value);
    if (next >= end) return false;
    if (contains(currencies, point.value) || point.value == '&') return true;
    if (contains(U"#@", point.value)) return ascii::is_alnum(text[next]);
    if (point.value == U'°') return is_digit(text[next]) || is_scale_at(text.substr(0, end), next);
    if (contains(U"-−", point.value) && negates_letter(at, next)) return true;
    if (contains(U"+-−–±~≈<>≤≥=×÷", point.value)) return figure_at(text.substr(0, end), next);
    if (point.value == '.') {
        if (is_digit(text[next])) return true;
        return ascii::is_lower(text[next]) || (next + 1 < end && ascii::is_upper(text[next + 1]));
    }
    if (contains(U"'’‘", point.value)) {
        return is_digit(text[next]) || is_clipping(text.substr(next, end - next));
    }
    if (point.value == '(') {
        const std::size_t close = text.substr(0, end).find(')', next);
        return close != std::string_view::npos && close + 1 < end &&
               ascii::is_alnum(text[close + 1]);
    }
    return false;
}

// "an A*": the star is said. Behind any other word it points to a footnote.
bool is_starred_letter(std::string_view word) {
    return word.size() == 1 && ascii::is_upper(word[0]) && word != "I";
}

// Do the raised figures behind `before` point to a footnote ("shore¹", "sand.²")? Behind a figure,
// a letter, a short unit ("km²") or the name of a function ("sin²") they are a power.
bool is_before_footnote(std::string_view before) {
    std::size_t end = before.size();
    std::size_t letters = 0;
    while (end > 0) {
        const CodePoint point = decode_before(before, 0, end);
        const bool raised = is_raised_figure(point.value);
        if (!unicode::is_letter(point.value) && !(raised && letters == 0)) break;
        letters += raised ? 0 : 1;
        end -= point.size;
    }
    if (letters == 0)
        return end == 0 || contains(U".,;:!?\"'”’)", decode_before(before, 0, end).value);
    const std::string_view word = before.substr(end, 3);
    return letters > 3 ||
           (letters == 3 && word != "sin" && word != "cos" && word != "tan" && word != "log");
}

// "(a + b)²": the brackets hold a sum, so the figure behind them points to no footnote.
bool Cutter::closes_sum(std::size_t bracket) const {
    constexpr std::size_t longest = 40;
    const std::size_t from = bracket > longest ? bracket - longest : 0;
    const std::string_view before = text.substr(from, bracket - from);
    const std::size_t open = before.rfind('(');
    if (open == std::string_view::npos) return false;
    const std::string_view inside = before.substr(open + 1);
    const auto is_word = [](char a, char b) { return ascii::is_lower(a) && ascii::is_lower(b); };
    if (std::adjacent_find(inside.begin(), inside.end(), is_word) != inside.end()) return false;
    for (const std::string_view sign : {"+", "-", "−", "–", "×", "*", "/", "÷"}) {
        if (inside.find(sign) != std::string_view::npos) return true;
    }
    return false;
}

// Is the sign that ends at `end` a part of the word before it (5%, 12", C++, word(s))?
bool Cutter::keeps_trailing(CodePoint point, std::size_t begin, std::size_t end) const {
    const std::size_t at = end - point.size;
    if (is_raised_figure(point.value)) {
        return !is_before_footnote(text.substr(begin, at - begin)) ||
               (at > begin && text[at - 1] == ')' && closes_sum(at - 1));
    }
    const bool sign =
        point.value < 0x80 || contains(currencies, point.value) || contains(U"°′″’", point.value);
    const bool after_digit = at > begin && is_digit(text[at - 1]);
    if (point.value == U'★') return after_digit; // "a 5★ review"
    if (!sign) return !is_high_punctuation(point.value) && !is_emoji(point.value);
    if (at == begin) return false;
    const std::string_view before = text.substr(begin, at - begin);
    // "x°" is an angle; behind a word the sign ends what is said softly.
    if (point.value == U'°') return before.size() == 1 || kind_of(before.back()) != Byte::letter;
    if (contains(currencies, point.value) || point.value == '%') return true;
    if (contains(U"+#", point.value)) {
        return ascii::is_alnum(before.back()) || before.back() == '+' ||
               (before.back() == '%' && point.value == '+');
    }
    if (point.value == '"') return after_digit && !quotes.double_open;
    if (contains(U"′″", point.value)) return after_digit;
    if (contains(U"'’", point.value)) {
        if (quotes.single_open) return false;
        return after_digit || (before.size() > 3 && before.ends_with("in")) || before == "o" ||
               before == "ol";
    }
    if (point.value == '/') return before == "w"; // "w/ lunch"
    if (point.value == '*') return is_starred_letter(before);
    if (point.value == ')') {
        return before.find('(') != std::string_view::npos && before.back() != '(';
    }
    return false;
}

std::size_t skip_blanks(std::string_view text, std::size_t at) {
    while (at < text.size() && kind_of(text[at]) == Byte::blank)
        ++at;
    return at;
}

bool is_in_figure(char c) {
    return is_digit(c) || c == ',' || c == '.';
}

// "3,500.50" as a number; what stands beside the digits does not count.
double value_of(std::string_view figure) {
    double value = 0;
    double place = 0; // of the last digit behind the point; 0 before it
    for (const char c : figure) {
        if (c == '.') {
            place = 1;
        } else if (is_digit(c)) {
            if (place > 0) place /= 10;
            value = place > 0 ? value + place * (c - '0') : value * 10 + (c - '0');
        }
    }
    return value;
}

// "10 - 12" and "$5 - $7" are ranges and "5 - 3 = 2" a sum; "in 2020 - 15 years ago" has a dash.
bool Cutter::between_figures(std::size_t begin, std::size_t end) const {
    std::size_t before = skip_blanks_back(text, begin);
    const std::size_t after = skip_blanks(text, end);
    if (before > 0 && text[before - 1] == '%') --before; // "5% - 7%"
    if (before == 0 || !is_digit(text[before - 1]) || !figure_at(text, after)) return false;
    std::size_t first = before;
    while (first > 0 && is_in_figure(text[first - 1]))
        --first;
    const CodePoint sign = unicode::decode(text, after);
    const bool paid = contains(currencies, sign.value);
    if (paid && (first == 0 || !contains(currencies, decode_before(text, 0, first).value)))
        return false;
    const std::size_t right = after + (paid ? sign.size : 0);
    std::size_t last = right;
    while (last < text.size() && (is_in_figure(text[last]) || (last == right && text[last] == '-')))
        ++last;
    const std::size_t behind = skip_blanks(text, last);
    if (behind < text.size() && text[behind] == '=') return true;
    return value_of(text.substr(first, before - first)) <
           value_of(text.substr(right, last - right));
}

// A sign between two figures or single letters: "x < 30", "3 * 4".
bool Cutter::between_terms(std::size_t begin, std::size_t end) const {
    const std::size_t before = skip_blanks_back(text, begin);
    const std::size_t after = skip_blanks(text, end);
    if (before == 0 || after >= text.size()) return false;
    const bool single_before =
        kind_of(text[before - 1]) == Byte::letter &&
        (before == 1 || kind_of(text[before - 2]) == Byte::blank || text[before - 2] == '(');
    const bool single_after = kind_of(text[after]) == Byte::letter &&
                              (after + 1 == text.size() || !ascii::is_alnum(text[after + 1]));
    return (is_digit(text[before - 1]) || single_before) &&
           (figure_at(text, after) || single_after);
}

// "v = u - 5", "x - 1 = 3": the dash is a minus, as a sign of sums is near it.
bool Cutter::is_beside_equals(std::size_t begin, std::size_t end) const {
    constexpr std::size_t near = 10;
    const std::size_t from = begin > near ? begin - near : 0;
    return text.substr(from, begin - from).find('=') != std::string_view::npos ||
           text.substr(end, near).find('=') != std::string_view::npos;
}

// "6CO₂", "NaCl", "Na⁺": signs of elements with figures and charges.
bool is_formula(std::string_view run) {
    bool symbol = false;
    for (std::size_t at = 0; at < run.size();) {
        const CodePoint point = unicode::decode(run, at);
        if (ascii::is_upper(run[at])) {
            symbol = true;
            at += at + 1 < run.size() && ascii::is_lower(run[at + 1]) ? 2 : 1;
        } else if (is_digit(run[at]) || is_raised_figure(point.value) ||
                   (point.value >= 0x2070 && point.value <= 0x208b) || run[at] == '(' ||
                   run[at] == ')') {
            at += point.size;
        } else {
            return false;
        }
    }
    return symbol;
}

// "6H₂O → C₆H₁₂O₆": what becomes of what.
bool Cutter::between_formulas(std::size_t begin, std::size_t end) const {
    const std::size_t before = skip_blanks_back(text, begin);
    std::size_t first = before;
    while (first > 0 && kind_of(text[first - 1]) != Byte::blank)
        --first;
    const std::size_t after = skip_blanks(text, end);
    std::size_t last = after;
    while (last < text.size() && kind_of(text[last]) != Byte::blank && !is_stop(text[last]))
        ++last;
    return is_formula(text.substr(first, before - first)) &&
           is_formula(text.substr(after, last - after));
}

// "pH < 7": whatever is compared, the figure behind says that it is; "<=" is nothing else.
bool Cutter::compares_figure(std::size_t begin, std::size_t end) const {
    const std::string_view sign = text.substr(begin, end - begin);
    if (sign == "<=" || sign == ">=") {
        const std::size_t next = skip_blanks(text, end);
        if (next < text.size() && ascii::is_alnum(text[next])) return true;
    }
    return (sign == "<" || sign == ">" || sign == "<=" || sign == ">=") &&
           figure_at(text, skip_blanks(text, end));
}

// Signs that are said although they stand alone.
bool Cutter::is_lone_symbol(std::size_t begin, std::size_t end) const {
    if (begin == end) return false;
    const CodePoint point = unicode::decode(text, begin);
    const bool single = begin + point.size == end;
    if (single &&
        (contains(currencies, point.value) || contains(U"&+=%@/×÷±≤≥≠≈§°©", point.value))) {
        return true;
    }
    if (typed_plus_or_minus(text.substr(begin, end - begin)) == end - begin) return true;
    if (single && contains(U"#¶", point.value)) return figure_at(text, skip_blanks(text, end));
    if (single && contains(U"-–−", point.value)) {
        return between_figures(begin, end) ||
               ((point.value == U'−' || is_beside_equals(begin, end)) && between_terms(begin, end));
    }
    const bool arrow = (single && point.value == U'→') || text.substr(begin, end - begin) == "->";
    if (arrow) return between_terms(begin, end) || between_formulas(begin, end); // "5 → 7"
    if (single && contains(U"·⋅", point.value)) return between_terms(begin, end);
    if (compares_figure(begin, end)) return true;
    if (contains(U"<>*^", point.value)) return end - begin <= 2 && between_terms(begin, end);
    for (std::size_t at = begin; at < end;) {
        const CodePoint next = unicode::decode(text, at);
        if (is_emoji(next.value)) return true;
        at += next.size;
    }
    return false;
}

void Cutter::piece(std::size_t begin, std::size_t end) {
    std::size_t first = begin;
    while (first < end) {
        if (ascii::is_alnum(text[first]) || keeps_leading(first, end)) break;
        const CodePoint point = unicode::decode(text, first);
        if (contains(U"'‘", point.value)) quotes.single_open = true;
        first += point.size;
    }
    std::size_t last = end;
    while (last > first && !ascii::is_alnum(text[last - 1])) {
        const CodePoint point = decode_before(text, first, last);
        if (keeps_trailing(point, first, last)) break;
        if (contains(U"'’", point.value)) quotes.single_open = false;
        last -= point.size;
    }
    if (first < last) {
        words.push_back(make_span(first, last));
    } else if (is_lone_symbol(begin, end)) {
        words.push_back(make_span(begin, end));
    }
}

Juncture stronger(Juncture a, Juncture b) {
    return std::max(a, b);
}

} // namespace

std::vector<Span> split_words(std::string_view plain) {
    std::vector<Span> words;
    words.reserve(plain.size() / 5 + 1);
    Cutter cutter{plain, words};
    const std::size_t size = plain.size();
    for (std::size_t at = 0; at < size;) {
        if (const std::size_t blank = blank_size(plain, at)) {
            at += blank;
            continue;
        }
        // Most words are letters with at most one sign behind them.
        const std::size_t begin = at;
        while (at < size && kind_of(plain[at]) == Byte::letter)
            ++at;
        const std::size_t end = at;
        if (end > begin) {
            if (at < size && is_stop(plain[at])) ++at;
            if (at == size || kind_of(plain[at]) == Byte::blank) {
                words.push_back(make_span(begin, end));
                continue;
            }
        }
        while (at < size && blank_size(plain, at) == 0)
            ++at;
        cutter.run(begin, at);
    }
    return words;
}

Juncture juncture_of(std::string_view between, bool ends_sentence) {
    if (ends_sentence) return Juncture::stop;
    Juncture found = Juncture::none;
    for (std::size_t at = 0; at < between.size();) {
        const CodePoint point = unicode::decode(between, at);
        switch (point.value) {
        case ',':
        case '(':
        case ')':
        case '[':
        case ']':
        case U'、':
        case U'，': found = stronger(found, Juncture::comma); break;
        case ';':
        case ':':
        case U'—':
        case U'―':
        case U'–':
        case U'…':
        case U'；':
        case U'：': found = stronger(found, Juncture::strong); break;
        // One that ends no sentence ("Really?" he said) stops the voice all the same.
        case '!':
        case '?': return Juncture::stop;
        case '.':
            if (run_of(between, at, between.size(), '.') >= 3) return Juncture::strong;
            break;
        case '-': {
            // A single hyphen is a dash only with blanks around it.
            const bool open = at > 0 && kind_of(between[at - 1]) == Byte::blank;
            const bool shut = at + 1 < between.size() && kind_of(between[at + 1]) == Byte::blank;
            const bool doubled = at + 1 < between.size() && between[at + 1] == '-';
            if (doubled || (open && shut)) return Juncture::strong;
            break;
        }
        default: break;
        }
        at += point.size;
    }
    return found;
}

} // namespace say
