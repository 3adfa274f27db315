// The reading page of a script, served by the program on this machine alone, shown in the browser and
// changed with every save; the practice page comes from there too.
import { type ChildProcess, spawn } from "node:child_process";
import * as vscode from "vscode";

const patience = 10_000; // milliseconds until a page that gives no address has failed

// Starts the program and answers with the address that it prints first.
function serve(program: string, file: string): Promise<{ child: ChildProcess; address: string }> {
  return new Promise((found, lost) => {
    const child = spawn(program, ["page", "--live", file], { stdio: ["ignore", "pipe", "pipe"] });
    const fail = (why: string) => {
      child.kill();
      lost(new Error(why));
    };
    let said = "";
    let complaint = "";
    const timer = setTimeout(() => fail("The page gave no address."), patience);
    child.stdout.on("data", (bytes) => {
      const address = /https?:\/\/\S+/.exec((said += bytes))?.[0];
      if (!address) return;
      clearTimeout(timer);
      found({ child, address });
    });
    child.stderr.on("data", (bytes) => (complaint += bytes));
    child.on("error", ({ message }) => fail(message));
    child.on("exit", () => fail(complaint.trim().replace(/^sayline: /, "") || "The page ended at once."));
  });
}

export class LivePages implements vscode.Disposable {
  private readonly pages = new Map<string, { child: ChildProcess; address: string }>();

  dispose(): void {
    for (const { child } of this.pages.values()) child.kill();
    this.pages.clear();
  }

  // The page follows the file, so there must be one. Below the reading page is the one to practise with.
  async open(program: string, script: vscode.TextDocument, below = ""): Promise<void> {
    if (script.isUntitled && !(await script.save())) return;
    if (script.isDirty) await script.save();
    const file = script.uri.fsPath;
    let page = this.pages.get(file);
    if (!page || page.child.exitCode !== null || page.child.signalCode !== null) {
      page = await serve(program, file);
      this.pages.set(file, page);
    }
    const address = vscode.Uri.joinPath(vscode.Uri.parse(page.address), below);
    await vscode.env.openExternal(await vscode.env.asExternalUri(address));
  }
}
