#include "exporters/assets.h"

#include "base/markup.h"
#include "exporters/json.h"

#include <array>
#include <cstddef>

// NOLINTBEGIN(readability-identifier-naming): the assembler file defines them by these names
extern "C" const char say_asset_drawing_css[];
extern "C" const char say_asset_drawing_css_end[];
extern "C" const char say_asset_drawing_js[];
extern "C" const char say_asset_drawing_js_end[];
extern "C" const char say_asset_controls_css[];
extern "C" const char say_asset_controls_css_end[];
extern "C" const char say_asset_controls_js[];
extern "C" const char say_asset_controls_js_end[];
extern "C" const char say_asset_care_html[];
extern "C" const char say_asset_care_html_end[];
extern "C" const char say_asset_page_html[];
extern "C" const char say_asset_page_html_end[];
extern "C" const char say_asset_page_css[];
extern "C" const char say_asset_page_css_end[];
extern "C" const char say_asset_page_time_js[];
extern "C" const char say_asset_page_time_js_end[];
extern "C" const char say_asset_page_text_js[];
extern "C" const char say_asset_page_text_js_end[];
extern "C" const char say_asset_page_link_js[];
extern "C" const char say_asset_page_link_js_end[];
extern "C" const char say_asset_page_js[];
extern "C" const char say_asset_page_js_end[];
extern "C" const char say_asset_practice_html[];
extern "C" const char say_asset_practice_html_end[];
extern "C" const char say_asset_practice_css[];
extern "C" const char say_asset_practice_css_end[];
extern "C" const char say_asset_practice_captions_js[];
extern "C" const char say_asset_practice_captions_js_end[];
extern "C" const char say_asset_practice_round_js[];
extern "C" const char say_asset_practice_round_js_end[];
extern "C" const char say_asset_practice_record_js[];
extern "C" const char say_asset_practice_record_js_end[];
extern "C" const char say_asset_practice_js[];
extern "C" const char say_asset_practice_js_end[];
extern "C" const char say_asset_print_css[];
extern "C" const char say_asset_print_css_end[];
// NOLINTEND(readability-identifier-naming)

namespace say {
namespace {

struct Bytes {
    const char* begin;
    const char* end;
};

// In the order of Asset.
const std::array<Bytes, 18> table{
    {{say_asset_drawing_css, say_asset_drawing_css_end},
     {say_asset_drawing_js, say_asset_drawing_js_end},
     {say_asset_controls_css, say_asset_controls_css_end},
     {say_asset_controls_js, say_asset_controls_js_end},
     {say_asset_care_html, say_asset_care_html_end},
     {say_asset_page_html, say_asset_page_html_end},
     {say_asset_page_css, say_asset_page_css_end},
     {say_asset_page_time_js, say_asset_page_time_js_end},
     {say_asset_page_text_js, say_asset_page_text_js_end},
     {say_asset_page_link_js, say_asset_page_link_js_end},
     {say_asset_page_js, say_asset_page_js_end},
     {say_asset_practice_html, say_asset_practice_html_end},
     {say_asset_practice_css, say_asset_practice_css_end},
     {say_asset_practice_captions_js, say_asset_practice_captions_js_end},
     {say_asset_practice_round_js, say_asset_practice_round_js_end},
     {say_asset_practice_record_js, say_asset_practice_record_js_end},
     {say_asset_practice_js, say_asset_practice_js_end},
     {say_asset_print_css, say_asset_print_css_end}}};

std::string joined(const std::vector<Asset>& assets) {
    std::string text;
    for (const Asset asset : assets)
        text += bytes_of(asset);
    return text;
}

// Each {{name}} of the frame by its text. What is filled in is not looked at again, so a script may
// hold such a place as words; a name that nothing is known of stays.
std::string fill(std::string_view frame, const std::vector<Filling>& fillings) {
    std::string page;
    while (!frame.empty()) {
        const std::size_t open = frame.find("{{");
        page += frame.substr(0, open);
        if (open == std::string_view::npos) break;
        frame.remove_prefix(open);
        std::size_t taken = 2;
        std::string_view text = frame.substr(0, taken);
        for (const auto& [name, filling] : fillings) {
            const std::string_view rest = frame.substr(2);
            if (!rest.starts_with(name) || !rest.substr(name.size()).starts_with("}}")) continue;
            taken = name.size() + 4;
            text = filling;
        }
        page += text;
        frame.remove_prefix(taken);
    }
    return page;
}

} // namespace

std::string_view bytes_of(Asset asset) {
    const Bytes& bytes = table.at(static_cast<std::size_t>(asset));
    return {bytes.begin, static_cast<std::size_t>(bytes.end - bytes.begin)};
}

std::string json_in_html(std::string_view json) {
    std::string result;
    result.reserve(json.size());
    for (const char c : json) {
        if (c == '<') {
            result += "\\u003c";
        } else {
            result += c;
        }
    }
    return result;
}

std::string assemble_page(const PageParts& parts, const Analysis& analysis) {
    const std::string& title = analysis.script.header.title;
    std::vector<Filling> fillings = parts.fillings;
    fillings.insert(fillings.end(), {{"title", markup_value(title.empty() ? "Script" : title)},
                                     {"live", parts.live ? "yes" : "no"},
                                     {"connect", parts.live ? "'self'" : "'none'"},
                                     {"language", markup_value(analysis.options.language)},
                                     {"styles", joined(parts.styles)},
                                     {"care", std::string(bytes_of(Asset::care_html))},
                                     {"scripts", joined(parts.scripts)},
                                     {"script", json_in_html(script_json(analysis))}});
    return fill(bytes_of(parts.frame), fillings);
}

} // namespace say
