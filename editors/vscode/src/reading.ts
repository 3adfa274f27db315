// When the word at the cursor is said. The server explains the whole script once a version, and only
// after the keys have rested: an hour of speech is some megabytes.
import * as vscode from "vscode";

interface Word {
  begin: number; // bytes of UTF-8 in the item's text
  at: number; // seconds since the item's start
}

// One of the script's items as sayline/explain gives them: a thought, a gap, a silence.
export interface Item {
  text?: string;
  place: { line: number }; // from 1
  seconds: number;
  words?: Word[];
}

// Seconds from the script's start to what is said at a place, by the items in their order.
export function secondsAt(items: readonly Item[], line: number, before: string): number {
  let passed = 0;
  let silent: number | undefined; // where a silence of the line itself begins
  for (const item of items) {
    const first = item.place.line - 1;
    if (first > line) break;
    const lines = (item.text ?? "").split(/\r\n|\r|\n/);
    const row = line - first;
    if ((item.words?.length ?? 0) > 0 && row < lines.length) {
      const start = lines.slice(0, row).reduce((sum, each) => sum + Buffer.byteLength(each) + 1, 0);
      const offset = start + Buffer.byteLength(before);
      const word = item.words!.filter((each) => each.begin <= offset).pop();
      return passed + (word?.at ?? 0);
    }
    if (row === 0) silent ??= passed;
    passed += item.seconds;
  }
  return silent ?? passed;
}

const rest = 250; // milliseconds without a key or a move

export class ReadingClock {
  private timer: NodeJS.Timeout | undefined;
  private known: { uri: string; version: number; items: Item[] } | undefined;

  constructor(private readonly explain: (document: vscode.TextDocument) => Promise<Item[] | undefined>) {}

  ask(document: vscode.TextDocument, place: vscode.Position, answer: (seconds: number) => void): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(async () => {
      const items = await this.itemsOf(document);
      if (!items || place.line >= document.lineCount) return;
      const before = document.lineAt(place.line).text.slice(0, place.character);
      answer(secondsAt(items, place.line, before));
    }, rest);
  }

  private async itemsOf(document: vscode.TextDocument): Promise<Item[] | undefined> {
    const uri = document.uri.toString();
    const { version } = document;
    if (this.known?.uri === uri && this.known.version === version) return this.known.items;
    const items = await this.explain(document);
    if (!items || document.version !== version) return undefined;
    this.known = { uri, version, items };
    return items;
  }
}
