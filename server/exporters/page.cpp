#include "exporters/page.h"

#include "exporters/assets.h"

namespace say {
namespace {

PageParts reading_page(bool live) {
    return {.frame = Asset::page_html,
            .styles = {Asset::drawing_css, Asset::controls_css, Asset::page_css},
            .scripts = {Asset::drawing_js, Asset::controls_js, Asset::page_time_js,
                        Asset::page_text_js, Asset::page_link_js, Asset::page_js},
            .live = live};
}

} // namespace

std::string write_page(const Analysis& analysis, const ExportOptions& /*options*/) {
    return assemble_page(reading_page(false), analysis);
}

std::string live_page(const Analysis& analysis) {
    return assemble_page(reading_page(true), analysis);
}

} // namespace say
