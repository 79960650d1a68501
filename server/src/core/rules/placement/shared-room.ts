/** What stands in the same place as something else, be it a component or room that is kept free. */
import { type Assessment, holds } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import type { Neighbour } from "../../graph/placement/clearances";
import { assumed, derive, type Value } from "../../graph/value";
import type { Project } from "../../project";
import type { UnitSymbol } from "../../quantities";
import { placeOf } from "./moves";

/** What a sentence about it says; `purpose` is what room is kept free for. */
export type SharedRoom = {
  readonly component: string;
  readonly other: string;
  readonly purpose: Neighbour["purpose"];
  readonly depth: number;
  readonly unit: UnitSymbol;
};

/** Each component and its neighbours of a kind: where a distance is to be kept, only those that it stands in. */
export function* sharedRooms(rule: string, kind: Neighbour["kind"], project: Project): Iterable<Assessment> {
  for (const { placed, other, value, least } of placementsOf(project).clearances) {
    if (other.kind !== kind || (least && value.value >= 0)) continue;
    yield {
      rule,
      subject: value.subject,
      place: placeOf(placed),
      value,
      limit: nothingShared(value),
      sense: "at-least",
      holds: holds(value.value, "at-least", 0),
      scale: { of: undefined },
      facts: {
        component: placed.id,
        other: other.id,
        purpose: other.purpose,
        depth: Math.abs(value.value),
        unit: value.unit as UnitSymbol,
      } satisfies SharedRoom,
      related: [{ place: other.place, words: other.id }],
    };
  }
}

/** The limit of things that nobody gives a distance for: they may touch, and not share room. */
function nothingShared({ subject, unit }: Value): Value {
  return derive({
    subject,
    quantity: "least-clearance",
    unit,
    formula: "c",
    operands: {
      c: assumed("clearance", 0, unit, "No distance to be kept is recorded: only shared room is a fault."),
    },
    compute: ({ c }) => c,
  })!;
}
