// What the figures of all pages share: an hour of script, a page that is opened, frames and memory.
// Frames are those of a headless browser without a graphics card, in real time; the hour is one of a
// clock that is wound.
import { demo, pageFile, scriptOf } from "../exports/browser.mjs";

const { chromium } = await import(process.env.SAYLINE_PLAYWRIGHT);
const body = demo.slice(demo.indexOf("# Hello"));
const text = `---\ntitle: An hour\nspeakers: MIRA, JO\n---\n${body.repeat(36)}`;
export const script = scriptOf(text);
const words = script.thoughts.reduce((sum, thought) => sum + thought.parts.filter((part) => part.word !== undefined).length, 0);
console.log(`script: ${(script.seconds / 60).toFixed(1)} min, ${script.thoughts.length} thoughts, ${words} words`);

export const browser = await chromium.launch({ executablePath: process.env.SAYLINE_CHROMIUM, args: ["--no-sandbox", "--disable-gpu"] });

// `settings` are [name in the store, value].
export async function opened(target, [name, value], winding) {
  const context = await browser.newContext({ viewport: { width: 1920, height: 1080 } });
  const page = await context.newPage();
  if (winding) await page.clock.install();
  await page.addInitScript(([key, kept]) => {
    localStorage.setItem("sayline cautions", "true");
    localStorage.setItem(`sayline ${key}`, JSON.stringify(kept));
  }, [name, value]);
  const address = pageFile(text, `hour-${target}`, target);
  const begun = Date.now();
  await page.goto(address);
  if (!winding) console.log(`opening: ${Date.now() - begun} ms`);
  return page;
}

const at = (sorted, share) => sorted[Math.min(Math.floor(sorted.length * share), sorted.length - 1)];

// Times between frames while it goes, in milliseconds.
export async function frames(page, what, seconds = 30) {
  const gaps = await page.evaluate((length) => new Promise((done) => {
    const gaps = [];
    let last = 0;
    const end = performance.now() + length * 1000;
    const each = (now) => {
      if (last) gaps.push(now - last);
      last = now;
      if (now < end) requestAnimationFrame(each); else done(gaps);
    };
    requestAnimationFrame(each);
  }), seconds);
  gaps.sort((a, b) => a - b);
  const shown = (share) => at(gaps, share).toFixed(1);
  console.log(`frames, ${what}: ${gaps.length} in ${seconds} s; p50 ${shown(0.5)} ms, p99 ${shown(0.99)} ms, longest ${shown(1)} ms`);
}

// The work that a frame takes, without waiting for the screen; a space bar lets it go.
export async function work(page) {
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
  const shown = (share) => at(took, share).toFixed(2);
  console.log(`work a frame: p50 ${shown(0.5)} ms, p99 ${shown(0.99)} ms, longest ${shown(1)} ms`);
}

export async function memory(page, when) {
  const session = await page.context().newCDPSession(page);
  await session.send("HeapProfiler.collectGarbage");
  const { usedSize } = await session.send("Runtime.getHeapUsage");
  const nodes = await page.evaluate(() => document.getElementsByTagName("*").length);
  console.log(`${when}: heap ${(usedSize / 1e6).toFixed(2)} MB, ${nodes} elements`);
  await session.detach();
}

// Memory over an hour that is wound.
export async function anHour(page) {
  for (let minute = 0; minute <= 60; minute += 10) {
    await memory(page, `after ${String(minute).padStart(2)} min`);
    for (let second = 0; second < 600 && minute < 60; second += 2) await page.clock.fastForward(2000);
  }
}
