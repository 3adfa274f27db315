#include "exporters/practice.h"

#include "exporters/assets.h"
#include "exporters/json.h"

namespace say {

std::string write_practice(const Analysis& analysis, const ExportOptions& options) {
    const PageParts parts{
        .frame = Asset::practice_html,
        .styles = {Asset::drawing_css, Asset::controls_css, Asset::practice_css},
        .scripts = {Asset::drawing_js, Asset::controls_js, Asset::practice_captions_js,
                    Asset::practice_round_js, Asset::practice_record_js, Asset::practice_js},
        .fillings = {{"captions", json_in_html(captions_json(analysis, options))}}};
    return assemble_page(parts, analysis);
}

} // namespace say
