// Folds the header and each section: a heading holds all that follows up to the next heading of its
// own level or above.
import * as vscode from "vscode";

export function foldingRanges(lines: string[]): vscode.FoldingRange[] {
  const ranges: vscode.FoldingRange[] = [];
  const open: { level: number; line: number }[] = [];
  const fold = (from: number, next: number, kind?: vscode.FoldingRangeKind) => {
    let last = next - 1;
    while (last > from && !lines[last].trim()) last--;
    if (last > from) ranges.push(new vscode.FoldingRange(from, last, kind));
  };
  const closeFrom = (level: number, next: number) => {
    while (open.length > 0 && open[open.length - 1].level >= level) fold(open.pop()!.line, next);
  };

  let start = 0;
  if (lines[0]?.replace(/^\uFEFF/, "").trimEnd() === "---") {
    const end = lines.findIndex((line, index) => index > 0 && line.trimEnd() === "---");
    if (end > 0) {
      fold(0, end + 1);
      start = end + 1;
    }
  }
  for (let line = start; line < lines.length; line++) {
    const heading = /^(#{1,3})[ \t]+\S/.exec(lines[line]);
    if (!heading) continue;
    closeFrom(heading[1].length, line);
    open.push({ level: heading[1].length, line });
  }
  closeFrom(0, lines.length);
  return ranges;
}

export const foldingProvider: vscode.FoldingRangeProvider = {
  provideFoldingRanges: (document) => foldingRanges(document.getText().split(/\r\n|\r|\n/)),
};
