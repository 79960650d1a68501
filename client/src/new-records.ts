import * as vscode from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";
import { exists } from "./copy-demo";
import { recordName } from "./record-name";

/** Begins an install record: asks for a kit, an airframe and a name, and opens what comes of it. */
export async function newInstall(client: LanguageClient): Promise<void> {
  const kit = await pickRecord(client, "kit", "Kit that goes into the aircraft");
  const airframe = kit && (await pickRecord(client, "airframe", "Airframe that it goes into", kit));
  if (!kit || !airframe) return;
  const folder = vscode.Uri.joinPath(airframe, "..");
  const name = `${stemOf(kit)}-${stemOf(airframe)}.install.yaml`;
  const file = await askForFile("install", "New Install Record", folder, name);
  if (!file) return;
  const wanted = { kit: kit.toString(), airframe: airframe.toString(), file: file.toString() };
  await write(client, "tailcone.server.newInstall", wanted, file);
}

/** Begins an airframe record, beside the first one that there is. */
export async function newAirframe(client: LanguageClient): Promise<void> {
  const [known] = await recordsOf(client, "airframe");
  const folder = known
    ? vscode.Uri.joinPath(vscode.Uri.parse(known.uri), "..")
    : vscode.workspace.workspaceFolders?.[0]?.uri;
  if (!folder) {
    void vscode.window.showWarningMessage("Open the folder that the record is to stand in first.");
    return;
  }
  const file = await askForFile("airframe", "New Airframe Record", folder, "new.airframe.yaml");
  if (file) await write(client, "tailcone.server.newAirframe", { file: file.toString() }, file);
}

/** A record that a new one may be made from, as `tailcone/records` tells. */
interface OfferedRecord {
  readonly uri: string;
  readonly title: string;
  readonly standing?: Standing;
  readonly why?: string;
}

type Standing = "eligible" | "lacks-something" | "unknown" | "not-eligible";

/** In the order in which the airframes of a kit are offered. */
const standings: Readonly<Record<Standing, string>> = {
  eligible: "eligible",
  "lacks-something": "not yet eligible",
  unknown: "not known whether eligible",
  "not-eligible": "not eligible",
};

function recordsOf(
  client: LanguageClient,
  kind: "kit" | "airframe",
  kit?: vscode.Uri,
): Promise<OfferedRecord[]> {
  return client.sendRequest("tailcone/records", { kind, kit: kit?.toString() });
}

/** The record of a kind that the user picks. Airframes are told apart by whether the kit may go into them. */
async function pickRecord(
  client: LanguageClient,
  kind: "kit" | "airframe",
  title: string,
  kit?: vscode.Uri,
): Promise<vscode.Uri | undefined> {
  const found = await recordsOf(client, kind, kit);
  if (found.length === 0) {
    void vscode.window.showWarningMessage(
      `The workspace has no ${kind} record: a file that ends in .${kind}.yaml.`,
    );
    return undefined;
  }
  const order = Object.keys(standings);
  const rank = ({ standing }: OfferedRecord) => (standing ? order.indexOf(standing) : -1);
  const sorted = found.toSorted((a, b) => rank(a) - rank(b) || (a.title < b.title ? -1 : 1));
  const picks = sorted.flatMap((one, at): RecordPick[] =>
    one.standing && one.standing !== sorted[at - 1]?.standing
      ? [{ label: standings[one.standing], kind: vscode.QuickPickItemKind.Separator }, pickOf(one)]
      : [pickOf(one)],
  );
  const picked = await vscode.window.showQuickPick(picks, {
    title,
    placeHolder: title,
    matchOnDescription: true,
  });
  return picked?.uri;
}

interface RecordPick extends vscode.QuickPickItem {
  readonly uri?: vscode.Uri;
}

function pickOf({ uri: text, title, standing, why }: OfferedRecord): RecordPick {
  const uri = vscode.Uri.parse(text);
  const path = vscode.workspace.asRelativePath(uri);
  const detail = why && (standing === "not-eligible" ? `Not eligible: ${why}` : why);
  return title === ""
    ? { label: path, uri }
    : { label: title, description: path, ...(detail && { detail }), uri };
}

/** The file of a new record, which is not there yet. */
async function askForFile(
  kind: "install" | "airframe",
  title: string,
  folder: vscode.Uri,
  value: string,
): Promise<vscode.Uri | undefined> {
  const name = await vscode.window.showInputBox({
    title,
    prompt: `Name of the new record, in ${vscode.workspace.asRelativePath(folder)}`,
    placeHolder: value,
    value,
    valueSelection: [0, value.indexOf(".")],
    validateInput: async (text) => {
      const file = recordName(text, kind);
      if (!file) return `A name of a file that can end in .${kind}.yaml`;
      if (await exists(vscode.Uri.joinPath(folder, file))) return `There is a record ${file} already`;
      if (file === text) return undefined;
      return { message: `Becomes ${file}`, severity: vscode.InputBoxValidationSeverity.Info };
    },
  });
  const file = name && recordName(name, kind);
  return file ? vscode.Uri.joinPath(folder, file) : undefined;
}

/** Lets the server write the record, and shows it with the list of what is still to be filled in. */
async function write(
  client: LanguageClient,
  command: string,
  wanted: Readonly<Record<string, string>>,
  file: vscode.Uri,
): Promise<void> {
  await client.sendRequest("workspace/executeCommand", { command, arguments: [wanted] });
  await vscode.window.showTextDocument(file);
  await vscode.commands.executeCommand("workbench.actions.view.problems");
}

function stemOf(uri: vscode.Uri): string {
  return uri.path
    .split("/")
    .at(-1)!
    .replace(/\.(kit|airframe)\.ya?ml$/, "");
}
