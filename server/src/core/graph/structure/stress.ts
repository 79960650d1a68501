/** Stress at the edge of an opening in a panel whose load is recorded. */
import {
  extentAlong,
  type Passage,
  type Placed,
  passageOf,
  type Range,
  reachAlong,
} from "../../methods/geometry";
import { circleFactor, netStress, roundedRectangleFactor } from "../../methods/stress-concentration";
import type { CoverageGap, Lookup } from "../../tables/lookup";
import type { CutoutResult } from "../openings";
import { asRecorded } from "../recorded";
import { derive, derived, type Keep, type Subject, type Value, written } from "../value";
import { figureOperands, geometrySource, unitOf } from "./figures";
import { directionOperand, type LoadPath } from "./load-path";

export interface StressResult {
  readonly opening: CutoutResult;
  readonly peak: Value | undefined;
  readonly allowable: Value | undefined;
  /** Why no factor is known. */
  readonly gap: StressGap | undefined;
}

export type StressGap =
  | { readonly kind: "figure"; readonly shape: string }
  | { readonly kind: "turned" }
  | { readonly kind: "no-strip" }
  | { readonly kind: "beside"; readonly other: string }
  | { readonly kind: "off-centre"; readonly by: number; readonly unit: "in" | "mm" }
  | { readonly kind: "formula"; readonly gap: CoverageGap };

/** An opening counts as central, and an edge of the panel as straight, while off by no more than this share of the width. */
const straightShare = 0.01;

/**
 * The strip has to go on for this many widths of the opening beyond both of its ends: so far it disturbs the stress
 * (Saint-Venant's principle; the number is common practice, no source).
 */
const undisturbed = 1;

/**
 * Undefined where the panel records no force.
 *
 * @param others the other openings of the panel
 */
export function stressAt(
  opening: CutoutResult,
  others: readonly CutoutResult[],
  path: LoadPath,
  keep: Keep,
): StressResult | undefined {
  const { panel, within, id } = opening;
  const { load } = panel;
  if (!load?.direction || !load.force || !within) return undefined;
  const subject: Subject = { kind: "cutout", id };
  const unit = unitOf(panel);
  const along = load.direction.value.si;
  const stretch = stretchOf(opening, path.across);
  const other = others.find(({ placed }) => meets(placed, stretch, path.across));
  const strip = stripAt(opening, within, stretch, path.across);
  const found: Factor | StressGap = other
    ? { kind: "beside", other: other.id }
    : factorOf(opening, strip, path.across, along);
  const allowable = keep(asRecorded(subject, "allowable-stress", "allowable stress", load.allowable, "psi"));
  if ("kind" in found) return { opening, peak: undefined, allowable, gap: found };
  if (!found.factor.covered) {
    return { opening, peak: undefined, allowable, gap: { kind: "formula", gap: found.factor.reason } };
  }
  const lookup = found.factor;
  const figure = figureOperands(opening.cutout.opening!, unit);
  const width = keep(
    derive({
      subject,
      quantity: "panel-width",
      unit,
      method: "least distance across the load between the panel's edges beside the opening",
      operands: {
        ...figure,
        ...figureOperands(panel.outline!, unit, "panel "),
        ...directionOperand(load.direction),
      },
      compute: () => found.width,
      sources: [geometrySource],
    }),
  );
  const factor = keep(
    derive({
      subject,
      quantity: "stress-concentration",
      unit: "1",
      method: found.method,
      operands: { ...figure, W: derived("width of the panel", width) },
      compute: () => lookup.value,
      sources: [lookup.source],
    }),
  );
  const net = keep(
    derive({
      subject,
      quantity: "net-stress",
      unit: "psi",
      formula: unit === "in" ? "P / (t * (W - d))" : "P / (t * (W - d)) * 645.16",
      operands: {
        P: written("force through the panel", load.force, "lbf"),
        t: written("thickness of the panel", panel.thickness, unit),
        W: derived("width of the panel", width),
        d: derived("width of the opening", path.opening),
      },
      compute: ({ P, t, W, d }) => netStress(P, t, W, d) * (unit === "in" ? 1 : 645.16),
    }),
  );
  const peak = keep(
    derive({
      subject,
      quantity: "peak-stress",
      unit: "psi",
      formula: "K * s",
      operands: { K: derived("stress concentration", factor), s: derived("net stress", net) },
      compute: ({ K, s }) => K * s,
      sources: [lookup.source],
    }),
  );
  return { opening, peak, allowable, gap: undefined };
}

/** Stations along the load between which the opening disturbs the stress. */
function stretchOf({ placed }: CutoutResult, across: number): Range {
  const along = reachAlong(placed, across + Math.PI / 2);
  const more = undisturbed * extentAlong(placed, across);
  return { from: along.from - more, to: along.to + more };
}

/** Another opening there takes its own width off the panel, and the two disturb each other. */
function meets(placed: Placed, { from, to }: Range, across: number): boolean {
  const along = reachAlong(placed, across + Math.PI / 2);
  return along.from < to && along.to > from;
}

/** The panel's edges where the opening stands between them; undefined where there are none. */
function stripAt(
  { placed }: CutoutResult,
  within: Placed,
  stretch: Range,
  across: number,
): Passage | undefined {
  const own = reachAlong(placed, across);
  return passageOf(within, across, (own.from + own.to) / 2, stretch);
}

interface Factor {
  readonly factor: Lookup<number>;
  readonly method: string;
  /** Of the strip that it holds for. */
  readonly width: number;
}

function factorOf(
  { placed, panel, cutout }: CutoutResult,
  strip: Passage | undefined,
  across: number,
  along: number,
): Factor | StressGap {
  if (!strip) return { kind: "no-strip" };
  const { lower, upper } = strip;
  const width = upper.from - lower.to;
  const moves = Math.max(lower.to - lower.from, upper.to - upper.from);
  if (moves > straightShare * width) return { kind: "no-strip" };
  const own = reachAlong(placed, across);
  const off = Math.abs((own.from + own.to - lower.to - upper.from) / 2);
  if (off > straightShare * width) return { kind: "off-centre", by: off, unit: unitOf(panel) };
  const { shape } = placed;
  if (shape.kind === "circle") {
    return {
      factor: circleFactor(shape.diameter / width),
      method: "3 - 3.13x + 3.66x^2 - 1.53x^3, x = d/W",
      width,
    };
  }
  if (shape.kind === "polygon") return { kind: "figure", shape: cutout.opening?.shape?.value ?? "polygon" };
  // The polynomial is for an opening whose sides run along and across the load.
  const quarter = Math.PI / 2;
  const turns = (placed.angle - along) / quarter;
  if (Math.abs(turns - Math.round(turns)) > 1e-6) return { kind: "turned" };
  const [a, b] = [extentAlong(placed, across) / 2, extentAlong(placed, along) / 2];
  const radius = shape.kind === "slot" ? shape.width / 2 : shape.cornerRadius;
  return {
    factor: roundedRectangleFactor(a, b, radius),
    method: "polynomial of a rectangle with round corners in b/a and r/b",
    width,
  };
}
