// A real VS Code in a browser against the built server, as a writer would meet it: findings, times
// beside the text, in the status bar and in the side view, hover, the way to a rule's paragraph, the
// fix that splits a run-on thought, a first script by the walkthrough, and what is said when the
// program dies or is missing.
// Run by `vscode` beside this file, which sets the SAYLINE_ variables. With --pictures it only takes
// the screenshots of the manual.
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

const { chromium } = await import(process.env.SAYLINE_PLAYWRIGHT);
const work = process.env.SAYLINE_WORK;
const script = join(work, "scripts", "limpets.say");
const userSettings = join(work, "user", "User", "settings.json");
// Where the program is belongs to the machine: a browser's own settings do not count for it.
const machineSettings = join(work, "user", "Machine", "settings.json");
const patience = Number(process.env.SAYLINE_PATIENCE ?? 120) * 1000; // a machine that is busy with other tests is slow to start an editor

class Failure extends Error {}

function check(condition, message) {
  if (!condition) throw new Failure(message);
}

async function until(what, look, page) {
  const end = Date.now() + patience;
  for (;;) {
    const value = await look();
    if (value) return value;
    if (Date.now() > end) {
      await page?.screenshot({ path: shot("failure") });
      throw new Failure(`waited ${patience / 1000} s in vain for ${what}`);
    }
    await new Promise((done) => setTimeout(done, 100));
  }
}

const shot = (name) => join(process.env.SAYLINE_SHOTS, `${name}.png`);

function writeSettings(program, more) {
  const settings = {
    "workbench.colorTheme": "Default Light Modern",
    "workbench.startupEditor": "none",
    "workbench.secondarySideBar.defaultVisibility": "hidden",
    "workbench.activityBar.location": "hidden",
    "workbench.layoutControl.enabled": false,
    "window.commandCenter": false,
    "chat.disableAIFeatures": true,
    "editor.minimap.enabled": false,
    "editor.stickyScroll.enabled": false,
    "editor.fontSize": 15,
    "editor.hover.delay": 100,
    "telemetry.telemetryLevel": "off",
    ...more,
  };
  for (const [file, content] of [[userSettings, settings], [machineSettings, { "sayline.path": program }]]) {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, JSON.stringify(content));
  }
}

// --- the editor --------------------------------------------------------------------------------

function codeServer(...args) {
  return [
    process.env.SAYLINE_CODE_SERVER,
    "--config", join(work, "code-server.yaml"),
    "--user-data-dir", join(work, "user"),
    "--extensions-dir", join(work, "extensions"),
    ...args,
  ];
}

function installExtension() {
  const args = codeServer("--install-extension", join(work, "sayline.vsix"));
  const done = spawnSync(process.execPath, args, { encoding: "utf8" });
  check(done.status === 0, `the extension does not install:\n${done.stdout}${done.stderr}`);
}

// Starts the editor at a free port and answers with its address.
function startEditor() {
  const args = codeServer(
    "--auth", "none",
    "--bind-addr", "127.0.0.1:0",
    "--disable-telemetry",
    "--disable-update-check",
    "--disable-workspace-trust",
    "--disable-getting-started-override",
    join(work, "scripts"),
  );
  const editor = spawn(process.execPath, args, {
    stdio: ["ignore", "pipe", "pipe"],
    detached: true, // a group of its own: it starts processes that would outlive it
  });
  const address = new Promise((found, lost) => {
    let said = "";
    const listen = (bytes) => {
      said += bytes;
      const match = /listening on (http:\/\/127\.0\.0\.1:\d+)/.exec(said);
      if (match) found(match[1]);
    };
    editor.stdout.on("data", listen);
    editor.stderr.on("data", listen);
    editor.on("exit", (status) => lost(new Failure(`code-server ended with ${status}:\n${said}`)));
  });
  return { editor, address };
}

async function openScript(page, address) {
  const query = new URLSearchParams({
    folder: dirname(script),
    payload: JSON.stringify([["openFile", `vscode-remote://${new URL(address).host}${script}`]]),
  });
  await page.goto(`${address}/?${query}`);
  await until("the script on the screen", () => page.locator(".view-line").first().isVisible(), page);
}

// --- what a writer sees ------------------------------------------------------------------------

// Spaces on the screen are no-break spaces.
const plain = (text) => text.replaceAll("\u00a0", " ");

async function screenLines(page) {
  return (await page.locator(".editor-instance .view-line").allInnerTexts()).map(plain);
}

async function runTime(page) {
  const texts = await page.locator(".statusbar-item").allInnerTexts();
  return texts.map((text) => plain(text).trim()).find((text) => /^\d+:\d\d( of | ·|$)/.test(text));
}

function runSeconds(text) {
  const [, minutes, seconds] = /^(\d+):(\d\d)/.exec(text);
  return Number(minutes) * 60 + Number(seconds);
}

async function goTo(page, line, column) {
  await page.keyboard.press("Control+G");
  await page.waitForSelector(".quick-input-widget input");
  await page.keyboard.type(`${line}:${column}`);
  await page.keyboard.press("Enter");
  await page.locator(".quick-input-widget").waitFor({ state: "hidden", timeout: patience });
  const place = page.locator(".statusbar-item", { hasText: `Ln ${line}, Col ${column}` });
  await until("the cursor to move", () => place.isVisible(), page);
}

// A place in a text on the screen for the mouse; `part` is how far along, from 0 to 1. The editor
// cuts a long text into several pieces.
async function placeOf(page, text, part) {
  const place = await page.evaluate(([wanted, along]) => {
    for (const line of document.querySelectorAll(".editor-instance .view-line")) {
      const at = line.textContent.replaceAll("\u00a0", " ").indexOf(wanted);
      if (at < 0) continue;
      const range = document.createRange();
      const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
      let passed = 0;
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        const start = at - passed;
        const end = at + wanted.length - passed;
        if (start >= 0 && start < node.length) range.setStart(node, start);
        if (end > 0 && end <= node.length) range.setEnd(node, end);
        passed += node.length;
      }
      const { x, y, width, height } = range.getBoundingClientRect();
      return { x: x + width * along, y: y + height / 2, height };
    }
    return null;
  }, [text, part]);
  if (!place) await page.screenshot({ path: shot("failure") });
  check(place, `the screen does not show "${text}"`);
  return place;
}

// What stands in the hover once the pointer rests right before `text`: on the blank between two
// words it is about the thought.
async function hover(page, text) {
  const shown = page.locator(".monaco-hover:visible", { hasText: /between/ }).first();
  await pointUntil(page, text, 0.01, "the hover of a thought", shown);
  return plain(await shown.innerText());
}

// Rests the pointer on a text until the editor shows something there; lines that come in above move
// the text, so the place is looked up anew.
async function pointUntil(page, text, part, what, shown) {
  await until(what, async () => {
    const { x, y, height } = await placeOf(page, text, part);
    await page.mouse.move(x, y + height);
    await page.mouse.move(x, y, { steps: 3 });
    await shown.waitFor({ timeout: 2000 }).catch(() => {});
    return shown.isVisible();
  }, page);
}

// --- the walk ----------------------------------------------------------------------------------

const runOn = "We put the square down on the rock. We count what sits inside it. We write the number on the sheet.";

async function findings(page) {
  await until("a squiggle", () => page.locator(".squiggly-warning").first().isVisible(), page);
  const hinted = await until("seconds at the ends of thoughts", async () =>
    (await screenLines(page)).filter((line) => /\d+\.\d s$/.test(line.trimEnd())).length >= 5, page);
  check(hinted, "no inlay hints");
}

async function times(page) {
  const shown = await until("the run time in the status bar", () => runTime(page), page);
  check(/^\d+:\d\d of 0:40 max( · here \d+:\d\d)?$/.test(shown), `the status bar shows "${shown}"`);
  await page.locator(".statusbar-item", { hasText: "of 0:40 max" }).first().click();
  const rows = page.locator(".quick-input-list .monaco-list-row");
  await until("the list of sections", async () => (await rows.count()) === 3, page);
  const texts = (await rows.allInnerTexts()).map((row) => plain(row).replaceAll("\n", " "));
  check(/^Whole script/.test(texts[0]), `the list starts with "${texts[0]}"`);
  check(/Hello.* of 0:10 max/.test(texts[1]), `a section without its time: "${texts[1]}"`);
  await page.screenshot({ path: shot("sections") });
  await page.keyboard.press("Escape");
  return shown;
}

async function splitFix(page, before) {
  const line = readFileSync(script, "utf8").split("\n").findIndex((text) => text.includes(runOn)) + 1;
  await page.mouse.move(5, 5); // away from the text: an open hover would lie over the fixes
  await goTo(page, line, 8);
  const fix = page.locator(".action-widget .monaco-list-row", { hasText: /split/i }).first();
  await until("a fix that splits the thought", async () => {
    if (await fix.isVisible()) return true;
    // Pressed again if the editor had not come to rest: another key press closes its list.
    await page.keyboard.press("Control+.");
    await fix.waitFor({ timeout: 4000 }).catch(() => {});
    return fix.isVisible();
  }, page);
  await page.screenshot({ path: shot("fixes") });
  await fix.click();

  const wanted =
    "JO: We put the square down on the rock.\n\nWe count what sits inside it.\n\nWe write the number on the sheet.\n";
  await until("the split on the screen", async () =>
    (await screenLines(page)).some((text) => text.startsWith("We count what sits inside it.")), page);
  await page.keyboard.press("Control+S");
  await until("the saved script", () => readFileSync(script, "utf8").includes(wanted), page);

  // A timed pause holds as written: docs/format.md.
  await page.keyboard.press("Control+End");
  await page.keyboard.type("\n(9.5)");
  await until("a run time longer by the pause", async () => {
    const longer = runSeconds(await runTime(page)) - runSeconds(before);
    return longer === 9 || longer === 10;
  }, page);
  await page.keyboard.press("Control+S");
  await until("the saved pause", () => readFileSync(script, "utf8").includes("(9.5)"), page);
}

// The side view has the script and its two sections, each with what it has used of its target.
async function sectionView(page) {
  await runCommand(page, "Sayline: Show the section times");
  const rows = page.locator(".pane-body [role=treeitem]", { hasText: " of 0:" });
  await until("the sections in the side view", async () => (await rows.count()) === 3, page);
  const texts = (await rows.allInnerTexts()).map((row) => plain(row).replaceAll("\n", " "));
  check(/^Script\s*[▪▫|]{8,} 0:\d\d of 0:40 max$/.test(texts[0]), `the side view starts with "${texts[0]}"`);
  await rows.nth(2).click();
  const line = readFileSync(script, "utf8").split("\n").findIndex((text) => text.startsWith("# How it works")) + 1;
  const place = page.locator(".statusbar-item", { hasText: `Ln ${line}, Col 1` });
  await until("the cursor to go to the section", () => place.isVisible(), page);
  // Hello takes five seconds or more; what follows it is said later than that.
  await until("the time at the cursor", async () => {
    const here = /here (\d+):(\d\d)$/.exec(await runTime(page) ?? "");
    return here && Number(here[1]) * 60 + Number(here[2]) >= 5;
  }, page);
}

// The palette lists a command once its extension has come up, so it is opened anew until it does.
async function runCommand(page, title) {
  const row = page.locator(".quick-input-list .monaco-list-row", { hasText: title }).first();
  await until(`the command "${title}"`, async () => {
    await page.keyboard.press("F1");
    await page.locator(".quick-input-widget input").waitFor({ timeout: 4000 }).catch(() => {});
    await page.keyboard.type(title);
    await row.waitFor({ timeout: 4000 }).catch(() => {});
    if (await row.isVisible()) return true;
    await page.keyboard.press("Escape");
    return false;
  }, page);
  await page.keyboard.press("Enter");
}

// The name of the rule in a finding leads to its paragraph.
async function ruleLink(page) {
  const link = page.locator(".monaco-hover:visible a", { hasText: "run-on" }).first();
  await pointUntil(page, "put the square", 0.5, "the rule's name in the hover", link);
  await page.screenshot({ path: shot("finding") });
  await link.click();
  const tab = page.locator(".tab", { hasText: "rules.md" }).first();
  await until("the manual of the rules", () => tab.isVisible(), page);
  const paragraph = page.frameLocator("iframe.webview").frameLocator("#active-frame").locator("#run-on");
  await until("the rule's paragraph on the screen", () => paragraph.isVisible(), page);
  await page.screenshot({ path: shot("rule") });
  await page.keyboard.press("Control+F4");
  await page.locator(".tab", { hasText: "limpets.say" }).first().click();
}

// The picture of the rhythm beside the script; a change is drawn at once.
async function rhythm(page) {
  await runCommand(page, "Sayline: Show the script's rhythm");
  const picture = page.frameLocator("iframe.webview").frameLocator("#active-frame").locator("svg");
  await until("the picture of the rhythm", () => picture.isVisible(), page);
  const label = await picture.locator("title").textContent();
  check(/^Counting limpets, 0:\d\d of 0:40 max$/.test(label), `the picture says "${label}"`);
  await page.screenshot({ path: shot("rhythm") });
  await page.locator(".tab", { hasText: "Rhythm" }).first().click();
  await page.keyboard.press("Control+F4");
}

// A thought is heard, and the view says whose voice it is. The sound is one that the browser plays.
async function hear(page) {
  await page.locator(".tab", { hasText: "limpets.say" }).first().click();
  await goTo(page, 10, 1);
  await runCommand(page, "Sayline: Hear this thought");
  const inside = page.frameLocator("iframe.webview").frameLocator("#active-frame");
  const sound = inside.locator("audio");
  await until("the sound of a thought", () => sound.isVisible(), page);
  const seconds = () => sound.evaluate((element) => element.duration);
  await until("a sound that plays", async () => (await seconds()) > 1, page);
  const said = await inside.locator("body").innerText();
  const told = Number(/([\d.]+) seconds\./.exec(said)?.[1]);
  check(Math.abs(told - (await seconds())) < 0.06, `it lasts ${await seconds()} s, and the view says "${said}"`);
  check(/machine's voice/.test(said), `nothing says that it is a machine: "${said}"`);
  await page.screenshot({ path: shot("hear") });
  await page.locator(".tab", { hasText: "Hear a thought" }).first().click();
  await page.keyboard.press("Control+F4");
}

// The script as captions, in a file beside it.
async function saveAs(page) {
  await page.locator(".tab", { hasText: "limpets.say" }).first().click();
  await runCommand(page, "Sayline: Save the script in another form");
  const form = page.locator(".quick-input-list .monaco-list-row", { hasText: "captions as SRT" }).first();
  await until("the forms that can be made", () => form.isVisible(), page);
  await page.screenshot({ path: shot("forms") });
  await form.click();
  const input = page.locator(".quick-input-widget input[type=text]").first();
  await until("the name of the file", async () => /limpets\.srt$/.test(await input.inputValue().catch(() => "")), page);
  await page.keyboard.press("Enter");
  const captions = script.replace(/say$/, "srt");
  await until("the captions in their file", () => existsSync(captions) && readFileSync(captions, "utf8").includes(" --> "), page);
}

// What a command shows in a tab of the browser's own.
async function inTheBrowser(page, command) {
  const opened = page.context().waitForEvent("page", { timeout: patience });
  await runCommand(page, command);
  const asked = page.locator(".monaco-dialog-box").getByText("Open", { exact: true });
  await Promise.race([opened, asked.click({ timeout: patience }).catch(() => {})]);
  return opened;
}

// The page to read from; it follows a save.
async function readingPage(page) {
  const reading = await inTheBrowser(page, "Sayline: Open the reading page");
  await until("the words on the reading page", async () => (await reading.locator("body").innerText()).includes("put the square"), reading);
  await reading.screenshot({ path: shot("reading") });
  await reading.close();
}

// The page to rehearse with: a cold read of it begins with the script's first words.
async function practicePage(page) {
  const practice = await inTheBrowser(page, "Sayline: Open the practice page");
  await until("the cautions of the practice page", () => practice.locator("#understood").isVisible(), practice);
  await practice.screenshot({ path: shot("practice-page") });
  await practice.locator("#understood").click();
  await practice.locator("#start [data-do=cold]").click();
  await until("the first thought of a cold read", async () => (await practice.locator("body").innerText()).includes("count to ten"), practice);
  await practice.screenshot({ path: shot("practice-cold") });
  await practice.close();
}

// A first script, as the walkthrough leads: typed without a mark, timed while it is typed, told of one
// thing, moved to the next stage and marked.
async function firstScript(page) {
  await runCommand(page, "Welcome: Open Walkthrough...");
  const choice = page.locator(".quick-input-list .monaco-list-row", { hasText: "Your first script in ten minutes" }).first();
  await until("the walkthrough in the list", () => choice.isVisible(), page);
  await choice.click();
  const start = page.locator(".getting-started-step button, .getting-started-step a", { hasText: "Start a new script" }).first();
  await until("the walkthrough's first step", () => start.isVisible(), page);
  await page.screenshot({ path: shot("walkthrough") });
  await start.click();
  const tab = page.locator(".tab", { hasText: "Untitled-1" }).first();
  await until("the new script", () => tab.isVisible(), page);
  await page.waitForTimeout(500); // the editor moves the keys to the new tab last
  await page.keyboard.type("Every spring we walk the same stretch of shore with a square of string. We count what sits inside it. "
    + "We write the number on the sheet.\n\nNobody minds if you lose count.\n");
  await until("the run time of the draft", async () => /of 1:00 max/.test(await runTime(page) ?? ""), page);
  const squiggles = page.locator(".squiggly-warning, .squiggly-info, .squiggly-hint");
  await until("the one thing to say of the draft", async () => (await squiggles.count()) > 0, page);
  await page.screenshot({ path: shot("draft") });
  await runCommand(page, "Sayline: Say how far the script is");
  const stage = page.locator(".quick-input-list .monaco-list-row", { hasText: "draw the marks" }).first();
  await until("the choice of stages", () => stage.isVisible(), page);
  await stage.click();
  await until("the stage in the header", async () => (await screenLines(page)).some((line) => /^stage: mark/.test(line)), page);
  await runCommand(page, "Sayline: Mark the script lightly");
  await until("a mark in the script", async () => (await screenLines(page)).some((line) => / (\/|\.\.\.|\*\w+\*)/.test(line)), page);
  await page.waitForTimeout(1500); // times and colours follow the marks
  await page.screenshot({ path: shot("marked") });
  await runCommand(page, "View: Revert and Close Editor");
  await page.locator(".tab", { hasText: "limpets.say" }).first().click();
}

function serversOf(program) {
  const running = readdirSync("/proc").filter((name) => /^\d+$/.test(name));
  return running.map(Number).filter((pid) => {
    try {
      return readFileSync(`/proc/${pid}/cmdline`, "utf8").startsWith(`${program}\0serve\0`);
    } catch {
      return false; // it has ended meanwhile
    }
  });
}

// A server that dies is started anew, and all is as before without opening the script again.
async function deadServer(page) {
  const before = serversOf(process.env.SAYLINE_PROGRAM);
  check(before.length > 0, "no server runs");
  for (const pid of before) process.kill(pid, "SIGKILL");
  await until("a new server", () => serversOf(process.env.SAYLINE_PROGRAM).some((pid) => !before.includes(pid)), page);
  await until("the run time from the new server", () => runTime(page), page);
  await runCommand(page, "Sayline: Restart the server");
  await findings(page);
  await until("the run time after a restart", () => runTime(page), page);
}

// The program is missing at start; once it is there, "Try again" is all it takes. It then reads at
// half the speed, as the editor's settings say.
async function missingProgram(page) {
  const program = join(work, "nowhere", "sayline");
  writeSettings(program, { "sayline.pace": "0.5x" });
  await page.reload();
  const message = page.locator(".notification-toast", { hasText: "there is no such file" }).first();
  await until("the message that the program is missing", () => message.isVisible(), page);
  const text = plain(await message.innerText());
  check(text.includes("set sayline.path"), `the message names no remedy: "${text}"`);
  check((await runTime(page)) === undefined, "there is a run time without a program");
  await page.screenshot({ path: shot("missing") });
  mkdirSync(join(work, "nowhere"));
  symlinkSync(process.env.SAYLINE_PROGRAM, program);
  await message.getByText("Try again").click();
  // About 14 of the 29 seconds are speech; pauses hold as written.
  await until("the run time at half the speed, after the program is back", async () => {
    const back = await runTime(page);
    return back !== undefined && runSeconds(back) > 36;
  }, page);
}

// Nothing is told by colour alone: the picture is for the eye, the check for what it must hold.
async function highContrast(page) {
  writeSettings(join(work, "nowhere", "sayline"), { "workbench.colorTheme": "Default High Contrast", "sayline.pace": "0.5x" });
  await page.reload();
  await until("the theme of high contrast", () => page.locator(".monaco-workbench.hc-black").isVisible(), page);
  await until("the script on the screen", () => page.locator(".view-line").first().isVisible(), page);
  await page.locator(".view-lines").first().click(); // the middle: at the top lies a shadow where the text is scrolled
  await runCommand(page, "Sayline: Show the section times");
  const over = page.locator(".pane-body [role=treeitem][aria-label*=' over']").first();
  await until("the script that runs over, in words", () => over.isVisible(), page);
  await page.waitForTimeout(500);
  await page.screenshot({ path: shot("contrast") });
}

async function walk(page) {
  await findings(page);
  const text = await hover(page, " square down on the rock");
  check(/\d\.\d s · between \d\.\d s and \d+\.\d s/.test(text), `the hover has no time: "${text}"`);
  await page.screenshot({ path: shot("hover") });
  await page.mouse.move(5, 5);
  const before = await times(page);
  await sectionView(page);
  await ruleLink(page);
  await rhythm(page);
  await hear(page);
  await saveAs(page);
  await readingPage(page);
  await practicePage(page);
  await firstScript(page);
  await deadServer(page);
  await splitFix(page, before);
  await missingProgram(page);
  await highContrast(page);
  console.log("vscode: findings, times, hover, rules, fixes, a first script and a server that dies or is missing: all well");
}

async function pictures(page) {
  await page.setViewportSize({ width: 1280, height: 760 });
  await runCommand(page, "Sayline: Show the section times");
  await until("the run time in the status bar", () => runTime(page), page);
  const lines = readFileSync(script, "utf8").split("\n");
  const first = lines.findIndex((line) => line.startsWith("# How it works"));
  await goTo(page, first + 1, 1);
  for (let step = 0; step < 3; step++) await page.keyboard.press("Control+ArrowDown");
  await until("a squiggle", () => page.locator(".squiggly-warning").first().isVisible(), page);
  await hover(page, " number out loud");
  await page.screenshot({ path: shot("vscode") });
}

// --- colours -----------------------------------------------------------------------------------

// The words of the server's semantic tokens are those that the extension gives colours to.
async function checkLegend() {
  const server = spawn(process.env.SAYLINE_PROGRAM, ["serve"], { stdio: ["pipe", "pipe", "ignore"] });
  const send = (message) => {
    const body = JSON.stringify({ jsonrpc: "2.0", ...message });
    server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  };
  send({ id: 1, method: "initialize", params: { processId: null, rootUri: null, capabilities: {} } });
  let said = "";
  for await (const bytes of server.stdout) {
    said += bytes;
    const [head, body] = said.split("\r\n\r\n", 2);
    const length = Number(/content-length: *(\d+)/i.exec(head)?.[1]);
    if (body !== undefined && Buffer.byteLength(body) >= length) break;
  }
  server.kill();
  const answer = JSON.parse(said.slice(said.indexOf("\r\n\r\n") + 4));
  const legend = answer.result.capabilities.semanticTokensProvider.legend;
  const manifest = JSON.parse(readFileSync(new URL("../../editors/vscode/package.json", import.meta.url), "utf8"));
  const names = (rows) => rows.map((row) => row.id).sort().join(" ");
  const same = (mine, theirs, what) =>
    check(names(mine) === [...theirs].sort().join(" "), `${what} differ: extension ${names(mine)}; server ${theirs}`);
  same(manifest.contributes.semanticTokenTypes, legend.tokenTypes, "token types");
  same(manifest.contributes.semanticTokenModifiers, legend.tokenModifiers, "token modifiers");
}

async function main() {
  await checkLegend();
  writeFileSync(join(work, "code-server.yaml"), "");
  writeSettings(process.env.SAYLINE_PROGRAM);
  installExtension();
  const { editor, address } = startEditor();
  const browser = await chromium.launch({
    executablePath: process.env.SAYLINE_CHROMIUM,
    args: ["--no-sandbox", "--disable-gpu"],
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.setDefaultTimeout(patience);
    await openScript(page, await address);
    await (process.argv.includes("--pictures") ? pictures(page) : walk(page));
  } finally {
    await browser.close();
    process.kill(-editor.pid);
  }
}

main().then(
  () => process.exit(0),
  (error) => {
    console.error(`vscode: ${error instanceof Failure ? error.message : error.stack}`);
    process.exit(1);
  },
);
