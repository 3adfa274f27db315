// The grammar of `.say` scripts. It decides by shape alone: what needs a list of words (a known word in
// capitals, a declared speaker, a unit beside a stroke) is left to the reader of the tree.
//
// Map of the marks
//
//   blocks        header         --- lines around `key: value`, only at the very top
//                 heading        # Name (0:20)     also ## and ###
//                 paragraph      lines up to a blank line, an item, a heading or a divider
//                 item           - words     1. words
//                 divider        ---
//                 note           % never spoken; also a line inside a thought
//
//   standing      pause          ...  …  . . .      beat         x  xx  xxx
//                 breath         /                  reset        //
//                 micropause     (.)                timed_pause  (1.5)  (2s)
//   pairs         stress         *w*  _w_           heavy_stress **w**  __w__  ***w***
//                 soft           ~w~  °w°           aside        ( w )
//                 quoted         "w"  “w”  „w“  «w»  quick       >w<
//                 slow           <w>                quoted_open  a quote that runs to the thought's end
//   at a word     step_up        ^w  ↑w             step_down    ↓w
//                 end_up         w↗                 end_down     w↘
//                 stretch        so::               tie          w‿w
//                 pronouncer     Name{NAYM}         say_as       2:30{= half past two}
//   whole         direction      [ ... ]            speaker      MIRA:
//                 escape         \*  \x  \WORD  \5. code         `as it stands`
//                 address        https://...
//
// A pair begins and ends with an anonymous "delimiter"; all words are hidden tokens.
//
// Every token comes from src/scanner.c and the headers beside it, because every decision looks behind (is a
// blank before it?) or far ahead (is there a closer in this thought?), and one scanner that knows both is easier
// to trust than two lexers that must agree. What is left for this file is the shape of the tree. Two habits keep
// reparsing cheap: a block begins and ends with a plain token, and never with a repeat; and the scanner's
// state is empty at every blank line, so that a block is reused whatever stands above it.
//
// To generate: `tree-sitter generate --abi 14 --no-bindings` (0.22.6), then `tree-sitter test`.

module.exports = grammar({
  name: 'sayline',

  extras: _ => [],

  // The order is that of `enum Token` in src/tokens.h.
  externals: $ => [
    // Blocks.
    $._header_open,
    $.header_key,
    $._header_colon,
    $.header_value,
    $._header_close,
    $._header_end,
    $.heading_marker,
    $.heading_name,
    $._target_open,
    $.heading_target,
    $._target_close,
    $.item_marker,
    $.divider,
    $._lone_note,
    $._blank_lines,
    $._block_end,
    $._section_end,
    $._soft_break,
    // Whole things inside a thought.
    $._text,
    $.note,
    $.speaker,
    $.direction,
    $.escape,
    $.code,
    $.address,
    // Standing marks, and marks at a word.
    $.pause,
    $.beat,
    $.breath,
    $.reset,
    $.micropause,
    $.timed_pause,
    $.step_up,
    $.step_down,
    $.end_up,
    $.end_down,
    $.stretch,
    $.tie,
    $.quoted_open,
    $._pronouncer_open,
    $._say_as_open,
    $.argument,
    $._brace_close,
    // Pairs: an opener and a closer each, in the order of `enum Mark` in src/tokens.h.
    $._stress_open,
    $._stress_close,
    $._heavy_stress_open,
    $._heavy_stress_close,
    $._soft_open,
    $._soft_close,
    $._aside_open,
    $._aside_close,
    $._quoted_open,
    $._quoted_close,
    $._quick_open,
    $._quick_close,
    $._slow_open,
    $._slow_close,
    // In no rule: valid only while the parser recovers from an error, where the scanner keeps out.
    $._error_sentinel,
  ],

  rules: {
    script: $ => seq(
      optional($.header),
      optional($._opening),
      repeat($.section),
    ),

    header: $ => seq(
      alias($._header_open, '---'),
      $._block_end,
      repeat(seq(choice($.header_entry, $.note), $._block_end)),
      choice(
        seq(alias($._header_close, '---'), $._block_end),
        seq($.header_entry, $._header_end), // it was never closed: it ends with its last key
      ),
    ),

    header_entry: $ => seq(
      field('key', $.header_key),
      alias($._header_colon, ':'),
      optional(field('value', $.header_value)),
    ),

    // What comes before the first heading.
    _opening: $ => seq($._block, repeat($._block), $._section_end),

    section: $ => seq($.heading, repeat($._block), $._section_end),

    heading: $ => seq(
      $.heading_marker,
      optional(field('name', $.heading_name)),
      optional(seq(
        alias($._target_open, '('),
        field('target', $.heading_target),
        alias($._target_close, ')'),
      )),
      $._block_end,
    ),

    _block: $ => choice(
      $.paragraph,
      $.item,
      $._divider,
      $._note,
      $._blank_lines,
    ),

    paragraph: $ => seq($._inline, repeat($._inline), $._block_end),

    item: $ => seq($.item_marker, repeat($._inline), $._block_end),

    _divider: $ => seq($.divider, $._block_end),

    // A note in a block that holds nothing but notes.
    _note: $ => seq(alias($._lone_note, $.note), $._block_end),

    _inline: $ => choice(
      $._text,
      $._soft_break,
      $.note,
      $.speaker,
      $.direction,
      $.escape,
      $.code,
      $.address,
      $.pause,
      $.beat,
      $.breath,
      $.reset,
      $.micropause,
      $.timed_pause,
      $.step_up,
      $.step_down,
      $.end_up,
      $.end_down,
      $.stretch,
      $.tie,
      $.pronouncer,
      $.say_as,
      $.quoted_open,
      $.stress,
      $.heavy_stress,
      $.soft,
      $.aside,
      $.quoted,
      $.quick,
      $.slow,
    ),

    pronouncer: $ => seq(
      alias($._pronouncer_open, '{'),
      optional(field('argument', $.argument)),
      alias($._brace_close, '}'),
    ),

    say_as: $ => seq(
      alias($._say_as_open, '{='),
      optional(field('argument', $.argument)),
      alias($._brace_close, '}'),
    ),

    stress: $ => pair($, $._stress_open, $._stress_close),
    heavy_stress: $ => pair($, $._heavy_stress_open, $._heavy_stress_close),
    soft: $ => pair($, $._soft_open, $._soft_close),
    aside: $ => pair($, $._aside_open, $._aside_close),
    quoted: $ => pair($, $._quoted_open, $._quoted_close),
    quick: $ => pair($, $._quick_open, $._quick_close),
    slow: $ => pair($, $._slow_open, $._slow_close),
  },
});

function pair($, open, close) {
  return seq(alias(open, 'delimiter'), repeat1($._inline), alias(close, 'delimiter'));
}
