// Every format of a draft, one line each, and how one is told from another.
#include "importers/importer.h"
#include "importers/package.h"
#include "text/ascii.h"
#include "text/encoding.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say {
namespace {

constexpr std::array<Importer, 6> table{{
    {"txt", "plain text", ".txt .text", true, read_text_draft},
    {"md", "Markdown (CommonMark)", ".md .markdown", true, read_markdown},
    {"docx", "a word processor's document, Office Open XML", ".docx .docm .dotx", false, read_docx},
    {"odt", "a word processor's document, OpenDocument", ".odt .ott", false, read_odt},
    {"vtt", "captions as WebVTT", ".vtt", true, read_webvtt_draft},
    {"srt", "captions as SRT", ".srt", true, read_srt_draft},
}};

std::string ending_of(const std::string& name) {
    const std::size_t slash = name.find_last_of("/\\");
    const std::size_t dot = name.rfind('.');
    if (dot == std::string::npos || (slash != std::string::npos && dot < slash)) return {};
    return ascii::lower(name.substr(dot));
}

const Importer* by_ending(const std::string& ending) {
    if (ending.empty()) return nullptr;
    for (const Importer& importer : table) {
        std::string_view rest = importer.endings;
        while (!rest.empty()) {
            const std::size_t blank = rest.find(' ');
            if (rest.substr(0, blank) == ending) return &importer;
            rest.remove_prefix(blank == std::string_view::npos ? rest.size() : blank + 1);
        }
    }
    return nullptr;
}

// What programs save that is no draft we read, by its first bytes.
struct Other {
    std::string_view begins;
    std::string_view is;
    std::string_view remedy;
};
constexpr std::string_view save_as = "open it where it was made and save it as DOCX, ODT or text";
constexpr std::array<Other, 4> others{{
    {"%PDF", "a PDF, which holds a page and not its sentences", save_as},
    {"{\\rtf", "RTF", save_as},
    {"<!DOCTYPE html", "a web page", save_as},
    {"<html", "a web page", save_as},
}};

// "00:00:04,000 --> 00:00:06,000"; a comment of a web page ends in an arrow too.
bool is_time_line(std::string_view line) {
    const std::string_view begin = line.substr(0, line.find("-->"));
    return begin.size() < line.size() && ascii::is_digit(line.front()) &&
           begin.find(':') != std::string_view::npos;
}

bool begins_like_srt(std::string_view text) {
    int seen = 0;
    for (const std::string_view line : lines_of(text.substr(0, 512))) {
        const std::string_view words = trimmed(line);
        if (words.empty()) continue;
        if (is_time_line(words)) return true;
        if (++seen == 2 || !std::all_of(words.begin(), words.end(), ascii::is_digit)) return false;
    }
    return false;
}

Result<const Importer*> by_content(std::string_view bytes, const std::string& name) {
    if (bytes.starts_with("PK")) {
        const auto kind = document_kind(bytes, name);
        if (!kind) return kind.error();
        return find_importer(*kind);
    }
    constexpr std::string_view old_document = "\xD0\xCF\x11\xE0";
    if (bytes.starts_with(old_document)) {
        return Error{
            fmt::format("{}: an old DOC, or a document with a password; {}", name, save_as)};
    }
    const std::string head = to_utf8(bytes.substr(0, 4096), guess_encoding(bytes.substr(0, 4096)));
    for (const Other& other : others) {
        const std::string begin(trimmed(head).substr(0, other.begins.size()));
        if (ascii::lower(begin) == ascii::lower(other.begins)) {
            return Error{fmt::format("{}: {}; {}", name, other.is, other.remedy)};
        }
    }
    if (head.starts_with("WEBVTT")) return find_importer("vtt");
    return begins_like_srt(head) ? find_importer("srt") : nullptr;
}

Result<Draft> read_as_text(std::string_view bytes, const std::string& name,
                           const Importer& importer) {
    if (bytes.size() > largest_text_draft) {
        return Error{fmt::format("{}: larger than {} MiB; split it into parts", name,
                                 largest_text_draft >> 20U)};
    }
    const Encoding encoding = guess_encoding(bytes);
    const std::string text = to_utf8(bytes, encoding);
    if (const std::size_t at = text.find('\0'); at != std::string::npos) {
        return Error{fmt::format("{}: not a text (a zero byte at {}); give a draft with words",
                                 name, at + 1)};
    }
    auto draft = importer.read(text, name);
    if (draft && encoding != Encoding::utf8) {
        draft->told.push_back(
            fmt::format("read as {}; check its accents and quotes", name_of(encoding)));
    }
    return draft;
}

} // namespace

std::span<const Importer> importers() {
    return table;
}

const Importer* find_importer(std::string_view name) {
    const auto* const found =
        std::find_if(table.begin(), table.end(),
                     [&](const Importer& importer) { return importer.name == name; });
    return found == table.end() ? nullptr : found;
}

Result<const Importer*> importer_for(std::string_view bytes, const std::string& name) {
    const std::string ending = ending_of(name);
    if (ending == ".say") return Error{fmt::format("{}: a script already; open it as it is", name)};
    const auto found = by_content(bytes, name);
    if (!found) return found.error();
    if (*found != nullptr) return *found;
    const Importer* named = by_ending(ending);
    if (named == nullptr) return find_importer("txt");
    // An empty or broken document is not a text because of that.
    return named;
}

Result<Draft> read_draft(std::string_view bytes, const std::string& name,
                         const Importer& importer) {
    if (bytes.size() > largest_draft) {
        return Error{fmt::format("{}: larger than {} MiB; take its pictures out and save it again",
                                 name, largest_draft >> 20U)};
    }
    return importer.is_text ? read_as_text(bytes, name, importer) : importer.read(bytes, name);
}

} // namespace say
