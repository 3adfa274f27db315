// Cutting the stream into messages.
#include "lsp/frame.h"

#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <cstring>

namespace say::lsp {
namespace {

constexpr std::size_t header_cap = 16UL * 1024;
// A buffer that one large message has stretched is given back.
constexpr std::size_t most_kept = 1024UL * 1024;

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::string to_lower(std::string_view text) {
    std::string result(text);
    std::transform(result.begin(), result.end(), result.begin(), lower);
    return result;
}

// "application/vscode-jsonrpc; charset=utf-8" gives "utf-8"; empty if none is named.
std::string charset_of(std::string_view content_type) {
    const std::string lowered = to_lower(content_type);
    constexpr std::string_view key = "charset=";
    const auto at = lowered.find(key);
    if (at == std::string::npos) return {};
    std::string_view value = std::string_view(lowered).substr(at + key.size());
    value = ascii::trim(value.substr(0, value.find(';')));
    if (value.size() >= 2 && value.front() == '"' && value.back() == '"') {
        value = value.substr(1, value.size() - 2);
    }
    return std::string(value);
}

// The code unit of the escape at `at` ("\uD83D"), or nothing if there is no such escape.
std::optional<std::uint32_t> escape_at(std::span<const char> json, std::size_t at) {
    if (at + 6 > json.size() || json[at] != '\\' || json[at + 1] != 'u') return std::nullopt;
    std::uint32_t unit = 0;
    const char* const first = json.data() + at + 2;
    const auto [stop, error] = std::from_chars(first, first + 4, unit, 16);
    if (error != std::errc{} || stop != first + 4) return std::nullopt;
    return unit;
}

bool is_high(std::uint32_t unit) {
    return unit >= 0xD800 && unit < 0xDC00;
}

bool is_low(std::uint32_t unit) {
    return unit >= 0xDC00 && unit < 0xE000;
}

} // namespace

void FrameReader::feed(std::string_view bytes) {
    if (broken()) return;
    // What was used is dropped only here, so that the bodies handed out stay where they are.
    if (taken_ == bytes_.size()) {
        bytes_.clear();
        if (bytes_.capacity() > most_kept) bytes_.shrink_to_fit();
        scanned_ = taken_ = 0;
    } else if (taken_ > bytes_.size() / 2) {
        bytes_.erase(0, taken_);
        scanned_ -= std::min(scanned_, taken_);
        taken_ = 0;
    }
    bytes_ += bytes;
}

std::optional<Frame> FrameReader::next() {
    if (broken()) return std::nullopt;
    if (!in_body_ && !read_headers()) return std::nullopt;
    if (bytes_.size() - taken_ < *length_) return std::nullopt;

    Frame frame{.body = std::span(bytes_).subspan(taken_, *length_), .refusal = refusal_};
    taken_ += *length_;
    scanned_ = taken_;
    header_size_ = 0;
    length_.reset();
    refusal_.clear();
    in_body_ = false;
    return frame;
}

// True once the blank line behind the headers has come.
bool FrameReader::read_headers() {
    while (!broken()) {
        const auto line_end = bytes_.find('\n', std::max(scanned_, taken_));
        if (line_end == std::string::npos) {
            scanned_ = bytes_.size();
            if (scanned_ - taken_ > header_cap) break_off("header line without an end");
            return false;
        }
        std::string_view line = std::string_view(bytes_).substr(taken_, line_end - taken_);
        if (line.ends_with('\r')) line.remove_suffix(1);
        header_size_ += line.size();
        taken_ = scanned_ = line_end + 1;
        if (header_size_ > header_cap) {
            break_off("header without an end");
        } else if (!line.empty()) {
            read_header(line);
        } else if (length_) {
            in_body_ = true;
            return true;
        } else if (header_size_ > 0) {
            break_off("header without Content-Length");
        } // else a stray line end between two messages
    }
    return false;
}

void FrameReader::read_header(std::string_view line) {
    const auto colon = line.find(':');
    if (colon == std::string_view::npos) {
        break_off(fmt::format("header line without a colon: {:.60}", line));
        return;
    }
    const std::string name = to_lower(ascii::trim(line.substr(0, colon)));
    const std::string_view value = ascii::trim(line.substr(colon + 1));
    if (name == "content-length") {
        std::size_t length = 0;
        const auto [stop, error] =
            std::from_chars(value.data(), value.data() + value.size(), length);
        const bool whole = stop == value.data() + value.size() && !value.empty();
        if (!whole || (error != std::errc{} && error != std::errc::result_out_of_range)) {
            break_off(fmt::format("Content-Length is not a number: {:.60}", value));
        } else if (error == std::errc::result_out_of_range || length > body_cap) {
            break_off(
                fmt::format("Content-Length {:.60} is above the limit of {}", value, body_cap));
        } else if (length_ && *length_ != length) {
            break_off("two Content-Length headers that differ");
        } else {
            length_ = length;
        }
    } else if (name == "content-type") {
        const std::string charset = charset_of(value);
        // "utf8" is what early clients wrote; the protocol asks servers to take it.
        if (!charset.empty() && charset != "utf-8" && charset != "utf8") {
            refusal_ = fmt::format("charset {:.60} is not supported, only utf-8", charset);
        }
    } // any other header is none of our business
}

void FrameReader::break_off(std::string complaint) {
    complaint_ = std::move(complaint);
    bytes_.clear();
    taken_ = scanned_ = 0;
}

std::string frame_header(std::size_t body_size) {
    return fmt::format("Content-Length: {}\r\n\r\n", body_size);
}

void repair_surrogates(std::span<char> json) {
    constexpr std::string_view replacement = "\\uFFFD";
    std::size_t at = 0;
    while (at < json.size()) {
        const void* const hit = std::memchr(json.data() + at, '\\', json.size() - at);
        if (hit == nullptr) return;
        at = static_cast<std::size_t>(static_cast<const char*>(hit) - json.data());
        const auto unit = escape_at(json, at);
        if (!unit) {
            at += 2; // "\\", "\n" or broken: the parser will say
            continue;
        }
        if (is_high(*unit)) {
            const auto second = escape_at(json, at + 6);
            if (second && is_low(*second)) {
                at += 12;
                continue;
            }
        }
        if (is_high(*unit) || is_low(*unit)) {
            std::copy(replacement.begin(), replacement.end(),
                      json.begin() + static_cast<std::ptrdiff_t>(at));
        }
        at += 6;
    }
}

} // namespace say::lsp
