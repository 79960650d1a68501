import * as vscode from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";

/** The part of the editor's own Git extension that is used here. */
interface GitApi {
  getRepository(uri: vscode.Uri): { show(revision: string, path: string): Promise<string> } | null;
  toGitUri(uri: vscode.Uri, revision: string): vscode.Uri;
}

/** What `tailcone/compare` gives. */
interface CompareAnswer {
  /** The revision does not have the record. */
  readonly isNew: boolean;
  readonly html: string;
}

/**
 * Compares the record in front with a revision: the texts side by side, and beside them what the change does. The
 * server compares; here it gets the texts of the revision, and its page is shown.
 */
export class RevisionComparison implements vscode.Disposable {
  private readonly handler: vscode.Disposable;
  private panel: vscode.WebviewPanel | undefined;

  constructor(private readonly client: LanguageClient) {
    this.handler = client.onRequest(
      "tailcone/revisionText",
      async ({ uri, revision }: { uri: string; revision: string }): Promise<string | null> => {
        const file = vscode.Uri.parse(uri);
        try {
          return (await (await gitApi())?.getRepository(file)?.show(revision, file.fsPath)) ?? null;
        } catch {
          return null; // the revision does not have the file
        }
      },
    );
  }

  async ask(): Promise<void> {
    const revision = await vscode.window.showInputBox({
      prompt: "Commit, branch or tag to compare the record with",
      value: "HEAD~1",
      validateInput: (text) => (text.startsWith("-") ? "A revision does not start with a dash." : undefined),
    });
    if (revision) await this.show(revision);
  }

  async show(revision: string): Promise<void> {
    const uri = vscode.window.activeTextEditor?.document.uri;
    const git = await gitApi();
    if (!uri || !git?.getRepository(uri)) {
      void vscode.window.showInformationMessage(
        git
          ? "No open git repository holds this record. Is it in a folder above? Git: Open Repositories in Parent Folders."
          : "To compare, the editor's own Git extension must be on.",
      );
      return;
    }
    const name = uri.path.split("/").at(-1) ?? "";
    const answer = await this.client.sendRequest<CompareAnswer | null>("tailcone/compare", {
      uri: this.client.code2ProtocolConverter.asUri(uri),
      revision,
    });
    if (!answer) return;
    if (answer.isNew) {
      void vscode.window.showInformationMessage(
        `${name} is not in ${revision}: there is nothing to compare with.`,
      );
      return;
    }
    await vscode.commands.executeCommand(
      "vscode.diff",
      git.toGitUri(uri, revision),
      uri,
      `${name} (${revision} to now)`,
      { preview: true, viewColumn: vscode.ViewColumn.One },
    );
    this.page(`What the change to ${name} does`).webview.html = answer.html;
  }

  dispose(): void {
    this.handler.dispose();
    this.panel?.dispose();
  }

  /** One panel, which the next comparison takes over. It runs no script and loads nothing. */
  private page(title: string): vscode.WebviewPanel {
    if (!this.panel) {
      this.panel = vscode.window.createWebviewPanel(
        "tailcone.comparison",
        title,
        { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
        { enableScripts: false, localResourceRoots: [] },
      );
      this.panel.onDidDispose(() => {
        this.panel = undefined;
      });
    }
    this.panel.title = title;
    return this.panel;
  }
}

async function gitApi(): Promise<GitApi | undefined> {
  const extension = vscode.extensions.getExtension<{ getAPI(version: 1): GitApi }>("vscode.git");
  if (!extension) return undefined;
  try {
    return (extension.isActive ? extension.exports : await extension.activate()).getAPI(1);
  } catch {
    return undefined; // switched off in the settings
  }
}
