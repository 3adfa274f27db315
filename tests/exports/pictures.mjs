// The manual's pictures of what is written for others, drawn from what the program makes of the demo:
//   in-browser pictures.mjs PROGRAM [--picture NAME FILE]
// NAME is a key of `pictures` below; without one all are drawn into the folder of screenshots. Each
// holds what it shows against the script, so that no picture tells what the program does not write.
// The reading page and the practice page draw their own: page.mjs, practice.mjs.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { check, demo, exported, same, scriptOf, shot, source, withBrowser, work } from "./browser.mjs";

const style = (name) => readFileSync(join(source, "server/exporters/data", name), "utf8");
const styles = `${style("controls.css")}${style("drawing.css")}
  html, body { height: auto; }
  body { padding: 20px 24px; font-size: 16px; line-height: 1.4; }
  h1 { margin: 0 0 10px; font-size: 20px; font-weight: 600; }
  h2 { margin: 0 0 4px; font-size: 16px; font-weight: 600; color: var(--cue); }
  code, pre { margin: 0; font: 15px/1.45 "DejaVu Sans Mono", monospace; white-space: pre-wrap; overflow-wrap: anywhere; }
  svg { display: block; } svg text { font: 13.5px system-ui, "DejaVu Sans", sans-serif; fill: var(--ink); }
  .sign { color: var(--mark); } svg .sign { fill: var(--mark); } svg .quiet { fill: var(--soft); }
  .columns { display: grid; grid-template-columns: 1fr 1fr; gap: 8px 24px; }`;

const html = (text) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
const clock = (seconds) => `${Math.floor(Math.round(seconds) / 60)}:${String(Math.round(seconds) % 60).padStart(2, "0")}`;

// Shows a body as a page of its own; a file, so that it may load the files beside it.
async function shown(context, name, body, more = "") {
  const file = join(work, `${name}.html`);
  writeFileSync(file, `<!doctype html><meta charset="utf-8"><title>${name}</title><style>${styles}${more}</style>${body}`);
  const page = await context.newPage();
  await page.goto(pathToFileURL(file).href);
  return page;
}

const wholeOf = (page, file) => page.screenshot({ path: file, fullPage: true });

// --- captions ------------------------------------------------------------------------------------

// A frame without a picture of anybody: head and shoulders before a plain wall.
const frame = `data:image/svg+xml,${encodeURIComponent('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 912 340">'
  + '<rect width="912" height="340" fill="#3c5156"/><g fill="#223033"><circle cx="456" cy="110" r="72"/><path d="M296 360q0-160 160-160t160 160z"/></g></svg>')}`;

// The browser itself draws the caption: its track is our WebVTT, its sound our guide read.
async function captions(context, file) {
  const [vtt, srt] = ["vtt", "srt"].map((form) => exported(demo, form));
  writeFileSync(join(work, "talk.wav"), exported(demo, "wav", "buffer"));
  const shownCues = ["9", "10"];
  const cuesIn = (text) => text.split("\n\n").filter((each) => shownCues.includes(each.split("\n")[0])).join("\n\n");
  for (const text of [vtt, srt]) check(cuesIn(text).includes("So how many"), `other captions than thought: ${cuesIn(text)}`);
  const page = await shown(context, "captions", `<video width="912" height="340" poster='${frame}' src="talk.wav"></video>
    <div class="columns"><div><h2>--to vtt</h2><pre>${html(cuesIn(vtt))}</pre></div><div><h2>--to srt</h2><pre>${html(cuesIn(srt))}</pre></div></div>`,
  "video { display: block; object-fit: cover; margin-block-end: 14px; }");
  const drawn = await page.evaluate(async (text) => {
    const video = document.querySelector("video");
    const track = document.createElement("track");
    const ready = Promise.all([[track, "load"], [video, "seeked"]].map(([what, event]) => new Promise((done) => { what.addEventListener(event, done); })));
    track.src = URL.createObjectURL(new Blob([text], { type: "text/vtt" }));
    video.append(track);
    track.track.mode = "showing";
    video.currentTime = 29;
    await ready;
    return [...track.track.activeCues].map((cue) => cue.id);
  }, vtt);
  same(drawn, [shownCues[0]], "the captions that stand");
  await page.waitForTimeout(500);
  await wholeOf(page, file);
}

// --- words on an axis of time --------------------------------------------------------------------

const signs = { pause: "...", breath: "/", beat: "x", reset: "//", micropause: "(.)", "timed-pause": "(s)" };

// A thought's words and marked pauses below each other's times, as SVG from (0, 0).
function timeline(thought, wide) {
  return thought.parts.map((part) => {
    const left = part.at * wide;
    const width = part.seconds * wide;
    if (part.word !== undefined) {
      const marked = part.marks ? ' class="sign" font-weight="700"' : "";
      return `<rect x="${left + 0.5}" width="${Math.max(1, width - 1.5)}" height="5" fill="var(${part.marks ? "--mark" : "--soft"})"/>
        <text x="${left}" y="24"${marked}>${html(part.word)}</text>`;
    }
    if (part.pause === undefined) return "";
    check(signs[part.pause], `no sign for ${part.pause}`);
    return `<rect x="${left + 1}" width="${width - 3}" height="4" y=".5" fill="none" stroke="var(--mark)"/>
      <text class="sign" x="${left}" y="24">${html(signs[part.pause])}</text><text class="sign" x="${left}" y="42">${part.seconds} s</text>`;
  }).join("");
}

// --- the guide read ------------------------------------------------------------------------------

// The samples of a WAVE file of 16 bits and one channel, each from -1 to 1.
function samplesOf(wave) {
  same([wave.readUInt16LE(20), wave.readUInt16LE(22), wave.readUInt16LE(34)], [1, 1, 16], "form, channels, bits");
  let at = 12;
  while (wave.toString("latin1", at, at + 4) !== "data") at += 8 + wave.readUInt32LE(at + 4);
  const count = wave.readUInt32LE(at + 4) / 2;
  return { rate: wave.readUInt32LE(24), samples: Float32Array.from({ length: count }, (_, index) => wave.readInt16LE(at + 8 + 2 * index) / 32768) };
}

// From the lowest to the highest sample of each stroke, one stroke a pixel.
function waveform({ rate, samples }, from, to, wide, high) {
  let path = "";
  for (let x = 0; x < Math.round((to - from) * wide); x++) {
    const part = samples.subarray(Math.round((from + x / wide) * rate), Math.round((from + (x + 1) / wide) * rate));
    if (part.length === 0) break;
    const [low, top] = part.reduce(([least, most], each) => [Math.min(least, each), Math.max(most, each)], [1, -1]);
    path += `M${x + 0.5} ${(-top * high / 2 - 0.5).toFixed(1)}V${(-low * high / 2 + 0.5).toFixed(1)}`;
  }
  return `<path d="${path}" stroke="var(--cue)" fill="none"/>`;
}

async function guideRead(context, file) {
  const script = scriptOf(demo);
  const sound = samplesOf(exported(demo, "wav", "buffer"));
  check(Math.abs(sound.samples.length / sound.rate - script.seconds) < 0.002, "the sound is not as long as the script");
  const width = 912;
  const whole = width / script.seconds;
  const hello = script.thoughts.filter((thought) => thought.section === 0);
  const end = hello.at(-1).at + hello.at(-1).seconds;
  const overview = `<svg width="${width}" height="128"><rect width="${end * whole}" height="128" fill="#223033"/>
    <g transform="translate(0 36)">${waveform(sound, 0, script.seconds, whole, 68)}</g>
    ${script.thoughts.map((each) => `<rect x="${each.at * whole + 0.5}" y="80" width="${each.seconds * whole - 1}" height="8" fill="var(${each.kind === "silence" ? "--edge" : "--soft"})"/>`).join("")}
    ${script.sections.map((each) => `<rect x="${each.at * whole}" y="76" width="1.5" height="48" fill="var(--edge)"/><text x="${each.at * whole + 5}" y="118">${clock(each.at)} ${html(each.name)}</text>`).join("")}</svg>`;
  const wide = width / Math.max(...hello.map(({ seconds }) => seconds));
  const rows = hello.map((each) => `<svg width="${width}" height="140"><text class="quiet" x="0" y="14">${clock(each.at)}</text>
    <g transform="translate(0 52)">${waveform(sound, each.at, each.at + each.seconds, wide, 76)}</g>
    <g transform="translate(0 94)">${timeline(each, wide)}</g></svg>`).join("");
  const page = await shown(context, "guide", `<h1>${html(script.title)}, said by a machine in ${clock(script.seconds)}</h1>${overview}
    <h1 style="margin-top:18px">The first ${Math.round(end)} seconds, word by word</h1>${rows}`);
  await wholeOf(page, file);
}

// --- the running order ---------------------------------------------------------------------------

// Comma-separated values as RFC 4180 has them.
function rowsOf(csv) {
  const records = csv.trim().split("\r\n").map((line) => [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)]
    .map(([, field]) => (field.startsWith('"') ? field.slice(1, -1).replaceAll('""', '"') : field)));
  const [names, ...rest] = records;
  return rest.map((record) => Object.fromEntries(names.map((name, index) => [name, record[index]])));
}

async function runningOrder(context, file) {
  const script = scriptOf(demo);
  const rows = rowsOf(exported(demo, "csv"));
  same(rows.filter(({ kind }) => kind === "section").map(({ section }) => section), script.sections.map(({ name }) => name), "sections");
  // A direction that takes no time has its moment alone.
  const times = (row) => (Number(row.seconds) > 0 ? `<td>${clock(row.in)}</td><td>${clock(row.out)}</td><td>${Number(row.seconds).toFixed(1)}</td>` : `<td>${clock(row.in)}</td><td></td><td></td>`);
  const looks = {
    section: (row) => `${times(row)}<th colspan="2">${html(row.section)}</th>`,
    thought: (row) => `${times(row)}<td>${html(row.speaker)}</td><td>${html(row.text)}</td>`,
    silence: (row) => `${times(row)}<td></td><td><i>silence</i></td>`,
    direction: (row) => `${times(row)}<td></td><td><b>${html(row.text)}</b></td>`,
  };
  const wanted = script.sections.slice(0, 2).map(({ name }) => name);
  const table = rows.filter(({ section }) => wanted.includes(section)).map((row) => `<tr class="row-${row.kind}">${looks[row.kind](row)}</tr>`).join("");
  const page = await shown(context, "running-order", `<h1>${html(script.title)}, ${html(script.date)}</h1>
    <table><thead><tr><th>In</th><th>Out</th><th>Seconds</th><th>Who</th><th>What</th></tr></thead><tbody>${table}</tbody></table>`,
  `:root { color-scheme: light; } body { background: #fff; color: #1c1f24; }
    table { border-collapse: collapse; width: 100%; } td, th { text-align: start; padding: 3px 10px 3px 0; border-block-end: 1px solid #c9cdd2; vertical-align: top; }
    :is(td, thead th):nth-child(-n+3) { font-variant-numeric: tabular-nums; text-align: end; }
    .row-section > * { padding-block-start: 14px; font-weight: 700; border-block-end: 2px solid #1c1f24; } .row-direction td { background: #e4e8ec; }`);
  await wholeOf(page, file);
}

// The value is shown as it is written, but for its line ends: a part a line.
async function wordByWord(context, file) {
  const thought = scriptOf(demo).thoughts.find(({ text }) => text.startsWith("It takes one low tide"));
  const [, head, list] = new RegExp(`\\n  (\\{\\n   "id": "${thought.id}"[^]*?)\\n   "parts": \\[([^]*?)\\n   \\]\\n  \\}`).exec(exported(demo, "json"));
  const parts = list.split(/(?<=\}),\n/);
  same(parts.map((part) => JSON.parse(part)), thought.parts, "the parts as they are written");
  const oneLine = (text) => html(text.trim().replace(/\n\s*/g, " ").replace(/([{[]) | (?=[}\]])/g, "$1"));
  const coloured = (part, index) => ("word" in thought.parts[index] && !thought.parts[index].marks) || "text" in thought.parts[index] ? oneLine(part) : `<span class="sign">${oneLine(part)}</span>`;
  const page = await shown(context, "word-by-word", `<h1>${html(demo.split("\n")[thought.line - 1])}</h1>
    <svg width="912" height="52">${timeline(thought, 912 / thought.seconds)}</svg>
    <pre style="margin:6px 0 10px">${oneLine(head)} "parts": [</pre><pre class="parts">${parts.map(coloured).join(",\n")}</pre>`,
  ".parts { columns: 2; column-gap: 20px; font-size: 13.5px; }");
  await wholeOf(page, file);
}

// --- for a synthesiser ---------------------------------------------------------------------------

// What stands in the script for each thought, with all that is no word of it as marks.
function markedLine(thought) {
  const plain = thought.text.replaceAll(" ", "");
  let spoken = 0;
  return demo.split("\n")[thought.line - 1].replace(/\[[^\]]*\]|\{[^}]*\}|[A-Z]+:(?= )|\S| /g, (part) => {
    if (part === " ") return part;
    if (part.length > 1 || part !== plain[spoken]) return `<span class="sign">${html(part)}</span>`;
    spoken++;
    return html(part);
  });
}

async function synthesiser(context, file) {
  const { thoughts } = scriptOf(demo);
  const pieces = exported(demo, "ssml").match(/<voice.*?<\/voice>|<break[^>]*\/>/g);
  const elements = thoughts.map((thought) => {
    const own = pieces.shift();
    same(own.startsWith("<voice"), thought.kind !== "silence", thought.text);
    // Silence has no gap of its own.
    return own + (thought.gap > 0 && thought.kind !== "silence" ? pieces.shift() : "");
  });
  same(pieces, [], "what belongs to no thought");
  const coloured = (text) => text.split(/(<[^>]*>)/).map((each) => (each.startsWith("<") ? `<span class="sign">${html(each)}</span>` : html(each))).join("");
  const rows = ["It takes one low tide", "We call ours Patella", "a pencil", "We meet at 8:30"].map((opening) => {
    const index = thoughts.findIndex(({ text }) => text.startsWith(opening));
    return `<pre>${markedLine(thoughts[index])}</pre><pre>${coloured(elements[index])}</pre>`;
  }).join("");
  const page = await shown(context, "synthesiser", `<div class="columns"><h2>In the script</h2><h2>For a synthesiser</h2>${rows}</div>`,
    ".columns { grid-template-columns: 2fr 3fr; } .columns pre { border-block-start: 1px solid var(--edge); padding-block-start: 8px; }");
  await wholeOf(page, file);
}

// --- all of them ---------------------------------------------------------------------------------

const pictures = { captions, synthesiser, "guide-read": guideRead, "running-order": runningOrder, "word-by-word": wordByWord };
const [flag, name, file] = process.argv.slice(2);
check(!flag || (flag === "--picture" && pictures[name] && file), `--picture NAME FILE, with a name of ${Object.keys(pictures).join(", ")}`);
const wanted = flag ? [[name, file]] : Object.keys(pictures).map((each) => [each, shot(each)]);
process.exit(await withBrowser(wanted.map(([each, to]) => [each, (context) => pictures[each](context, to), { viewport: { width: 960, height: 400 } }])));
