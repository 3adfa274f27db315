// The pages' own files (data/), compiled in as they are: read-only bytes from a name to its _end.
    .section .rodata

    .macro asset name, file
    .global say_asset_\name
    .hidden say_asset_\name
    .type say_asset_\name, %object
say_asset_\name:
    .incbin "\file"
    .global say_asset_\name\()_end
    .hidden say_asset_\name\()_end
say_asset_\name\()_end:
    .byte 0
    .size say_asset_\name, . - say_asset_\name
    .endm

    asset drawing_css, "drawing.css"
    asset drawing_js, "drawing.js"
    asset controls_css, "controls.css"
    asset controls_js, "controls.js"
    asset care_html, "care.html"
    asset page_html, "page.html"
    asset page_css, "page.css"
    asset page_time_js, "page_time.js"
    asset page_text_js, "page_text.js"
    asset page_link_js, "page_link.js"
    asset page_js, "page.js"
    asset practice_html, "practice.html"
    asset practice_css, "practice.css"
    asset practice_captions_js, "practice_captions.js"
    asset practice_round_js, "practice_round.js"
    asset practice_record_js, "practice_record.js"
    asset practice_js, "practice.js"
    asset print_css, "print.css"

    .section .note.GNU-stack, "", %progbits
