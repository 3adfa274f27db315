// Plain text first: colour only repeats what the words say.
#include "cli/render.h"

#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace say::cli {
namespace {

constexpr std::size_t widest_excerpt = 96; // code points
constexpr std::size_t lead_in = 24;        // kept before the words when a line is cut

// The code points of a line, so that cutting never splits one.
std::vector<std::string_view> code_points(std::string_view line) {
    std::vector<std::string_view> points;
    for (std::size_t at = 0; at < line.size();) {
        const std::size_t size = unicode::decode(line, at).size;
        points.push_back(line.substr(at, size));
        at += size;
    }
    return points;
}

} // namespace

Place place_of(const Text& text, Offset at) {
    const std::uint32_t line = text.line_of(at);
    const Span before{text.line_start(line), at};
    const std::size_t column = unicode::count_code_points(slice(text.bytes(), before));
    return {line + 1, static_cast<std::uint32_t>(column) + 1};
}

std::string Paint::wrap(std::string_view code, std::string_view text) const {
    return on_ ? fmt::format("\x1b[{}m{}\x1b[0m", code, text) : std::string(text);
}

std::string Paint::severity(Severity severity, std::string_view text) const {
    switch (severity) {
    case Severity::error: return wrap("1;31", text);
    case Severity::warning: return wrap("1;33", text);
    case Severity::hint: return wrap("36", text);
    }
    return std::string(text);
}

std::string printable(std::string_view text) {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const auto point = unicode::decode(text, at);
        const bool control = point.value < 0x20 || (point.value >= 0x7F && point.value < 0xA0);
        if (control) {
            result += ' ';
        } else {
            unicode::append(result, point.value);
        }
        at += point.size;
    }
    return result;
}

std::string excerpt(const Text& text, Span span, const Paint& paint) {
    const Span line = text.line_span(text.line_of(span.begin));
    const auto points = code_points(slice(text.bytes(), line));
    const std::size_t first =
        unicode::count_code_points(slice(text.bytes(), {line.begin, span.begin}));
    const Offset end = std::min(span.end, line.end);
    const std::size_t length = std::max<std::size_t>(
        1, unicode::count_code_points(slice(text.bytes(), {span.begin, end})));

    std::size_t begin = 0;
    if (points.size() > widest_excerpt && first > lead_in) begin = first - lead_in;
    const std::size_t stop = std::min(points.size(), begin + widest_excerpt);
    std::string shown = begin > 0 ? "… " : "";
    for (std::size_t i = begin; i < stop; ++i)
        shown += printable(points[i]);
    if (stop < points.size()) shown += " …";

    const std::size_t indent = first - begin + (begin > 0 ? 2 : 0);
    const std::size_t room = std::max<std::size_t>(1, stop > first ? stop - first : 0);
    return fmt::format("    {}\n    {}{}\n", shown, std::string(indent, ' '),
                       paint.alarm(std::string(std::min(length, room), '~')));
}

std::string bar(Seconds expected, Seconds limit, int width) {
    if (limit <= Seconds{0}) return std::string(static_cast<std::size_t>(width), ' ');
    const double share = expected / limit;
    const int filled = std::clamp(static_cast<int>(std::lround(share * width)), 0, width);
    // What is over is drawn to the same scale, up to half a bar.
    const int over = std::clamp(static_cast<int>(std::lround((share - 1) * width)), 0, width / 2);
    std::string drawn(static_cast<std::size_t>(filled), '#');
    drawn.append(static_cast<std::size_t>(width - filled), '.');
    drawn.append(static_cast<std::size_t>(over), '+');
    return drawn;
}

std::string counted(std::size_t count, std::string_view thing) {
    return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

} // namespace say::cli
