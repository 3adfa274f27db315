// Bundles the extension and the client library into dist/extension.js, with the licences of all
// that went in beside it.
import { build } from "esbuild";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
process.chdir(root);
mkdirSync("dist", { recursive: true });

const { metafile } = await build({
  entryPoints: ["src/extension.ts"],
  outfile: "dist/extension.js",
  bundle: true,
  platform: "node",
  format: "cjs",
  target: "node18",
  external: ["vscode"],
  minify: true,
  metafile: true,
  logLevel: "warning",
});

// The package that a bundled file belongs to: the nearest folder with a named package.json.
function packageOf(file) {
  for (let folder = dirname(file); folder.includes("node_modules"); folder = dirname(folder)) {
    const manifest = join(folder, "package.json");
    if (existsSync(manifest) && JSON.parse(readFileSync(manifest, "utf8")).name) return folder;
  }
  return undefined;
}

function notice(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying)/i.test(entry));
  if (!file) throw new Error(`${name} carries no licence text, so it cannot be shipped`);
  return `${name} ${version} (${license})\n\n${readFileSync(join(folder, file), "utf8").trim()}\n`;
}

const packages = new Set(Object.keys(metafile.inputs).map(packageOf).filter(Boolean));
const rule = `\n${"-".repeat(72)}\n\n`;
writeFileSync("dist/NOTICES.txt", [...packages].sort().map(notice).join(rule));
writeFileSync("dist/LICENSE.txt", readFileSync("../../LICENSE"));
// What a finding's name links to.
writeFileSync("dist/rules.md", readFileSync("../../docs/rules.md"));
