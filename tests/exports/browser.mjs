// What tests of pages share: a browser, pages from scripts, named checks.
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const { chromium } = await import(process.env.SAYLINE_PLAYWRIGHT);
export const work = process.env.SAYLINE_WORK;
export const source = process.env.SAYLINE_SOURCE;
export const demo = readFileSync(join(source, "docs/demo/limpets.say"), "utf8");
export const shot = (name) => join(process.env.SAYLINE_SHOTS, `${name}.png`);

export function check(condition, message) {
  if (!condition) throw new Error(message);
}

export function same(got, wanted, what) {
  check(JSON.stringify(got) === JSON.stringify(wanted), `${what}: ${JSON.stringify(got)}, not ${JSON.stringify(wanted)}`);
}

// Writes a script in a form and answers with what came out; a sound is no text but a "buffer".
export function exported(text, target, encoding = "utf8") {
  const run = spawnSync(process.env.SAYLINE_PROGRAM, ["export", "--to", target, "-"], { input: Buffer.from(text), encoding, maxBuffer: 1e9, cwd: work });
  check(run.status === 0, `export --to ${target}: ${run.stderr}`);
  return run.stdout;
}

export const scriptOf = (text) => JSON.parse(exported(text, "json"));

// A page as a file; the same name is the same page exported anew.
export function pageFile(text, name = "reading", target = "page") {
  const file = join(work, `${name}.html`);
  writeFileSync(file, exported(text, target));
  return pathToFileURL(file).href;
}

// What a page keeps is on its way to the disk for a moment. On a busy machine the browser gives a
// document that it loads again from a file an empty storage, about once in thirty times; the next
// load has the old one again. Such a load is none to judge by.
export async function again(page) {
  await new Promise((done) => setTimeout(done, 300));
  for (let time = 0; time < 5; time++) {
    await page.reload();
    if (await page.evaluate(() => window.keptBefore > 0)) return;
  }
  throw new Error("five loads in a row without any storage");
}

// The cautions of a first visit: there, whole, and away once they are understood.
export async function cautioned(page) {
  check(await page.isVisible("#care"), "no cautions at the first visit");
  const care = await page.textContent("#care");
  for (const word of ["dizzy", "20 seconds", "doctor", "drive"]) check(care.includes(word), `the cautions lack "${word}"`);
  await page.clock.resume();
  await accessible(page, "cautions");
  await page.click("#understood");
}

// The clock of a page may stand, so what is waited for is asked for from outside.
export async function until(page, what) {
  for (let time = 0; time < 200; time++) {
    if (await page.evaluate(what)) return;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error(`waited in vain for ${what}`);
}

// The rules of WCAG that a machine can judge, by axe-core; it waits by timers, so a clock must run.
const axe = readFileSync(process.env.SAYLINE_AXE, "utf8");
export async function accessible(page, what) {
  await page.evaluate(axe);
  const { violations } = await page.evaluate(async () => window.axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }));
  check(violations.length === 0, `${what}: ${violations.map((each) => `${each.id} (${each.nodes.map((node) => node.html).join(", ")})`).join("; ")}`);
}

// The text of a page that is not 7:1 or more against its ground, and what is see-through.
export async function faintTexts(page, within, least = 1) {
  const colours = await page.evaluate((selector) => {
    const groundOf = (element) => {
      for (let each = element; each; each = each.parentElement) {
        const colour = getComputedStyle(each).backgroundColor;
        if (!/, 0\)$/.test(colour)) return colour;
      }
      return "rgb(255, 255, 255)";
    };
    const seen = new Map();
    for (const element of document.querySelectorAll(selector)) {
      if (![...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim())) continue;
      const style = getComputedStyle(element);
      let opaque = 1;
      for (let each = element; each; each = each.parentElement) opaque *= Number(getComputedStyle(each).opacity);
      seen.set(`${style.color} ${element.className}`, { colour: style.color, ground: groundOf(element), opaque, what: element.className || element.id || element.tagName });
    }
    return [...seen.values()];
  }, within);
  check(colours.length >= least, `only ${colours.length} looks of text within ${within}`);
  return colours.map((each) => ({ ...each, ratio: contrast(rgb(each.colour), rgb(each.ground)) })).filter(({ ratio, opaque }) => ratio < 7 || opaque < 1);
}

// Opens windows in a context of its own, with a clock that stands until it is told; whatever leaves
// the file and whatever goes wrong in it fails the test.
export async function withBrowser(tests, flags = []) {
  const browser = await chromium.launch({ executablePath: process.env.SAYLINE_CHROMIUM, args: ["--no-sandbox", "--disable-gpu", ...flags] });
  let failed = 0;
  for (const [name, test, options] of tests) {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
    await context.addInitScript(() => { try { window.keptBefore = localStorage.length; } catch { /* a page without a place */ } });
    const wrong = [];
    const leaves = (request) => !/^(file|data|blob|about):/.test(request.url()) && !request.url().startsWith("http://127.0.0.1:");
    context.on("request", (request) => { if (leaves(request)) wrong.push(`it asks for ${request.url()}`); });
    context.on("weberror", (error) => wrong.push(error.error().stack ?? String(error.error())));
    // A test that ends the server says so: the browser then tells of a load that failed.
    const expected = (text) => options?.failsToLoad && /ERR_CONNECTION_REFUSED|ERR_INCOMPLETE_CHUNKED|Failed to load resource/.test(text);
    context.on("console", (message) => { if (message.type() === "error" && !expected(message.text())) wrong.push(message.text()); });
    try {
      await test(context);
      check(wrong.length === 0, wrong.join("\n"));
      console.log(`  ${name}`);
    } catch (error) {
      failed++;
      console.log(`  ${name}: FAILED\n${[error.stack, ...wrong].join("\n")}`);
      for (const [index, page] of context.pages().entries()) await page.screenshot({ path: shot(`failure-${name.replaceAll(/\W+/g, "-")}-${index}`) }).catch(() => {});
    }
    await context.close();
  }
  await browser.close();
  console.log(`${tests.length - failed} of ${tests.length} well`);
  return failed ? 1 : 0;
}

// Relative luminance and contrast of sRGB colours: WCAG 2.2, definitions of both terms.
export function contrast(one, other) {
  const luminance = ([r, g, b]) => {
    const linear = (value) => (value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4);
    return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
  };
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}
export const rgb = (css) => css.match(/[\d.]+/g).slice(0, 3).map(Number);
