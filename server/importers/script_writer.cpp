#include "importers/script_writer.h"

#include "engine/analysis.h"
#include "rules/cues.h"
#include "speech/sentences.h"
#include "syntax/header.h"
#include "syntax/script.h"
#include "syntax/words.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <optional>

namespace say {
namespace {

// --- one thought --------------------------------------------------------------------------------

// How a character of the draft is written.
enum class Guard : char {
    none,
    backslash, // makes it text
    code,      // what no backslash reaches (arrows, degrees): all to the next blank in backticks
};

constexpr std::uint32_t inserted = 0xFFFFFFFF;

bool is_punctuation(char c) {
    return c > ' ' && c < 0x7F && !ascii::is_alnum(c);
}

// Marks that are ordinary writing too and mean the same there.
bool is_ordinary(MarkKind kind) {
    return kind == MarkKind::quoted || kind == MarkKind::aside || kind == MarkKind::pause;
}

// Within quotation marks that are open at `at`.
bool is_quoted(std::string_view text, std::size_t at) {
    const std::string_view before = text.substr(0, at);
    const auto count = std::count(before.begin(), before.end(), '"');
    const std::size_t opened = before.rfind("“");
    const std::size_t closed = before.rfind("”");
    const bool curly =
        opened != std::string_view::npos && (closed == std::string_view::npos || closed < opened);
    return count % 2 == 1 || curly;
}

// Whether sentences end before and behind: there a bracket is no part of one.
bool stands_alone(std::string_view text, Span brackets) {
    const std::string_view before = trimmed(text.substr(0, brackets.begin.value));
    const std::string_view behind = trimmed(text.substr(brackets.end.value));
    constexpr std::string_view ends = ".!?:";
    const auto ends_sentence = [&](std::string_view words) {
        while (!words.empty() &&
               (words.back() == '"' || words.back() == ')' || words.back() == ']'))
            words.remove_suffix(1);
        return words.empty() || ends.find(words.back()) != std::string_view::npos ||
               words.ends_with("”") || words.ends_with("…");
    };
    return ends_sentence(before) || behind.empty();
}

// Square brackets in a draft that nobody would read out: "[smile]" between sentences, a cue within
// one, "[3]" behind a word. Within a quotation they hold words that somebody put in. `unsaid`: all
// of them hold what was heard and not said, as in captions.
bool is_unspoken(std::string_view text, Span brackets, bool unsaid) {
    const std::string_view inside =
        trimmed(slice(text, make_span(brackets.begin.value + 1, brackets.end.value - 1)));
    const std::string_view behind = text.substr(brackets.end.value);
    if (behind.starts_with('(') || is_quoted(text, brackets.begin.value)) return false;
    if (!inside.empty() && std::all_of(inside.begin(), inside.end(), ascii::is_digit)) {
        return brackets.begin > Offset{0} && !ascii::is_blank(text[brackets.begin.value - 1]);
    }
    const auto letters = std::count_if(inside.begin(), inside.end(), [](char c) {
        return ascii::is_letter(c) || ascii::is_high(c);
    });
    return letters > 1 && (unsaid || rules::begins_cue(inside) || stands_alone(text, brackets));
}

// "{first_name}": what fills a template in goes by such names.
bool is_field_name(std::string_view inside) {
    return std::all_of(inside.begin(), inside.end(), [](char c) {
        return ascii::is_alnum(c) || c == '_' || c == '.' || c == '-';
    });
}

std::string without(std::string_view text, const std::vector<Span>& spans,
                    std::string_view stand_in) {
    std::string rest;
    Offset from{0};
    for (const Span span : spans) {
        rest += slice(text, {from, span.begin});
        rest += stand_in;
        from = span.end;
    }
    return rest.append(text.substr(from.value));
}

std::string words_under(const Lean& lean, std::string_view text) {
    return collapsed(text.substr(lean.begin, lean.end - lean.begin));
}

// Writes one piece and asks the parser what became of it, until every word is a word.
class ThoughtWriter {
public:
    // `shape` is what stands before the piece in its block: "", "- " or "1. ".
    ThoughtWriter(Parser& parser, const Header& header, std::string shape, const Piece& piece,
                  std::vector<Lean> leans)
        : parser_(parser), header_(header), shape_(std::move(shape)), text_(piece.text),
          leans_(std::move(leans)), guards_(piece.text.size(), Guard::none),
          unsaid_brackets_(piece.unsaid_brackets) {}

    std::string write() {
        // Each round puts right all that it sees; what is left are marks that were hidden in marks.
        constexpr int most_rounds = 24;
        for (int round = 0; round < most_rounds; ++round) {
            make();
            if (settle()) return out_;
        }
        // A piece that is signs more than words: every sign is made text, and no stress is left.
        drop_all();
        for (std::size_t i = 0; i < text_.size(); ++i) {
            if (is_punctuation(text_[i])) guard(static_cast<std::uint32_t>(i), Guard::backslash);
        }
        for (int round = 0; round < most_rounds; ++round) {
            make();
            if (settle()) break;
        }
        return out_;
    }

    const std::vector<std::string>& dropped() const { return dropped_; }
    int directions() const { return directions_; }

private:
    static std::vector<std::string> words_of(const std::string& plain) {
        std::vector<std::string> words;
        for (const Span span : split_words(plain))
            words.emplace_back(slice(plain, span));
        return words;
    }

    void put(char c, std::uint32_t from) {
        out_ += c;
        from_.push_back(from);
    }

    void make() {
        out_.clear();
        from_.clear();
        for (const char c : shape_)
            put(c, inserted);
        opens_.assign(leans_.size(), 0);
        code_until_ = 0;
        std::size_t next = 0;
        std::size_t open = leans_.size(); // the stress that is open; none
        for (std::size_t at = 0; at <= text_.size();) {
            if (open < leans_.size() && leans_[open].end == at) {
                put_delimiter(leans_[open]);
                open = leans_.size();
            }
            if (next < leans_.size() && leans_[next].begin == at) {
                opens_[next] = static_cast<std::uint32_t>(out_.size());
                put_delimiter(leans_[next]);
                open = next++;
            }
            if (at == text_.size()) return;
            at = put_character(at);
        }
    }

    void put_delimiter(const Lean& lean) {
        put('*', inserted);
        if (lean.heavy) put('*', inserted);
    }

    std::size_t put_character(std::size_t at) {
        if (at >= code_until_ && guards_[at] == Guard::code) open_code(at);
        const bool in_code = at < code_until_;
        const std::size_t end =
            std::min(text_.size(), at + std::max<std::size_t>(1, unicode::decode(text_, at).size));
        if (!in_code && guards_[at] == Guard::backslash) put('\\', inserted);
        // No letter is lost with a backtick that would close the run.
        for (std::size_t i = at; i < end && !(in_code && text_[at] == '`'); ++i)
            put(text_[i], static_cast<std::uint32_t>(i));
        if (end == code_until_) put('`', inserted);
        return end;
    }

    void open_code(std::size_t at) {
        code_until_ = at;
        while (code_until_ < text_.size()) {
            const unicode::CodePoint c = unicode::decode(text_, code_until_);
            if (unicode::is_blank(c.value)) break;
            code_until_ += c.size;
        }
        put('`', inserted);
    }

    // True if the piece reads as it should; else something was changed that must be tried.
    bool settle() {
        const std::vector<Block> blocks = cut_blocks(out_, header_);
        if (!one_block(blocks)) return guard_blocks(blocks);
        const Written written = parser_.parse(out_, blocks.front());
        const bool fine = look_at_marks(blocks.front(), written);
        if (!fine) return false;
        if (strict_ || has_every_word(written.plain.text)) return true;
        // A quote or a bracket that tears a word: nothing is left to its ordinary meaning.
        strict_ = true;
        return look_at_marks(blocks.front(), written);
    }

    bool has_every_word(const std::string& plain) const {
        const std::vector<std::string> words = words_of(plain);
        return words == words_of(collapsed(without(text_, kept_, ""))) ||
               words == words_of(collapsed(without(text_, kept_, " ")));
    }

    bool one_block(const std::vector<Block>& blocks) const {
        if (blocks.size() != 1) return false;
        const BlockKind kind = shape_.empty() ? BlockKind::paragraph : BlockKind::item;
        const Block& block = blocks.front();
        return block.kind == kind && block.speaker.empty() && block.notes.empty() &&
               block.span.begin == Offset{0} && block.content.end.value == out_.size() &&
               block.content.begin.value == shape_.size();
    }

    // A line that begins like a heading, an item, a note, a divider or a speaker.
    bool guard_blocks(const std::vector<Block>& blocks) {
        bool changed = false;
        for (const Block& block : blocks) {
            const bool first = block.span.begin == Offset{0};
            const bool meant =
                first && block.speaker.empty() && block.notes.empty() &&
                block.kind == (shape_.empty() ? BlockKind::paragraph : BlockKind::item);
            if (meant) continue;
            const Span start = block.notes.empty() ? block.span : block.notes;
            const std::uint32_t at =
                first ? static_cast<std::uint32_t>(shape_.size()) : start.begin.value;
            changed |= guard_first(std::max(at, static_cast<std::uint32_t>(shape_.size())));
        }
        return !changed;
    }

    // The first character of the draft from here on that is no blank.
    bool guard_first(std::uint32_t at) {
        while (at < out_.size() && (from_[at] == inserted || ascii::is_blank(out_[at])))
            ++at;
        return at < out_.size() && guard(from_[at], Guard::backslash);
    }

    bool guard(std::uint32_t at, Guard how) {
        if (guards_[at] >= how) return false;
        guards_[at] = how;
        return true;
    }

    // Backticks stand around all that no blank parts: inside a word they would be text.
    bool guard_run(std::uint32_t at) {
        std::uint32_t begin = at;
        while (begin > 0) {
            std::uint32_t before = begin - 1;
            while (before > 0 && (static_cast<unsigned char>(text_[before]) & 0xC0U) == 0x80U)
                --before;
            if (unicode::is_blank(unicode::decode(text_, before).value)) break;
            begin = before;
        }
        std::erase_if(leans_, [&](const Lean& lean) {
            const bool inside = (lean.begin > begin && lean.begin <= at) ||
                                (lean.end > begin && !ends_before(lean.end, begin));
            if (inside) drop(lean);
            return inside;
        });
        // One that stands elsewhere would pair with ours.
        for (std::size_t i = 0; i < text_.size(); ++i) {
            if (text_[i] == '`') guard(static_cast<std::uint32_t>(i), Guard::backslash);
        }
        return guard(begin, Guard::code);
    }

    bool ends_before(std::size_t end, std::uint32_t run) const {
        return end <= run || is_blank_text(end) || end == text_.size();
    }

    bool is_blank_text(std::size_t at) const {
        return at < text_.size() && unicode::is_blank(unicode::decode(text_, at).value);
    }

    // What the parser took for no text, although it is; and what it did not take for the stress it
    // is.
    bool look_at_marks(const Block& block, const Written& written) {
        hidden_.assign(out_.size(), true);
        for (std::size_t i = 0; i < written.plain.source.size(); ++i) {
            const std::uint32_t at = written.plain.source[i] + block.span.begin.value;
            // The blank in the place of a mark is no text of the draft's.
            if (written.plain.text[i] == out_[at]) hidden_[at] = false;
        }
        if (!look_at_leans(written)) return false;
        std::vector<bool> fine(out_.size(), false);
        keep_unspoken(written, fine);
        starts_.assign(out_.size() + 1, false);
        for (const Mark& mark : written.marks) {
            starts_[mark.span.begin.value] = starts_[mark.close.begin.value] = true;
            if (strict_ || !is_ordinary(mark.kind)) continue;
            const bool pair = !mark.open.empty();
            for (const Span span : {pair ? mark.open : mark.span, mark.close})
                std::fill(fine.begin() + span.begin.value, fine.begin() + span.end.value, true);
        }
        bool all_fine = true;
        for (std::uint32_t at = block.content.begin.value; at < out_.size(); ++at) {
            if (from_[at] == inserted) {
                all_fine &= hidden_[at] || !lost_guard(at);
            } else if (hidden_[at] && !fine[at] && begins_run(at)) {
                all_fine &= !guard_hidden(at);
            }
        }
        return all_fine;
    }

    // What stays as the draft has it and is not spoken: directions, and a template's fields, of
    // which the script's own findings speak.
    void keep_unspoken(const Written& written, std::vector<bool>& fine) {
        kept_.clear();
        directions_ = 0;
        if (strict_) return;
        std::vector<Span> spans;
        for (const Mark& mark : written.marks) {
            if (mark.kind == MarkKind::direction) spans.push_back(mark.span);
        }
        for (const Problem& problem : written.problems) {
            if (problem.kind == ProblemKind::field) spans.push_back(problem.span);
        }
        std::sort(spans.begin(), spans.end(), [](Span a, Span b) { return a.begin < b.begin; });
        for (const Span span : spans) {
            const std::optional<Span> drafted = in_draft(span);
            if (!drafted || !stays_unspoken(*drafted)) continue;
            kept_.push_back(*drafted);
            std::fill(fine.begin() + span.begin.value, fine.begin() + span.end.value, true);
        }
    }

    bool stays_unspoken(Span drafted) {
        if (text_[drafted.begin.value] != '[')
            return is_field_name(
                slice(text_, make_span(drafted.begin.value + 1, drafted.end.value - 1)));
        if (!is_unspoken(text_, drafted, unsaid_brackets_)) return false;
        ++directions_;
        return true;
    }

    // Where a stretch of the piece stands in the draft; none if something was put into it.
    std::optional<Span> in_draft(Span span) const {
        for (std::uint32_t at = span.begin.value; at < span.end.value; ++at) {
            if (from_[at] == inserted) return std::nullopt;
        }
        const std::uint32_t begin = from_[span.begin.value];
        if (!kept_.empty() && begin < kept_.back().end.value) return std::nullopt;
        return make_span(begin, begin + span.size());
    }

    bool is_blank_at(std::uint32_t at) const {
        return unicode::is_blank(unicode::decode(out_, at).value);
    }

    // One guard a run: `[smile]` needs one backslash, not seven.
    bool begins_run(std::uint32_t at) const {
        if ((static_cast<unsigned char>(out_[at]) & 0xC0U) == 0x80U || is_blank_at(at))
            return false;
        return at == 0 || !hidden_[at - 1] || from_[at - 1] == inserted || starts_[at] ||
               ascii::is_blank(out_[at - 1]);
    }

    bool guard_hidden(std::uint32_t at) {
        const char c = out_[at];
        const std::uint32_t from = from_[at];
        if (guards_[from] == Guard::backslash) return guard_run(from);
        const bool reachable = is_punctuation(c) || c == 'x';
        // A letter is hidden where a sign before it hides it.
        if (!reachable && ascii::is_alnum(c)) return false;
        return reachable ? guard(from, Guard::backslash) : guard_run(from);
    }

    // A backslash that the parser reads as text guards nothing.
    bool lost_guard(std::uint32_t at) {
        if (out_[at] != '\\') return false;
        return guard_run(from_[at + 1]);
    }

    bool look_at_leans(const Written& written) {
        for (std::size_t i = leans_.size(); i-- > 0;) {
            const MarkKind wanted = leans_[i].heavy ? MarkKind::heavy_stress : MarkKind::stress;
            const bool found =
                std::any_of(written.marks.begin(), written.marks.end(), [&](const Mark& mark) {
                    return mark.kind == wanted && mark.open.begin.value == opens_[i] &&
                           closes_lean(mark, leans_[i]);
                });
            if (found) continue;
            drop(leans_[i]);
            leans_.erase(leans_.begin() + static_cast<std::ptrdiff_t>(i));
            return false;
        }
        return true;
    }

    bool closes_lean(const Mark& mark, const Lean& lean) const {
        const std::uint32_t at = mark.close.begin.value;
        return at > 0 && from_[at] == inserted && from_[at - 1] + 1 == lean.end;
    }

    void drop(const Lean& lean) { dropped_.push_back(words_under(lean, text_)); }

    void drop_all() {
        for (const Lean& lean : leans_)
            drop(lean);
        leans_.clear();
        strict_ = true;
    }

    Parser& parser_;
    const Header& header_;
    std::string shape_;
    std::string_view text_;
    std::vector<Lean> leans_;
    std::vector<Guard> guards_; // of the first byte of each character
    std::vector<Span> kept_;    // in text_: what is not spoken and stays
    bool unsaid_brackets_ = false;
    bool strict_ = false;
    std::vector<std::string> dropped_; // the words of stresses that could not be written
    int directions_ = 0;
    std::string out_;
    std::vector<std::uint32_t> from_;  // out_[i] is text_[from_[i]], or was inserted
    std::vector<std::uint32_t> opens_; // where each stress opens in out_
    std::vector<bool> hidden_;
    std::vector<bool> starts_;   // where a mark or what closes it begins
    std::size_t code_until_ = 0; // the end of a run in backticks, in text_
};

// --- pieces -------------------------------------------------------------------------------------

// Below the cap of a thought, whatever backslashes come in.
constexpr std::size_t longest_piece = thought_cap / 4;

// Blanks at both ends of a stress stand outside it; one that holds no word is nothing.
std::vector<Lean> tidy(std::string_view text, const std::vector<Lean>& leans) {
    std::vector<Lean> tidied;
    for (const Lean& lean : leans) {
        const std::string_view inside =
            trimmed(text.substr(lean.begin, std::min(lean.end, text.size()) - lean.begin));
        if (inside.empty() || split_words(collapsed(inside)).empty()) continue;
        const auto begin = static_cast<std::size_t>(inside.data() - text.data());
        tidied.push_back({begin, begin + inside.size(), lean.heavy});
    }
    return tidied;
}

// A part of a piece with the stresses that lie in it.
Piece part_of(const Piece& piece, Span span) {
    Piece part = piece;
    part.text = std::string(slice(piece.text, span));
    part.leans.clear();
    for (const Lean& lean : piece.leans) {
        const std::size_t begin = std::max<std::size_t>(lean.begin, span.begin.value);
        const std::size_t end = std::min<std::size_t>(lean.end, span.end.value);
        if (begin < end)
            part.leans.push_back({begin - span.begin.value, end - span.begin.value, lean.heavy});
    }
    return part;
}

std::string with_blanks(std::string text) {
    for (char& c : text)
        c = c == '\n' || c == '\r' ? ' ' : c;
    return text;
}

// Where a text that is too long for a thought may be cut: at sentences, or else at blanks.
std::vector<Span> stretches(const std::string& text, bool every_sentence) {
    std::vector<Span> cut;
    for (const Span sentence : split_sentences(with_blanks(text))) {
        Span rest = sentence;
        while (rest.size() > longest_piece) {
            std::size_t at = text.rfind(' ', rest.begin.value + longest_piece);
            if (at == std::string::npos || at <= rest.begin.value) {
                at = rest.begin.value + longest_piece;
                while (at > rest.begin.value &&
                       (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U)
                    --at;
            }
            cut.push_back(make_span(rest.begin.value, at));
            rest.begin = Offset{static_cast<std::uint32_t>(at)};
        }
        const bool joins = !every_sentence && !cut.empty() &&
                           rest.end.value - cut.back().begin.value <= longest_piece;
        if (joins) {
            cut.back().end = rest.end;
        } else {
            cut.push_back(rest);
        }
    }
    return cut;
}

std::vector<Piece> cut_piece(const Piece& piece, bool sentences) {
    const bool thought = piece.kind == Piece::Kind::paragraph || piece.kind == Piece::Kind::item;
    if (!thought || (!sentences && piece.text.size() <= longest_piece)) return {piece};
    std::vector<Piece> parts;
    for (const Span span :
         stretches(piece.text, sentences && piece.kind == Piece::Kind::paragraph)) {
        parts.push_back(part_of(piece, span));
        if (parts.size() > 1) parts.back().speaker.clear();
    }
    return parts;
}

// --- the script ---------------------------------------------------------------------------------

// What stands in a header line or before a colon: one line, without what parts names.
std::string one_line(std::string_view text) {
    return collapsed(text);
}

class ScriptWriter {
public:
    ScriptWriter(const Draft& draft, const ScriptWishes& wishes) : draft_(draft), wishes_(wishes) {}

    WrittenScript write() {
        write_header();
        for (const Piece& piece : draft_.pieces) {
            for (const Piece& part : cut_piece(piece, wishes_.sentences))
                write_piece(part);
        }
        return std::move(script_);
    }

private:
    void write_header() {
        const std::string title = one_line(draft_.title);
        std::vector<std::string> names;
        for (const Piece& piece : draft_.pieces) {
            if (piece.speaker.empty()) continue;
            if (std::find(names.begin(), names.end(), piece.speaker) == names.end())
                names.push_back(piece.speaker);
        }
        if (title.empty() && names.empty()) return;
        std::string& text = script_.text;
        text = "---\n";
        if (!title.empty()) text += fmt::format("title: {}\n", title);
        for (std::size_t i = 0; i < names.size(); ++i)
            text += (i == 0 ? "speakers: " : ", ") + names[i];
        if (!names.empty()) text += '\n';
        text += "---\n";
        // As the script itself will be read, so that a name too long or odd is a matter of text.
        header_ = parse_header(text);
        header_.span = {};
    }

    // A blank line above, but between the items of a list and under a note.
    void part_from_above(Piece::Kind kind, bool counts = false) {
        std::string& text = script_.text;
        const bool item = kind == Piece::Kind::item && last_ == kind && counts == last_counts_;
        const bool close = !text.empty() && (item || last_ == Piece::Kind::note);
        if (!text.empty() && !close) text += '\n';
        last_ = kind;
        last_counts_ = counts;
    }

    void write_piece(const Piece& piece) {
        switch (piece.kind) {
        case Piece::Kind::divider:
            if (script_.text.empty()) return; // at the top it would open a header
            part_from_above(piece.kind);
            script_.text += "---\n";
            return;
        case Piece::Kind::heading: return write_heading(piece);
        case Piece::Kind::note: return write_note(piece);
        case Piece::Kind::paragraph:
        case Piece::Kind::item: return write_thought(piece);
        }
    }

    void write_heading(const Piece& piece) {
        const std::string name = one_line(piece.text);
        if (name.empty()) return;
        part_from_above(piece.kind);
        const auto level = static_cast<std::size_t>(std::clamp(piece.level, 1, 3));
        script_.text += fmt::format("{} {}\n", std::string(level, '#'), name);
    }

    void write_note(const Piece& piece) {
        bool first = true;
        for (const std::string_view line : lines_of(piece.text)) {
            const std::string words = one_line(line);
            if (words.empty()) continue;
            if (first) part_from_above(piece.kind);
            first = false;
            // Words of a draft silence no rule.
            const std::string_view guard = words.starts_with("allow") ? "Note: " : "";
            script_.text += fmt::format("% {}{}\n", guard, words);
        }
    }

    std::string shape_of(const Piece& piece) const {
        constexpr int most = 99;
        if (piece.kind != Piece::Kind::item) return {};
        if (piece.number < 1 || piece.number > most) return "- ";
        // A numbered item whose number is not 1 needs one right above it.
        const bool follows = last_ == Piece::Kind::item && last_counts_;
        return fmt::format("{}. ", follows ? std::min(last_number_ + 1, most) : 1);
    }

    void write_thought(const Piece& piece) {
        Piece tidied = tidied_lines(piece);
        if (trimmed(tidied.text).empty()) return;
        const std::vector<Lean> leans = wanted_leans(tidied);
        const std::string shape = shape_of(piece);
        last_number_ = shape.empty() || shape == "- " ? 0 : std::stoi(shape);
        part_from_above(piece.kind, last_number_ > 0);
        // The number that the list has come to is no matter of how one item reads.
        const std::string alone = last_number_ > 0 ? "1. " : shape;
        ThoughtWriter writer(parser_, header_, alone, tidied, leans);
        const std::string written = writer.write();
        script_.left_out.insert(script_.left_out.end(), writer.dropped().begin(),
                                writer.dropped().end());
        script_.directions += writer.directions();
        script_.stresses += static_cast<int>(leans.size() - writer.dropped().size());
        script_.text += shape;
        if (!piece.speaker.empty()) script_.text += piece.speaker + ": ";
        script_.text += written.substr(alone.size()) + '\n';
    }

    // One line an item; elsewhere blank lines are none and blanks at line edges fall away.
    static Piece tidied_lines(const Piece& piece) {
        Piece tidied = piece;
        tidied.text.clear();
        tidied.leans.clear();
        std::vector<std::size_t> moved(piece.text.size() + 1, 0);
        char pending = '\0';
        for (std::size_t at = 0; at < piece.text.size();) {
            const unicode::CodePoint c = unicode::decode(piece.text, at);
            const bool line_end = c.value == '\n' || c.value == '\r' || c.value == U'\u2028';
            if (unicode::is_blank(c.value) || c.value < 0x20 || c.value == 0x7F) {
                const bool breaks = line_end && piece.kind != Piece::Kind::item;
                if (!tidied.text.empty()) pending = breaks || pending == '\n' ? '\n' : ' ';
                for (std::size_t i = 0; i < c.size; ++i)
                    moved[at + i] = tidied.text.size();
            } else if (c.value != U'\uFEFF') {
                if (pending != '\0') tidied.text += pending;
                pending = '\0';
                for (std::size_t i = 0; i < c.size; ++i)
                    moved[at + i] = tidied.text.size() + i;
                tidied.text += piece.text.substr(at, c.size);
            }
            at += c.size;
        }
        moved[piece.text.size()] = tidied.text.size();
        for (const Lean& lean : piece.leans)
            tidied.leans.push_back({moved[lean.begin], moved[lean.end], lean.heavy});
        return tidied;
    }

    std::vector<Lean> wanted_leans(const Piece& piece) {
        std::vector<Lean> wanted;
        for (const Lean& lean : tidy(piece.text, piece.leans)) {
            std::string inside = words_under(lean, piece.text);
            const bool too_long = std::ssize(split_words(inside)) > wishes_.stress_words;
            if (too_long || (!wanted.empty() && lean.begin < wanted.back().end)) {
                script_.left_out.push_back(std::move(inside));
            } else {
                wanted.push_back(lean);
            }
        }
        return wanted;
    }

    const Draft& draft_;
    const ScriptWishes& wishes_;
    Parser parser_;
    Header header_;
    WrittenScript script_;
    std::optional<Piece::Kind> last_;
    bool last_counts_ = false; // a numbered item
    int last_number_ = 0;
};

} // namespace

WrittenScript write_script(const Draft& draft, const ScriptWishes& wishes) {
    return ScriptWriter(draft, wishes).write();
}

std::string lowered(const std::string& script) {
    Parser parser;
    Memo memo;
    const Document document{
        .uri = "draft", .version = 0, .text = std::make_shared<const Text>(script)};
    const auto analysis = analyse(document, Options{}, parser, memo, Cancel{});
    std::vector<TextEdit> edits;
    for (const Finding& finding : analysis->findings) {
        if (finding.rule->id != std::string_view("all-capitals")) continue;
        const std::vector<Fix> fixes = fixes_of(*analysis, finding);
        if (fixes.empty() || leaves_as_is(fixes.front())) continue;
        edits.insert(edits.end(), fixes.front().edits.begin(), fixes.front().edits.end());
    }
    return say::apply(script, edits);
}

} // namespace say
