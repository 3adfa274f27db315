// Starts `sayline serve` for .say files and shows what VS Code has no place of its own for: the run
// time of the script. All else is the protocol's.
import * as vscode from "vscode";
import {
  DidChangeConfigurationNotification,
  LanguageClient,
  type LanguageClientOptions,
  RevealOutputChannelOn,
} from "vscode-languageclient/node";
import { foldingProvider } from "./folding";
import { findServer } from "./server";
import { chosenSettings } from "./settings";
import { RunTime } from "./times";

let client: LanguageClient | undefined;
let log: vscode.LogOutputChannel;
let runTime: RunTime;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  log = vscode.window.createOutputChannel("Sayline", { log: true });
  runTime = new RunTime(() => client);
  context.subscriptions.push(
    log,
    runTime,
    vscode.commands.registerCommand("sayline.sections", () => runTime.pickSection()),
    vscode.commands.registerCommand("sayline.restart", restart),
    vscode.commands.registerCommand("sayline.log", () => log.show()),
    vscode.languages.registerFoldingRangeProvider({ language: "sayline" }, foldingProvider),
    vscode.window.onDidChangeActiveTextEditor(() => runTime.refresh()),
    vscode.workspace.onDidChangeConfiguration(onSettings),
    vscode.workspace.onDidGrantWorkspaceTrust(restart),
  );
  await start();
}

export async function deactivate(): Promise<void> {
  await stop();
}

async function start(): Promise<void> {
  const setting = vscode.workspace.getConfiguration("sayline").get("path", "");
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri.fsPath;
  const found = findServer(setting, folder);
  if ("tried" in found) {
    void explain(found.tried);
    return;
  }

  log.info(`starting ${found.program} serve`);
  const starting = new LanguageClient(
    "sayline",
    "Sayline",
    { command: found.program, args: ["serve"] },
    clientOptions(),
  );
  client = starting;
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
  const remedy = "Install the program, or set sayline.path to where it is.";
  const choice = await vscode.window.showErrorMessage(
    `Sayline shows no times or findings. ${reason} ${remedy}`,
    settings,
    again,
  );
  if (choice === settings) {
    await vscode.commands.executeCommand("workbench.action.openSettings", "sayline.path");
  } else if (choice === again) {
    await restart();
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

function clientOptions(): LanguageClientOptions {
  return {
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
