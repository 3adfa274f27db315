// The parts of the VS Code extension that need no editor: where the program is looked for, the stage
// in the header, the files of other forms, and how a target is drawn.
// Run by `vscode` beside this file, in the folder where the extension is built.
import { spawnSync } from "node:child_process";
import assert from "node:assert/strict";
import { chmodSync, mkdirSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

const program = process.env.SAYLINE_PROGRAM;
const work = join(process.env.SAYLINE_WORK, "parts");
const require = createRequire(join(process.cwd(), "package.json"));
mkdirSync(work, { recursive: true });
const outfile = join(work, "parts.mjs");
await require("esbuild").build({
  stdin: {
    contents: `export * from "./src/exports"; export * from "./src/stage"; export * from "./src/server";
      export { budgetBar } from "./src/sections";`,
    resolveDir: process.cwd(),
  },
  outfile,
  bundle: true,
  platform: "node",
  format: "esm",
  plugins: [{
    name: "no-editor",
    setup(build) {
      build.onResolve({ filter: /^vscode$/ }, () => ({ path: "vscode", namespace: "none" }));
      build.onResolve({ filter: /^vscode-languageclient/ }, () => ({ path: "client", namespace: "none" }));
      build.onLoad({ filter: /.*/, namespace: "none" }, () => ({ contents: "module.exports = {};" }));
    },
  }],
});
const { budgetBar, fileFor, findServer, pageAround, stageEdit } = await import(outfile);

// --- where the program is ------------------------------------------------------------------------

function makeProgram(folder) {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, "sayline");
  writeFileSync(file, "#!/bin/sh\n");
  chmodSync(file, 0o755);
  return file;
}

const onPath = makeProgram(join(work, "path"));
const bundled = makeProgram(join(work, "bin"));
const nowhere = join(work, "nowhere");
process.env.PATH = join(work, "path");
assert.deepEqual(findServer("", undefined, nowhere), { program: onPath });
assert.deepEqual(findServer("", undefined, join(work, "bin")), { program: onPath }, "PATH is before the bundled one");
assert.deepEqual(findServer("sayline", undefined, nowhere), { program: onPath }, "a name");
assert.deepEqual(findServer(join(work, "bin"), undefined, nowhere), { program: bundled }, "a folder");
assert.deepEqual(findServer("bin/sayline", work, nowhere), { program: bundled }, "a path from the folder");
process.env.PATH = nowhere;
assert.deepEqual(findServer("", undefined, join(work, "bin")), { program: bundled }, "the bundled one last");
assert.match(findServer("", undefined, nowhere).tried, /no `sayline` program in the 1 folders of PATH, and none came/);
assert.match(findServer("salyine", undefined, nowhere).tried, /"salyine", and PATH has no program of that name/);
assert.match(findServer(join(work, "missing"), undefined, nowhere).tried, /there is no such file/);
assert.match(findServer(work, undefined, nowhere).tried, /there is no sayline program in it/);
writeFileSync(join(work, "text"), "no program");
assert.match(findServer(join(work, "text"), undefined, nowhere).tried, /not a program that may be run/);

// --- the stage in the header ---------------------------------------------------------------------

function withStage(text, stage) {
  const lines = text.split("\n");
  const { from, to, text: row } = stageEdit(lines, stage);
  const before = lines.slice(0, from).map((line) => `${line}\n`).join("");
  return from < lines.length ? before + row + lines.slice(to).join("\n") : text + row;
}

assert.equal(withStage("Count them.\n", "mark"), "---\nstage: mark\n---\n\nCount them.\n");
assert.equal(withStage("---\ntitle: A\n---\nCount.", "read"), "---\ntitle: A\nstage: read\n---\nCount.");
assert.equal(withStage("---\nstage: draft\ntitle: A\n---\n", "mark"), "---\nstage: mark\ntitle: A\n---\n");
assert.equal(withStage("Count.\n---\nstage: draft\n---\n", "mark"), "---\nstage: mark\n---\n\nCount.\n---\nstage: draft\n---\n");
for (const text of ["", "Hi.", "---\ntitle: A\n---\n", "---\ntitle: A"]) {
  for (const stage of ["draft", "mark", "read"]) {
    const once = withStage(text, stage);
    const checked = spawnSync(program, ["explain", "-"], { input: `${once}\n\nCount.\n`, encoding: "utf8" });
    assert.equal(checked.status, 0, checked.stderr);
    assert.equal(withStage(once, stage), once, `twice changes ${JSON.stringify(text)}`);
  }
}

// --- other forms ----------------------------------------------------------------------------------

assert.equal(fileFor("/tide/shore.say", { name: "page", file: "html" }), "/tide/shore.page.html");
assert.equal(fileFor("/tide/shore", { name: "vtt", file: "vtt" }), "/tide/shore.vtt");
const picture = spawnSync(program, ["export", "--to", "svg", process.env.SAYLINE_DEMO], { encoding: "utf8" }).stdout;
for (const dark of [true, false]) {
  const page = pageAround(picture, dark);
  assert.ok(page.includes(dark ? "@media all{" : "@media not all{"), "the editor's colours decide");
  assert.ok(!page.includes("prefers-color-scheme") && !/<script|https?:(?!\/\/www\.w3\.org\/2000\/svg)/.test(page));
}

// --- targets -------------------------------------------------------------------------------------

const bar = (seconds, high) => budgetBar({ seconds, target: high ? { low: 0, high } : null });
assert.equal(bar(10, 0), "");
assert.equal(bar(0, 20), "▫▫▫▫▫▫▫▫");
assert.equal(bar(10, 20), "▪▪▪▪▫▫▫▫");
assert.equal(bar(20, 20), "▪▪▪▪▪▪▪▪");
assert.equal(bar(25, 20), "▪▪▪▪▪▪▪▪|▪▪");
assert.equal(bar(500, 20), "▪▪▪▪▪▪▪▪|▪▪▪▪");
console.log("parts: the program, the stage, the other forms and the targets are right");
