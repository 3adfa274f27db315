; The colours of a script, by the names of Helix's themes. No node is captured twice and no predicate is used, so the
; order of the patterns does not matter, which has differed between versions.

; Blocks
(header "---" @punctuation.delimiter)
(header_key) @variable.other.member
(header_entry ":" @punctuation.delimiter)
(header_value) @string

(heading_marker) @markup.heading.marker
(heading_name) @markup.heading
(heading ["(" ")"] @punctuation.bracket)
(heading_target) @constant.numeric

(item_marker) @markup.list
(divider) @punctuation.special
(note) @comment
(speaker) @label

; Never spoken
(direction) @comment

; Silence
[
  (pause)
  (beat)
  (breath)
  (reset)
  (micropause)
  (timed_pause)
] @keyword

; The voice
(stress) @markup.italic
(heavy_stress) @markup.bold
(soft) @markup.italic
(quoted) @markup.quote
(quoted_open) @punctuation.special

[
  (step_up)
  (step_down)
  (end_up)
  (end_down)
  (stretch)
  (tie)
] @operator

(stress "delimiter" @punctuation.special)
(heavy_stress "delimiter" @punctuation.special)
(soft "delimiter" @punctuation.special)
(aside "delimiter" @punctuation.bracket)
(quoted "delimiter" @punctuation.special)
(quick "delimiter" @punctuation.special)
(slow "delimiter" @punctuation.special)

; How to say it
(pronouncer ["{" "}"] @punctuation.bracket)
(say_as ["{=" "}"] @punctuation.bracket)
(pronouncer argument: (argument) @string.special)
(say_as argument: (argument) @string)

; As it stands
(escape) @constant.character.escape
(code) @markup.raw
(address) @markup.link.url
