// Writes the settings of the server into package.json, so that VS Code lists, explains and checks
// them. They come from docs/settings.schema.json, which the program prints; the few that only the
// editor reads stand here.
//   node scripts/settings.mjs           writes
//   node scripts/settings.mjs --check   only says whether package.json is in step
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const packageFile = fileURLToPath(new URL("../package.json", import.meta.url));
const schemaFile = fileURLToPath(new URL("../../../docs/settings.schema.json", import.meta.url));

// Keep the names in step with `editorOnly` in src/settings.ts.
const editorSettings = {
  "sayline.path": {
    type: "string",
    default: "",
    scope: "machine-overridable",
    markdownDescription:
      "Where the `sayline` program is: a file, the folder that holds it, or a name to look up on `PATH`. Empty: `sayline` on `PATH`, else the one that came with the extension.",
  },
  "sayline.trace.server": {
    type: "string",
    enum: ["off", "messages", "verbose"],
    default: "off",
    scope: "window",
    description: "How much of the talk between editor and server the log shows.",
  },
};

// The comment names the source of the default: people who change a limit want to know it.
function describe({ $comment, description, ...rest }) {
  const text = [description, $comment].filter(Boolean).join("\n\n");
  return text ? { ...rest, markdownDescription: text } : rest;
}

function fromSchema(schema) {
  const properties = {};
  for (const [key, value] of Object.entries(schema.properties)) {
    if (key.startsWith("$")) continue;
    properties[`sayline.${key}`] = { ...describe(value), scope: "resource" };
  }
  return properties;
}

const before = readFileSync(packageFile, "utf8");
const manifest = JSON.parse(before);
const schema = JSON.parse(readFileSync(schemaFile, "utf8"));
manifest.contributes.configuration.properties = { ...editorSettings, ...fromSchema(schema) };
const after = JSON.stringify(manifest, null, 2) + "\n";

if (process.argv.includes("--check")) {
  if (before !== after) {
    console.error(
      "editors/vscode/package.json is not in step with docs/settings.schema.json: run `npm run settings` in editors/vscode",
    );
    process.exit(1);
  }
} else if (before !== after) {
  writeFileSync(packageFile, after);
}
