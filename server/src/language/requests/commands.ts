import { dirname, join, relative, sep } from "node:path";
import { ErrorCodes, LSPErrorCodes, ResponseError, type WorkspaceEdit } from "vscode-languageserver";
import { type RecordKind, recordKindOf } from "../../core/records/schema";
import { newAirframe } from "../../core/views/new-airframe";
import { newInstall } from "../../core/views/new-install";
import { type RecordChoice, recordChoice } from "../../core/views/record-choices";
import { idOf } from "../documents";
import type { Room } from "../room";

/** The server's commands; every client can run them. */
const newRecords: Readonly<
  Record<string, (wanted: Partial<NewInstall>, room: Room) => WorkspaceEdit | string>
> = {
  "tailcone.server.newInstall": beginInstall,
  "tailcone.server.newAirframe": beginAirframe,
};

export const commands = Object.keys(newRecords);

/** Arguments of the command that begins an install record: URIs of a kit, of an airframe, and of the file to be. */
interface NewInstall {
  readonly kit: string;
  readonly airframe: string;
  readonly file: string;
}

/** A record of the workspace that a new one may be made from. */
export interface OfferedRecord extends RecordChoice {
  readonly uri: string;
}

export function answerCommands(room: Room): void {
  room.connection.onExecuteCommand(async ({ command, arguments: [argument] = [] }) => {
    const begin = Object.hasOwn(newRecords, command) ? newRecords[command] : undefined;
    if (!begin) return new ResponseError(ErrorCodes.InvalidParams, `There is no command '${command}'.`);
    const made = begin((argument ?? {}) as Partial<NewInstall>, room);
    if (typeof made === "string") return new ResponseError(ErrorCodes.InvalidParams, made);
    const { applied, failureReason } = await room.connection.workspace.applyEdit(made);
    return applied
      ? null
      : new ResponseError(LSPErrorCodes.RequestFailed, failureReason ?? "The record was not written.");
  });
  room.connection.onRequest("tailcone/records", (wanted: Partial<RecordsWanted> | undefined) =>
    offered(wanted ?? {}, room),
  );
}

/** `tailcone/records`: the records of a kind; airframes held against a kit where one is named. */
interface RecordsWanted {
  readonly kind: RecordKind;
  readonly kit: string;
}

function offered({ kind, kit: uri }: Partial<RecordsWanted>, { desk, documents }: Room): OfferedRecord[] {
  const kit = uri === undefined ? undefined : desk.shelf.load(idOf(uri));
  return documents.records().flatMap((id) => {
    const record = recordKindOf(id) === kind ? desk.shelf.load(id) : undefined;
    const choice = record && recordChoice(record, kit);
    return choice ? [{ uri: documents.uriOf(id), ...choice }] : [];
  });
}

/** The edit that makes the file, or why there is none. */
function beginInstall(wanted: Partial<NewInstall>, room: Room): WorkspaceEdit | string {
  if (!wanted.kit || !wanted.airframe || !wanted.file)
    return "It takes { kit, airframe, file }: the URIs of a kit record, of an airframe record, and of the new record.";
  const { shelf } = room.desk;
  const kit = shelf.load(idOf(wanted.kit));
  const airframe = shelf.load(idOf(wanted.airframe));
  if (kit?.typing.typed.kind !== "kit") return `'${wanted.kit}' is no kit record.`;
  if (airframe?.typing.typed.kind !== "airframe") return `'${wanted.airframe}' is no airframe record.`;
  const home = dirname(idOf(wanted.file));
  const pathOf = (id: string) => relative(home, join(id)).split(sep).join("/");
  const text = newInstall({
    kit: kit.typing.typed.record,
    airframe: airframe.typing.typed.record,
    kitPath: pathOf(kit.file),
    airframePath: pathOf(airframe.file),
  });
  return fileWith(text, wanted.file, "install", room);
}

function beginAirframe({ file }: Partial<NewInstall>, room: Room): WorkspaceEdit | string {
  if (!file) return "It takes { file }: the URI of the new record.";
  return fileWith(newAirframe(), file, "airframe", room);
}

function fileWith(text: string, uri: string, kind: RecordKind, { documents }: Room): WorkspaceEdit | string {
  const id = idOf(uri);
  if (recordKindOf(id) !== kind) return `The new record's name must end in .${kind}.yaml.`;
  if (documents.text(id) !== undefined) return "There is a record of that name already.";
  const start = { line: 0, character: 0 };
  return {
    documentChanges: [
      { kind: "create", uri, options: { overwrite: false } },
      {
        textDocument: { uri, version: null },
        edits: [{ range: { start, end: start }, newText: text }],
      },
    ],
  };
}
