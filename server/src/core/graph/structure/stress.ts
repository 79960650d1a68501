/** Stress at the edge of an opening in a panel whose load is recorded. */
import { extentAlong, type Placed, reachAlong } from "../../methods/geometry";
import { circleFactor, netStress, roundedRectangleFactor } from "../../methods/stress-concentration";
import type { CoverageGap, Lookup } from "../../tables/lookup";
import type { CutoutResult } from "../openings";
import { asRecorded } from "../recorded";
import { derive, derived, type Keep, type Subject, type Value, written } from "../value";
import { figureOperands, unitOf } from "./figures";
import type { LoadPath } from "./load-path";

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
  | { readonly kind: "off-centre"; readonly by: number; readonly unit: "in" | "mm" }
  | { readonly kind: "formula"; readonly gap: CoverageGap };

/** An opening counts as central while it stands off by no more than this share of the width. */
const centralShare = 0.01;

/** Undefined where the panel records no force. */
export function stressAt(opening: CutoutResult, path: LoadPath, keep: Keep): StressResult | undefined {
  const { panel, within, id } = opening;
  const { load } = panel;
  if (!load?.direction || !load.force || !within) return undefined;
  const subject: Subject = { kind: "cutout", id };
  const unit = unitOf(panel);
  const along = load.direction.value.si;
  const found = factorOf(opening, within, path.across, along);
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
      method: "extent of the panel's outline across the load",
      operands: figureOperands(panel.outline!, unit, "panel "),
      compute: () => extentAlong(within, path.across),
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

function factorOf(
  { placed, panel, cutout }: CutoutResult,
  within: Placed,
  across: number,
  along: number,
): { readonly factor: Lookup<number>; readonly method: string } | StressGap {
  const own = reachAlong(placed, across);
  const whole = reachAlong(within, across);
  const off = Math.abs((own.from + own.to - whole.from - whole.to) / 2);
  const width = whole.to - whole.from;
  if (off > centralShare * width) return { kind: "off-centre", by: off, unit: unitOf(panel) };
  const { shape } = placed;
  if (shape.kind === "circle") {
    return { factor: circleFactor(shape.diameter / width), method: "3 - 3.13x + 3.66x^2 - 1.53x^3, x = d/W" };
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
  };
}
