import type { Range } from "vscode-languageserver";
import type { Severity } from "../../core/findings/finding";
import { nameOf, showShare } from "../../core/views/calculation";
import { fleetRow, type Margin } from "../../core/views/fleet";
import type { Room } from "../room";
import { locationOf } from "./navigation";

/** One install of the workspace, as the client shows it. */
export interface FleetEntry {
  readonly uri: string;
  readonly kit?: string | undefined;
  readonly airframe?: string | undefined;
  readonly counts: Readonly<Record<Severity, number>>;
  readonly electrical?: FleetMargin | undefined;
  readonly balance?: FleetMargin | undefined;
}

export interface FleetMargin {
  readonly share: string;
  /** Of what, and where: "path drop, CHILLER, climb". */
  readonly of: string;
  readonly holds: boolean;
  readonly uri?: string;
  readonly range?: Range;
}

/** `tailcone/fleet`: every install of the workspace that was checked so far. */
export function answerFleet(room: Room): void {
  room.connection.onRequest("tailcone/fleet", (): FleetEntry[] =>
    room.documents.records().flatMap((id) => {
      const judgement = room.desk.known(id);
      const row = judgement && fleetRow(judgement);
      if (!row) return [];
      const { kit, airframe, counts } = row;
      const margins = { electrical: marginOf(row.electrical, room), balance: marginOf(row.balance, room) };
      return [{ uri: room.documents.uriOf(id), kit, airframe, counts, ...margins }];
    }),
  );
}

function marginOf(margin: Margin | undefined, room: Room): FleetMargin | undefined {
  if (!margin) return undefined;
  const { value, place, holds } = margin.assessment;
  const of = [nameOf(value), value.subject.id, value.condition]
    .filter((part) => part !== undefined)
    .join(", ");
  return { share: showShare(margin?.share), of, holds, ...locationOf(place, room) };
}
