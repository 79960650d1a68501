/** What the rules of drains have in common: the worst stretch of a drain, and what would make it fall. */
import { linesOf } from "../../graph/derivations";
import type { DrainStretch } from "../../graph/lines/drains";
import type { Project } from "../../project";
import { convert, roundDown, roundUp } from "../../quantities";
import type { DrainPoint } from "../../records/types";
import { drainSlope } from "../../tables/line-installation-limits";
import { type Remedy, rewrite } from "../rule";

/** The stretch of a drain for which `of` is least; undefined where it is known for none. */
export function worstStretch<T extends number>(
  stretches: readonly DrainStretch[],
  of: (stretch: DrainStretch) => T | undefined,
): DrainStretch | undefined {
  return stretches
    .filter((one) => of(one) !== undefined)
    .reduce<DrainStretch | undefined>(
      (least, one) => (least && of(least)! <= of(one)! ? least : one),
      undefined,
    );
}

/** Lowers the point that the worst stretch ends in, or raises the one that it begins in; each by as little as falls. */
export function* pointHeights(
  id: string,
  project: Project,
  of: (stretch: DrainStretch) => number | undefined,
): Iterable<Remedy> {
  const drain = linesOf(project).drains.find((one) => one.id === id);
  const worst = drain && worstStretch(drain.stretches, of);
  if (!worst) return;
  // In the attitude in which it is worst, the missing height is nearly that of the level aircraft.
  const run = worst.slope ? (100 * worst.fall.value) / worst.slope.value : 0;
  const wanted = Math.abs(run) * drainSlope.value || leastFall;
  const missing = 1.02 * (wanted - worst.fall.value);
  yield* shifted(worst.to, -missing, "Lower");
  yield* shifted(worst.from, missing, "Raise");
}

/** Where no run is recorded, any fall will do; what a rule can measure, in in. */
const leastFall = 0.1;

function* shifted({ at, waterLine }: DrainPoint, inches: number, verb: string): Iterable<Remedy> {
  if (!waterLine) return;
  const unit = waterLine.value.unit === "mm" ? "mm" : "in";
  const height = convert(convert(waterLine.value.si, "m", "in") + inches, "in", unit);
  const step = unit === "mm" ? 1 : 0.1;
  const text = `${(inches < 0 ? roundDown : roundUp)(height, step)} ${unit}`;
  yield rewrite(`${verb} ${at ? `'${at.value}'` : "the point"} to ${text}`, waterLine.place, text);
}
