// The settings that the server gets: only those that the writer has set. VS Code would also hand
// over every default, and they would then win over the script folder's own settings file.
import * as vscode from "vscode";

// Keep in step with `editorSettings` in scripts/settings.mjs.
const editorOnly = new Set(["path", "trace"]);

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

export function chosenSettings(scope?: vscode.Uri): Record<string, unknown> {
  const all = vscode.workspace.getConfiguration("sayline", scope ?? null);
  const chosen: Record<string, unknown> = {};
  for (const key of Object.keys(all)) {
    if (editorOnly.has(key) || typeof all[key] === "function") continue;
    const found = all.inspect(key);
    const layers = [found?.globalValue, found?.workspaceValue, found?.workspaceFolderValue];
    for (const value of layers) {
      if (value === undefined) continue;
      const before = chosen[key];
      chosen[key] = isObject(before) && isObject(value) ? { ...before, ...value } : value;
    }
  }
  return chosen;
}
