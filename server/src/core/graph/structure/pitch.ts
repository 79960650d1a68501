/** How far apart the fasteners of a row stand: measured where their places are recorded, as recorded otherwise. */
import type { Place } from "../../records/written";
import { asRecorded, counted } from "../recorded";
import { derive, type Value, written } from "../value";
import type { ReinforcementParts } from "./reinforcement";

/** A pitch, and where it was written. */
export interface PitchAt {
  readonly value: Value;
  readonly place: Place;
}

/** The closest and the widest of all rows; undefined where neither pitch nor places are recorded. */
export function pitchesOf(
  parts: ReinforcementParts,
): { readonly closest: PitchAt; readonly widest: PitchAt } | undefined {
  const { fasteners, subject, unit, keep } = parts;
  if (!fasteners?.lines?.length) {
    const value = keep(asRecorded(subject, "pitch", "pitch", fasteners?.pitch, unit));
    const recorded = value && fasteners?.pitch && { value, place: fasteners.pitch.place };
    return recorded && { closest: recorded, widest: recorded };
  }
  const measured = fasteners.lines.map(({ from, to, count, place }): PitchAt | undefined => {
    const value = derive({
      subject,
      quantity: "pitch",
      unit,
      formula: "sqrt((x_2 - x_1)^2 + (y_2 - y_1)^2) / (n - 1)",
      operands: {
        x_2: written("last fastener, x", to?.x, unit),
        x_1: written("first fastener, x", from?.x, unit),
        y_2: written("last fastener, y", to?.y, unit),
        y_1: written("first fastener, y", from?.y, unit),
        n: counted("fasteners in the line", count),
      },
      compute: (n) => Math.hypot(n.x_2 - n.x_1, n.y_2 - n.y_1) / (n.n - 1),
    });
    return value && { value, place };
  });
  // A line that is half written may be the closest.
  const whole = measured.filter((one) => one !== undefined);
  if (whole.length < measured.length) return undefined;
  const [closest] = whole.toSorted((a, b) => a.value.value - b.value.value);
  const [widest] = whole.toSorted((a, b) => b.value.value - a.value.value);
  if (!closest || !widest) return undefined;
  keep(closest.value);
  keep(widest.value);
  return { closest, widest };
}
