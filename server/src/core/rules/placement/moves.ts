/** What the rules of clearances have in common: how a room is called, and moves that keep a distance. */
import type { Assessment } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import type { PlacedComponent } from "../../graph/placement/boxes";
import type { ClearanceResult, Neighbour } from "../../graph/placement/clearances";
import { type Axis, leastMove } from "../../methods/solids";
import type { Project } from "../../project";
import { convert, formatMeasure, type Quantity, roundDown, roundUp, type UnitSymbol } from "../../quantities";
import type { Written } from "../../records/written";
import { type Remedy, rewrite } from "../rule";

type Purpose = NonNullable<Neighbour["purpose"]>;

const purposes: Readonly<Record<Purpose, string>> = {
  "control-run": "the control run",
  "filler-neck": "the filler neck",
  door: "the room of the door",
  "recovery-device": "the path of the recovery device",
  "head-room": "the head room",
  "servicing-access": "the servicing access",
  other: "the room kept free",
};

/** "the control run ELEVATOR", "BOX". */
export function neighbourWords(purpose: string | undefined, id: string): string {
  return purpose === undefined ? id : `${purposes[purpose as Purpose] ?? purposes.other} ${id}`;
}

/** Where a finding about a placed component points. */
export function placeOf({ placement }: PlacedComponent) {
  return (placement.component ?? placement).place;
}

/** The clearance that an assessment is about. */
export function clearanceOf({ value }: Assessment, project: Project): ClearanceResult | undefined {
  return placementsOf(project).clearances.find((one) => one.value === value);
}

/** Steps to which a place is rounded, away from what it has to keep clear of. */
export const placeSteps: Readonly<Partial<Record<UnitSymbol<"length">, number>>> = {
  in: 0.05,
  ft: 0.01,
  mm: 1,
  cm: 0.1,
  m: 0.001,
};

const ways: readonly { readonly axis: Axis; readonly sign: 1 | -1; readonly words: string }[] = [
  { axis: "x", sign: 1, words: "aft" },
  { axis: "x", sign: -1, words: "forward" },
  { axis: "y", sign: 1, words: "to the right" },
  { axis: "y", sign: -1, words: "to the left" },
  { axis: "z", sign: 1, words: "up" },
  { axis: "z", sign: -1, words: "down" },
];

/** Along each axis the least move that keeps the distance, the shortest first. */
export function* movesThatClear(assessment: Assessment, project: Project): Iterable<Remedy> {
  const found = clearanceOf(assessment, project);
  if (!found) return;
  const { placed, other, value, least } = found;
  const needed = (least ?? assessment.limit).value;
  const unit = value.unit as UnitSymbol<"length">;
  const moves = ways
    .map((way) => ({
      ...way,
      by: leastMove(placed.box, other.solids, needed, way.axis, way.sign),
    }))
    .sort((a, b) => a.by - b.by);
  for (const { axis, sign, words, by } of moves) {
    const at = coordinateOf(placed, axis);
    const step = at && placeSteps[at.value.unit];
    if (!at || step === undefined) continue;
    const wanted = at.value.written + sign * convert(by, unit, at.value.unit, "length");
    const text = `${(sign > 0 ? roundUp : roundDown)(wanted, step)} ${at.value.unit}`;
    yield rewrite(
      `Move ${placed.id} ${formatMeasure(by, unit, 3)} ${words}, to ${text}`,
      at.place,
      text,
      words,
    );
  }
}

function coordinateOf({ placement }: PlacedComponent, axis: Axis): Written<Quantity<"length">> | undefined {
  return axis === "x" ? placement.arm : axis === "y" ? placement.buttLine : placement.waterLine;
}
