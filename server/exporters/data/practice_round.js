// A cold read as figures: what each thought took, beside what was expected. Values in and out;
// nothing here knows the page.

// A thought appears; one looks, begins, says it, and presses. What that takes beside the words is
// about as long as the gap between two thoughts (0.7 s, docs/timing.md), so it is taken off.
const seeAndPress = 0.7;
// Nobody sees, says and presses so fast: a pedal or key that sent itself twice.
const bounce = 0.3;

// The thoughts that have words, of one section with all below it; of the script for -1.
function thoughtsToRead(script, section) {
  const inside = (at) => section < 0 || (at >= 0 && (at === section || inside(script.sections[at].parent)));
  return script.thoughts.filter((thought) => thought.kind !== "silence" && inside(thought.section));
}

// `rows` are { thought, seconds }: from the moment it appeared to the key.
function roundOf(rows) {
  const thoughts = rows.map(({ thought, seconds }) => {
    const taken = Math.max(seconds - seeAndPress, 0.1);
    return { thought, taken, expected: thought.seconds, pace: thought.seconds / taken };
  });
  const sum = (name) => thoughts.reduce((all, each) => all + each[name], 0);
  const round = { thoughts, taken: sum("taken"), expected: sum("expected") };
  round.pace = round.expected / round.taken;
  // A word or two says little of a pace.
  const telling = thoughts.filter((each) => each.expected >= 1);
  const byPace = [...(telling.length > 1 ? telling : thoughts)].sort((one, other) => one.pace - other.pace);
  if (byPace.length > 1) Object.assign(round, { slowest: byPace[0], fastest: byPace[byPace.length - 1] });
  return round;
}

// What is said of a thought, as one line of plain words.
function saidLine(thought) {
  return thought.parts.map((part) => part.instead ?? part.word ?? part.text ?? "").join("").replace(/\s+/g, " ").trim();
}

// The pause that a reader makes for signs between two words (docs/timing.md).
function pauseOfSigns(text) {
  return /[.!?\u2026]/.test(text) ? 0.6 : /[;:\u2013\u2014]/.test(text) ? 0.3 : /[,()]/.test(text) ? 0.15 : 0;
}

// What marks and directions hold beyond the punctuation at their place: at one place the longer counts.
function heldByMarks(thought) {
  let held = 0, here = 0, signs = 0;
  for (const part of thought.parts) {
    if (part.text !== undefined) signs = Math.max(signs, pauseOfSigns(part.text));
    else if (part.word === undefined) here += part.seconds ?? 0;
    else {
      held += Math.max(here - signs, 0);
      here = signs = 0;
    }
  }
  return held + here; // nothing follows the last word that one would pause for
}

// Lines of seconds, a tab and the text, as `sayline calibrate --from FILE.tsv` reads them. There is
// no mark in such a line, so what marks add is taken off.
function timedLines(title, date, round) {
  const lines = round.thoughts.map(({ thought, taken }) => [taken - heldByMarks(thought), saidLine(thought)]).filter(([seconds, text]) => seconds > 0.05 && text);
  const head = `# Cold read of ${(title || "a script").replace(/\s+/g, " ")}, ${date}: seconds, a tab, what was said`;
  return [head, ...lines.map(([seconds, text]) => `${seconds.toFixed(2)}\t${text}`), ""].join("\n");
}

const paceInWords = (pace) => (pace > 1.03 ? "faster than expected" : pace < 0.97 ? "slower than expected" : "as expected");
