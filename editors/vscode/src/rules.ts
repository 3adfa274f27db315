// A finding names its rule; a click on the name opens the rule's paragraph in the manual that comes
// with the extension.
import * as vscode from "vscode";

// The link is one to this extension: the editor opens neither a command nor a preview from a finding.
export function linkRules(findings: readonly vscode.Diagnostic[], extension: string): void {
  for (const finding of findings) {
    if (typeof finding.code !== "string") continue;
    const target = vscode.Uri.from({ scheme: vscode.env.uriScheme, authority: extension, path: `/rule/${finding.code}` });
    finding.code = { value: finding.code, target };
  }
}

export function ruleLinks(manual: vscode.Uri): vscode.UriHandler {
  return {
    handleUri: (uri) => {
      const id = /^\/rule\/([a-z-]+)$/.exec(uri.path)?.[1];
      if (id) void openRule(manual, id);
    },
  };
}

export async function openRule(manual: vscode.Uri, id?: string): Promise<void> {
  const place = id ? manual.with({ fragment: id }) : manual;
  await vscode.commands.executeCommand("markdown.showPreview", place);
}
