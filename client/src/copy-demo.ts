import * as vscode from "vscode";

/** Opening a folder starts the extension anew: what is to be opened then is kept under this name. */
const openNext = "open-next";

/** The sound record, which the walkthrough begins with. */
const firstRecord = "survey-rack-0417.install.yaml";

/** Copies the demo into a folder that the user chooses, and opens it. What is there already stays as it is. */
export async function copyDemo({ extensionUri, globalState }: vscode.ExtensionContext): Promise<void> {
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
    await vscode.workspace.fs.copy(vscode.Uri.joinPath(extensionUri, "client", "demo"), target);
  }
  await globalState.update(openNext, vscode.Uri.joinPath(target, firstRecord).toString());
  await vscode.commands.executeCommand("vscode.openFolder", target);
}

/** Shows the first record of a demo that was copied just before this window opened it. */
export async function openCopiedRecord({ globalState }: vscode.ExtensionContext): Promise<void> {
  const next = globalState.get<string>(openNext);
  const record = next === undefined ? undefined : vscode.Uri.parse(next);
  if (!record || !vscode.workspace.getWorkspaceFolder(record)) return;
  await globalState.update(openNext, undefined);
  if (await exists(record)) await vscode.window.showTextDocument(record);
}

/** Whether there is a file or a folder. */
export async function exists(uri: vscode.Uri): Promise<boolean> {
  return vscode.workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );
}
