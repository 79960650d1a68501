import * as vscode from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";

/** One install record with what was found in it, as `tailcone/fleet` tells. */
interface Install {
  readonly uri: string;
  readonly kit?: string;
  readonly airframe?: string;
  readonly counts: { readonly error: number; readonly warning: number; readonly information: number };
  readonly electrical?: Margin;
  readonly balance?: Margin;
}

interface Margin {
  readonly share: string;
  readonly of: string;
  readonly holds: boolean;
  readonly uri?: string;
  readonly range?: { readonly start: Position; readonly end: Position };
}

interface Position {
  readonly line: number;
  readonly character: number;
}

interface Detail {
  /** Short, as the view is narrow. */
  readonly name: string;
  readonly inFull: string;
  readonly margin: Margin;
}

/** Changes come in a row; the view is asked for once they are over. */
const pauseMilliseconds = 150;

/** The installs of the workspace, each with its counts and margins; below each, where its least margins are. */
export class FleetView implements vscode.TreeDataProvider<Install | Detail>, vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<undefined>();
  private readonly tree: vscode.TreeView<Install | Detail>;
  private waiting: NodeJS.Timeout | undefined;
  readonly onDidChangeTreeData = this.changed.event;

  constructor(private readonly client: LanguageClient) {
    this.tree = vscode.window.createTreeView("tailcone.fleet", { treeDataProvider: this });
  }

  refresh(): void {
    this.waiting ??= setTimeout(() => {
      this.waiting = undefined;
      this.changed.fire(undefined);
    }, pauseMilliseconds);
  }

  async getChildren(parent?: Install | Detail): Promise<(Install | Detail)[]> {
    if (parent) return "counts" in parent ? detailsOf(parent) : [];
    if (!this.client.isRunning()) return [];
    const installs = await this.client.sendRequest<Install[]>("tailcone/fleet");
    const failing = installs.filter(({ counts }) => counts.error > 0).length;
    this.tree.badge =
      failing > 0 ? { value: failing, tooltip: `${failing} installs with errors` } : undefined;
    return installs.toSorted((a, b) => b.counts.error - a.counts.error || (a.uri < b.uri ? -1 : 1));
  }

  getTreeItem(one: Install | Detail): vscode.TreeItem {
    return "counts" in one ? installItem(one) : detailItem(one);
  }

  dispose(): void {
    clearTimeout(this.waiting);
    this.tree.dispose();
    this.changed.dispose();
  }
}

function installItem({ uri, kit, airframe, counts, electrical, balance }: Install): vscode.TreeItem {
  const resource = vscode.Uri.parse(uri);
  const name = resource.path
    .split("/")
    .at(-1)!
    .replace(/\.install\.ya?ml$/, "");
  const item = new vscode.TreeItem(name, vscode.TreeItemCollapsibleState.Collapsed);
  const short = [balance && `CG ${balance.share}`, electrical && `elec. ${electrical.share}`];
  const margins = [
    electrical && `least electrical margin ${electrical.share}`,
    balance && `CG to the envelope ${balance.share}`,
  ];
  const errors = counted(counts.error, "error");
  const warnings = counted(counts.warning, "warning");
  const inFull = [errors, warnings, ...margins].filter((part) => part).join(", ");
  item.id = uri;
  // The view is narrow. Margins of what is at fault anyway stand below and in the tooltip.
  item.description = errors || [warnings, ...short].filter((part) => part).join(" · ");
  item.tooltip = `${name}\n${kit ?? "no kit"} in ${airframe ?? "no airframe"}: ${inFull || "no faults"}`;
  item.accessibilityInformation = { label: `${name}: ${inFull || "no faults"}` };
  item.iconPath = iconOf(counts);
  item.command = { command: "vscode.open", title: "Open", arguments: [resource] };
  return item;
}

function detailItem({ name, inFull, margin }: Detail): vscode.TreeItem {
  const item = new vscode.TreeItem(`${name} ${margin.share}`);
  const label = `${inFull} ${margin.share}: ${margin.of}`;
  item.description = margin.of;
  item.tooltip = label;
  item.accessibilityInformation = { label };
  item.iconPath = new vscode.ThemeIcon(margin.holds ? "pass" : "error");
  const { uri, range } = margin;
  if (uri && range) {
    const { start, end } = range;
    const selection = new vscode.Range(start.line, start.character, end.line, end.character);
    item.command = {
      command: "vscode.open",
      title: "Open",
      arguments: [vscode.Uri.parse(uri), { selection }],
    };
  }
  return item;
}

function detailsOf({ electrical, balance }: Install): Detail[] {
  const details = [
    { name: "Electrical", inFull: "Least electrical margin", margin: electrical },
    { name: "CG", inFull: "CG to the envelope", margin: balance },
  ];
  return details.flatMap(({ margin, ...names }) => (margin ? [{ ...names, margin }] : []));
}

/** Themes colour these as they colour findings. */
function iconOf({ error, warning }: Install["counts"]): vscode.ThemeIcon {
  if (error > 0) return new vscode.ThemeIcon("error", new vscode.ThemeColor("problemsErrorIcon.foreground"));
  if (warning > 0)
    return new vscode.ThemeIcon("warning", new vscode.ThemeColor("problemsWarningIcon.foreground"));
  return new vscode.ThemeIcon("pass");
}

function counted(count: number, word: string): string {
  return count === 0 ? "" : `${count} ${word}${count === 1 ? "" : "s"}`;
}
