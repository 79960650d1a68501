/** How many fastener holes a section of a reinforcement beside its opening has. */
import { reachAlong } from "../../methods/geometry";
import { inUnit } from "../../quantities";
import { isBelow } from "../../rounding";
import { derive, derived, type Operand } from "../value";
import { doublerLines, type Fastener } from "./fasteners";
import type { ReinforcementParts } from "./reinforcement";
import { rowsOnSide } from "./reinforcement-operands";

/** One for each row on both sides; more where the recorded places put more into one section through the opening. */
export function holesInSection(parts: ReinforcementParts): Operand {
  const { fasteners, keep, subject, path } = parts;
  const r = rowsOnSide(parts);
  const placed = fasteners && path.direction ? doublerLines(fasteners, parts.unit).flat() : [];
  const most = mostAbreast(placed, parts);
  return derived(
    "fastener holes in the section",
    keep(
      most > 0
        ? derive({
            subject,
            quantity: "section-holes",
            unit: "1",
            formula: "max(2 * r, m)",
            operands: {
              r,
              m: {
                name: "recorded places in one section",
                value: most,
                unit: "1",
                places: [...new Set(placed.map(({ place }) => place))],
                notes: [],
              },
            },
            compute: (n) => Math.max(2 * n.r, n.m),
          })
        : derive({
            subject,
            quantity: "section-holes",
            unit: "1",
            formula: "2 * r",
            operands: { r },
            compute: (n) => 2 * n.r,
          }),
    ),
  );
}

/** The most holes that one section across the load cuts, of all that cut the opening. */
function mostAbreast(
  placed: readonly Fastener[],
  { opening, path: { across }, fasteners, unit }: ReinforcementParts,
): number {
  if (!fasteners?.diameter) return 0;
  const along = across + Math.PI / 2;
  const { from, to } = reachAlong(opening.placed, along);
  const half = inUnit(fasteners.diameter.value, unit) / 2;
  const stations = placed
    .map(({ x, y }) => x * Math.cos(along) + y * Math.sin(along))
    .filter((station) => station + half > from && station - half < to)
    .sort((a, b) => a - b);
  let [most, first] = [0, 0];
  for (const [index, station] of stations.entries()) {
    // Holes that only touch are cut by no common section.
    while (first < index && !isBelow(station - 2 * half, stations[first]!, half)) first++;
    most = Math.max(most, index - first + 1);
  }
  return most;
}
