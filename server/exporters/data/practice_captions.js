// Captions of anybody, from a file to cues: WebVTT of the W3C, and SRT. What a cue says is read by
// the browser's own WebVTT parser, through VTTCue. Blocks and times are read here: a <track> leaves
// out in silence what it cannot read, and somebody whose file is broken needs the line and a remedy.
// Values in and out; nothing here knows the page.

const timesAsWritten = "00:01:02.500 --> 00:01:04.000";
// No caption is as long as these; what is, was never one, and would only keep the browser busy.
const mostCaptionBytes = 16 * 1024 * 1024;
const longestCaption = 4000; // characters

// { cues, faults }. A cue is { begin, end, turns }, in order of time; a turn is { speaker, lines }. A
// fault is { line, what }: what was left out and how it is mended.
function readCaptions(bytes) {
  if (bytes.byteLength > mostCaptionBytes) return { cues: [], faults: [{ line: 1, what: "this is too large for captions; choose the .vtt or .srt file that goes with it" }] };
  const { text, fault } = captionText(bytes);
  if (fault) return { cues: [], faults: [fault] };
  const lines = text.split(/\r\n|[\r\n]/);
  const read = { cues: [], faults: [] };
  const webvtt = /^WEBVTT(?:$|[ \t])/.test(lines[0]);
  // The header of WebVTT runs to the first blank line.
  let at = 0;
  if (webvtt) while (at < lines.length && lines[at].trim() && !lines[at].includes("-->")) at++;
  while (at < lines.length) at = lines[at].trim() ? readCaptionBlock(lines, at, webvtt, read) : at + 1;
  read.cues.sort((one, other) => one.begin - other.begin);
  return read;
}

function captionText(bytes) {
  const [first, second] = new Uint8Array(bytes, 0, Math.min(2, bytes.byteLength));
  const utf16 = first === 0xfe && second === 0xff ? "utf-16be" : first === 0xff && second === 0xfe ? "utf-16le" : null;
  if (utf16) return { text: new TextDecoder(utf16).decode(bytes) };
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    const before = new TextDecoder().decode(bytes).split("\uFFFD")[0];
    return { fault: { line: before.split(/\r\n|[\r\n]/).length, what: "letters here are not UTF-8; open the file in a text editor and save it as UTF-8" } };
  }
}

// From a line that is not blank to the next that is, or to the next cue's times: a missing blank
// line must not swallow a cue. The line behind the block is what comes back.
function readCaptionBlock(lines, from, webvtt, read) {
  const blank = (at) => at >= lines.length || !lines[at].trim();
  const timed = (at) => at < lines.length && lines[at].includes("-->");
  const numbered = (at) => /^\s*\d+\s*$/.test(lines[at]) && timed(at + 1);
  let at = from;
  const pass = () => { while (!blank(at)) at++; return at; };
  if (!timed(at)) {
    if (webvtt && /^(?:NOTE|STYLE|REGION)(?:$|[ \t])/.test(lines[at])) return pass();
    at++; // an identifier, or the number that SRT counts by
    if (!timed(at)) {
      read.faults.push({ line: from + 1, what: `there are no times above this text; write them above it, as ${timesAsWritten}` });
      return pass();
    }
  }
  const line = at + 1;
  const times = captionTimes(lines[at++]);
  const payload = [];
  while (!blank(at) && !timed(at) && !numbered(at)) payload.push(lines[at++]);
  const leave = (what) => { read.faults.push({ line, what }); return at; };
  if (!times) return leave(`the times cannot be read; write them as ${timesAsWritten}`);
  if (times.end <= times.begin) return leave("this caption ends before it begins; mend its times");
  const text = payload.join("\n");
  if (text.length > longestCaption) return leave("this is too long for one caption; cut it in several");
  const turns = captionTurns(text, webvtt);
  if (turns.length) read.cues.push({ ...times, turns });
  return at;
}

// "[h:]mm:ss.ttt"; a comma may stand for the point, as SRT writes it, and digits of the fraction may
// be missing, as many programs leave them out. What stands behind the times says where a cue stands.
function captionTimes(line) {
  const time = /^(?:(\d{1,4}):)?([0-5]?\d):([0-5]?\d)(?:[.,](\d{1,6}))?$/;
  const [before, behind] = line.split("-->");
  const [begin, end] = [before.trim(), behind.trim().split(/\s/)[0]].map((written) => {
    const found = time.exec(written);
    return found ? Number(found[1] ?? 0) * 3600 + Number(found[2]) * 60 + Number(found[3]) + Number(`0.${found[4] ?? 0}`) : NaN;
  });
  return Number.isFinite(begin) && Number.isFinite(end) ? { begin, end } : null;
}

// Who says what. Tags go; the small text above a ruby base says the same words again.
function captionTurns(text, webvtt) {
  let payload = text.replace(/\{\\[^}]*\}/g, ""); // a place on the screen: {\an8}
  if (!webvtt) payload = payload.replace(/<(?!\/?(?:b|i|u|s|font|c|v|ruby|rt|lang)\b)/gi, "&lt;");
  const spoken = new VTTCue(0, 1, payload).getCueAsHTML();
  const walk = document.createTreeWalker(spoken, NodeFilter.SHOW_TEXT);
  const turns = [];
  while (walk.nextNode()) {
    const { data, parentElement } = walk.currentNode;
    if (parentElement?.closest("rt")) continue;
    const speaker = parentElement?.closest("[title]")?.title.trim() ?? "";
    const last = turns[turns.length - 1];
    if (last && last.speaker === speaker) last.text += data;
    else turns.push({ speaker, text: data });
  }
  return turns.map((turn) => ({ speaker: turn.speaker, lines: turn.text.split("\n").map((line) => line.trim()).filter(Boolean) }))
    .filter((turn) => turn.lines.length);
}

// What stands at a time, what comes next, where to go from here. Cues may overlap.
function makeCueList(cues) {
  const ends = []; // the latest end of a cue and all before it
  for (const cue of cues) ends.push(Math.max(cue.end, ends[ends.length - 1] ?? 0));

  // The last cue that has begun at `t`; -1 before the first.
  function begun(t) {
    let low = 0, high = cues.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (cues[middle].begin <= t + 1e-6) low = middle + 1; else high = middle;
    }
    return low - 1;
  }

  return {
    cues, begun,
    total: ends[ends.length - 1] ?? 0,
    speakers: [...new Set(cues.flatMap((cue) => cue.turns.map((turn) => turn.speaker)))].filter(Boolean),
    longest: cues.reduce((most, cue) => Math.max(most, ...cue.turns.flatMap((turn) => turn.lines.map((line) => line.length))), 0),
    // Indices of those that stand, the last few at most: more have no room.
    standing(t, most = 6) {
      const found = [];
      for (let at = begun(t); at >= 0 && ends[at] > t + 1e-6 && found.length < most; at--) if (cues[at].end > t + 1e-6) found.unshift(at);
      return found;
    },
  };
}
