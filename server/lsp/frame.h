// The outermost coat of the protocol: header lines, a blank line, a body of so many bytes.
// Bytes may come in any pieces; nothing is allocated on the word of a header.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace say::lsp {

// A message longer than this ends the connection: no script is near it.
inline constexpr std::size_t body_cap = 256UL * 1024 * 1024;

struct Frame {
    std::span<char> body; // valid until the reader is touched again
    std::string refusal;  // why the body must not be read; empty for a good one
};

class FrameReader {
public:
    void feed(std::string_view bytes);

    // The next whole message, or nothing until more bytes come.
    std::optional<Frame> next();

    // A header that says no length: where the next message begins can no longer be known.
    bool broken() const { return !complaint_.empty(); }
    const std::string& complaint() const { return complaint_; }

private:
    bool read_headers();
    void read_header(std::string_view line);
    void break_off(std::string complaint);

    std::string bytes_;
    std::size_t taken_ = 0;   // everything before it has been used
    std::size_t scanned_ = 0; // no line end between taken_ and here
    std::size_t header_size_ = 0;
    std::optional<std::size_t> length_;
    bool in_body_ = false;
    std::string refusal_;
    std::string complaint_;
};

std::string frame_header(std::size_t body_size);

// Writes U+FFFD over the \u escapes of half surrogate pairs: they are no text, the JSON library
// throws on them, and an edit must not be lost. Both take six bytes, so the size stays.
void repair_surrogates(std::span<char> json);

} // namespace say::lsp
