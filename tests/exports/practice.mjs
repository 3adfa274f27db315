// The practice page in a browser, with a clock that the test winds. Captions of others are read by
// the page and, beside it, by the browser's own <track>, which knows nothing of our code. Sources:
// WebVTT and its examples, W3C, https://www.w3.org/TR/webvtt1/; the form of SRT is common practice;
// the first bytes of WebM are EBML's, RFC 8794, section 11.2.1; contrast and targets as in page.mjs;
// what `sayline calibrate` reads, docs/timing.md. The rest is what docs/practice.md says.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { accessible, again, cautioned, check, demo, exported, faintTexts, pageFile, same, scriptOf, shot, until, withBrowser, work } from "./browser.mjs";

async function opened(context, text = demo, { cautions = false, settings = { lead: 0 }, name = "practice" } = {}) {
  const page = await context.newPage();
  await page.clock.install({ time: new Date("2027-04-12T08:00:00") });
  if (!cautions) await page.addInitScript(() => localStorage.setItem("sayline cautions", "true"));
  await page.addInitScript((value) => { if (value && !localStorage.getItem("sayline practice settings")) localStorage.setItem("sayline practice settings", JSON.stringify(value)); }, settings);
  await page.goto(pageFile(text, name, "practice"));
  await page.clock.pauseAt(new Date("2027-04-12T08:05:00"));
  return page;
}

const run = (page, seconds) => page.clock.runFor(Math.round(seconds * 1000));
const textOf = (page, id) => page.textContent(`#${id}`);

// What stands on the stage: who says which lines.
const standing = (page, which = ":not(.ahead)") => page.evaluate((not) => [...document.querySelectorAll(`#layer .cue-words${not} .thought`)].map((turn) =>
  [turn.querySelector(".speaker")?.textContent ?? "", turn.querySelector(".words").textContent]), which);

async function choose(page, name, content) {
  await page.setInputFiles("#file", { name, mimeType: "", buffer: Buffer.isBuffer(content) ? content : Buffer.from(content) });
  await until(page, () => document.getElementById("notice").textContent !== "");
  return textOf(page, "notice");
}
const quiet = (page) => page.evaluate(() => document.getElementById("notice").replaceChildren());

// --- captions ------------------------------------------------------------------------------------

// Example 1 of the W3C's specification: an interview, with two who speak at once.
const interview = `WEBVTT

00:11.000 --> 00:13.000
<v Roger Bingham>We are in New York City

00:13.000 --> 00:16.000
<v Roger Bingham>We\u2019re actually at the Lucern Hotel, just down the street

00:16.000 --> 00:18.000
<v Roger Bingham>from the American Museum of Natural History

00:18.000 --> 00:20.000
<v Roger Bingham>And with me is Neil deGrasse Tyson

00:20.000 --> 00:22.000
<v Roger Bingham>Astrophysicist, Director of the Hayden Planetarium

00:22.000 --> 00:24.000
<v Roger Bingham>at the AMNH.

00:24.000 --> 00:26.000
<v Roger Bingham>Thank you for walking down here.

00:27.000 --> 00:30.000
<v Roger Bingham>And I want to do a follow-up on the last conversation we did.

00:30.000 --> 00:31.500 align:right size:50%
<v Roger Bingham>When we e-mailed\u2014

00:30.500 --> 00:32.500 align:left size:50%
<v Neil deGrasse Tyson>Didn\u2019t we talk about enough in that conversation?

00:32.000 --> 00:35.500 align:right size:50%
<v Roger Bingham>No! No no no no; 'cos 'cos obviously 'cos

00:32.500 --> 00:33.500 align:left size:50%
<v Neil deGrasse Tyson><i>Laughs</i>

00:35.500 --> 00:38.000
<v Roger Bingham>You know I\u2019m so excited my glasses are falling off here.
`;
const roger = "Roger Bingham", neil = "Neil deGrasse Tyson";

async function interviewOfTheStandard(context) {
  const page = await opened(context);
  same(await choose(page, "interview.vtt", interview), "interview.vtt is ready.", "a file without faults");
  same(await textOf(page, "source"), "interview.vtt: 13 captions, 0:38, 2 speakers", "what was chosen");
  await page.click("[data-do=captions]");
  // Read from the specification by hand.
  const wanted = [
    [10.9, []],
    [11.1, [[roger, "We are in New York City"]]],
    [12.9, [[roger, "We are in New York City"]]],
    [13.1, [[roger, "We\u2019re actually at the Lucern Hotel, just down the street"]]],
    [26.5, []],
    [30.2, [[roger, "When we e-mailed\u2014"]]],
    [31, [[roger, "When we e-mailed\u2014"], [neil, "Didn\u2019t we talk about enough in that conversation?"]]],
    [31.6, [[neil, "Didn\u2019t we talk about enough in that conversation?"]]],
    [32.8, [[roger, "No! No no no no; 'cos 'cos obviously 'cos"], [neil, "Laughs"]]],
    [37.9, [[roger, "You know I\u2019m so excited my glasses are falling off here."]]],
  ];
  let t = 0;
  for (const [at, words] of wanted) {
    await run(page, at - t);
    t = at;
    same(await standing(page), words, `what stands at ${at} s`);
    if (at === 31) await page.screenshot({ path: shot("practice-two-at-once") });
  }
  await run(page, 0.2);
  check((await textOf(page, "layer")).startsWith("End. 0:38"), `at the end: ${await textOf(page, "layer")}`);
  same(await textOf(page, "go"), "Go", "the button at the end");
}

// The same bytes by the browser's own reader, in a page that holds nothing of ours.
async function readByTheBrowser(context, text) {
  const page = await context.newPage();
  const cues = await page.evaluate((source) => new Promise((done, lost) => {
    const video = document.createElement("video");
    const track = document.createElement("track");
    track.default = true;
    track.src = URL.createObjectURL(new Blob([source], { type: "text/vtt" }));
    track.onload = () => done([...track.track.cues].map((cue) => {
      const read = cue.getCueAsHTML();
      for (const small of read.querySelectorAll("rt")) small.remove();
      return [cue.startTime, cue.endTime, read.querySelector("[title]")?.title.trim() ?? "", read.textContent.replace(/\s+/g, " ").trim()];
    }));
    track.onerror = () => lost(new Error("the browser does not take it for WebVTT"));
    video.append(track);
    document.body.append(video);
    track.track.mode = "hidden";
  }), text);
  await page.close();
  return cues;
}
const readByThePage = (page, text) => page.evaluate((source) => {
  const { cues, faults } = readCaptions(new TextEncoder().encode(source).buffer);
  return { faults, cues: cues.map(({ begin, end, turns }) => [begin, end, turns[0].speaker, turns.flatMap((turn) => turn.lines).join(" ").replace(/\s+/g, " ")]) };
}, text);

async function asTheBrowserReads(context) {
  const page = await opened(context);
  const files = {
    interview,
    // More of what the specification shows: comments, styles, regions, identifiers, classes, ruby,
    // times within a cue, several lines, escapes, hours.
    rest: "\uFEFFWEBVTT - a title behind it\nKind: captions\n\nNOTE\nThis is no cue,\nand goes on.\n\nSTYLE\n::cue { color: red }\n\nREGION\nid:shore\nwidth:40%\n\n"
      + "7 - the pool\n00:01.000 --> 00:04.000 line:0 position:20% align:start\n- Never drink\n- from the pool. &lt;It&gt; &amp; that.\n\n"
      + "00:00:05.000 --> 00:00:06.000\n<v.loud Mira Stone><c.first.low>Count</c> <b>all <i>of</i></b> <00:00:05.500><ruby>them<rt>limpets</rt></ruby></v>\n\n"
      + "01:02:03.004 --> 01:02:04.000\n<lang en-GB>An hour&nbsp;on</lang> 5 &gt; 4\n\n"
      + "00:00:07.000 --> 00:00:09.000\nwithout a line between\n00:00:10.000 --> 00:00:12.000\nthe next one",
    drafts: exported(demo, "vtt"),
  };
  for (const [name, text] of Object.entries(files)) {
    const { cues, faults } = await readByThePage(page, text);
    const theirs = (await readByTheBrowser(context, text)).sort((one, other) => one[0] - other[0]);
    same(faults, [], `faults in ${name}`);
    check(theirs.length > 3, `the browser reads ${theirs.length} cues of ${name}`);
    same(cues, theirs, name);
  }
}

async function captionsOfTheScript(context) {
  const page = await opened(context);
  const theirs = await readByTheBrowser(context, exported(demo, "vtt"));
  same(await textOf(page, "source"), `This script: ${theirs.length} captions, 1:44, 2 speakers`, "the script's own captions");
  await page.click("[data-do=captions]");
  let t = 0;
  for (const [begin, end, speaker, text] of theirs) {
    for (const [at, wanted] of [[begin + 0.02, true], [end - 0.02, true], [end + 0.02, false]]) {
      await run(page, at - t);
      t = at;
      const stands = (await standing(page)).some(([who, words]) => who === speaker && words.replaceAll("\n", " ") === text);
      check(stands === wanted, `"${text}" at ${at.toFixed(2)} s ${wanted ? "does not stand" : "still stands"}`);
    }
  }
  // The lines break where those of the vtt target do.
  const ours = await page.evaluate(() => JSON.parse(document.getElementById("captions").textContent).map((cue) => cue.lines.join("\n")));
  const written = exported(demo, "vtt").split(/\n\n/).filter((block) => block.includes("-->")).map((block) => block.split("\n").slice(2).join("\n").replace(/<v [^>]*>/, "").trim());
  same(ours, written, "the lines");
}

async function otherForms(context) {
  const page = await opened(context);
  // Common practice: numbers, commas, tags of old players, a place in braces, Windows line ends.
  const srt = "\uFEFF1\r\n00:00:01,000 --> 00:00:02,500\r\n{\\an8}<font color=\"#ff0000\">Count <b>them</b></font>\r\n<i>all</i>\r\n\r\n"
    + "2\r\n00:00:03,000 --> 00:00:04,000 X1:10 X2:20\r\nTom & Ann: 3 < 5, <u>I</u> &amp; you\r\n3\r\n00:00:05,5 --> 00:00:06,000\r\n\r\n4\r\n00:00:07,000 --> 00:00:08,000\r\nLast";
  for (const [name, bytes] of [["utf-8", Buffer.from(srt)], ["utf-16", Buffer.from(srt, "utf16le")]]) {
    await quiet(page);
    same(await choose(page, "pool.srt", bytes), "pool.srt is ready.", `SRT as ${name}`);
    same(await textOf(page, "source"), "pool.srt: 3 captions, 0:08", `SRT as ${name}`);
  }
  await page.click("[data-do=captions]");
  await run(page, 1.1);
  same(await standing(page), [["", "Count them\nall"]], "tags and places");
  await run(page, 2.1);
  same(await standing(page), [["", "Tom & Ann: 3 < 5, I & you"]], "signs that are no tags");
  await run(page, 4);
  same(await standing(page), [["", "Last"]], "the last one");
  await page.keyboard.press("Escape");
  await page.click("#own");
  check((await textOf(page, "source")).startsWith("This script"), "the way back to the script");
  // By dropping it.
  await page.evaluate((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], "dropped.vtt"));
    for (const type of ["dragover", "drop"]) document.body.dispatchEvent(new DragEvent(type, { dataTransfer: transfer, bubbles: true, cancelable: true }));
  }, interview);
  await until(page, () => document.getElementById("source").textContent.startsWith("dropped.vtt: 13 captions"));
}

async function brokenFiles(context) {
  const page = await opened(context);
  await choose(page, "interview.vtt", interview);
  const before = await textOf(page, "source");
  const bad = [
    ["empty.srt", "", /^empty\.srt, line 1: there are no captions in it; choose .* What was here before stays\.$/],
    ["words.txt", "Just words.\nAnd more.\n", /line 1: there are no times above this text; write them above it, as 00:01:02\.500 --> /],
    ["latin.srt", Buffer.concat([Buffer.from("1\n00:00:01,000 --> 00:00:02,000\ncaf"), Buffer.from([0xe9]), Buffer.from("\n")]), /line 3: letters here are not UTF-8; .* save it as UTF-8\. What/],
    ["film.mp4", Buffer.from([0, 0, 0, 32, 0x66, 0x74, 0x79, 0x70, 0xff, 0xd8]), /line 1: .*What was here before stays/],
    ["huge.vtt", Buffer.alloc(17 * 1024 * 1024, 65), /line 1: this is too large for captions; choose the \.vtt or \.srt file/],
    ["late.vtt", "WEBVTT\n\n00:99:01.000 --> 00:01.000\nNever.\n", /line 3: the times cannot be read; write them as/],
  ];
  for (const [name, content, wanted] of bad) {
    await quiet(page);
    const message = await choose(page, name, content);
    check(wanted.test(message), `${name}: "${message}"`);
    same(await textOf(page, "source"), before, `the captions before ${name}`);
  }
  // What can be read is read, and the first fault is named.
  await quiet(page);
  const some = "WEBVTT\n\n00:01.000 --> 00:02.000\nGood.\n\nNo times here.\n\n00:05.000 --> 00:04.000\nBackwards.\n\n00:06.000 -> 00:07.000\nA short arrow.\n\n00:08.000 --> 00:09.000\nGood again.\n";
  same(await choose(page, "some.vtt", some), "some.vtt, line 6: there are no times above this text; write them above it, as 00:01:02.500 --> 00:01:04.000. 2 other places cannot be read either. 2 captions can be read.", "a file that is broken in places");
  await page.screenshot({ path: shot("practice-broken-file") });
  const { faults } = await readByThePage(page, some);
  same(faults.map(({ line }) => line), [6, 8, 11], "lines of faults");
  // Hostile sizes neither hang nor break.
  for (const text of [`WEBVTT\n\n00:01.000 --> 00:02.000\n${"<i>".repeat(300000)}deep\n`, `WEBVTT\n\n${"00:01.000 --> 00:02.000\nAt once.\n\n".repeat(50000)}`, "WEBVTT\n\n" + "-->\n".repeat(100000), "\n".repeat(200000)]) {
    const begun = Date.now();
    await readByThePage(page, text);
    check(Date.now() - begun < 10000, `${text.length} characters take ${Date.now() - begun} ms`);
  }
  // Whatever is done to a file, what is read of it holds.
  const wrong = await page.evaluate((text) => {
    let seed = 20270412;
    const random = (below) => { seed = (Math.imul(seed, 1103515245) + 12345) >>> 0; return (seed >>> 8) % below; };
    const signs = ["-->", "\n", "\n\n", "<v ", "<", ">", "&", ":", "99", "{\\an8}", "NOTE", "\u0000", "\uFFFD", "\r", "0"];
    for (let time = 0; time < 3000; time++) {
      let broken = text;
      for (let cut = 0; cut < 6; cut++) { const at = random(broken.length); broken = broken.slice(0, at) + signs[random(signs.length)] + broken.slice(at + random(12)); }
      const bytes = new TextEncoder().encode(broken);
      if (time % 3 === 0) bytes[random(bytes.length)] = 0xc0;
      const { cues, faults } = readCaptions(bytes.buffer);
      const lines = broken.split(/\r\n|[\r\n]/).length;
      const sound = cues.every((cue, index) => cue.end > cue.begin && cue.begin >= (cues[index - 1]?.begin ?? 0) && cue.turns.length && cue.turns.every((turn) => turn.lines.length && turn.lines.every((line) => line.trim() === line && line)))
        && faults.every(({ line, what }) => line >= 1 && line <= lines && what);
      if (!sound) return JSON.stringify({ time, broken, cues, faults });
    }
    return "";
  }, interview);
  same(wrong, "", "a file that was broken at random");
  await quiet(page);
  await choose(page, "crowd.vtt", `WEBVTT\n\n${"00:01.000 --> 00:02.000\nAt once.\n\n".repeat(5000)}`);
  await page.click("[data-do=captions]");
  await run(page, 1.2);
  check((await standing(page)).length <= 6, "a crowd of captions at once");
}

async function captionKeys(context) {
  const page = await opened(context, demo, { settings: { lead: 3 } });
  await choose(page, "interview.vtt", interview);
  await page.click("[data-do=captions]");
  for (const count of ["3", "2", "1"]) {
    await run(page, 0.1);
    same(await textOf(page, "count"), count, "the count");
    if (count === "2") await page.screenshot({ path: shot("practice-count") });
    await run(page, 0.9);
  }
  await run(page, 0.05);
  check(!(await page.isVisible("#count")), "the count stays");
  await run(page, 0.5);
  same(await textOf(page, "layer"), "silence, 11", "a silence is told");
  const words = async (what, wanted) => same((await standing(page)).map(([, text]) => text), wanted, what);
  await page.keyboard.press("PageDown");
  await words("the next caption", ["We are in New York City"]);
  await page.keyboard.press("ArrowRight");
  await words("the one after", ["We\u2019re actually at the Lucern Hotel, just down the street"]);
  await page.keyboard.press("PageUp");
  await words("back", ["We are in New York City"]);
  await page.keyboard.press("Space");
  await run(page, 60);
  await words("held", ["We are in New York City"]);
  same(await textOf(page, "go"), "Go", "the button while it is held");
  await page.keyboard.press("Enter");
  await run(page, 1.5);
  await page.keyboard.press("PageUp");
  await run(page, 0.1);
  same((await textOf(page, "times")).includes("0:11 of 0:38"), true, `back inside a caption: ${await textOf(page, "times")}`);
  // Faster by half: two seconds take 1.33.
  for (let time = 0; time < 12; time++) await page.keyboard.press("ArrowUp");
  check((await textOf(page, "times")).includes("1.50x"), `the highest speed: ${await textOf(page, "times")}`);
  await page.keyboard.press("PageUp"); // to the very top
  await page.keyboard.press("PageDown");
  await words("at the first again", ["We are in New York City"]);
  await run(page, 1.28);
  await words("before its end at 1.5", ["We are in New York City"]);
  await run(page, 0.1);
  await words("behind its end at 1.5", ["We\u2019re actually at the Lucern Hotel, just down the street"]);
  for (let time = 0; time < 30; time++) await page.keyboard.press("ArrowDown");
  check((await textOf(page, "times")).includes("0.50x"), "the lowest speed");
  await page.keyboard.press("End");
  await words("the last", ["You know I\u2019m so excited my glasses are falling off here."]);
  await page.keyboard.press("Home");
  same(await textOf(page, "go"), "Go", "at the top it waits");
  // The one ahead, faintly; set up holds what runs.
  await page.keyboard.press("Space");
  await page.click("#bar [data-open=setup]");
  await page.check("[name=ahead]");
  await page.fill("[name=speed]", "1");
  await page.selectOption("[name=lead]", "0");
  const size = () => page.evaluate(() => parseFloat(getComputedStyle(document.getElementById("stage")).fontSize));
  const plain = await size();
  await page.fill("[name=size]", "150");
  check(Math.abs((await size()) / plain - 1.5) < 0.01, `text of 150 %: ${plain} and ${await size()} px`);
  await page.fill("[name=size]", "100");
  await page.click("#setup [data-close]");
  same(await textOf(page, "go"), "Go", "it runs on behind a dialog");
  await page.click("[data-do=top]");
  await page.keyboard.press("Space");
  await run(page, 11.5);
  await words("now", ["We are in New York City"]);
  same((await standing(page, ".ahead")).map(([, text]) => text), ["We\u2019re actually at the Lucern Hotel, just down the street"], "ahead");
  await page.screenshot({ path: shot("practice-ahead") });
  // Kept for the next visit.
  await again(page);
  same(await page.evaluate(() => JSON.parse(localStorage.getItem("sayline practice settings"))), { size: 100, lead: 0, speed: 1, ahead: true }, "settings");
}

// --- cold read -----------------------------------------------------------------------------------

const shownThought = (page) => page.evaluate(() => document.querySelector("#layer .thought")?.dataset.id ?? null);
const cells = (page, where) => page.evaluate((rows) => [...document.querySelectorAll(`${rows} tr`)].map((row) => [...row.cells].map((cell) => cell.textContent)), where);

async function coldRead(context) {
  const script = scriptOf(demo);
  const thoughts = script.thoughts.filter((thought) => thought.kind !== "silence");
  const page = await opened(context);
  await page.click("[data-do=cold]");
  // One takes half as long again for the second thought, and half the time for the fourth.
  const factor = (index) => (index === 1 ? 1.5 : index === 3 ? 0.5 : 1);
  for (const [index, thought] of thoughts.entries()) {
    same(await shownThought(page), thought.id, `thought ${index + 1}`);
    same(await page.evaluate(() => document.querySelectorAll("#layer .thought").length), 1, "thoughts at once");
    if (index === 1) check(await page.isVisible("#layer .word.stress"), "the marks are not drawn");
    if (index === 0) check((await textOf(page, "layer")).includes("Hello") && await page.isVisible("#layer .speaker"), "heading and speaker are missing");
    if (index === 6) await page.screenshot({ path: shot("practice-cold") });
    await run(page, thought.seconds * factor(index) + 0.7);
    if (index % 3 === 0) await page.keyboard.press("Space");
    else if (index % 3 === 1) await page.keyboard.press("PageDown");
    else await page.click("#stage", { position: { x: 30, y: 300 } });
  }
  check(await page.isVisible("#result"), "no result at the end");
  const rows = await cells(page, "#rows");
  same(rows.length, thoughts.length, "rows");
  for (const [index, [text, expected, taken, pace]] of rows.entries()) {
    same(text, thoughts[index].text, `row ${index + 1}`);
    same(expected, thoughts[index].seconds.toFixed(1), `expected in row ${index + 1}`);
    check(Math.abs(Number(taken) - thoughts[index].seconds * factor(index)) < 0.06, `taken in row ${index + 1}: ${taken}`);
    check(Math.abs(Number(pace.slice(0, -1)) - 1 / factor(index)) < 0.06, `pace in row ${index + 1}: ${pace}`);
  }
  const all = thoughts.reduce((sum, thought) => sum + thought.seconds, 0);
  const taken = thoughts.reduce((sum, thought, index) => sum + thought.seconds * factor(index), 0);
  const [[, expectedAll, takenAll, paceAll]] = await cells(page, "#all");
  check(Math.abs(Number(expectedAll) - all) < 0.1 && Math.abs(Number(takenAll) - taken) < 0.2, `together ${expectedAll} and ${takenAll}, not ${all.toFixed(1)} and ${taken.toFixed(1)}`);
  same(paceAll, `${(all / taken).toFixed(2)}x`, "the pace of all");
  const odd = await page.innerText("#odd");
  check(odd.includes(`Slowest for its words: \u201c${thoughts[1].text.slice(0, 20)}`) && odd.includes(`Fastest for its words: \u201c${thoughts[3].text.slice(0, 8)}`), odd);
  check((await textOf(page, "sum")).startsWith(`${thoughts.length} thoughts in 1:23 where 1:22 was expected: a pace of 0.99x, as expected.`), await textOf(page, "sum"));
  // A real table, and bars whose lengths are its numbers on one scale.
  same(await page.evaluate(() => [document.querySelectorAll("#rows th[scope=row]").length, document.querySelectorAll("thead th[scope=col]").length, document.querySelector("caption").textContent.length > 10]), [thoughts.length, 4, true], "the parts of a table");
  const bars = await page.evaluate(() => [...document.querySelectorAll("#rows .bars")].map((bars) => [...bars.children].map((bar) => bar.getBoundingClientRect().width / bars.getBoundingClientRect().width)));
  const widest = Math.max(...thoughts.map((thought, index) => thought.seconds * Math.max(1, factor(index))));
  for (const [index, [outline, solid]] of bars.entries()) {
    check(Math.abs(outline - thoughts[index].seconds / widest) < 0.03 && Math.abs(solid - (thoughts[index].seconds * factor(index)) / widest) < 0.03, `bars of row ${index + 1}: ${outline}, ${solid}`);
  }
  await page.screenshot({ path: shot("practice-result"), fullPage: true });
  await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
  same(await page.evaluate(() => document.getElementById("record").getBoundingClientRect().top >= 0), true, "the recorder at the foot of a long result");
  await page.evaluate(() => scrollTo(0, 0));
  await page.click("#result [data-do=cold]");
  same(await shownThought(page), thoughts[0].id, "again begins at the first");
  // Left at once, the times of the read before are still to be had.
  await page.keyboard.press("Escape");
  check(await page.isVisible("#start"), "a cold read without a thought has a result");
  await page.click("#last");
  same(await cells(page, "#rows"), rows, "the last times");
  // Read once more, faster.
  await page.click("#result [data-do=cold]");
  for (const thought of thoughts) { await run(page, thought.seconds * 0.8 + 0.7); await page.keyboard.press("Space"); }
  check((await textOf(page, "sum")).endsWith("a pace of 1.25x, faster than expected. The read before it took 1:23."), await textOf(page, "sum"));
}

async function coldByHand(context) {
  const page = await opened(context, "One thing we count is limpets.\n\nTwo of us walk the shore.\n\nThree of us write it down.\n\nxx\n\nAnd [look up] we (2.0) go home again.\n");
  await page.click("[data-do=cold]");
  const text = () => page.innerText("#layer .words");
  // A pedal that sends itself twice.
  await run(page, 3);
  await page.keyboard.press("Space");
  await run(page, 0.1);
  await page.keyboard.press("Space");
  check((await text()).startsWith("Two"), "a key that came twice skips a thought");
  // This thought anew, then the one before.
  await run(page, 5);
  await page.keyboard.press("PageUp");
  check((await text()).startsWith("Two"), "back inside a thought");
  await run(page, 0.5);
  await page.keyboard.press("ArrowLeft");
  check((await text()).startsWith("One"), "back right after it came up");
  await run(page, 2.7);
  await page.keyboard.press("Enter");
  // What lies over the words does not count.
  await run(page, 1);
  await page.click("#bar [data-open=help]");
  await run(page, 30);
  await page.keyboard.press("Escape");
  await new Promise((done) => setTimeout(done, 300)); // a dialog tells of its end a moment later
  await run(page, 2.2);
  await page.keyboard.press("PageDown");
  await page.keyboard.press("Escape");
  const rows = await cells(page, "#rows");
  same(rows.map(([words, , taken]) => [words.split(" ")[0], taken]), [["One", "2.0"], ["Two", "1.5"]], "what was taken until it was stopped");
  check((await textOf(page, "sum")).startsWith("2 of 4 thoughts"), await textOf(page, "sum"));
}

async function coldPart(context) {
  const script = scriptOf(demo);
  const page = await opened(context);
  same(await page.evaluate(() => [...document.getElementById("part").options].map((option) => option.textContent)), ["all of it", "Hello", "What a limpet is", "How it works", "Goodbye"], "parts");
  await page.selectOption("#part", { label: "Goodbye" });
  const inside = script.thoughts.filter((thought) => thought.section === 3 && thought.kind !== "silence");
  check((await textOf(page, "amount")).includes(`${inside.length} thoughts`), await textOf(page, "amount"));
  await page.click("[data-do=cold]");
  same(await shownThought(page), inside[0].id, "the first thought of the section");
}

// From the page into a file, and from the file into the reader's numbers.
async function learnsFromACold(context) {
  const page = await opened(context);
  const thoughts = scriptOf(demo).thoughts.filter((thought) => thought.kind !== "silence");
  const held = (thought) => thought.parts.reduce((sum, part) => sum + (part.word === undefined ? part.seconds ?? 0 : 0), 0);
  // Somebody who takes a quarter longer for words and holds what is marked as it is marked.
  const factor = 1.25;
  await page.click("[data-do=cold]");
  for (const thought of thoughts) {
    await run(page, (thought.seconds - held(thought)) * factor + held(thought) + 0.7);
    await page.keyboard.press("Space");
  }
  const [download] = await Promise.all([page.waitForEvent("download"), page.click("[data-do=save-times]")]);
  same(download.suggestedFilename(), "Counting limpets, cold read.tsv", "the file's name");
  const file = join(work, "cold.tsv");
  await download.saveAs(file);
  const lines = readFileSync(file, "utf8").split("\n");
  check(lines[0].startsWith("# Cold read of Counting limpets, 2027-04-12"), lines[0]);
  same(lines.length, thoughts.length + 2, "lines in the file");
  check(lines.some((line) => /^\d+\.\d\d\tWe meet at half past eight by the old.lifeboat house\./.test(line)), `what is said instead is missing: ${lines.find((line) => line.includes("We meet"))}`);
  const learnt = spawnSync(process.env.SAYLINE_PROGRAM, ["calibrate", "--reader", "mira", "--from", file, "--as", "json", "--date", "2027-04-12", "--try"], { encoding: "utf8", cwd: work });
  check(learnt.status === 0, learnt.stderr);
  const numbers = JSON.parse(learnt.stdout);
  same(numbers.left_out, [], "lines that cannot be used");
  // Pauses are drawn to what most readers do, for there are few.
  check(Math.abs(numbers.speech - factor) < 0.03, `speech ${numbers.speech} from a reader of ${factor}`);
  check(numbers.pauses > 1 && numbers.pauses < 1.3, `pauses ${numbers.pauses} from a reader of ${factor}`);
}

// --- takes ---------------------------------------------------------------------------------------

const agree = async (page) => {
  await page.click("#record");
  check(await page.isVisible("#ask"), "it does not ask");
  await page.click("#agree");
};

// Counts how often the microphone is asked for, and keeps what it gives.
const watchMicrophone = (page) => page.evaluate(() => {
  window.asked = 0;
  const original = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
  navigator.mediaDevices.getUserMedia = async (what) => { window.asked++; window.stream = await original(what); return window.stream; };
});

// A file of sound by the browser's own decoder, in a page that holds nothing of ours.
async function heard(context, bytes) {
  const page = await context.newPage();
  const sound = await page.evaluate(async (text) => {
    const { buffer } = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const decoded = await new OfflineAudioContext(1, 48000, 48000).decodeAudioData(buffer);
    return { seconds: decoded.duration, loudest: decoded.getChannelData(0).reduce((most, each) => Math.max(most, Math.abs(each)), 0) };
  }, bytes.toString("base64"));
  await page.close();
  return sound;
}

async function records(context) {
  const page = await opened(context);
  await again(page); // now it has the storage that stays
  await watchMicrophone(page);
  await page.click("#record");
  const ask = await textOf(page, "ask");
  for (const word of ["stays on this device", "sends nothing", "where you choose"]) check(ask.includes(word), `the question lacks "${word}"`);
  await page.screenshot({ path: shot("practice-ask") });
  await page.click("#ask [data-close] >> nth=1");
  same([await page.evaluate(() => window.asked), await textOf(page, "record")], [0, "Record"], "after no");
  await agree(page);
  await until(page, () => document.getElementById("recording").textContent === "Recording");
  same(await page.evaluate(() => window.asked), 1, "times the microphone was asked for");
  same(await textOf(page, "record"), "Stop", "the button while it records");
  // Beside an exercise.
  await page.click("[data-do=cold]");
  await run(page, 4);
  await page.keyboard.press("Space");
  await new Promise((done) => setTimeout(done, 1500));
  same(await textOf(page, "recorded"), "0:04", "how long it records");
  await page.screenshot({ path: shot("practice-recording") });
  await page.click("#record");
  await until(page, () => document.querySelector("#takes audio"));
  same(await page.evaluate(() => window.stream.getTracks().map((track) => track.readyState)), ["ended"], "the microphone afterwards");
  same([await textOf(page, "record"), await textOf(page, "recording"), await textOf(page, "recorded")], ["Record", "", ""], "afterwards");
  check((await textOf(page, "notice")).startsWith("Take 1, 0:04: it is kept only as long as this page is open."), await textOf(page, "notice"));
  const [download] = await Promise.all([page.waitForEvent("download"), page.click("#notice button")]);
  same(download.suggestedFilename(), "Counting limpets, take 1.webm", "the file's name");
  same(await textOf(page, "notice"), "", "the notice after it is saved");
  const file = join(work, "take.webm");
  await download.saveAs(file);
  const bytes = readFileSync(file);
  same([...bytes.subarray(0, 4)], [0x1a, 0x45, 0xdf, 0xa3], "the first bytes of WebM");
  check(bytes.length > 1000 && bytes.includes("OpusHead"), `${bytes.length} bytes without Opus`);
  const { seconds, loudest } = await heard(context, bytes);
  check(seconds > 1 && seconds < 8 && loudest > 0.05, `${seconds} s of sound, at its loudest ${loudest}`);
  // Heard in the page.
  await page.keyboard.press("Escape");
  await page.click("#result [data-do=leave]");
  await page.screenshot({ path: shot("practice-takes"), fullPage: true });
  await page.evaluate(() => { const audio = document.querySelector("#takes audio"); audio.muted = true; return audio.play(); });
  await until(page, () => document.querySelector("#takes audio").currentTime > 0.2);
  // The second take needs no question; the number goes on at the next visit.
  await page.click("#record");
  await until(page, () => document.getElementById("recording").textContent === "Recording");
  await page.click("#record");
  await until(page, () => document.querySelectorAll("#takes li").length === 2);
  // Leaving would lose the second one.
  let warned = "";
  page.once("dialog", (dialog) => { warned = dialog.type(); dialog.accept(); });
  await again(page);
  same(warned, "beforeunload", "the warning before a take is lost");
  same(await page.evaluate(() => localStorage.getItem("sayline practice takes Counting limpets")), "2", "takes so far");
}

async function microphoneLost(context) {
  const page = await opened(context);
  await watchMicrophone(page);
  await agree(page);
  await until(page, () => document.getElementById("recording").textContent === "Recording");
  await new Promise((done) => setTimeout(done, 1200));
  // As when it is pulled out: what there is, is kept.
  await page.evaluate(() => window.stream.getTracks().forEach((track) => track.stop()));
  await until(page, () => document.querySelector("#takes li"));
  same([await textOf(page, "record"), await textOf(page, "recording")], ["Record", ""], "afterwards");
  check((await textOf(page, "notice")).includes("kept only as long as this page is open"), await textOf(page, "notice"));
}

async function nothingByItself(context) {
  const page = await opened(context);
  await page.evaluate(() => { window.asked = 0; navigator.mediaDevices.getUserMedia = async () => { window.asked++; throw new DOMException("", "NotAllowedError"); }; });
  await page.click("[data-do=captions]");
  await run(page, 3);
  await page.keyboard.press("Escape");
  await page.click("[data-do=cold]");
  for (const key of ["Space", "Enter", "r", "PageDown", "PageUp"]) { await run(page, 1); await page.keyboard.press(key); }
  same(await page.evaluate(() => window.asked), 0, "times the microphone was asked for unasked");
}

const refusedWith = (wanted, prepare = () => {}) => async (context) => {
  const page = await opened(context);
  await page.evaluate(prepare);
  await agree(page);
  await until(page, () => document.getElementById("notice").textContent !== "");
  check(wanted.test(await textOf(page, "notice")), await textOf(page, "notice"));
  same([await textOf(page, "record"), await textOf(page, "recording")], ["Record", ""], "after a refusal");
  await page.screenshot({ path: shot(`practice-refused-${wanted.source.slice(0, 12).replaceAll(/\W+/g, "-")}`) });
  // The exercises go on.
  await page.click("[data-do=captions]");
  await run(page, 1);
  check((await standing(page)).length > 0, "no captions after a refusal");
};

// --- for everybody -------------------------------------------------------------------------------

const states = [
  ["start", async () => {}],
  ["setup", (page) => page.click("#start [data-open=setup]")],
  ["help", (page) => page.click("#start [data-open=help]")],
  ["captions", async (page) => { await page.click("[data-do=captions]"); await page.keyboard.press("PageDown"); await page.keyboard.press("Space"); }],
  ["cold", async (page) => { await page.keyboard.press("Escape"); await page.click("[data-do=cold]"); }],
  ["result", async (page) => { for (let time = 0; time < 4; time++) { await new Promise((done) => setTimeout(done, 500)); await page.keyboard.press("Space"); } await page.keyboard.press("Escape"); }],
];

async function forEverybody(context) {
  const page = await opened(context, demo, { cautions: true });
  await cautioned(page);
  for (const [name, reach] of states) {
    await reach(page);
    await accessible(page, name);
    const faint = await faintTexts(page, "body *:not(script):not(style)");
    check(faint.length === 0, `${name}: ${JSON.stringify(faint)}`);
    if (name === "setup" || name === "help") await page.keyboard.press("Escape");
  }
  await again(page);
  check(!(await page.isVisible("#care")), "cautions at every visit");
}

async function keyboardAlone(context) {
  const page = await opened(context);
  const focused = () => page.evaluate(() => {
    const element = document.activeElement, style = getComputedStyle(element);
    return { name: (element.getAttribute("aria-label") ?? element.textContent).split(";")[0].trim(), id: element.id, seen: style.outlineStyle !== "none" || style.boxShadow !== "none", box: element.getBoundingClientRect().toJSON() };
  });
  const tabs = async (count) => {
    const order = [];
    for (let tab = 0; tab < count; tab++) {
      await page.keyboard.press("Tab");
      const { name, id, seen, box } = await focused();
      check(seen, `focus on ${name} is not seen`);
      check(box.width >= 44 && box.height >= 44, `${name} is ${box.width} by ${box.height} px`);
      order.push(id === "part" ? "part" : name);
    }
    return order;
  };
  same(await tabs(8), ["Record", "Read captions", "Choose a file", "Cold read", "part", "Set up", "Keys", "Cautions"], "the order of focus at the start");
  await page.focus("[data-do=captions]");
  await page.keyboard.press("Enter");
  same((await focused()).id, "stage", "the keys belong to the captions");
  await page.keyboard.press("Shift");
  check((await focused()).seen, "focus on the stage is not seen");
  same(await tabs(9), ["Hold", "Back", "Next", "Slower", "Faster", "Top", "Set up", "Keys", "Leave"], "the order of focus at captions");
  await page.keyboard.press("Space"); // on "Leave"
  check(await page.isVisible("#start"), "Leave is not pressed by the space bar");
  await page.focus("[data-do=cold]");
  await page.keyboard.press("Space");
  same((await focused()).id, "stage", "the keys belong to the thought");
  await run(page, 2);
  await page.keyboard.press("Space");
  same(await page.evaluate(() => document.getElementById("times").textContent.includes("2 of")), true, "the space bar says it");
  await run(page, 2);
  await page.keyboard.press("Escape");
  same((await focused()).id, "result", "the focus at the result");
  same(await tabs(3), ["Again", "Save the times", "To the start"], "the order of focus at the result");
}

async function fits(context) {
  const page = await opened(context);
  const name = `practice-${page.viewportSize().width}x${page.viewportSize().height}`;
  const inside = async (what) => {
    await page.screenshot({ path: shot(`${name}-${what}`) });
    const wrong = await page.evaluate(() => {
      const out = [];
      if (document.documentElement.scrollWidth > innerWidth + 1) out.push(`the page is ${document.documentElement.scrollWidth} wide`);
      for (const element of document.querySelectorAll("#head > *, #bar button, .doing > *, #layer .word, #layer .words, #times p, table, caption")) {
        if (!element.checkVisibility() || element.closest("#bar")?.scrollWidth > element.closest("#bar")?.clientWidth) continue;
        const box = element.getBoundingClientRect();
        if (box.width && (box.left < -1 || box.right > innerWidth + 1)) out.push(`${element.textContent} ${box.left}..${box.right}`);
        if (element.closest("#bar") && box.bottom > innerHeight + 1) out.push(`${element.textContent} ends at ${box.bottom}`);
      }
      const stage = document.getElementById("stage");
      if (stage.checkVisibility() && stage.clientHeight < 0.3 * innerHeight) out.push(`the words have ${stage.clientHeight} px`);
      const first = document.querySelector("#layer .words, #layer .word")?.getBoundingClientRect();
      if (stage.checkVisibility() && first && first.top > stage.getBoundingClientRect().bottom - 20) out.push("the words are below the stage");
      return out;
    });
    check(wrong.length === 0, `${what}: ${wrong.join("; ")}`);
  };
  await inside("start");
  for (const dialog of ["setup", "help", "care"]) {
    await page.click(`#start [data-open=${dialog}]`);
    await page.screenshot({ path: shot(`${name}-${dialog}`) });
    const box = await page.evaluate((id) => { const element = document.getElementById(id), { left, right, top, bottom } = element.getBoundingClientRect(); return { out: left < 0 || right > innerWidth || top < 0 || bottom > innerHeight, wide: element.scrollWidth > element.clientWidth }; }, dialog);
    same(box, { out: false, wide: false }, `the dialog ${dialog}`);
    await page.keyboard.press("Escape");
  }
  await page.click("[data-do=captions]");
  await run(page, 6);
  await inside("captions");
  await page.keyboard.press("Escape");
  await page.click("[data-do=cold]");
  for (let time = 0; time < 7; time++) { await run(page, 3.3); await page.keyboard.press("Space"); }
  await inside("cold");
  await page.keyboard.press("Escape");
  await inside("result");
}

// Where less motion is asked for nothing moves: words stand, and go.
async function standsStill(context) {
  const page = await opened(context);
  await page.click("[data-do=captions]");
  await run(page, 1);
  const places = new Set();
  const words = (await standing(page))[0][1];
  while ((await standing(page))[0]?.[1] === words) {
    places.add(await page.evaluate(() => JSON.stringify(document.querySelector("#layer .words").getBoundingClientRect())));
    await run(page, 0.1);
  }
  same(places.size, 1, "places of a caption while it stands");
  same(await page.evaluate(() => document.getAnimations().length), 0, "animations");
}

async function hostileText(context) {
  const text = "---\ntitle: </title><script>window.bad = 1</script> {{captions}} ../../x\nspeakers: MIRA\n---\n# <img src=x onerror=\"window.bad = 2\">\n\n"
    + "MIRA: [<b onclick=1>] Say </script><script>window.bad = 3</script> and <!-- this --> \u{1F41A} {{styles}} __proto__.\n\n"
    + "\u05E9\u05DC\u05D5\u05DD \u05DC\u05DB\u05D5\u05DC\u05DD.\n\nLong" + "ness".repeat(60) + ".\n";
  const page = await opened(context, text);
  const elements = () => page.evaluate(() => document.querySelectorAll("img, #layer b, #layer script, iframe, #layer a").length);
  await page.click("[data-do=captions]");
  await run(page, 0.5);
  check((await textOf(page, "layer")).includes("</script>"), `as captions: ${await textOf(page, "layer")}`);
  await page.keyboard.press("Escape");
  await page.click("[data-do=cold]");
  for (let time = 0; time < 4; time++) {
    same(await elements(), 0, "elements of the script's own");
    check(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), "a long word leaves the screen");
    await run(page, 1);
    await page.keyboard.press("Space");
  }
  const [download] = await Promise.all([page.waitForEvent("download"), page.click("[data-do=save-times]")]);
  check(!/[\\/:*?"<>|]/.test(download.suggestedFilename()), `the file is called ${download.suggestedFilename()}`);
  await page.click("#result [data-do=leave]");
  await choose(page, "<img src=x onerror=\"window.bad = 4\">.vtt", "WEBVTT\n\n00:00.000 --> 00:05.000\n<v <b>>&lt;img src=x onerror=\"window.bad = 5\"> <img src=x onerror=\"window.bad = 6\"><script>window.bad = 7</script> <a href=x>click</a>\n");
  await page.click("[data-do=captions]");
  await run(page, 0.5);
  check((await textOf(page, "layer")).includes("<img src=x"), `captions of others: ${await textOf(page, "layer")}`);
  same([await elements(), await page.evaluate(() => window.bad)], [0, undefined], "what was made of captions");
}

async function emptyScripts(context) {
  for (const text of ["% only a note\n", "[smile]\n", "# Only a heading\n", "xx\n", "---\ntitle: T\n---\nOne.\n"]) {
    const page = await opened(context, text);
    for (const start of ["captions", "cold"]) {
      await page.click(`[data-do=${start}]`);
      for (const key of ["Space", "PageDown", "PageUp", "End", "Home", "ArrowUp", "Enter", "Escape", "Escape"]) { await run(page, 0.5); await page.keyboard.press(key); }
      if (await page.isVisible("#result")) await page.click("#result [data-do=leave]");
    }
    if (!text.includes("One")) check((await textOf(page, "amount")).startsWith("There is nothing to say"), await textOf(page, "amount"));
    await page.close();
  }
}

// The manual's picture: practice.mjs --picture FILE.
async function picture(context) {
  const page = await opened(context);
  await page.selectOption("#part", { label: "Hello" });
  await page.click("[data-do=cold]");
  for (const [thought, factor] of [[0, 1.22], [1, 0.88], [2, 1.08]]) {
    await run(page, scriptOf(demo).thoughts[thought].seconds * factor + 0.7);
    await page.keyboard.press("Space");
  }
  await page.screenshot({ path: process.argv[3] });
}
if (process.argv[2] === "--picture") process.exit(await withBrowser([["picture", picture, { viewport: { width: 960, height: 600 } }]]));

const microphone = ["--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"];
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true };
// By what the browser is started with: a microphone, one that is refused, none at all.
const kinds = [
  [microphone, [
    ["an interview of the standard", interviewOfTheStandard],
    ["captions as the browser reads them", asTheBrowserReads],
    ["captions of the script", captionsOfTheScript],
    ["captions in other forms", otherForms],
    ["broken files", brokenFiles],
    ["captions: keys, speed, ahead", captionKeys],
    ["cold read", coldRead],
    ["cold read by hand", coldByHand],
    ["cold read of a part", coldPart],
    ["a pace learnt from a cold read", learnsFromACold],
    ["takes", records],
    ["a microphone that is lost", microphoneLost],
    ["nothing by itself", nothingByItself],
    ["no recorder", refusedWith(/^This browser cannot record here/, () => { delete window.MediaRecorder; })],
    ["a microphone that is held", refusedWith(/^The microphone is held/, () => { navigator.mediaDevices.getUserMedia = async () => { throw new DOMException("", "NotReadableError"); }; })],
    ["accessibility rules", forEverybody],
    ["keyboard alone", keyboardAlone],
    ["no motion", standsStill, { reducedMotion: "reduce" }],
    ["phone", fits, phone],
    ["phone on its side", fits, { viewport: { width: 844, height: 390 }, hasTouch: true }],
    ["tablet", fits, { viewport: { width: 820, height: 1180 }, hasTouch: true }],
    ["enlarged four times", fits, { viewport: { width: 320, height: 568 } }],
    ["desktop", fits, { viewport: { width: 1920, height: 1080 } }],
    ["hostile text", hostileText],
    ["scripts without words", emptyScripts],
  ]],
  [["--use-fake-device-for-media-stream"], [["a microphone that is refused", refusedWith(/^The browser did not give the microphone/)]]],
  [["--use-fake-ui-for-media-stream"], [["no microphone", refusedWith(/^No microphone was found/)]]],
];

const wanted = process.argv[2];
let failed = 0;
for (const [flags, tests] of kinds) {
  const chosen = tests.filter(([name]) => !wanted || name.includes(wanted));
  if (chosen.length) failed += await withBrowser(chosen, flags);
}
process.exit(failed ? 1 : 0);
