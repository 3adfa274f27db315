// Finds the `sayline` program: by the setting, else on PATH, else the one that came with the extension.
import { accessSync, constants, statSync } from "node:fs";
import { homedir } from "node:os";
import { delimiter, isAbsolute, join, resolve } from "node:path";

export interface Found {
  program: string;
}

export interface Missing {
  tried: string; // what was looked for and why it will not do: a sentence
}

const names = process.platform === "win32" ? ["sayline.exe", "sayline"] : ["sayline"];

function isProgram(file: string): boolean {
  try {
    if (!statSync(file).isFile()) return false;
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function isFolder(file: string): boolean {
  return statSync(file, { throwIfNoEntry: false })?.isDirectory() ?? false;
}

function onPath(candidates: string[]): string | undefined {
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    if (!folder) continue;
    const program = candidates.map((name) => join(folder, name)).find(isProgram);
    if (program) return program;
  }
  return undefined;
}

// `setting` is what the writer put into sayline.path; relative paths start at `folder`. `bundled` is the
// folder of the program that may have come with the extension.
export function findServer(setting: string, folder: string | undefined, bundled: string): Found | Missing {
  const wanted = setting.trim();
  if (!wanted) {
    const program = onPath(names) ?? names.map((name) => join(bundled, name)).find(isProgram);
    if (program) return { program };
    const count = (process.env.PATH ?? "").split(delimiter).filter(Boolean).length;
    return { tried: `There is no \`sayline\` program in the ${count} folders of PATH, and none came with the extension.` };
  }

  const isName = !/[\\/]/.test(wanted) && !wanted.startsWith("~");
  if (isName) {
    const program = onPath([wanted]);
    if (program) return { program };
    return { tried: `The setting sayline.path is "${wanted}", and PATH has no program of that name.` };
  }

  const expanded = wanted.replace(/^~(?=$|[\\/])/, homedir());
  const path = isAbsolute(expanded) ? expanded : resolve(folder ?? homedir(), expanded);
  if (isProgram(path)) return { program: path };
  if (isFolder(path)) {
    const program = names.map((name) => join(path, name)).find(isProgram);
    if (program) return { program };
    return { tried: `The setting sayline.path is the folder ${path}, and there is no sayline program in it.` };
  }
  const exists = statSync(path, { throwIfNoEntry: false }) !== undefined;
  return {
    tried: exists
      ? `The setting sayline.path is ${path}, which is not a program that may be run.`
      : `The setting sayline.path is ${path}, and there is no such file.`,
  };
}
