// The side view: the sections with their times, and how much of its target each has used.
import * as vscode from "vscode";
import { activeScript, clock, runText, type Run, type SectionRun, type Times } from "./times";

interface Row {
  run: Run & { name: string };
  line: number;
  rows: Row[];
}

const cells = 8;

// How much of the target is used, in shapes that need no colour: full cells, then open ones; what
// runs over stands behind a bar.
export function budgetBar(run: Run): string {
  if (!run.target || run.target.high <= 0) return "";
  const used = Math.round((run.seconds / run.target.high) * cells);
  const inside = Math.min(used, cells);
  const over = Math.min(Math.max(used - cells, 0), cells / 2);
  return "▪".repeat(inside) + "▫".repeat(cells - inside) + (over > 0 ? "|" + "▪".repeat(over) : "");
}

function standing(run: Run): string {
  if (!run.target) return "no target";
  if (run.off > 0) return `${clock(run.off)} over`;
  return run.off < 0 ? `${clock(-run.off)} short` : "within its target";
}

function icon(run: Run): vscode.ThemeIcon {
  if (run.off > 0) return new vscode.ThemeIcon("arrow-up", new vscode.ThemeColor("list.warningForeground"));
  if (run.off < 0) return new vscode.ThemeIcon("arrow-down");
  return new vscode.ThemeIcon(run.target ? "check" : "dash");
}

// Headings of a deeper level belong to the one above them.
function nest(sections: readonly SectionRun[]): Row[] {
  const top: Row[] = [];
  const open: { level: number; rows: Row[] }[] = [{ level: 0, rows: top }];
  for (const section of sections) {
    while (open[open.length - 1].level >= section.level) open.pop();
    const row = { run: section, line: section.range.start.line, rows: [] };
    open[open.length - 1].rows.push(row);
    open.push({ level: section.level, rows: row.rows });
  }
  return top;
}

export class SectionView implements vscode.TreeDataProvider<Row>, vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<void>();
  readonly onDidChangeTreeData = this.changed.event;
  private readonly view: vscode.TreeView<Row>;
  private rows: Row[] = [];

  constructor() {
    this.view = vscode.window.createTreeView("sayline.sectionView", { treeDataProvider: this });
  }

  dispose(): void {
    this.view.dispose();
    this.changed.dispose();
  }

  show(times: Times | undefined): void {
    const whole = times && { run: { ...times, name: "Script" }, line: 0, rows: [] };
    this.rows = whole ? [whole, ...nest(times.sections)] : [];
    this.view.description = times ? runText(times) : "";
    this.changed.fire();
  }

  // The script last seen stays shown while another tab has the keys, but not once it is closed.
  forget(): void {
    if (!vscode.workspace.textDocuments.some((each) => each.languageId === "sayline")) this.show(undefined);
  }

  getChildren(row?: Row): Row[] {
    return row ? row.rows : this.rows;
  }

  getTreeItem(row: Row): vscode.TreeItem {
    const { run } = row;
    const item = new vscode.TreeItem(run.name);
    if (row.rows.length > 0) item.collapsibleState = vscode.TreeItemCollapsibleState.Expanded;
    item.description = [budgetBar(run), runText(run)].filter(Boolean).join(" ");
    item.iconPath = icon(run);
    item.tooltip = `${run.name}: ${runText(run)}, ${standing(run)}. Likely between ${clock(run.low)} and ${clock(run.high)}.`;
    item.accessibilityInformation = { label: `${run.name}, ${runText(run)}, ${standing(run)}` };
    item.command = { command: "sayline.goTo", title: "Go to the section", arguments: [row.line] };
    return item;
  }
}

export function goToLine(line: number): void {
  const script = activeScript() ?? vscode.window.visibleTextEditors.find((each) => each.document.languageId === "sayline")?.document;
  if (!script) return;
  const place = new vscode.Position(Math.min(line, script.lineCount - 1), 0);
  void vscode.window.showTextDocument(script, { selection: new vscode.Range(place, place) });
}
