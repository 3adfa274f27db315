// The reading page in a browser, with a clock that the test winds. Times are those of the json
// target, which other tests hold against the world; here the page must keep to them.
// Sources: contrast and its check values, WCAG 2.2 (1.4.3, 1.4.6, definitions); no motion where a
// device asks for none, WCAG technique C39; keys that can be switched off, WCAG 2.1.4; size of
// targets, WCAG 2.5.8 (24 px), ours 44 as common practice; the visual angle of a width w from a
// distance d is 2 atan(w / 2d), any handbook of optics. The rest is what docs/reading-page.md says.
import { spawn } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { accessible, again, cautioned, check, contrast, demo, faintTexts, pageFile, same, scriptOf, shot, until, withBrowser, work } from "./browser.mjs";

async function opened(context, text = demo, { cautions = false, hash = "", name, settings } = {}) {
  const page = await context.newPage();
  await page.clock.install({ time: new Date("2027-04-12T08:00:00") });
  if (!cautions) await page.addInitScript(() => { try { localStorage.setItem("sayline cautions", "true"); } catch { /* a page without a place */ } });
  if (settings) await page.addInitScript((value) => { if (!localStorage.getItem("sayline reading settings")) localStorage.setItem("sayline reading settings", JSON.stringify(value)); }, settings);
  await page.goto(pageFile(text, name) + hash);
  await page.clock.pauseAt(new Date("2027-04-12T08:05:00"));
  return page;
}

const noLead = { lead: 0 };
const run = (page, seconds) => page.clock.runFor(Math.round(seconds * 1000));
const textOf = (page, id) => page.textContent(`#${id}`);

// The thought that is shown as spoken, and where its first line stands from the stage's top.
const shown = (page) => page.evaluate(() => {
  const block = document.querySelector(".block.now");
  return { id: block.querySelector(".thought").dataset.id, y: block.getBoundingClientRect().top };
});
const layerY = (page) => page.evaluate(() => new DOMMatrix(getComputedStyle(document.getElementById("layer")).transform).m42);

// The word nearest above or on the spoken line, by what is on the screen.
const lineOnScreen = (page) => page.evaluate(() => {
  const goal = innerHeight * (Number(document.querySelector("[name=line]").value) / 100);
  return [...document.querySelectorAll(".block.now .word")].map((word) => ({ word: word.textContent, off: word.getBoundingClientRect().top + word.getBoundingClientRect().height / 2 - goal }));
});

// --- time ----------------------------------------------------------------------------------------

async function followsTheScript(context) {
  const script = scriptOf(demo);
  const page = await opened(context, demo, { settings: noLead });
  await page.keyboard.press("Space");
  let t = 0;
  for (const thought of script.thoughts.filter((each) => each.seconds > 0)) {
    const middle = thought.at + thought.seconds / 2;
    await run(page, middle - t);
    t = middle;
    same((await shown(page)).id, thought.id, `the thought at ${middle.toFixed(1)} s`);
    // The line that is said stands at the spoken line, or up to a line above it towards its end.
    const words = thought.parts.filter((part) => part.word !== undefined);
    const at = words.findLastIndex((word) => word.at <= thought.seconds / 2);
    if (at < 0) continue;
    const { word, off } = (await lineOnScreen(page))[at];
    check(off < 12 && off > -110, `"${word}" at ${middle.toFixed(1)} s stands ${off.toFixed(0)} px from the spoken line`);
  }
  await run(page, script.seconds - t + 0.1);
  check(/^End\. 1:4\d, 0:0\d under$/.test(await textOf(page, "end")), `at the end: "${await textOf(page, "end")}"`);
  same(await textOf(page, "go"), "Go", "the button at the end");
  same(await textOf(page, "left"), "0:00", "left at the end");
}

async function pausesHold(context) {
  const text = "We count every (3.0) single one of the limpets on the rock.\n\n[clip: the tide 4s]\n\nThen we write.\n";
  const script = scriptOf(text);
  const pause = script.thoughts[0].parts.find((part) => part.pause);
  same([pause.pause, pause.seconds], ["timed pause", 3], "the pause of the script");
  const page = await opened(context, text, { settings: { lead: 0, column: 14 } });
  await page.keyboard.press("Space");
  await run(page, pause.at - 0.1);
  const moving = await layerY(page);
  await run(page, 0.2);
  const held = await layerY(page);
  check(moving !== held, "the text stands before the pause");
  await run(page, 2.7);
  same(await layerY(page), held, "where the text stands in the pause");
  check(await page.isVisible("#drain"), "nothing shows how long the pause is held");
  await run(page, 0.4);
  check((await layerY(page)) < held, "the text stands after the pause");
  const clip = script.thoughts[1];
  await run(page, clip.at + 0.1 - pause.at - 3.3);
  const silent = await layerY(page);
  await run(page, clip.seconds / 2);
  same(await layerY(page), silent, "where the text stands in a silence");
}

async function trims(context) {
  const script = scriptOf("One two three four five six seven eight nine ten. (5.0) One two three four five.\n");
  const page = await opened(context, "One two three four five six seven eight nine ten. (5.0) One two three four five.\n", { settings: noLead });
  const faster = async (times) => { for (let time = 0; time < times; time++) await page.keyboard.press("ArrowUp"); };
  await faster(10);
  same(await textOf(page, "pace"), "1.50x", "the pace");
  // Speech at one and a half times the speed; the marked five seconds stay.
  const wanted = (script.seconds - 5) / 1.5 + 5;
  await page.keyboard.press("Space");
  await run(page, wanted - 0.15);
  check(!(await page.isVisible("#end")), "it ends too early");
  await run(page, 0.25);
  check(await page.isVisible("#end"), "it ends too late");
  await faster(30);
  same(await textOf(page, "pace"), "2.00x", "the highest pace");
  await page.keyboard.press("0");
  same(await textOf(page, "pace"), "1.00x", "the own pace");
}

async function holdsAndSteps(context) {
  const script = scriptOf(demo);
  const timed = script.thoughts.filter((thought) => thought.seconds > 0);
  const page = await opened(context, demo, { settings: noLead });
  const at = async (index, what) => same((await shown(page)).id, timed[index].id, what);
  await page.keyboard.press("PageDown");
  await at(1, "one page key down");
  await page.keyboard.press("ArrowRight");
  await at(2, "an arrow further");
  await page.keyboard.press("PageUp");
  await at(1, "a page key back");
  await page.keyboard.press("End");
  await at(timed.length - 1, "the end key");
  await page.keyboard.press("Home");
  await at(0, "the home key");
  const second = script.thoughts.find((thought) => thought.section === 1 && thought.seconds > 0);
  await page.keyboard.press("Shift+PageDown");
  same((await shown(page)).id, second.id, "the section after");
  same(await textOf(page, "used"), `0:${String(Math.floor(second.at)).padStart(2, "0")}`, "the clock after a jump");
  await page.keyboard.press("]");
  await page.keyboard.press("[");
  same((await shown(page)).id, second.id, "there and back");
  await page.keyboard.press("Home");
  await page.keyboard.press("Enter");
  await run(page, 3);
  await page.keyboard.press(".");
  const held = await layerY(page);
  await run(page, 60);
  same(await layerY(page), held, "where it is held");
  same(await textOf(page, "used"), "0:03", "the clock while it is held");
  await page.keyboard.press("Space");
  await run(page, 1);
  check((await layerY(page)) !== held, "it does not go on");
  // From a thought's middle, back is its own start.
  await page.keyboard.press("PageDown");
  await run(page, 1.5);
  await page.keyboard.press("PageUp");
  await at(2, "back inside a thought");
}

async function countsIn(context) {
  const page = await opened(context, demo, { settings: { lead: 5 } });
  const before = await layerY(page);
  await page.keyboard.press("Space");
  await run(page, 0.1);
  const over = await page.evaluate(() => document.getElementById("lead").getBoundingClientRect().bottom > document.querySelector(".block.now .word").getBoundingClientRect().top + 12);
  check(!over, "the count lies over the first words");
  await page.screenshot({ path: shot("page-lead") });
  for (const count of ["5", "4", "3", "2", "1"]) {
    same(await textOf(page, "lead"), count, "the count");
    await run(page, 1);
  }
  check(!(await page.isVisible("#lead")), "the count stays");
  check((await layerY(page)) !== before, "it does not go");
  await page.keyboard.press("Space");
  await page.keyboard.press("Space");
  await run(page, 0.1);
  check(!(await page.isVisible("#lead")), "it counts again after a hold");
}

async function pedals(context) {
  const page = await opened(context, demo, { settings: { lead: 0, pedal: "hold" } });
  await page.keyboard.press("PageDown");
  same(await textOf(page, "go"), "Hold", "after one press of a pedal that goes and holds");
  await page.keyboard.press("PageDown");
  same(await textOf(page, "go"), "Go", "after a second");
}

async function timesAgainstTarget(context) {
  const body = "We count the limpets on the rock, every one of them, and we write the number on the sheet.\n";
  for (const [target, wanted] of [["1s max", /^0:0\d over$/], ["1m", /^0:5\d under$/], ["2s-20s", /^on target$/]]) {
    const page = await opened(context, `---\ntarget: ${target}\n---\n${body}`, { settings: noLead });
    check(wanted.test(await textOf(page, "verdict")), `against ${target}: ${await textOf(page, "verdict")}`);
  }
  const free = await opened(context, body);
  check(!(await free.isVisible("#verdict-row")), "a verdict without a target");
}

async function touches(context) {
  const page = await opened(context, demo, { settings: noLead });
  await page.touchscreen.tap(190, 300);
  same(await textOf(page, "go"), "Hold", "after a tap");
  await page.touchscreen.tap(190, 300);
  same(await textOf(page, "go"), "Go", "after another");
  const before = await layerY(page);
  await page.mouse.move(190, 500);
  await page.mouse.down();
  await page.mouse.move(190, 380, { steps: 6 });
  await page.mouse.up();
  const moved = before - (await layerY(page));
  check(Math.abs(moved - 120) < 14, `drawn up 120 px the text moves ${moved.toFixed(0)}`);
  same(await textOf(page, "go"), "Go", "after drawing");
  await page.keyboard.press("Home");
  const script = scriptOf(demo);
  await page.mouse.move(300, 300);
  await page.mouse.down();
  await page.mouse.move(120, 305, { steps: 4 });
  await page.mouse.up();
  same((await shown(page)).id, script.thoughts[1].id, "after a swipe to the left");
}

// --- for the eye ---------------------------------------------------------------------------------

async function flips(context) {
  const page = await opened(context);
  const scale = () => page.evaluate(() => { const m = new DOMMatrix(getComputedStyle(document.getElementById("stage")).transform); return [m.a, m.d]; });
  same(await scale(), [1, 1], "upright");
  await page.keyboard.press("m");
  same(await scale(), [-1, 1], "mirrored");
  await page.screenshot({ path: shot("page-mirrored") });
  await page.keyboard.press("u");
  same(await scale(), [-1, -1], "mirrored and turned");
  await page.keyboard.press("m");
  same(await scale(), [1, -1], "turned");
  await again(page);
  same(await scale(), [1, -1], "turned, after the page is opened anew");
}

async function nearTheLens(context) {
  const page = await opened(context);
  const lineAt = async () => (await lineOnScreen(page))[0].off;
  for (const [lens, from, to] of [["above", 10, 30], ["behind", 40, 50], ["below", 65, 85], ["left", 30, 50], ["right", 30, 50]]) {
    await page.click("[data-open=setup]");
    await page.selectOption("[name=lens]", lens);
    await page.click("#setup [data-close]");
    const { line, box } = await page.evaluate(() => ({ line: Number(document.querySelector("[name=line]").value), box: document.getElementById("layer").getBoundingClientRect().toJSON() }));
    check(line >= from && line <= to, `a lens ${lens}: the spoken line at ${line} %`);
    check(Math.abs(await lineAt()) < 2, `a lens ${lens}: the first line is ${await lineAt()} px off`);
    const middle = (box.left + box.right) / 2;
    check(lens === "left" ? box.left < 60 : lens === "right" ? box.right > 1220 : Math.abs(middle - 640) < 2, `a lens ${lens}: the column from ${box.left} to ${box.right}`);
  }
}

async function column(context) {
  const page = await opened(context);
  const letters = await page.evaluate(() => {
    const lines = new Map();
    for (const word of document.querySelectorAll(".block .word")) {
      const key = `${word.closest(".block").dataset.index} ${Math.round(word.getBoundingClientRect().bottom / 20)}`;
      lines.set(key, (lines.get(key) ?? -1) + word.textContent.length + 1);
    }
    return Math.max(...lines.values());
  });
  check(letters <= 34, `a line of ${letters} letters where 28 are asked for`);
  const width = () => page.evaluate(() => document.getElementById("layer").clientWidth);
  const before = await width();
  await page.click("[data-open=setup]");
  await page.fill("[name=column]", "18");
  check((await width()) < before * 0.75, "a shorter line is no narrower");
  await page.fill("[name=column]", "28");
  await page.fill("[name=ruler]", "20");
  await page.fill("[name=distance]", "100");
  // 2 atan(20 / 200) = 11.42 degrees, 2 atan(13.33 / 200) = 7.63, 2 atan(20 / 300) = 7.63; a letter
  // of 22 minutes of arc at 1 m is 6.4 mm (ISO 9241-303, from memory).
  const said = await textOf(page, "eyes");
  check(/travel 11\.4 degrees\. A third narrower: 7\.6\. Half as far again from the lens: 7\.6\..* 6 mm/.test(said), said);
}

async function contrasts(context) {
  // Check values of the formula: 767676 on white is 4.54, 595959 is 7.00, yellow on black 19.56.
  for (const [one, other, wanted] of [[[0x76, 0x76, 0x76], [255, 255, 255], 4.5422], [[0x59, 0x59, 0x59], [255, 255, 255], 7.0047], [[255, 255, 0], [0, 0, 0], 19.556]])
    check(Math.abs(contrast(one, other) - wanted) < 1e-4, `the formula gives ${contrast(one, other)}, not ${wanted}`);
  const text = "---\nspeakers: MIRA\n---\n# Hello (0:20)\n\nMIRA: [smile] *One* **two** THREE ~four~ \"five\" >six< <seven> Patella{puh-TEHL-uh}.\n\nNext.\n\n[spare] Spare.\n";
  const page = await opened(context, text);
  for (const { ratio, opaque, what } of await faintTexts(page, "#stage *, #times *", 6)) check(false, `${what}: ${ratio.toFixed(2)}:1 with opacity ${opaque}`);
}

// Every mark looks unlike plain text even where colours are not seen.
async function marksWithoutColour(context) {
  const text = "Plain *one* **two** THREE ~four~ >five< <six> ↑seven ↓eight nine↗ ten↘ so:: old‿boat ... a / b. // C (.) d (1.5) e xx\n";
  const page = await opened(context, text);
  const looks = await page.evaluate(() => {
    const plain = getComputedStyle([...document.querySelectorAll(".word")].find((word) => word.className === "word"));
    const traits = ["fontWeight", "textDecorationLine", "textDecorationStyle", "textDecorationThickness", "letterSpacing", "insetBlockStart", "backgroundImage", "fontStyle"];
    const unlike = (element) => traits.filter((trait) => getComputedStyle(element)[trait] !== plain[trait]).length + element.querySelectorAll("[role=img]").length;
    const words = Object.fromEntries([...document.querySelectorAll(".word")].filter((word) => word.className !== "word").map((word) => [word.className, unlike(word)]));
    const pauses = [...document.querySelectorAll(".held")].map((held) => ({ kind: held.className, width: held.getBoundingClientRect().width, look: getComputedStyle(held).borderRadius + getComputedStyle(held).height + held.childElementCount + held.textContent }));
    return { words, pauses, raw: document.getElementById("layer").textContent };
  });
  for (const mark of ["stress", "heavy-stress", "punch", "soft", "quick", "slow", "step-up", "step-down", "end-up", "end-down", "stretch", "tie"]) {
    const found = Object.entries(looks.words).find(([name]) => name.split(" ").includes(mark));
    check(found && found[1] > 0, `${mark} looks like plain text (${JSON.stringify(looks.words)})`);
  }
  same(looks.pauses.length, 6, "pauses drawn");
  same(new Set(looks.pauses.map((pause) => pause.look)).size, 6, "shapes of pauses");
  check(!/[<>~*/↑↓↗↘‿]|xx|\.\.\.|::/.test(looks.raw), `a mark as it is written: ${looks.raw}`);
  await page.screenshot({ path: shot("page-marks") });
}

async function stepsWhereMotionIsUnwanted(context) {
  const script = scriptOf(demo);
  const page = await opened(context, demo, { settings: noLead });
  await page.keyboard.press("Space");
  const places = new Set();
  for (let tenths = 0; tenths < 200; tenths++) {
    await run(page, 0.1);
    places.add(`${(await shown(page)).id} ${await layerY(page)}`);
  }
  const thoughts = script.thoughts.filter((thought) => thought.at < 20 && thought.seconds > 0).length;
  check(places.size <= thoughts + 1, `${places.size} places in 20 seconds of ${thoughts} thoughts`);
  check(places.size >= 4, "it does not step");
}

// --- what must not be lost -----------------------------------------------------------------------

async function keepsPlaceAndSettings(context) {
  const page = await opened(context, demo, { name: "kept" });
  const script = scriptOf(demo);
  await page.click("[data-open=setup]");
  await page.fill("[name=column]", "22");
  await page.selectOption("[name=face]", "serif");
  await page.click("#setup [data-close]");
  const seventh = script.thoughts.filter((thought) => thought.seconds > 0)[6];
  for (let step = 0; step < 6; step++) await page.keyboard.press("PageDown");
  same((await shown(page)).id, seventh.id, "six steps on");
  await again(page);
  same((await shown(page)).id, seventh.id, "after the page is opened anew");
  check(await page.isVisible("#notice"), "nothing says that the place was kept");
  same(await page.inputValue("[name=column]"), "22", "the line length");
  same(await page.inputValue("[name=face]"), "serif", "the typeface");
  // A sentence more at the top: the same thought, elsewhere.
  pageFile(demo.replace("# Hello", "# First\n\nGood morning.\n\n# Hello"), "kept");
  await again(page);
  same((await shown(page)).id, seventh.id, "with a thought more above it");
  // The thought itself changed: the one most like it.
  check(demo.includes("and the ↑big ones"), "the demo has changed");
  pageFile(demo.replace("and the ↑big ones", "and the ↑largest ones"), "kept");
  await again(page);
  const text = await page.textContent(".block.now .words");
  check(text.includes("largest"), `with its words changed: "${text}"`);
  // Gone: what stands there now.
  pageFile(demo.split("\n").filter((line) => !line.startsWith("We call ours Patella")).join("\n"), "kept");
  await again(page);
  const index = script.thoughts.findIndex((thought) => thought.id === seventh.id);
  const near = [index - 1, index + 1].map((at) => script.thoughts[at].id);
  check(near.includes((await shown(page)).id), "with the thought gone");
  await page.click("#notice button");
  same((await shown(page)).id, script.thoughts[0].id, "from the top");
}

async function hostileText(context) {
  const text = "---\ntitle: </title><script>window.bad = 1</script> {{script}}\nspeakers: MIRA\n---\n# <img src=x onerror=\"window.bad = 2\">\n\n"
    + "MIRA: [<b onclick=1>] Say </script><script>window.bad = 3</script> and <!-- this --> 🐚 {{styles}} __proto__.\n\n"
    + "שלום לכולם, ברוכים הבאים.\n\nLong" + "ness".repeat(60) + ".\n";
  const page = await opened(context, text);
  same(await page.evaluate(() => window.bad), undefined, "what the script made run");
  same(await page.evaluate(() => document.querySelectorAll("img, #stage b, #stage script").length), 0, "elements of the script's own");
  const shownText = await textOf(page, "layer");
  for (const piece of ["</script>", "🐚", "{{styles}}", "שלום"]) check(shownText.includes(piece), `"${piece}" is not shown: ${shownText}`);
  check(await page.evaluate(() => getComputedStyle([...document.querySelectorAll(".thought")].find((each) => each.textContent.includes("שלום"))).direction) === "rtl", "right to left is not");
  check(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth && [...document.querySelectorAll(".word")].every((word) => word.getBoundingClientRect().right <= innerWidth)), "a long word leaves the screen");
}

async function emptyScripts(context) {
  for (const text of ["% only a note\n", "[smile]\n", "# Only a heading\n", "xx\n", "---\ntitle: T\n---\nOne.\n"]) {
    const page = await opened(context, text, { settings: noLead });
    for (const key of ["Space", "PageDown", "PageUp", "End", "Home", "Shift+PageDown", "ArrowUp", "s", "Escape", "Space"]) await page.keyboard.press(key);
    await run(page, 5);
    await page.mouse.move(600, 300);
    await page.mouse.wheel(0, 200);
    await page.close();
  }
}

// --- two windows ---------------------------------------------------------------------------------

async function secondWindow(context) {
  const page = await opened(context, demo, { settings: noLead });
  const [other] = await Promise.all([context.waitForEvent("page"), page.click("#window")]);
  await until(other, () => document.querySelector("#surface-now .words"));
  const words = (id) => other.textContent(`#${id} .words`);
  check((await words("surface-now")).includes("If you can count"), "the second window shows something else");
  check((await words("surface-next")).includes("Every spring"), "what comes next is missing");
  check(!(await other.isVisible("#window")) && !(await other.isVisible("#stage")), "the second window has what only the first should");
  await other.click("[data-do=next]");
  await until(other, () => document.getElementById("surface-now").textContent.includes("Every spring"));
  check((await page.textContent(".block.now .words")).includes("Every spring"), "the reading window did not step");
  await other.click("#go");
  await until(page, () => document.getElementById("go").textContent === "Hold");
  await until(other, () => document.getElementById("go").textContent === "Hold");
  await run(page, 2);
  await other.keyboard.press("Space");
  await until(page, () => document.getElementById("go").textContent === "Go");
  await other.click("[data-open=setup]");
  await other.check("[name=mirror]");
  await until(page, () => document.documentElement.classList.contains("mirror"));
  await other.click("#setup [data-close]");
  await other.screenshot({ path: shot("page-second-window") });
  await other.click("[data-open=places]");
  await other.click("#places-list button >> nth=2");
  await until(page, () => document.querySelector(".block.now").textContent.includes("Here's what you carry"));
}

// Browsers draw no frames in a window that others cover.
async function coveredWindow(context) {
  const page = await opened(context, "One two three four five six seven.\n", { settings: noLead });
  const [other] = await Promise.all([context.waitForEvent("page"), page.click("#window")]);
  await until(other, () => document.querySelector("#surface-now .words"));
  await page.evaluate(() => {
    window.requestAnimationFrame = () => 1;
    Object.defineProperty(document, "hidden", { value: true });
  });
  await other.click("#go");
  await until(page, () => document.getElementById("go").textContent === "Hold");
  await run(page, 1.6);
  await until(other, () => document.getElementById("used").textContent === "0:01");
  await run(page, 5);
  await until(other, () => document.getElementById("left").textContent === "0:00" && document.getElementById("go").textContent === "Go");
}

// A page from a file has no origin; opened by hand, the second window has nobody who opened it.
async function secondWindowByHand(context) {
  const page = await opened(context, demo, { settings: noLead });
  const other = await context.newPage();
  await other.goto(`${page.url()}#control`);
  await until(other, () => document.querySelector("#surface-now .words"));
  await other.click("[data-do=next]");
  await until(page, () => document.querySelector(".block.now").textContent.includes("Every spring"));
}

// --- the device --------------------------------------------------------------------------------

async function staysAwake(context) {
  const page = await opened(context, demo, { settings: noLead });
  await page.evaluate(() => {
    window.asked = 0;
    Object.defineProperty(navigator, "wakeLock", { value: { request: async (what) => { window.asked += what === "screen" ? 1 : 100; return { released: false }; } }, configurable: true });
  });
  await page.keyboard.press("Space");
  same(await page.evaluate(() => window.asked), 1, "times the screen was kept awake");
  const refused = await opened(context, demo, { settings: noLead });
  await refused.evaluate(() => Object.defineProperty(navigator, "wakeLock", { value: undefined, configurable: true }));
  await refused.keyboard.press("Space");
  await until(refused, () => document.getElementById("notice").textContent.includes("stay awake"));
  same(await textOf(refused, "go"), "Hold", "the reading without a wake lock");
}

async function fullScreen(context) {
  const page = await opened(context);
  await page.click("#full");
  await until(page, () => document.fullscreenElement === document.documentElement);
  await page.keyboard.press("f");
  await until(page, () => document.fullscreenElement === null);
}

// --- live ----------------------------------------------------------------------------------------

async function followsSaves(context) {
  const file = join(work, "live.say");
  writeFileSync(file, demo);
  const program = spawn(process.env.SAYLINE_PROGRAM, ["page", "--live", file], { stdio: ["ignore", "pipe", "ignore"] });
  try {
    const address = await new Promise((found, lost) => {
      program.stdout.on("data", (bytes) => found(/http:\S+/.exec(bytes)[0]));
      program.on("exit", (status) => lost(new Error(`it ended with ${status}`)));
    });
    const page = await context.newPage();
    await page.addInitScript(() => localStorage.setItem("sayline cautions", "true"));
    await page.goto(address);
    for (let step = 0; step < 5; step++) await page.keyboard.press("PageDown");
    const before = await shown(page);
    writeFileSync(file, demo.replace("MIRA: [smile]", "MIRA: Good morning.\n\n[smile]"));
    await until(page, () => document.getElementById("notice").textContent.includes("saved"));
    same(await shown(page), before, "where one is after a save");
    writeFileSync(file, Buffer.from([0xff, 0xfe]));
    await until(page, () => document.getElementById("notice").textContent.includes("UTF-16"));
    same(await shown(page), before, "where one is when the script cannot be read");
    writeFileSync(file, demo);
    await until(page, () => !document.getElementById("notice").textContent.includes("UTF-16"));
    await page.keyboard.press("Home");
    check((await page.textContent(".block.now")).includes("If you can count"), "the text of the last save");
    program.kill("SIGINT");
    await until(page, () => document.getElementById("notice").textContent.includes("does not answer"));
    check(await page.isVisible(".block.now"), "the page goes with the program");
  } finally {
    program.kill("SIGKILL");
  }
}

// --- for everybody -------------------------------------------------------------------------------

async function forEverybody(context) {
  const page = await opened(context, demo, { cautions: true });
  await cautioned(page);
  await accessible(page, "page");
  for (const dialog of ["setup", "places", "help"]) {
    await page.click(`[data-open=${dialog}] >> nth=0`);
    await accessible(page, dialog);
    await page.keyboard.press("Escape");
    check(!(await page.isVisible(`#${dialog}`)), `Escape does not close ${dialog}`);
  }
  await again(page);
  check(!(await page.isVisible("#care")), "cautions at every visit");
}

async function keyboardAlone(context) {
  const page = await opened(context);
  const order = [];
  for (let tab = 0; tab < 12; tab++) {
    if (tab > 0) await page.keyboard.press("Tab");
    else await page.keyboard.press("Shift"); // the text has the focus, and it is seen once a key is used
    order.push(await page.evaluate(() => {
      const element = document.activeElement, style = getComputedStyle(element);
      return { name: element.getAttribute("aria-label") ?? element.textContent, seen: style.outlineStyle !== "none" || style.boxShadow !== "none", box: element.getBoundingClientRect().toJSON() };
    }));
  }
  same(order.map(({ name }) => name.split(";")[0]), ["Script", "Go", "Back", "Next", "Slower", "Faster", "Top", "Sections", "Set up", "Keys", "Second window", "Full screen"], "the order of focus");
  for (const { name, seen, box } of order) {
    check(seen, `focus on ${name} is not seen`);
    check(box.width >= 44 && box.height >= 44, `${name} is ${box.width} by ${box.height} px`);
  }
  // A button that has the focus is pressed by the space bar, and once.
  await page.focus("[data-do=faster]");
  await page.keyboard.press("Space");
  same([await textOf(page, "pace"), await textOf(page, "go")], ["1.05x", "Go"], "space on Faster");
  // A dialog that was opened by hand leaves the keys to the text.
  await page.click("[data-open=help]");
  await page.keyboard.press("Escape");
  await until(page, () => document.activeElement.id === "stage");
  await page.keyboard.press("Space");
  await run(page, 4);
  same(await textOf(page, "go"), "Hold", "space after a dialog");
  await until(page, () => getComputedStyle(document.getElementById("bar")).opacity === "0");
  await page.keyboard.press("Tab");
  await until(page, () => getComputedStyle(document.getElementById("bar")).opacity === "1");
  await page.keyboard.press("Home");
  // Single letters can be switched off (WCAG 2.1.4).
  await page.click("[data-open=setup]");
  await page.uncheck("[name=letters]");
  await page.click("#setup [data-close]");
  await page.keyboard.press("m");
  check(!(await page.evaluate(() => document.documentElement.classList.contains("mirror"))), "a letter that is switched off is a key");
}

async function fits(context) {
  const page = await opened(context);
  const name = `page-${page.viewportSize().width}x${page.viewportSize().height}`;
  await page.screenshot({ path: shot(name) });
  const wrong = await page.evaluate(() => {
    const out = [];
    for (const element of document.querySelectorAll("#bar button, #times p, .block.now .word")) {
      const box = element.getBoundingClientRect();
      if (element.checkVisibility() && (box.left < -1 || box.right > innerWidth + 1 || (!element.closest(".block") && box.bottom > innerHeight + 1))) out.push(`${element.textContent} ${box.left}..${box.right}, ${box.bottom}`);
    }
    const bar = document.getElementById("bar").getBoundingClientRect(), times = document.getElementById("times").getBoundingClientRect();
    if (bar.bottom > times.top + 1) out.push("the buttons lie over the times");
    const first = document.querySelector(".block.now .word").getBoundingClientRect();
    if (bar.top < first.bottom) out.push("the buttons lie over the spoken line");
    return out;
  });
  check(wrong.length === 0, wrong.join("; "));
}

// --- an hour -------------------------------------------------------------------------------------

async function anHour(context) {
  const body = demo.slice(demo.indexOf("# Hello"));
  const text = `---\ntitle: An hour\nspeakers: MIRA, JO\n---\n${body.repeat(36)}`;
  const script = scriptOf(text);
  check(script.seconds > 3600, `the script takes ${script.seconds} s`);
  const page = await opened(context, text, { settings: noLead });
  await page.keyboard.press("Space");
  let t = 0, most = 0;
  const wanted = (at) => script.thoughts.findLast((thought) => thought.seconds > 0 && thought.at <= at).id;
  while (t < 3600) {
    // In the middle of a thought, so that a frame more or less is none the matter.
    const thought = script.thoughts.find((each) => each.at > t + 40 && each.seconds > 0.5);
    if (!thought) break;
    const at = thought.at + thought.seconds / 2;
    await page.clock.fastForward(Math.round((at - t) * 1000));
    await run(page, 0.05);
    t = at + 0.05;
    same((await shown(page)).id, wanted(at), `the thought at ${at.toFixed(0)} s`);
    most = Math.max(most, await page.evaluate(() => document.querySelectorAll(".block").length));
  }
  check(t > 3500, `the test went to ${t} s only`);
  check(most < 60, `${most} thoughts in the document at once`);
  await page.clock.fastForward(Math.ceil((script.seconds - t) * 1000) + 200);
  await run(page, 0.1);
  check(await page.isVisible("#end"), "an hour does not end");
}

const tests = [
  ["a thought is shown when it is said", followsTheScript],
  ["pauses hold", pausesHold],
  ["trim", trims],
  ["hold, step and jump by keys", holdsAndSteps],
  ["lead-in", countsIn],
  ["pedal that goes and holds", pedals],
  ["over and under the target", timesAgainstTarget],
  ["touch", touches, { viewport: { width: 390, height: 844 }, hasTouch: true }],
  ["flip", flips],
  ["near the lens", nearTheLens],
  ["line length and eye travel", column],
  ["contrast", contrasts],
  ["marks without colour", marksWithoutColour],
  ["steps where motion is unwanted", stepsWhereMotionIsUnwanted, { reducedMotion: "reduce" }],
  ["place and settings over a new export", keepsPlaceAndSettings],
  ["hostile text", hostileText],
  ["scripts without words", emptyScripts],
  ["second window", secondWindow],
  ["covered window", coveredWindow],
  ["second window opened by hand", secondWindowByHand],
  ["wake lock", staysAwake],
  ["full screen", fullScreen],
  ["live", followsSaves, { failsToLoad: true }],
  ["accessibility rules", forEverybody],
  ["keyboard alone", keyboardAlone],
  ["phone", fits, { viewport: { width: 390, height: 844 }, hasTouch: true }],
  ["phone on its side", fits, { viewport: { width: 844, height: 390 }, hasTouch: true }],
  ["tablet", fits, { viewport: { width: 820, height: 1180 }, hasTouch: true }],
  ["enlarged four times", fits, { viewport: { width: 320, height: 568 } }],
  ["desktop", fits, { viewport: { width: 1920, height: 1080 } }],
  ["an hour", anHour],
];
// The manual's picture: page.mjs --picture FILE.
async function picture(context) {
  const page = await opened(context, demo, { settings: noLead });
  await page.keyboard.press("Space");
  await run(page, 24.5);
  await page.mouse.move(900, 20);
  await run(page, 3.5);
  await page.screenshot({ path: process.argv[3] });
}
if (process.argv[2] === "--picture") process.exit(await withBrowser([["picture", picture, { viewport: { width: 960, height: 600 } }]]));

const wanted = process.argv[2];
process.exit(await withBrowser(tests.filter(([name]) => !wanted || name.includes(wanted))));
