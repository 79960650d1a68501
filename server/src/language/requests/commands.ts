import { dirname, join, relative, sep } from "node:path";
import { ErrorCodes, LSPErrorCodes, ResponseError, type WorkspaceEdit } from "vscode-languageserver";
import { recordKindOf } from "../../core/records/schema";
import { newInstall } from "../../core/views/new-install";
import { idOf } from "../documents";
import type { Room } from "../room";

/** The server's commands; every client can run them. */
export const commands = ["tailcone.server.newInstall"] as const;

/** Arguments of the command that begins an install record: URIs of a kit, of an airframe, and of the file to be. */
interface NewInstall {
  readonly kit: string;
  readonly airframe: string;
  readonly file: string;
}

export function answerCommands(room: Room): void {
  room.connection.onExecuteCommand(async ({ command, arguments: [argument] = [] }) => {
    if (command !== commands[0])
      return new ResponseError(ErrorCodes.InvalidParams, `There is no command '${command}'.`);
    const made = beginning(argument as NewInstall | undefined, room);
    if (typeof made === "string") return new ResponseError(ErrorCodes.InvalidParams, made);
    const { applied, failureReason } = await room.connection.workspace.applyEdit(made);
    return applied
      ? null
      : new ResponseError(LSPErrorCodes.RequestFailed, failureReason ?? "The record was not written.");
  });
}

/** The edit that makes the file, or why there is none. */
function beginning(wanted: NewInstall | undefined, { desk, documents }: Room): WorkspaceEdit | string {
  if (!wanted?.kit || !wanted.airframe || !wanted.file)
    return "It takes { kit, airframe, file }: the URIs of a kit record, of an airframe record, and of the new record.";
  const file = idOf(wanted.file);
  if (recordKindOf(file) !== "install") return "The new record's name must end in .install.yaml.";
  const kit = desk.shelf.load(idOf(wanted.kit));
  const airframe = desk.shelf.load(idOf(wanted.airframe));
  if (kit?.typing.typed.kind !== "kit") return `'${wanted.kit}' is no kit record.`;
  if (airframe?.typing.typed.kind !== "airframe") return `'${wanted.airframe}' is no airframe record.`;
  if (documents.text(file) !== undefined) return "There is a record of that name already.";
  const pathOf = (id: string) => relative(dirname(file), join(id)).split(sep).join("/");
  const text = newInstall({
    kit: kit.typing.typed.record,
    airframe: airframe.typing.typed.record,
    kitPath: pathOf(kit.file),
    airframePath: pathOf(airframe.file),
  });
  const start = { line: 0, character: 0 };
  return {
    documentChanges: [
      { kind: "create", uri: wanted.file, options: { overwrite: false } },
      {
        textDocument: { uri: wanted.file, version: null },
        edits: [{ range: { start, end: start }, newText: text }],
      },
    ],
  };
}
