// The script said by the server's machine voice: a thought at once, or the whole into a file.
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import * as vscode from "vscode";
import { type LanguageClient, type Range, WorkDoneProgress } from "vscode-languageclient/node";

interface Spoken {
  seconds: number;
  range: Range; // of what is said
}

interface Watching {
  progress: vscode.Progress<{ increment?: number }>;
  token: vscode.CancellationToken;
}

let lastToken = 0;

// Writes the sound into the file. Without a place it is the whole script. Nothing if it was called off.
export async function speak(
  client: LanguageClient,
  script: vscode.TextDocument,
  file: vscode.Uri,
  more: { position?: vscode.Position } & Partial<Watching> = {},
): Promise<Spoken | undefined> {
  const workDoneToken = `sayline-speech-${++lastToken}`;
  let told = 0;
  const listening = client.onProgress(WorkDoneProgress.type, workDoneToken, (step) => {
    if (step.kind !== "report" || step.percentage === undefined) return;
    more.progress?.report({ increment: step.percentage - told });
    told = step.percentage;
  });
  const params = {
    textDocument: client.code2ProtocolConverter.asTextDocumentIdentifier(script),
    file: client.code2ProtocolConverter.asUri(file),
    position: more.position,
    workDoneToken,
  };
  try {
    // No token is not the same as an undefined one, which would be sent as a second parameter.
    return await (more.token
      ? client.sendRequest<Spoken>("sayline/speak", params, more.token)
      : client.sendRequest<Spoken>("sayline/speak", params));
  } catch (error) {
    if (more.token?.isCancellationRequested) return undefined;
    throw error;
  } finally {
    listening.dispose();
  }
}

// Plays the thought at the cursor in a small view beside the script.
export class Hearing implements vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;

  dispose(): void {
    this.panel?.dispose();
  }

  async hear(client: LanguageClient, script: vscode.TextDocument): Promise<void> {
    const editor = vscode.window.visibleTextEditors.find((each) => each.document === script);
    const folder = await mkdtemp(join(tmpdir(), "sayline-"));
    try {
      const file = vscode.Uri.file(join(folder, "thought.wav"));
      const position = editor?.selection.active ?? new vscode.Position(0, 0);
      const spoken = await speak(client, script, file, { position });
      if (!spoken) return;
      const text = script.getText(client.protocol2CodeConverter.asRange(spoken.range));
      this.play(await readFile(file.fsPath), text, spoken.seconds);
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  }

  private play(sound: Buffer, text: string, seconds: number): void {
    if (!this.panel) {
      const beside = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
      this.panel = vscode.window.createWebviewPanel("sayline.hear", "Hear a thought", beside);
      this.panel.onDidDispose(() => (this.panel = undefined));
    }
    this.panel.webview.html = pageOf(sound, text, seconds);
    this.panel.reveal(undefined, true);
  }
}

const signs: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const escaped = (text: string) => text.replace(/[&<>"]/g, (sign) => signs[sign]);

// The sound is within the page: no script runs, nothing is fetched.
export function pageOf(sound: Buffer, text: string, seconds: number): string {
  return `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; media-src data:; style-src 'unsafe-inline'">
<title>Hear a thought</title><style>
body{margin:0;padding:1rem;max-width:40em;line-height:1.5}
audio{width:100%}
.words{font-size:1.2em;white-space:pre-wrap}
</style></head><body>
<p class="words">${escaped(text)}</p>
<audio controls autoplay aria-label="The thought, said by a machine" src="data:audio/wav;base64,${sound.toString("base64")}"></audio>
<p>${seconds.toFixed(1)} seconds. A machine's voice: for rhythm and length, no model for the read.</p>
</body></html>`;
}
