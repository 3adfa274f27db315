// Pages that need nothing beside themselves: an HTML frame with styles, code and the script inside.
#pragma once

#include "engine/analysis.h"

#include <string>
#include <string_view>
#include <vector>

namespace say {

// A file of exporters/data as it was compiled in (assets.S).
enum class Asset {
    drawing_css,
    drawing_js,
    controls_css,
    controls_js,
    care_html,
    page_html,
    page_css,
    page_time_js,
    page_text_js,
    page_link_js,
    page_js,
    practice_html,
    practice_css,
    practice_captions_js,
    practice_round_js,
    practice_record_js,
    practice_js,
    print_css,
};
std::string_view bytes_of(Asset asset);

// What stands for {{name}} in a frame; it is not looked at again.
struct Filling {
    std::string_view name;
    std::string text;
};

struct PageParts {
    // Its places are {{title}}, {{language}}, {{styles}}, {{scripts}} and {{script}}, {{care}} for
    // the cautions, and where a page can be served {{live}} (yes or no) and {{connect}} (what it
    // may talk to).
    Asset frame = Asset::page_html;
    std::vector<Asset> styles;          // in order; drawing.css first
    std::vector<Asset> scripts;         // in order; drawing.js first
    bool live = false;                  // it is served, and listens for saves
    std::vector<Filling> fillings = {}; // of places that this page alone has
};
// One HTML file. The script is in it as JSON, in an element with the id "script": nothing that a
// writer types can end that element or become markup.
std::string assemble_page(const PageParts& parts, const Analysis& analysis);

// JSON for a <script> element: every `<` is written as its escape.
std::string json_in_html(std::string_view json);

} // namespace say
