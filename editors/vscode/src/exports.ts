// The script in the forms that others need: captions, a page to read from, a running order. The
// server makes them; here they are saved, and the picture of the rhythm is shown.
import * as vscode from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";
import { speak } from "./hear";
import { activeScript } from "./times";

// One row of what the server says it can make.
export interface Target {
  name: string;
  summary: string;
  file: string; // how its file's name ends: "html"
}

export function targetsOf(client: LanguageClient | undefined): Target[] {
  const known = client?.initializeResult?.capabilities.experimental?.sayline;
  return [...(known?.targets ?? []), ...(known?.speak ? [sound] : [])];
}

// The one that is no text: the server writes it, and it takes its time.
const sound: Target = { name: "wav", summary: "a guide read by a machine's voice", file: "wav" };

// "shore.say" becomes "shore.srt" beside it, or "shore.page.html" where two forms end alike.
export function fileFor(script: string, target: Target): string {
  const ending = target.name === target.file ? target.file : `${target.name}.${target.file}`;
  return `${script.replace(/\.say$/i, "")}.${ending}`;
}

async function make(client: LanguageClient, script: vscode.TextDocument, target: string): Promise<string> {
  const textDocument = client.code2ProtocolConverter.asTextDocumentIdentifier(script);
  const made = await client.sendRequest<{ text: string }>("sayline/export", { textDocument, target });
  return made.text;
}

// Asks for the form and the file, writes it, and offers to look at it.
export async function saveAs(client: LanguageClient, script: vscode.TextDocument, named?: string): Promise<void> {
  const targets = targetsOf(client);
  const target =
    targets.find(({ name }) => name === named) ??
    (await vscode.window.showQuickPick(
      targets.map((each) => ({ ...each, label: each.summary, description: `.${each.file}` })),
      { title: "Save the script in another form", placeHolder: "What is it for?", matchOnDescription: true },
    ));
  if (!target) return;
  const beside = script.uri.with({ path: fileFor(script.uri.path, target) });
  const defaultUri = script.isUntitled ? undefined : beside;
  const where = await vscode.window.showSaveDialog({ defaultUri, filters: { [target.name]: [target.file] } });
  if (!where) return;
  if (target === sound) {
    if (!(await speakInto(client, script, where))) return;
  } else {
    await vscode.workspace.fs.writeFile(where, new TextEncoder().encode(await make(client, script, target.name)));
  }
  const open = "Open it";
  const choice = await vscode.window.showInformationMessage(`Saved ${vscode.workspace.asRelativePath(where)}.`, open);
  if (choice === open) await openMade(where, target);
}

// With captions beside it, where players look for them. False if the writer called it off.
async function speakInto(client: LanguageClient, script: vscode.TextDocument, where: vscode.Uri): Promise<boolean> {
  const options = { location: vscode.ProgressLocation.Notification, title: "Speaking the script", cancellable: true };
  const done = await vscode.window.withProgress(options, async (progress, token) => {
    const spoken = await speak(client, script, where, { progress, token });
    return spoken && !token.isCancellationRequested;
  });
  if (!done) return false;
  const captions = where.with({ path: where.path.replace(/\.[^./]*$/, "") + ".vtt" });
  await vscode.workspace.fs.writeFile(captions, new TextEncoder().encode(await make(client, script, "vtt")));
  return true;
}

// A page belongs in the browser; whatever else the editor can show stays in it.
async function openMade(file: vscode.Uri, target: Target): Promise<void> {
  if (target.file === "html" && file.scheme === "file" && !vscode.env.remoteName) {
    await vscode.env.openExternal(file);
  } else {
    await vscode.commands.executeCommand("vscode.open", file);
  }
}

// The picture of the script in front, drawn anew when its times change.
export class RhythmView implements vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;
  private script: vscode.TextDocument | undefined;

  constructor(private readonly client: () => LanguageClient | undefined) {}

  dispose(): void {
    this.panel?.dispose();
  }

  async show(script: vscode.TextDocument): Promise<void> {
    this.script = script;
    if (!this.panel) {
      const beside = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
      this.panel = vscode.window.createWebviewPanel("sayline.rhythm", "Rhythm", beside);
      this.panel.onDidDispose(() => (this.panel = undefined));
      this.panel.onDidChangeViewState(() => void this.draw());
    }
    this.panel.reveal(undefined, true);
    await this.draw();
  }

  // Another script has come to the front, or this one has changed.
  async follow(): Promise<void> {
    if (!this.panel?.visible) return;
    this.script = activeScript() ?? this.script;
    await this.draw();
  }

  private async draw(): Promise<void> {
    const client = this.client();
    if (!this.panel?.visible || !this.script || !client?.isRunning()) return;
    try {
      const picture = await make(client, this.script, "svg");
      if (this.panel) this.panel.webview.html = pageAround(picture, isDark());
    } catch {
      // The server is stopping or the script is gone: the last picture stays.
    }
  }
}

function isDark(): boolean {
  const { kind } = vscode.window.activeColorTheme;
  return kind === vscode.ColorThemeKind.Dark || kind === vscode.ColorThemeKind.HighContrast;
}

// Nothing but the picture: no script runs, nothing is fetched. It follows the editor's colours, not
// the system's.
export function pageAround(picture: string, dark: boolean): string {
  const drawn = picture
    .replace(/^<\?xml[^>]*\?>/, "")
    .replace("@media (prefers-color-scheme:dark)", dark ? "@media all" : "@media not all");
  return `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>Rhythm</title><style>body{margin:0;padding:1rem}svg{max-width:100%;height:auto}</style></head>
<body>${drawn}</body></html>`;
}
