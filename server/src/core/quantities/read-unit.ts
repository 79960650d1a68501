import { type FoundUnit, findUnit } from "./find-unit";
import { type Part, partOf } from "./part";
import type { Dimension } from "./units";

export type UnitRead =
  | { readonly kind: "missing" }
  | { readonly kind: "unknown"; readonly at: Part }
  /** `trailing` is text that follows the unit and does not belong to it. */
  | { readonly kind: "found"; readonly at: Part; readonly found: FoundUnit; readonly trailing?: Part };

/** Where the unit ends, if more than a unit was written. */
const boundary = /[\s,;:()@=+]/g;

/** Above the number of such places inside any unit, as in "lb / 1000 ft". */
const boundariesTried = 5;

/** Reads the unit that fills the text from `from` on; one of the preferred dimension if it can be read so. */
export function readUnit(text: string, from: number, preferred: Dimension): UnitRead {
  const rest = partOf(text, from);
  if (rest.start === rest.end) return { kind: "missing" };
  const whole = findUnit(text.slice(rest.start, rest.end), preferred);
  if (whole) return { kind: "found", at: rest, found: whole };

  const prefixes = prefixesOf(text, rest, preferred);
  const prefix = prefixes.find(({ found }) => found.dimension === preferred) ?? prefixes[0];
  if (!prefix) return { kind: "unknown", at: rest };
  return { kind: "found", ...prefix, trailing: partOf(text, prefix.at.end, rest.end) };
}

interface Prefix {
  readonly at: Part;
  readonly found: FoundUnit;
}

/** Units that the text starts with, the longest first. */
function prefixesOf(text: string, rest: Part, preferred: Dimension): Prefix[] {
  const prefixes: Prefix[] = [];
  boundary.lastIndex = rest.start;
  for (let tried = 0; tried < boundariesTried; tried++) {
    const end = boundary.exec(text)?.index;
    if (end === undefined) break;
    const found = findUnit(text.slice(rest.start, end), preferred);
    if (found) prefixes.unshift({ at: { start: rest.start, end }, found });
  }
  return prefixes;
}
