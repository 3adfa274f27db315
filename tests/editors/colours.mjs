// The TextMate grammar of the VS Code extension on one line each: what it paints and what stays
// text. The cases are those of docs/format.md, in colours.json; the engine is the one that VS Code ships.
// Run by `vscode` beside this file.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(process.env.SAYLINE_CODE_SERVER.replace(/out\/node\/entry\.js$/, "lib/vscode/package.json"));
const oniguruma = require("vscode-oniguruma");
const { Registry, INITIAL, parseRawGrammar } = require("vscode-textmate");

const grammarFile = new URL("../../editors/vscode/syntaxes/sayline.tmLanguage.json", import.meta.url);
await oniguruma.loadWASM(readFileSync(require.resolve("vscode-oniguruma/release/onig.wasm")));
const registry = new Registry({
  onigLib: Promise.resolve({
    createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
    createOnigString: (text) => new oniguruma.OnigString(text),
  }),
  loadGrammar: async () => parseRawGrammar(readFileSync(grammarFile, "utf8"), "grammar.json"),
});
const grammar = await registry.loadGrammar("text.sayline");

// A scope's short name: what a piece is.
const names = {
  "markup.heading": "heading",
  "string.unquoted.value": "value",
  "entity.name.tag.key": "key",
  "entity.name.type.speaker": "speaker",
  "comment.line.note": "note",
  "keyword.control.direction": "direction",
  "punctuation.definition.header": "header",
  "constant.language.mark": "mark",
  "constant.character.escape": "escape",
  "markup.inline.raw": "raw",
  "markup.underline.link": "link",
};

function painted(text) {
  const pieces = [];
  let state = INITIAL;
  for (const line of text.split("\n")) {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    state = ruleStack;
    for (const token of tokens) {
      const name = names[token.scopes.at(-1).replace(/\.sayline$/, "")];
      if (name) pieces.push(`${name}: ${line.slice(token.startIndex, token.endIndex).trim()}`);
    }
  }
  return pieces;
}

// Marks that come in pairs are left to the server's semantic tokens.
const cases = JSON.parse(readFileSync(new URL("colours.json", import.meta.url), "utf8")).filter((row) => !row.pairs);

let wrong = 0;
for (const { text, painted: wanted } of cases) {
  const got = painted(text);
  if (JSON.stringify(got) === JSON.stringify(wanted)) continue;
  wrong++;
  console.error(`colours: ${JSON.stringify(text)} is painted [${got.join(" | ")}], not [${wanted.join(" | ")}]`);
}
if (wrong > 0) process.exit(1);
console.log(`colours: ${cases.length} lines are painted as the format says`);
