import type * as vscode from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";

/** Pages of rules, `tailcone-rule:/wire-voltage-drop.md`: what the name of a rule in the Problems view leads to. */
export class RuleDocuments implements vscode.TextDocumentContentProvider {
  constructor(
    private readonly client: LanguageClient,
    private readonly start: () => Promise<void>,
  ) {}

  async provideTextDocumentContent({ path }: vscode.Uri): Promise<string> {
    await this.start();
    const rule = path.replace(/^\//, "").replace(/\.md$/, "");
    return (
      (await this.client.sendRequest<string | null>("tailcone/rule", { id: rule })) ??
      `There is no rule '${rule}'.`
    );
  }
}
