// How far the script is: a line of its header, which says how much is said about it.
import * as vscode from "vscode";

const stages = [
  { label: "draft", description: "write freely: only what will surely trip the reader" },
  { label: "mark", description: "draw the marks: where they are missing or too many" },
  { label: "read", description: "read it aloud: everything" },
];

// The edit that gives the header its stage; a script without a header gets one.
export function stageEdit(lines: readonly string[], stage: string): { from: number; to: number; text: string } {
  const opened = /^\uFEFF?---[ \t]*$/.test(lines[0] ?? "");
  if (!opened) return { from: 0, to: 0, text: `---\nstage: ${stage}\n---\n\n` };
  for (let line = 1; line < lines.length; line++) {
    if (/^[ \t]*stage[ \t]*:/i.test(lines[line])) return { from: line, to: line + 1, text: `stage: ${stage}\n` };
    if (!/^[ \t]*\p{L}[\p{L}\p{N}_ -]*:/u.test(lines[line])) return { from: line, to: line, text: `stage: ${stage}\n` };
  }
  return { from: lines.length, to: lines.length, text: `\nstage: ${stage}\n---\n` };
}

export async function chooseStage(document: vscode.TextDocument, chosen?: string): Promise<void> {
  const picked = chosen
    ?? (await vscode.window.showQuickPick(stages, { title: "How far is the script?", matchOnDescription: true }))?.label;
  if (!picked) return;
  const lines = document.getText().split(/\r\n|\r|\n/);
  const { from, to, text } = stageEdit(lines, picked);
  const edit = new vscode.WorkspaceEdit();
  const end = to < document.lineCount ? new vscode.Position(to, 0) : document.lineAt(document.lineCount - 1).range.end;
  const start = from < document.lineCount ? new vscode.Position(from, 0) : end;
  edit.replace(document.uri, new vscode.Range(start, end), text);
  await vscode.workspace.applyEdit(edit);
}
