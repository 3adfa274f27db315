// Script time: when each thought begins, what holds as written, where a place is found again, and
// how far eyes travel. Values in and out; nothing here knows the page.

// The thoughts that will be read, one after another. `dropSpare` leaves out what may be dropped and
// closes up behind it. Pauses that are marked and directions that take time hold as written; the
// rest follows the trim, a factor of speed.
function makeTimeline(script, dropSpare) {
  const run = []; // { thought, start, end }: seconds from the top
  let dropped = 0;
  for (const thought of script.thoughts) {
    if (dropSpare && thought.spare) { dropped += thought.seconds + thought.gap; continue; }
    const start = Math.max(thought.at - dropped, 0);
    run.push({ thought, start, end: start + thought.seconds });
  }
  const total = run.length ? run[run.length - 1].end : 0;
  const holds = run.flatMap(({ thought, start }) => holdsOf(thought).map(([at, seconds]) => ({ start: start + at, end: start + at + seconds })));
  let before = 0;
  for (const hold of holds) { hold.before = before; before += hold.end - hold.start; }

  // The last of `rows` that begins at or before `t`; -1 if none does.
  function lastFrom(rows, t) {
    let low = 0, high = rows.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (rows[middle].start <= t + 1e-9) low = middle + 1; else high = middle;
    }
    return low - 1;
  }

  // Seconds held as written before `t`.
  function heldBefore(t) {
    const hold = holds[lastFrom(holds, t)];
    return hold ? hold.before + Math.min(t, hold.end) - hold.start : 0;
  }

  // Seconds on a clock from the top to `t` at a trim.
  const taken = (t, trim) => (t - heldBefore(t)) / trim + heldBefore(t);

  // Where one is after so many seconds on a clock: `taken` the other way round.
  function placeAfter(seconds, trim) {
    let low = 0, high = holds.length; // the first hold that begins later on the clock
    while (low < high) {
      const middle = (low + high) >> 1;
      if (taken(holds[middle].start, trim) <= seconds) low = middle + 1; else high = middle;
    }
    const hold = holds[low - 1];
    if (!hold) return Math.min(seconds * trim, total);
    const since = seconds - taken(hold.start, trim);
    const length = hold.end - hold.start;
    return Math.min(since <= length ? hold.start + since : hold.end + (since - length) * trim, total);
  }

  return {
    run, total, holds, taken, placeAfter,
    // The thought at `t`; those without any time of their own are never it.
    at(t) {
      let index = Math.max(lastFrom(run, Math.min(t, total)), 0);
      while (index > 0 && run[index].thought.seconds === 0) index--;
      return index;
    },
    hold(t) {
      const hold = holds[lastFrom(holds, t)];
      return hold && t < hold.end ? hold : null;
    },
    indexOf: (id) => run.findIndex((row) => row.thought.id === id),
  };
}

// [at, seconds] of what holds in a thought, from its start. Silence holds as a whole.
function holdsOf(thought) {
  if (thought.kind === "silence") return thought.seconds > 0 ? [[0, thought.seconds]] : [];
  return thought.parts.filter((part) => (part.pause !== undefined || part.direction !== undefined) && part.seconds > 0)
    .map((part) => [part.at, part.seconds]);
}

// --- a place that outlives a new export ----------------------------------------------------------

const wordsIn = (text) => new Set(text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []);

// How much two texts have in common: 0 to 1 (Dice's coefficient over their words).
function likeness(a, b) {
  const one = wordsIn(a), other = wordsIn(b);
  if (one.size + other.size === 0) return 0;
  let shared = 0;
  for (const word of one) if (other.has(word)) shared++;
  return (2 * shared) / (one.size + other.size);
}

function placeOf(timeline, index) {
  const near = (step) => timeline.run[index + step]?.thought.id ?? null;
  const { id, text } = timeline.run[index].thought;
  return { id, text, before: near(-1), after: near(1), index };
}

// The thought itself; else the one most like it, if half of its words are; else what stood beside it.
function findPlace(timeline, place) {
  if (!place || !timeline.run.length) return 0;
  const same = timeline.indexOf(place.id);
  if (same >= 0) return same;
  let best = -1, most = 0.5;
  timeline.run.forEach((row, index) => {
    const much = likeness(row.thought.text, place.text ?? "") - Math.abs(index - place.index) * 1e-4;
    if (much >= most) { best = index; most = much; }
  });
  if (best >= 0) return best;
  const before = timeline.indexOf(place.before);
  if (before >= 0) return Math.min(before + 1, timeline.run.length - 1);
  return Math.max(timeline.indexOf(place.after), 0);
}

// --- eyes ----------------------------------------------------------------------------------------

// The visual angle of a width seen from a distance, in degrees: 2 atan(w / 2d).
const visualAngle = (width, distance) => (2 * Math.atan(width / (2 * distance)) * 180) / Math.PI;

// The height of a letter that fills so many minutes of arc, in the unit of the distance.
const letterHeight = (minutes, distance) => 2 * distance * Math.tan(((minutes / 60) * Math.PI) / 360);
