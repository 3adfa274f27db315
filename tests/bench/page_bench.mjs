// How evenly the reading page of a one-hour script moves, and whether its memory stays flat over the
// hour. Frames are those of a headless browser without a graphics card, in real time; the hour is
// one of a clock that is wound. Printed, no bound: machines are noisy. Run it as DEVELOPERS.md says.
import { demo, pageFile, scriptOf } from "../exports/browser.mjs";

const { chromium } = await import(process.env.SAYLINE_PLAYWRIGHT);
const body = demo.slice(demo.indexOf("# Hello"));
const text = `---\ntitle: An hour\nspeakers: MIRA, JO\n---\n${body.repeat(36)}`;
const script = scriptOf(text);
const words = script.thoughts.reduce((sum, thought) => sum + thought.parts.filter((part) => part.word !== undefined).length, 0);
const address = pageFile(text, "hour");
console.log(`script: ${(script.seconds / 60).toFixed(1)} min, ${script.thoughts.length} thoughts, ${words} words`);

const browser = await chromium.launch({ executablePath: process.env.SAYLINE_CHROMIUM, args: ["--no-sandbox", "--disable-gpu"] });

async function opened(winding) {
  const context = await browser.newContext({ viewport: { width: 1920, height: 1080 } });
  const page = await context.newPage();
  if (winding) await page.clock.install();
  await page.addInitScript(() => {
    localStorage.setItem("sayline cautions", "true");
    localStorage.setItem("sayline reading settings", JSON.stringify({ lead: 0 }));
  });
  const begun = Date.now();
  await page.goto(address);
  if (!winding) console.log(`opening: ${Date.now() - begun} ms`);
  return page;
}

// Times between frames while it moves, in milliseconds.
async function frames(page, what, jumps) {
  await page.keyboard.press("Home");
  for (let jump = 0; jump < jumps; jump++) await page.keyboard.press("Shift+PageDown");
  await page.keyboard.press("Space");
  const gaps = await page.evaluate(() => new Promise((done) => {
    const gaps = [];
    let last = 0;
    const end = performance.now() + 30000;
    const each = (now) => {
      if (last) gaps.push(now - last);
      last = now;
      if (now < end) requestAnimationFrame(each); else done(gaps);
    };
    requestAnimationFrame(each);
  }));
  await page.keyboard.press("Space");
  gaps.sort((a, b) => a - b);
  const at = (share) => gaps[Math.min(Math.floor(gaps.length * share), gaps.length - 1)].toFixed(1);
  console.log(`frames, ${what}: ${gaps.length} in 30 s; p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, longest ${at(1)} ms`);
}

// The work that a frame takes, without waiting for the screen.
async function work(page) {
  const took = await page.evaluate(() => {
    const own = [];
    const original = window.requestAnimationFrame;
    window.requestAnimationFrame = (callback) => original((now) => {
      const begun = performance.now();
      callback(now);
      own.push(performance.now() - begun);
    });
    document.body.dispatchEvent(new KeyboardEvent("keydown", { key: " ", bubbles: true }));
    return new Promise((done) => setTimeout(() => done(own.sort((a, b) => a - b)), 20000));
  });
  const at = (share) => took[Math.min(Math.floor(took.length * share), took.length - 1)].toFixed(2);
  console.log(`work a frame: p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, longest ${at(1)} ms`);
}

const page = await opened(false);
await frames(page, "from the top", 0);
await frames(page, "in the middle", 70);
await frames(page, "near the end", 138);
await page.evaluate(() => document.getElementById("stage").focus());
await work(page);
await page.close();

const wound = await opened(true);
const session = await wound.context().newCDPSession(wound);
await wound.clock.pauseAt(Date.now() + 60000);
await wound.keyboard.press("Space");
for (let minute = 0; minute <= 60; minute += 10) {
  await session.send("HeapProfiler.collectGarbage");
  const { usedSize } = await session.send("Runtime.getHeapUsage");
  const nodes = await wound.evaluate(() => document.getElementsByTagName("*").length);
  console.log(`after ${String(minute).padStart(2)} min: heap ${(usedSize / 1e6).toFixed(2)} MB, ${nodes} elements`);
  for (let second = 0; second < 600 && minute < 60; second += 2) await wound.clock.fastForward(2000);
}
await browser.close();
