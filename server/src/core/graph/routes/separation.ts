/** From the distance of centre lines to the room that is left between what runs along them. */
import type { Bundle } from "../../records/types";
import { isWholeEntry } from "../entries";
import type { LineRun } from "../lines/line-run";
import { outsideOf } from "../lines/outside";
import { solidsSource } from "../placement/boxes";
import { derive, derived, type Keep, known, type Operand, type Subject, type Value, written } from "../value";
import { routeUnit } from "./course";

/** What of the thickness of a routed thing counts, and what to say where it is not all that there is. */
export interface Half {
  readonly symbol: string;
  /** Undefined where only the centre line is known. */
  readonly diameter: Operand;
  readonly note: string | undefined;
}

/** Undefined where its diameter is faulty: it has one, and nobody knows which. */
export function halfOfBundle(bundle: Bundle): Half | undefined {
  const { id, diameter } = bundle;
  if (!isWholeEntry(bundle, "diameter", diameter)) return undefined;
  const note = `The diameter of bundle ${id!.value} is not recorded: it counts as its centre line.`;
  return {
    symbol: "B",
    diameter: written("diameter of the bundle", diameter, "in"),
    note: diameter ? undefined : note,
  };
}

/** Undefined without a size. */
export function halfOfLine(run: LineRun): Half | undefined {
  if (!run.size) return undefined;
  const outside = outsideOf(run);
  if (outside) return { symbol: "D", diameter: outside, note: undefined };
  return {
    symbol: "D",
    diameter: derived("outside diameter of the tube that the hose fits", run.size),
    note: `No table gives the outside of hose ${run.id}: it counts as the tube that it fits, which is thinner.`,
  };
}

/** Room between two things: what their centre lines, or a centre line and a room, are apart, less their halves. */
export function separation(
  keep: Keep,
  of: {
    readonly subject: Subject;
    readonly distance: number;
    readonly method: string;
    readonly points: () => Record<string, Operand>;
    readonly halves: readonly (Half | undefined)[];
  },
): Value | undefined {
  const { subject, distance, method, points } = of;
  const halves = of.halves.filter((half) => half !== undefined);
  if (halves.length < of.halves.length) return undefined;
  const apart = keep(
    known(distance, routeUnit, () => ({
      subject,
      quantity: "route-distance",
      method,
      operands: points(),
      sources: [solidsSource],
      notes: [
        "Routes are straight from point to point: how a bend is rounded and how a run sags is not counted.",
      ],
    })),
  );
  const thick = halves.filter(({ diameter }) => diameter);
  return keep(
    derive({
      subject,
      quantity: "route-separation",
      unit: routeUnit,
      formula: ["d", ...thick.map(({ symbol }) => `${symbol} / 2`)].join(" - "),
      operands: {
        d: derived("distance of the centre line", apart),
        ...Object.fromEntries(thick.map(({ symbol, diameter }) => [symbol, diameter])),
      } as Readonly<Record<string, Operand>>,
      compute: (numbers) =>
        thick.reduce((left, { symbol }) => left - (numbers[symbol] as number) / 2, numbers.d as number),
      notes: halves.flatMap(({ note }) => note ?? []),
    }),
  );
}
