// Starts `sayline serve` for .say files and shows what VS Code has no place of its own for: the run
// time of the script and of its sections. All else is the protocol's.
import * as vscode from "vscode";
import {
  CloseAction,
  DidChangeConfigurationNotification,
  ErrorAction,
  type ErrorHandler,
  LanguageClient,
  type LanguageClientOptions,
  RevealOutputChannelOn,
  State,
  type StaticFeature,
} from "vscode-languageclient/node";
import { RhythmView, saveAs } from "./exports";
import { Hearing } from "./hear";
import { LivePages } from "./live";
import { linkRules, openRule, ruleLinks } from "./rules";
import { goToLine, SectionView } from "./sections";
import { findServer } from "./server";
import { chosenSettings } from "./settings";
import { chooseStage } from "./stage";
import { activeScript, RunTime } from "./times";

let client: LanguageClient | undefined;
let program: string | undefined; // what was found last
let log: vscode.LogOutputChannel;
let runTime: RunTime;
let rhythm: RhythmView;
let bundled: string; // the folder of the program that may come with the extension
let ownId: string;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  log = vscode.window.createOutputChannel("Sayline", { log: true });
  bundled = vscode.Uri.joinPath(context.extensionUri, "bin").fsPath;
  ownId = context.extension.id;
  const manual = vscode.Uri.joinPath(context.extensionUri, "dist", "rules.md");
  const sections = new SectionView();
  runTime = new RunTime(
    () => client,
    (times) => {
      sections.show(times);
      void rhythm.follow();
    },
  );
  rhythm = new RhythmView(() => client);
  const pages = new LivePages();
  const hearing = new Hearing();
  const command = vscode.commands.registerCommand;
  context.subscriptions.push(
    log,
    runTime,
    sections,
    rhythm,
    pages,
    hearing,
    command("sayline.new", newScript),
    command("sayline.sections", () => runTime.pickSection()),
    command("sayline.showTimes", () => vscode.commands.executeCommand("sayline.sectionView.focus")),
    command("sayline.goTo", goToLine),
    command("sayline.stage", onScript((script, stage) => chooseStage(script, stage))),
    command("sayline.putInMarks", onScript((script) => runCommand("sayline.markScript", script))),
    command("sayline.split", onScript((script) => runCommand("sayline.splitScript", script))),
    command("sayline.mend", onScript((script) => runCommand("sayline.fixAll", script))),
    command("sayline.readingPage", onScript((script) => withServer(() => pages.open(program!, script)))),
    command("sayline.practicePage", onScript((script) => withServer(() => pages.open(program!, script, "practice")))),
    command("sayline.saveAs", onScript((script, form) => withServer((server) => saveAs(server, script, form)))),
    command("sayline.rhythm", onScript((script) => withServer(() => rhythm.show(script)))),
    command("sayline.hear", onScript((script) => withServer((server) => hearing.hear(server, script)))),
    command("sayline.rule", (id?: string) => openRule(manual, id)),
    command("sayline.restart", restart),
    command("sayline.log", () => log.show()),
    vscode.window.registerUriHandler(ruleLinks(manual)),
    vscode.window.onDidChangeActiveTextEditor(() => void runTime.refresh()),
    vscode.window.onDidChangeTextEditorSelection((event) => {
      if (event.textEditor === vscode.window.activeTextEditor) void runTime.refresh();
    }),
    vscode.workspace.onDidChangeConfiguration(onSettings),
    vscode.workspace.onDidGrantWorkspaceTrust(restart),
  );
  vscode.workspace.onDidCloseTextDocument(() => sections.forget(), undefined, context.subscriptions);
  setContext("sayline.used", true);
  await start();
}

function setContext(key: string, value: boolean): void {
  void vscode.commands.executeCommand("setContext", key, value);
}

// A command on the script in front; without one it says so, since the palette is always open.
function onScript(work: (script: vscode.TextDocument, argument?: string) => unknown) {
  return async (argument?: unknown) => {
    const script = activeScript() ?? (await showScript());
    if (!script) return void vscode.window.showInformationMessage("Open a .say script first.");
    await work(script, typeof argument === "string" ? argument : undefined);
  };
}

// The walkthrough has the keys when one of its buttons is pressed: then the script beside it is meant.
async function showScript(): Promise<vscode.TextDocument | undefined> {
  const isScript = (document: vscode.TextDocument) => document.languageId === "sayline";
  const seen = vscode.window.visibleTextEditors.find((editor) => isScript(editor.document));
  const script = seen?.document ?? vscode.workspace.textDocuments.find(isScript);
  if (script) await vscode.window.showTextDocument(script, seen?.viewColumn);
  return script;
}

const firstScript = "---\ntitle: My first script\ntarget: 1:00 max\n---\n\n";

async function newScript(where?: unknown): Promise<void> {
  const script = await vscode.workspace.openTextDocument({ language: "sayline", content: firstScript });
  const end = script.lineAt(script.lineCount - 1).range.end;
  const viewColumn = where === "beside" ? vscode.ViewColumn.Beside : vscode.ViewColumn.Active;
  await vscode.window.showTextDocument(script, { selection: new vscode.Range(end, end), viewColumn });
}

// What needs the server; whatever it refuses is shown.
async function withServer(work: (server: LanguageClient) => Promise<void>): Promise<void> {
  if (!client?.isRunning()) {
    return void vscode.window.showWarningMessage("The server is not running.", "Restart it").then((choice) => choice && restart());
  }
  try {
    await work(client);
  } catch (error) {
    void vscode.window.showWarningMessage(error instanceof Error ? error.message : String(error));
  }
}

// Has the server change the script; it sends the edit back as a request of its own.
async function runCommand(name: string, script: vscode.TextDocument): Promise<void> {
  await withServer(async (server) => {
    const before = script.version;
    const { uri } = server.code2ProtocolConverter.asTextDocumentIdentifier(script);
    await server.sendRequest("workspace/executeCommand", { command: name, arguments: [uri] });
    // The edit may still be on its way when the answer is there.
    setTimeout(() => {
      if (script.version === before) vscode.window.setStatusBarMessage("Sayline: nothing to change", 4000);
    }, 500);
  });
}

export async function deactivate(): Promise<void> {
  await stop();
}

async function start(): Promise<void> {
  const setting = vscode.workspace.getConfiguration("sayline").get("path", "");
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri.fsPath;
  const found = findServer(setting, folder, bundled);
  if ("tried" in found) {
    void explain(found.tried);
    return;
  }

  program = found.program;
  log.info(`starting ${found.program} serve`);
  const starting = new LanguageClient(
    "sayline",
    "Sayline",
    { command: found.program, args: ["serve"] },
    clientOptions(found.program),
  );
  starting.registerFeature(unasked);
  client = starting;
  // The client starts a server that has died by itself, and then knows nothing of the times.
  starting.onDidChangeState(({ newState }) => {
    if (client !== starting) return;
    setContext("sayline.running", newState === State.Running);
    if (newState === State.Running) void runTime.refresh();
    else runTime.hide();
  });
  try {
    await starting.start();
    await runTime.refresh();
  } catch (error) {
    if (client === starting) client = undefined;
    const reason = error instanceof Error ? error.message : String(error);
    void explain(`${found.program} did not start: ${reason.replace(/\.?$/, ".")}`);
  }
}

async function stop(): Promise<void> {
  const stopping = client;
  client = undefined;
  setContext("sayline.running", false);
  runTime.hide();
  // A server that has died cannot be asked to stop; then there is nothing left to do.
  await stopping?.dispose().catch((error) => log.warn(`while stopping: ${error}`));
}

async function restart(): Promise<void> {
  await stop();
  await start();
}

// Says why there is no server and offers the remedies.
async function explain(reason: string): Promise<void> {
  log.error(reason);
  const settings = "Open the setting";
  const again = "Try again";
  const show = "Show the log";
  const remedy = "Install the program, or set sayline.path to where it is.";
  const choice = await vscode.window.showErrorMessage(
    `Sayline shows no times or findings. ${reason} ${remedy}`,
    settings,
    again,
    show,
  );
  if (choice === settings) {
    await vscode.commands.executeCommand("workbench.action.openSettings", "sayline.path");
  } else if (choice === again) {
    await restart();
  } else if (choice === show) {
    log.show();
  }
}

async function onSettings(event: vscode.ConfigurationChangeEvent): Promise<void> {
  if (event.affectsConfiguration("sayline.path")) {
    await restart();
  } else if (event.affectsConfiguration("sayline") && client?.isRunning()) {
    const settings = { sayline: chosenSettings(vscode.window.activeTextEditor?.document.uri) };
    await client.sendNotification(DidChangeConfigurationNotification.type, { settings });
    await runTime.refresh();
  }
}

// Who has marks put in has asked for them, and undo takes them back in one step. Of edits with a
// description the editor would make a list in which every single mark has to be ticked.
const unasked: StaticFeature = {
  fillClientCapabilities: ({ workspace }) => {
    delete workspace?.workspaceEdit?.changeAnnotationSupport;
  },
  initialize: () => {},
  getState: () => ({ kind: "static" }),
  clear: () => {},
};

const patience = { deaths: 4, milliseconds: 180_000 };

// What cannot be written to a server that has died is no news: it is started anew, unless it dies
// again and again.
function keepAlive(program: string): ErrorHandler {
  const deaths: number[] = [];
  return {
    error: (error) => {
      log.warn(`while talking to the server: ${error.message}`);
      return { action: ErrorAction.Continue, handled: true };
    },
    closed: () => {
      const now = Date.now();
      deaths.push(now);
      while (deaths[0] < now - patience.milliseconds) deaths.shift();
      if (deaths.length <= patience.deaths) {
        log.warn(`${program} ended; starting it anew`);
        return { action: CloseAction.Restart, handled: true };
      }
      void explain(`${program} ended ${deaths.length} times within three minutes.`);
      return { action: CloseAction.DoNotRestart, handled: true };
    },
  };
}

function clientOptions(program: string): LanguageClientOptions {
  return {
    errorHandler: keepAlive(program),
    documentSelector: [{ language: "sayline" }],
    outputChannel: log,
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    middleware: {
      didOpen: async (document, next) => {
        await next(document);
        void runTime.refresh();
      },
      // Only once the change is on its way: the question for the times must not overtake it.
      didChange: async (event, next) => {
        await next(event);
        void runTime.refresh();
      },
      handleDiagnostics: (uri, findings, next) => {
        linkRules(findings, ownId);
        next(uri, findings);
      },
      provideDiagnostics: async (document, previous, token, next) => {
        const report = await next(document, previous, token);
        if (report?.kind === "full") linkRules(report.items, ownId);
        return report;
      },
      workspace: {
        configuration: async (params, token, next) => {
          const answers = await next(params, token);
          if (!Array.isArray(answers)) return answers;
          // With other settings the times are others; asked for once this answer is on its way.
          setImmediate(() => void runTime.refresh());
          return params.items.map((item, index) =>
            item.section === "sayline"
              ? chosenSettings(item.scopeUri ? vscode.Uri.parse(item.scopeUri) : undefined)
              : answers[index],
          );
        },
      },
    },
  };
}
