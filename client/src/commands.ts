import * as vscode from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";

/** Copies the demo into a folder that the user chooses, and opens it. What is there already stays as it is. */
export async function copyDemo(extension: vscode.Uri): Promise<void> {
  const [parent] =
    (await vscode.window.showOpenDialog({
      canSelectFiles: false,
      canSelectFolders: true,
      openLabel: "Copy Demo Here",
      title: "Folder that the demo is copied into",
    })) ?? [];
  if (!parent) return;
  const target = vscode.Uri.joinPath(parent, "tailcone-demo");
  if (!(await exists(target))) {
    await vscode.workspace.fs.copy(vscode.Uri.joinPath(extension, "client", "demo"), target);
  }
  await vscode.commands.executeCommand("vscode.openFolder", target);
}

/** Begins an install record: asks for a kit, an airframe and a name, and opens what comes of it. */
export async function newInstall(client: LanguageClient): Promise<void> {
  const kit = await pickRecord("kit", "Kit that goes into the aircraft");
  const airframe = kit && (await pickRecord("airframe", "Airframe that it goes into"));
  if (!kit || !airframe) return;
  const folder = vscode.Uri.joinPath(airframe, "..");
  const name = await vscode.window.showInputBox({
    title: "New Install Record",
    prompt: `Name of the new record, in ${vscode.workspace.asRelativePath(folder)}`,
    value: `${stemOf(kit)}-${stemOf(airframe)}.install.yaml`,
    validateInput: async (text) => {
      if (!/^[^/\\]+\.install\.ya?ml$/.test(text)) return "The name ends in .install.yaml";
      return (await exists(vscode.Uri.joinPath(folder, text)))
        ? "There is a record of that name already"
        : undefined;
    },
  });
  if (!name) return;
  const file = vscode.Uri.joinPath(folder, name);
  await client.sendRequest("workspace/executeCommand", {
    command: "tailcone.server.newInstall",
    arguments: [{ kit: kit.toString(), airframe: airframe.toString(), file: file.toString() }],
  });
  await vscode.window.showTextDocument(file);
  await vscode.commands.executeCommand("workbench.actions.view.problems");
}

/** The only record of a kind, or the one that the user picks. */
async function pickRecord(kind: "kit" | "airframe", title: string): Promise<vscode.Uri | undefined> {
  const found = await vscode.workspace.findFiles(`**/*.${kind}.{yaml,yml}`, "**/node_modules/**");
  if (found.length === 0) {
    void vscode.window.showWarningMessage(
      `The workspace has no ${kind} record: a file that ends in .${kind}.yaml.`,
    );
    return undefined;
  }
  const picks = found.map((uri) => ({ label: vscode.workspace.asRelativePath(uri), uri }));
  const picked = await vscode.window.showQuickPick(
    picks.toSorted((a, b) => (a.label < b.label ? -1 : 1)),
    { title, placeHolder: title },
  );
  return picked?.uri;
}

function stemOf(uri: vscode.Uri): string {
  return uri.path
    .split("/")
    .at(-1)!
    .replace(/\.(kit|airframe)\.ya?ml$/, "");
}

async function exists(uri: vscode.Uri): Promise<boolean> {
  return vscode.workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );
}
