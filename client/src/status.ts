import * as vscode from "vscode";

/** What the server tells after each check of an open record. */
export interface RecordStatus {
  readonly uri: string;
  readonly counts: { readonly error: number; readonly warning: number; readonly information: number };
  /** URIs of the records that it is linked to. */
  readonly linked: readonly string[];
  readonly milliseconds: number;
}

/** The language status of the record in front: how many findings, linked to what, checked how quickly. */
export class StatusItem implements vscode.Disposable {
  private readonly item: vscode.LanguageStatusItem;
  private readonly known = new Map<string, RecordStatus>();
  private readonly listener: vscode.Disposable;

  constructor(selector: vscode.DocumentSelector) {
    this.item = vscode.languages.createLanguageStatusItem("tailcone.record", selector);
    this.item.name = "Tailcone";
    this.item.command = { command: "tailcone.showLog", title: "Log" };
    this.listener = vscode.window.onDidChangeActiveTextEditor(() => this.show());
    this.show();
  }

  receive(news: RecordStatus): void {
    this.known.set(keyOf(vscode.Uri.parse(news.uri)), news);
    this.show();
  }

  clear(): void {
    this.known.clear();
    this.show();
  }

  dispose(): void {
    this.listener.dispose();
    this.item.dispose();
  }

  private show(): void {
    const uri = vscode.window.activeTextEditor?.document.uri;
    const status = uri && this.known.get(keyOf(uri));
    this.item.busy = uri !== undefined && status === undefined;
    if (!status) {
      this.item.text = "Record not checked yet";
      this.item.detail = "";
      this.item.severity = vscode.LanguageStatusSeverity.Information;
      return;
    }
    const { counts, linked, milliseconds } = status;
    const found = [counted(counts.error, "error"), counted(counts.warning, "warning")].filter(
      (words) => words !== "",
    );
    this.item.text = found.length > 0 ? found.join(", ") : "No errors or warnings";
    const names = linked.map((one) => nameOf(vscode.Uri.parse(one)));
    this.item.detail = `${names.length > 0 ? `with ${names.join(" and ")}` : "stands alone"}, ${Math.max(1, Math.round(milliseconds))} ms`;
    this.item.severity =
      counts.error > 0
        ? vscode.LanguageStatusSeverity.Error
        : counts.warning > 0
          ? vscode.LanguageStatusSeverity.Warning
          : vscode.LanguageStatusSeverity.Information;
  }
}

function keyOf(uri: vscode.Uri): string {
  return uri.toString();
}

/** A record's name without the ending that all of its kind have: the status bar is narrow. */
function nameOf({ path }: vscode.Uri): string {
  return path
    .split("/")
    .at(-1)!
    .replace(/\.\w+\.ya?ml$/, "");
}

function counted(count: number, word: string): string {
  return count === 0 ? "" : `${count} ${word}${count === 1 ? "" : "s"}`;
}
