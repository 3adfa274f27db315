// Finds what was meant as a mark and is not one: openers without a closer, closers without an
// opener, braces apart from their word, shapes of other formats. All of it stays text; each is one
// problem.
#include "syntax/build.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

bool is_blank(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

bool is_letter_byte(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
           static_cast<unsigned char>(c) >= 0x80;
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool closes_phrase(char c) {
    constexpr std::string_view closers = ".,;:!?)]}\"'*_~<>";
    return c == '\0' || is_blank(c) || closers.find(c) != std::string_view::npos;
}

bool opens_phrase(char c) {
    constexpr std::string_view openers = "([{\"'*_~<>";
    return c == '\0' || is_blank(c) || openers.find(c) != std::string_view::npos;
}

// Marks that are drawn with one ASCII character on each side. Quotes and brackets have their own
// code.
struct Delimiter {
    char shape;
    bool word_edge_only; // inside a word it is text: snake_case
};
constexpr std::array<Delimiter, 3> symmetric{{{'*', false}, {'_', true}, {'~', true}}};

class Finder {
public:
    Finder(std::string_view source, Span content, std::span<const char> hidden,
           const Written& written)
        : source_(source), begin_(content.begin.value), end_(content.end.value), hidden_(hidden),
          written_(written) {}

    std::vector<Problem> find() {
        in_quote_.resize(source_.size());
        for (const Mark& mark : written_.marks) {
            if (mark.kind != MarkKind::quoted) continue; // the same kind never nests: linear in all
            std::fill(in_quote_.begin() + mark.span.begin.value,
                      in_quote_.begin() + mark.span.end.value, true);
        }
        bullet(begin_);
        // A thought with hundreds of them is no script: the first ones say all.
        for (std::uint32_t at = begin_; at < end_ && found_.size() < 50;) {
            const auto byte = static_cast<unsigned char>(source_[at]);
            if (at > begin_ && source_[at - 1] == '\n') bullet(at);
            if (hidden_[at] != 0) {
                at += is_escape(at) ? escaped(at + 1) + 1 : 1;
            } else if (at < bullet_end_) {
                ++at;
            } else if (byte >= 0x80) {
                at += wide(at);
            } else {
                at += narrow(at);
            }
        }
        marks();
        lone_beat();
        std::sort(found_.begin(), found_.end(),
                  [](const Problem& a, const Problem& b) { return a.span.begin < b.span.begin; });
        return std::move(found_);
    }

private:
    // The byte as text; a hidden byte counts as the edge that it is.
    char text_at(std::uint32_t at) const {
        if (at < begin_ || at >= end_) return '\0';
        return hidden_[at] != 0 ? ' ' : source_[at];
    }
    char before(std::uint32_t at) const { return at == begin_ ? '\0' : text_at(at - 1); }

    // A backslash that is no backtick's, nor in a direction.
    bool is_escape(std::uint32_t at) const {
        return source_[at] == '\\' && at + 1 < end_ && hidden_[at + 1] == 0;
    }

    // What a backslash makes plain text is meant so, and with it the sign that would close it.
    std::uint32_t escaped(std::uint32_t at) {
        constexpr std::string_view openers = "[{(<>*_~\"";
        constexpr std::string_view mirrors = "]})><*_~\"";
        const std::size_t opener = openers.find(source_[at]);
        if (opener != std::string_view::npos) meant_ += mirrors[opener];
        return 1;
    }

    // Does this sign close what a backslash has made text?
    bool is_meant(char c) {
        const std::size_t last = meant_.rfind(c);
        if (last == std::string::npos) return false;
        meant_.erase(last);
        return true;
    }

    void add_stray(std::uint32_t begin, std::uint32_t end) {
        if (end - begin == 1 && is_meant(source_[begin])) return;
        add(ProblemKind::stray, begin, end, source_.substr(begin, end - begin));
    }

    void add(ProblemKind kind, std::uint32_t begin, std::uint32_t end, std::string_view what) {
        found_.push_back({kind, make_span(begin, end), std::string(what)});
    }

    // At the thought's begin, and at that of each line below it.
    void bullet(std::uint32_t at) {
        const std::string_view line = source_.substr(at, end_ - at);
        for (std::string_view shape : {std::string_view{"* "}, std::string_view{"• "}}) {
            if (!line.starts_with(shape)) continue;
            const auto size = static_cast<std::uint32_t>(shape.size());
            add(ProblemKind::bullet, at, at + size - 1, shape);
            bullet_end_ = at + size;
        }
    }

    std::uint32_t narrow(std::uint32_t at) {
        const char c = source_[at];
        for (const Delimiter& delimiter : symmetric) {
            if (delimiter.shape == c) return run_of(at, delimiter);
        }
        switch (c) {
        case '<': return angle(at);
        case '>': return quick(at);
        case '(':
            if (opens_phrase(before(at)) && is_letter_byte(text_at(at + 1))) {
                add(ProblemKind::unclosed, at, at + 1, "(");
            }
            paren_open_ = true;
            return 1;
        case ')':
            if (is_letter_byte(before(at)) &&
                is_letter_byte(text_at(at - 2 < begin_ ? at : at - 2)) &&
                closes_phrase(text_at(at + 1)) && !paren_open_) {
                add_stray(at, at + 1);
            }
            return 1;
        case '[': add(ProblemKind::unclosed, at, at + 1, "["); return 1;
        case ']': add_stray(at, at + 1); return 1;
        case '{': return brace(at);
        case '}': add_stray(at, at + 1); return 1;
        case '"': return quote(at);
        case '/':
            // "word/ word", "word /word"; not "w/ milk", nor a path.
            if ((is_letter_byte(before(at)) && is_blank(text_at(at + 1)) &&
                 source_[at + 1] == ' ' && !is_clipped(at)) ||
                (at > begin_ && before(at) == ' ' && is_letter_byte(text_at(at + 1)) &&
                 !is_path(at))) {
                add(ProblemKind::slash_glued, at, at + 1, "/");
            }
            return 1;
        case '.': return dots(at);
        default: return 1;
        }
    }

    // "w/ lunch", "c/ the office": one letter with a stroke is a word cut short. "I" is a word.
    bool is_clipped(std::uint32_t stroke) const {
        const char letter = before(stroke);
        if (is_letter_byte(before(stroke - 1)) || static_cast<unsigned char>(letter) >= 0x80)
            return false;
        return letter != 'I' && letter != 'a';
    }

    // "20 °C", "4 °N": the SI Brochure (9th edition, 5.4.3) sets a space before the sign. Behind a
    // figure it is degrees for the grammar too; before the one letter of a scale or of a compass
    // nothing else can be meant.
    bool is_degree(std::uint32_t at, std::uint32_t end) const {
        std::uint32_t left = at;
        while (left > begin_ && is_blank(text_at(left - 1)))
            --left;
        if (is_digit(before(left))) return true;
        constexpr std::string_view scales = "CFKRNSEW";
        return scales.find(text_at(end)) != std::string_view::npos &&
               !is_letter_byte(text_at(end + 1));
    }

    // "an A*" is said with its star.
    bool is_grade(std::uint32_t star, std::uint32_t size) const {
        const char letter = before(star);
        return size == 1 && source_[star] == '*' && letter >= 'A' && letter <= 'Z' &&
               letter != 'I' && !is_letter_byte(before(star - 1)) && !is_digit(before(star - 1));
    }

    // Runs of * _ ~: "f***" and "***" alone are text without a word about it.
    std::uint32_t run_of(std::uint32_t at, const Delimiter& delimiter) {
        std::uint32_t end = at;
        while (end < end_ && hidden_[end] == 0 && source_[end] == delimiter.shape)
            ++end;
        const std::uint32_t size = end - at;
        const char left = before(at);
        const char right = text_at(end);
        const bool word_right =
            is_letter_byte(right) && !(delimiter.shape == '~' && is_digit(right));
        if (size <= 2 && word_right && opens_phrase(left)) {
            add(ProblemKind::unclosed, at, end, source_.substr(at, size));
        } else if (size <= 2 && is_letter_byte(left) && closes_phrase(right) &&
                   !is_grade(at, size)) {
            add_stray(at, end);
        }
        return size;
    }

    // "<word" opens a slow stretch, "<b>" and "</b>" are another format's, "2 < 3" is text.
    std::uint32_t angle(std::uint32_t at) {
        const char next = text_at(at + 1);
        const bool names = is_letter_byte(next) || next == '/';
        if (names) {
            std::uint32_t end = at + 1;
            while (end < end_ && source_[end] != '>' && source_[end] != '<' && source_[end] != '\n')
                ++end;
            if (end < end_ && source_[end] == '>') {
                add(ProblemKind::tag, at, end + 1, source_.substr(at, end + 1 - at));
                return end + 1 - at;
            }
        }
        if (is_letter_byte(next) && opens_phrase(before(at))) {
            add(ProblemKind::unclosed, at, at + 1, "<");
        } else if (is_letter_byte(before(at)) && closes_phrase(next)) {
            add_stray(at, at + 1);
        }
        return 1;
    }

    std::uint32_t quick(std::uint32_t at) {
        if (is_letter_byte(text_at(at + 1)) && opens_phrase(before(at))) {
            add(ProblemKind::unclosed, at, at + 1, ">");
        } else if (is_letter_byte(before(at)) && closes_phrase(text_at(at + 1))) {
            add_stray(at, at + 1);
        }
        return 1;
    }

    // The end of a template's field in two pairs of braces, "{{name}}", that opens at `at`; `at`
    // itself where there is none.
    std::uint32_t doubled_field(std::uint32_t at) const {
        if (!source_.substr(at, end_ - at).starts_with("{{")) return at;
        const std::size_t close = source_.find_first_of("{}\n", at + 2);
        if (close == std::string_view::npos || close + 2 > end_ || close == at + 2) return at;
        return source_.substr(close, 2) == "}}" ? static_cast<std::uint32_t>(close) + 2 : at;
    }

    // A field is `{name_of}`, or `${name}` whatever its name is: where it begins.
    std::uint32_t field_begin(std::uint32_t brace) const {
        return brace > begin_ && source_[brace - 1] == '$' ? brace - 1 : brace;
    }
    bool is_field(std::uint32_t brace, std::string_view inner) const {
        return field_begin(brace) != brace || inner.find('_') != std::string_view::npos;
    }
    void add_field(std::uint32_t brace, std::uint32_t end) {
        const std::uint32_t begin = field_begin(brace);
        add(ProblemKind::field, begin, end, source_.substr(begin, end - begin));
    }

    std::uint32_t brace(std::uint32_t at) {
        if (const std::uint32_t field = doubled_field(at); field != at) {
            add(ProblemKind::field, at, field, source_.substr(at, field - at));
            return field - at;
        }
        std::uint32_t end = at + 1;
        while (end < end_ && source_[end] != '}' && source_[end] != '{' && source_[end] != '\n')
            ++end;
        if (end >= end_ || source_[end] != '}') {
            add(ProblemKind::unclosed, at, at + 1, "{");
            return 1;
        }
        ++end;
        const std::string_view inner = source_.substr(at + 1, end - at - 2);
        if (inner.find_first_not_of(" \t") == std::string_view::npos) {
            add(ProblemKind::empty_braces, at, end, "{}");
        } else if (is_field(at, inner)) {
            add_field(at, end);
        } else if (is_blank(before(at)) && at > begin_) {
            add(ProblemKind::braces_apart, at, end, source_.substr(at, end - at));
        } else {
            add(ProblemKind::dangling, at, end, source_.substr(at, end - at));
        }
        return end - at;
    }

    // "/usr/bin", "/etc.": more signs than a word has.
    bool is_path(std::uint32_t at) const {
        std::uint32_t end = at + 1;
        while (end < end_ && !is_blank(source_[end]) && source_[end] != '\n' &&
               source_[end] != '\r')
            ++end;
        return source_.substr(at + 1, end - at - 1).find_first_of("/\\_0123456789") !=
               std::string_view::npos;
    }

    // Inches stand behind a figure; an apostrophe is never a quote.
    std::uint32_t quote(std::uint32_t at) {
        const char left = before(at);
        if (is_digit(left)) return 1;
        if (opens_phrase(left) && !is_blank(text_at(at + 1)) && text_at(at + 1) != '\0') {
            add(ProblemKind::unclosed, at, at + 1, "\"");
        } else if (!is_blank(left) && left != '\0') {
            add_stray(at, at + 1);
        }
        return 1;
    }

    std::uint32_t dots(std::uint32_t at) {
        std::uint32_t end = at;
        while (end < end_ && hidden_[end] == 0 && source_[end] == '.')
            ++end;
        const bool next_to_mark =
            (at > begin_ && hidden_[at - 1] != 0) || (end < end_ && hidden_[end] != 0);
        if (end - at == 2 && !next_to_mark && text_at(end) != '/' && before(at) != '/') {
            add(ProblemKind::two_dots, at, end, "..");
        }
        return end - at;
    }

    std::uint32_t wide(std::uint32_t at) {
        const unicode::CodePoint c = unicode::decode(source_, at);
        const std::uint32_t end = at + c.size;
        const std::string_view shape = source_.substr(at, c.size);
        if (c.value == U'★' && at > begin_ && ascii::is_digit(before(at)))
            return c.size; // "a 5★ review": said as stars
        if (unicode::is_emoji(c.value)) {
            std::uint32_t last = end; // one problem for a run of them
            while (last < end_) {
                const unicode::CodePoint next = unicode::decode(source_, last);
                if (!unicode::is_emoji(next.value) && !unicode::is_ignorable(next.value)) break;
                last += next.size;
            }
            add(ProblemKind::emoji, at, last, source_.substr(at, last - at));
            return last - at;
        }
        switch (c.value) {
        case U'\u201C': add(ProblemKind::unclosed, at, end, shape); break;
        case U'\u201D':
            if (!in_quote_[at]) add(ProblemKind::stray, at, end, shape);
            break;
        case U'\u2191': // step up and down with no word behind them
        case U'\u2193':
        case U'\u203F': add(ProblemKind::dangling, at, end, shape); break;
        case U'\u00B0':
            if (is_degree(at, end)) break;
            if (is_letter_byte(text_at(end)) && opens_phrase(before(at))) {
                add(ProblemKind::unclosed, at, end, shape);
            } else if (is_letter_byte(before(at)) && closes_phrase(text_at(end))) {
                add(ProblemKind::stray, at, end, shape);
            }
            break;
        default: break;
        }
        return c.size;
    }

    void marks() {
        for (const Mark& mark : written_.marks) {
            const std::uint32_t begin = mark.span.begin.value;
            const std::uint32_t end = mark.span.end.value;
            if (mark.kind == MarkKind::reset && mark.first < 0) {
                add(ProblemKind::reset_first, begin, end, "//");
            }
            const bool braces = mark.kind == MarkKind::pronouncer || mark.kind == MarkKind::say_as;
            // The inner pair of a template's field was seen with the outer one.
            const bool inner = begin > begin_ && doubled_field(begin - 1) == end + 1;
            if (!braces || inner) continue;
            if (mark.argument.empty()) {
                add(ProblemKind::empty_braces, begin, end, slice(source_, mark.span));
            } else if (mark.kind == MarkKind::pronouncer && is_field(begin, mark.argument)) {
                add_field(begin, end);
            } else if (mark.kind == MarkKind::pronouncer && parts_differ(mark)) {
                add(ProblemKind::braces_parts, begin, end, mark.argument);
            }
        }
    }

    static bool parts_differ(const Mark& mark) {
        int parts = 1;
        for (std::size_t i = 1; i + 1 < mark.argument.size(); ++i) {
            if (is_blank(mark.argument[i]) && !is_blank(mark.argument[i - 1])) ++parts;
        }
        return parts != mark.last - mark.first + 1;
    }

    void lone_beat() {
        if (written_.words.size() < 2) return;
        const Word& word = written_.words.back();
        if (slice(written_.plain.text, word.plain) != "x" || word.escaped) return;
        if (word.plain.end.value != written_.plain.text.size()) return;
        add(ProblemKind::lone_beat, word.source.begin.value, word.source.end.value, "x");
    }

    std::string_view source_;
    std::uint32_t begin_;
    std::uint32_t end_;
    std::span<const char> hidden_;
    const Written& written_;
    std::uint32_t bullet_end_ = 0;
    bool paren_open_ = false;
    std::vector<bool>
        in_quote_;      // a ” inside a quoted stretch is no stray: the pair was taken another way
    std::string meant_; // closers of signs that a backslash has made text
    std::vector<Problem> found_;
};

} // namespace

std::vector<Problem> find_problems(std::string_view source, Span content,
                                   std::span<const char> hidden, const Written& written) {
    return Finder(source, content, hidden, written).find();
}

} // namespace say
