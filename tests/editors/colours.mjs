// The TextMate grammar of the VS Code extension on one line each: what it paints and what stays
// text. The cases are those of docs/format.md; the engine is the one that VS Code ships.
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

// A line, and the pieces that are painted.
const cases = [
  ["---\ntitle: News: at ten\n---\nHi.", "header: ---", "key: title", "value: News: at ten", "header: ---"],
  ["---\ntitle: A\nplain words", "header: ---", "key: title", "value: A"],
  ["# Opening (0:20)", "heading: # Opening (0:20)"],
  ["## Part (45s max)", "heading: ## Part (45s max)"],
  ["### A (0:20-0:30)", "heading: ### A (0:20-0:30)"],
  ["# A (1:30) b", "heading: # A (1:30) b"],
  ["#1 and #tag"],
  ["Words.\n---\nWords.", "mark: ---"],
  ["% said to nobody [smile]", "note: % said to nobody [smile]"],
  ["5% of limpets"],
  ["- a pencil", "mark: -"],
  ["2. a string", "mark: 2."],
  ["1984. What a year"],
  ["-5 degrees"],
  ["MIRA: Hello", "speaker: MIRA:"],
  ["MIRA AND JO: Hello", "speaker: MIRA AND JO:"],
  ["Note: Hello"],
  ["[smile] Hello [wait 2s]", "direction: [smile]", "direction: [wait 2s]"],
  ["[a [b] c] d", "direction: [a [b] c]"],
  ["[open with no end"],
  ["ten ... you", "mark: ..."],
  ["wait…what", "mark: …"],
  ["a .. b"],
  ["Stop. x Go. xx", "mark: x", "mark: xx"],
  ["solve for x now, 3 x 4"],
  ["Generation X XX"],
  ["shore / with // and", "mark: /", "mark: //"],
  ["and/or, 5 / 6"],
  ["now (.) and (1.5) and (2s)", "mark: (.)", "mark: (1.5)", "mark: (2s)"],
  ["(2024) (3) (...)", "mark: ..."], // the omission's dots: the server knows better
  ["Patella{puh-TEHL-uh} is", "mark: {puh-TEHL-uh}"],
  ["2:30{= half past two}", "mark: {= half past two}"],
  ["Name {x}"],
  ["^up ↑up down↘ a‿b", "mark: ^", "mark: ↑", "mark: ↘", "mark: ‿"],
  ["x^2 and ^ word"],
  ["so:: that", "mark: ::"],
  ["std::vector 3::1"],
  ["\\*not\\* marked", "escape: \\*", "escape: \\*"],
  ["`a / b` and", "raw: `a / b`"],
  ["https://limpets.example/a/b", "link: https://limpets.example/a/b"],
];

let wrong = 0;
for (const [text, ...wanted] of cases) {
  const got = painted(text);
  if (JSON.stringify(got) === JSON.stringify(wanted)) continue;
  wrong++;
  console.error(`colours: ${JSON.stringify(text)} is painted [${got.join(" | ")}], not [${wanted.join(" | ")}]`);
}
if (wrong > 0) process.exit(1);
console.log(`colours: ${cases.length} lines are painted as the format says`);
