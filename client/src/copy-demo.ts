import * as vscode from "vscode";

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

/** Whether there is a file or a folder. */
export async function exists(uri: vscode.Uri): Promise<boolean> {
  return vscode.workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );
}
