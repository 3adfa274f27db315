// The run time in the status bar with the time at the cursor, and the list of sections that a click
// on it opens.
import * as vscode from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";

export interface Target {
  low: number; // 0: no lower end
  high: number;
}

export interface Run {
  seconds: number;
  low: number;
  high: number;
  target: Target | null;
  off: number; // seconds over its target, under it below 0; 0 within the slack that the settings give
}

export interface SectionRun extends Run {
  name: string;
  level: number; // 1 to 3
  range: { start: { line: number; character: number } };
}

// The answer to sayline/times.
export interface Times extends Run {
  schema: 1;
  sections: SectionRun[];
  at?: number; // seconds from the start to what stands at the cursor
}

export function clock(seconds: number): string {
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60) % 60;
  const hours = Math.floor(whole / 3600);
  const two = (value: number) => String(value).padStart(2, "0");
  return hours > 0
    ? `${hours}:${two(minutes)}:${two(whole % 60)}`
    : `${minutes}:${two(whole % 60)}`;
}

function targetText({ low, high }: Target): string {
  if (low === 0) return `${clock(high)} max`;
  return low === high ? clock(high) : `${clock(low)}-${clock(high)}`;
}

export function runText(run: Run): string {
  return run.target ? `${clock(run.seconds)} of ${targetText(run.target)}` : clock(run.seconds);
}

function rangeText(run: Run): string {
  return `between ${clock(run.low)} and ${clock(run.high)}`;
}

export class RunTime implements vscode.Disposable {
  private readonly item = vscode.window.createStatusBarItem(
    "sayline.runTime",
    vscode.StatusBarAlignment.Left,
    50,
  );
  private asking = false;
  private stale = false;

  constructor(
    private readonly client: () => LanguageClient | undefined,
    private readonly onTimes: (times: Times | undefined) => void,
  ) {
    this.item.name = "Run time of the script";
    this.item.command = "sayline.sections";
  }

  dispose(): void {
    this.item.dispose();
  }

  // Asks again after a change or a move of the cursor. One question at a time: what changes meanwhile is asked for once the
  // answer is there, so fast typing neither floods the server nor waits for a timer.
  async refresh(): Promise<void> {
    this.stale = true;
    if (this.asking) return;
    this.asking = true;
    while (this.stale) {
      this.stale = false;
      const document = activeScript();
      const times = document && (await this.ask(document));
      if (!document) this.item.hide(); // the side view keeps the script last seen
      else if (times && document === activeScript()) this.show(times);
    }
    this.asking = false;
  }

  // Without a server there are no times, and old ones would mislead.
  hide(): void {
    this.item.hide();
    this.onTimes(undefined);
  }

  async pickSection(): Promise<void> {
    const editor = vscode.window.activeTextEditor;
    const document = activeScript();
    const times = document && (await this.ask(document));
    if (!editor || !times) return;

    const rows = times.sections.map((section) => ({
      label: "\u2003".repeat(section.level - 1) + section.name,
      description: runText(section),
      detail: "\u2003".repeat(section.level - 1) + rangeText(section),
      line: section.range.start.line,
    }));
    const whole = {
      label: "Whole script",
      description: runText(times),
      detail: rangeText(times),
      line: 0,
    };
    const picked = await vscode.window.showQuickPick([whole, ...rows], {
      title: "Times of the sections",
      placeHolder: "Choose a section to go to it",
      matchOnDescription: true,
    });
    if (!picked) return;
    const place = new vscode.Position(picked.line, 0);
    editor.selection = new vscode.Selection(place, place);
    editor.revealRange(new vscode.Range(place, place), vscode.TextEditorRevealType.AtTop);
  }

  private async ask(document: vscode.TextDocument): Promise<Times | undefined> {
    const client = this.client();
    if (!client?.isRunning()) return undefined;
    const textDocument = client.code2ProtocolConverter.asTextDocumentIdentifier(document);
    const editor = vscode.window.activeTextEditor;
    const cursor = editor?.document === document ? editor.selection.active : undefined;
    const position = cursor && client.code2ProtocolConverter.asPosition(cursor);
    try {
      return (await client.sendRequest<Times | null>("sayline/times", { textDocument, position })) ?? undefined;
    } catch {
      return undefined; // cancelled or stopping: the next change asks again
    }
  }

  private show(times: Times): void {
    this.write(times);
    this.onTimes(times);
    this.item.show();
  }

  private write(times: Times): void {
    const isOver = times.off > 0;
    const cursor = times.at;
    const run = isOver ? `${runText(times)}, ${clock(times.off)} over` : runText(times);
    this.item.text = cursor === undefined ? run : `${run} · here ${clock(cursor)}`;
    this.item.backgroundColor = isOver
      ? new vscode.ThemeColor("statusBarItem.warningBackground")
      : undefined;
    const lines = [`Runs ${rangeText(times)}.`];
    if (isOver) lines.push(`That is ${clock(times.off)} over.`);
    if (cursor !== undefined) lines.push(`What stands at the cursor is said at about ${clock(cursor)}.`);
    lines.push("Click for the times of the sections.");
    this.item.tooltip = lines.join("\n");
    this.item.accessibilityInformation = { label: `Run time ${this.item.text}`, role: "button" };
  }
}

export function activeScript(): vscode.TextDocument | undefined {
  const document = vscode.window.activeTextEditor?.document;
  return document?.languageId === "sayline" ? document : undefined;
}
