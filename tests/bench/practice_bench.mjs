// How evenly the practice page shows an hour of captions, whether its memory stays flat over them,
// how long it takes to read a file of captions, and what a cold read of an hour weighs. Printed, no
// bound: machines are noisy. Run it as DEVELOPERS.md says.
import { anHour, browser, frames, memory, opened, script, work } from "./pages.mjs";

const settings = ["practice settings", { lead: 0, size: 100, speed: 1, ahead: true }];
const page = await opened("practice", settings, false);
const took = await page.evaluate(() => {
  const stamp = (seconds) => new Date(seconds * 1000).toISOString().slice(11, 23);
  const blocks = JSON.parse(document.getElementById("captions").textContent).map((cue) => `${stamp(cue.begin)} --> ${stamp(cue.end)}\n<v ${cue.speaker}>${cue.lines.join("\n")}\n`);
  const bytes = new TextEncoder().encode(`WEBVTT\n\n${blocks.join("\n")}`).buffer;
  const begun = performance.now();
  const { cues } = readCaptions(bytes);
  return { cues: cues.length, milliseconds: performance.now() - begun };
});
console.log(`reading a file of ${took.cues} captions: ${took.milliseconds.toFixed(0)} ms`);
await page.click("[data-do=captions]");
await frames(page, "captions");
await page.keyboard.press("Space");
await work(page);
await page.close();

const wound = await opened("practice", settings, true);
await wound.clock.pauseAt(Date.now() + 60000);
await wound.click("[data-do=captions]");
await anHour(wound);
await wound.keyboard.press("Escape");
await wound.click("[data-do=cold]");
const thoughts = script.thoughts.filter((thought) => thought.kind !== "silence").length;
for (let thought = 0; thought < thoughts; thought++) {
  await wound.clock.fastForward(1500);
  await wound.keyboard.press("Space");
}
await memory(wound, `after a cold read of ${thoughts} thoughts`);
await browser.close();
