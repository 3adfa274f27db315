// textDocument/documentLink and definition: the files that a script names.
#include "features/features.h"
#include "text/ascii.h"
#include "text/unicode.h"

namespace say {
namespace {

constexpr std::string_view blanks = " \t\r\n";

// A name with an ending, as files of pictures and sound have it: "tide.mp4".
bool may_be_file(std::string_view written) {
    constexpr std::size_t longest_ending = 5;
    const std::size_t dot = written.rfind('.');
    if (dot == std::string_view::npos || dot == 0) return false;
    const std::string_view ending = written.substr(dot + 1);
    if (ending.empty() || ending.size() > longest_ending) return false;
    for (const char c : ending) {
        if (!ascii::is_alnum(c)) return false;
    }
    return ascii::is_letter(ending.front());
}

class Finder {
public:
    Finder(const Analysis& analysis, const std::function<bool(const Link&)>& exists)
        : script_(analysis.script), text_(analysis.document.text->bytes()),
          reader_(analysis.options.reader), exists_(exists) {}

    std::vector<Link> find() {
        header();
        for (const Placed& placed : script_.thoughts) {
            for (const Mark& mark : placed.thought->written.marks) {
                if (mark.kind == MarkKind::direction)
                    direction(mark.span + placed.block.span.begin.value);
            }
        }
        return std::move(links_);
    }

private:
    bool add(Span span, Link::Kind kind, std::string_view target) {
        if (span.empty() || target.empty()) return false;
        Link link{.span = span, .kind = kind, .target = std::string(target)};
        if (!exists_(link)) return false;
        links_.push_back(std::move(link));
        return true;
    }

    // In the order of the lines. A pace is the reader's, or on top of it.
    void header() {
        for (const HeaderEntry& entry : script_.header.entries) {
            const std::string key = unicode::to_lower(slice(text_, entry.key));
            if (key == "reader") add(entry.value, Link::Kind::reader, slice(text_, entry.value));
            if (key == "pace") add(entry.value, Link::Kind::reader, reader_);
            if (key != "speakers") continue;
            for (const Speaker& speaker : script_.header.speakers) {
                if (entry.value.covers(speaker.reader_span))
                    add(speaker.reader_span, Link::Kind::reader, speaker.reader);
            }
        }
    }

    // "[clip: low tide.mp4 4s]": all behind the colon but the time, or else each word of it.
    void direction(Span span) {
        Span inner{span.begin + 1, Offset{span.end.value - 1}};
        if (inner.end <= inner.begin) return;
        const std::string_view words = slice(text_, inner);
        if (words.find('.') == std::string_view::npos) return;
        if (whole_name(inner, words)) return;
        for (std::size_t begin = words.find_first_not_of(blanks); begin != std::string_view::npos;
             begin = words.find_first_not_of(blanks, begin)) {
            const std::size_t end = std::min(words.find_first_of(blanks, begin), words.size());
            file(inner, words, begin, end);
            begin = end;
        }
    }

    bool whole_name(Span inner, std::string_view words) {
        const std::size_t colon = words.find(':');
        if (colon == std::string_view::npos) return false;
        const std::size_t begin = words.find_first_not_of(blanks, colon + 1);
        if (begin == std::string_view::npos) return false;
        std::size_t end = words.find_last_not_of(blanks) + 1;
        if (const auto time = ending_time(words.substr(begin, end - begin));
            time && !time->words.empty()) {
            end = begin + time->words.size();
        }
        return file(inner, words, begin, end);
    }

    bool file(Span inner, std::string_view words, std::size_t begin, std::size_t end) {
        const std::string_view written = words.substr(begin, end - begin);
        if (!may_be_file(written)) return false;
        if (written.find_first_of("\r\n") != std::string_view::npos) return false;
        return add(make_span(begin, end) + inner.begin.value, Link::Kind::file, written);
    }

    const Script& script_;
    std::string_view text_;
    const std::string& reader_;
    const std::function<bool(const Link&)>& exists_;
    std::vector<Link> links_;
};

} // namespace

std::vector<Link> links(const Analysis& analysis, const std::function<bool(const Link&)>& exists) {
    return Finder(analysis, exists).find();
}

} // namespace say
