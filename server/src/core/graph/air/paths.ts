/** Cooling air of one path: what its fan moves through its openings. */
import { type Crossing, crossing } from "../../methods/air/fan-point";
import { inUnit, type Quantity } from "../../quantities";
import type { AirPath, Component, Fan } from "../../records/types";
import type { Written } from "../../records/written";
import type { Source } from "../../source";
import type { CutoutResult } from "../openings";
import { derive, derived, type Keep, type Operand, type Subject, type Value, written } from "../value";
import type { ConditionAir } from "./conditions";
import { conditionOf, type FaceVelocity, type PathCondition, speed } from "./path-conditions";
import { type RejectedHeat, rejectedHeats } from "./rejected-heat";
import { type ThroughOpening, throughOpening } from "./through-opening";

export interface PathParts {
  readonly path: AirPath;
  readonly id: string;
  readonly fan: Fan;
  readonly cooled: Component | undefined;
  readonly nominal: Written<Quantity<"voltage">> | undefined;
  readonly inlets: readonly CutoutResult[];
  readonly outlets: readonly CutoutResult[];
  readonly airs: readonly ConditionAir[];
}

export interface PathResult {
  readonly path: AirPath;
  readonly id: string;
  readonly openings: readonly ThroughOpening[];
  /** cfm; the same at every density, as fan and path change alike. */
  readonly flow: Value | undefined;
  readonly gap: PathGap | undefined;
  readonly conditions: readonly PathCondition[];
  readonly fromMemory: readonly string[];
  /** Of what is cooled, each mode in which it cools something itself. */
  readonly rejected: readonly RejectedHeat[];
}

export type PathGap =
  | { readonly kind: "screen"; readonly cutout: string }
  | { readonly kind: "component" }
  | Exclude<Crossing, { kind: "found" }>;

export function derivePath(parts: PathParts, keep: Keep): PathResult {
  const { path, id, fan, cooled, airs } = parts;
  const subject: Subject = { kind: "air-path", id };
  const inlets = parts.inlets.map((one) => throughOpening(one, "inlet", path, keep));
  const outlets = parts.outlets.map((one) => throughOpening(one, "outlet", path, keep));
  const openings = [...inlets, ...outlets];
  const missing = openings.find(({ effective }) => !effective);
  const own = passage(cooled, keep);
  const isWhole = own !== "unknown" && !missing;
  const effective = isWhole ? keep(throughAll(subject, inlets, outlets, own)) : undefined;
  const { flow, gap } = effective
    ? fanFlow(subject, fan, effective, keep)
    : { flow: undefined, gap: undefined };
  const speeds = [inlets, outlets].flatMap((side) => faceVelocities(side, flow, keep));
  return {
    path,
    id,
    openings,
    flow,
    gap: missing
      ? { kind: "screen", cutout: missing.opening.id }
      : own === "unknown"
        ? { kind: "component" }
        : gap,
    conditions: airs.flatMap((air) => conditionOf(parts, subject, air, flow, effective, speeds, keep)),
    fromMemory: openings.flatMap((one) => one.fromMemory),
    rejected: cooled ? rejectedHeats(cooled, parts.nominal, keep) : [],
  };
}

/** The passage of what is cooled; undefined where it has none, "unknown" where its data are half there. */
function passage(cooled: Component | undefined, keep: Keep): Value | "unknown" | undefined {
  const { loss, lossAt, lossDensity, data } = cooled?.cooling ?? {};
  if (!loss && !lossAt) return undefined;
  const value = keep(
    derive({
      subject: { kind: "component", id: cooled?.id?.value ?? "" },
      quantity: "effective-area",
      unit: "in2",
      formula: "0.73152 * Q * sqrt(rho / (2 * p))",
      operands: {
        Q: written("flow of the measurement", lossAt, "cfm"),
        rho: written("density of the measurement", lossDensity, "kg/m3"),
        p: written("loss of the measurement", loss, "Pa"),
      },
      compute: ({ Q, rho, p }) => speed * Q * Math.sqrt(rho / (2 * p)),
      sources: data ? [{ document: data.value, standing: "record" }] : [],
    }),
  );
  return value ?? "unknown";
}

function throughAll(
  subject: Subject,
  inlets: readonly ThroughOpening[],
  outlets: readonly ThroughOpening[],
  own: Value | undefined,
): Value | undefined {
  const of = (side: readonly ThroughOpening[]) =>
    side.map(({ opening, effective }) => derived(`effective area of ${opening.id}`, effective));
  const sum = (numbers: readonly number[]) => numbers.reduce((total, one) => total + one, 0);
  const common = { subject, quantity: "path-effective-area", unit: "in2", sources: [continuity] } as const;
  const base = "1 / sum(g)^2 + 1 / sum(h)^2";
  if (!own) {
    return derive({
      ...common,
      formula: `1 / sqrt(${base})`,
      operands: { g: of(inlets), h: of(outlets) },
      compute: ({ g, h }) => 1 / Math.sqrt(1 / sum(g) ** 2 + 1 / sum(h) ** 2),
    });
  }
  return derive({
    ...common,
    formula: `1 / sqrt(${base} + 1 / c^2)`,
    operands: { g: of(inlets), h: of(outlets), c: derived("passage of what is cooled", own) },
    compute: ({ g, h, c }) => 1 / Math.sqrt(1 / sum(g) ** 2 + 1 / sum(h) ** 2 + 1 / c ** 2),
  });
}

const continuity: Source = {
  document: "Fluid mechanics",
  standing: "derived",
  note: "openings side by side add their effective areas, one behind the other their losses",
};

function fanFlow(
  subject: Subject,
  fan: Fan,
  effective: Value,
  keep: Keep,
): { readonly flow: Value | undefined; readonly gap: PathGap | undefined } {
  const points = (fan.curve ?? []).flatMap(({ flow, pressure }) =>
    flow && pressure ? [{ flow: inUnit(flow.value, "cfm"), pressure: inUnit(pressure.value, "Pa") }] : [],
  );
  const density = fan.density && inUnit(fan.density.value, "kg/m3");
  if (density === undefined || points.length !== fan.curve?.length)
    return { flow: undefined, gap: undefined };
  const found = crossing(points, (density / 2) * (speed / effective.value) ** 2);
  if (found.kind !== "found") return { flow: undefined, gap: found };
  const curve: Record<string, Operand> = {};
  for (const [index, point] of (fan.curve ?? []).entries()) {
    curve[`flow ${index + 1}`] = written(`flow of point ${index + 1}`, point.flow, "cfm");
    curve[`pressure ${index + 1}`] = written(`pressure of point ${index + 1}`, point.pressure, "Pa");
  }
  const flow = keep(
    derive({
      subject,
      quantity: "fan-flow",
      unit: "cfm",
      method: "where the fan's curve, straight between its points, meets the curve of the path",
      operands: {
        ...curve,
        "curve density": written("density of the fan's curve", fan.density, "kg/m3"),
        g: derived("effective area of the path", effective),
      },
      compute: () => found.flow,
      sources: fan.data ? [{ document: fan.data.value, standing: "record" }] : [],
      notes: [
        "The volume is the same at every density: fan and path change alike, at the same speed of the fan.",
      ],
    }),
  );
  return { flow, gap: undefined };
}

function faceVelocities(
  side: readonly ThroughOpening[],
  flow: Value | undefined,
  keep: Keep,
): FaceVelocity[] {
  const all = side.map(({ opening, effective }) => derived(`effective area of ${opening.id}`, effective));
  return side.map(({ opening, effective }) => {
    const isInch = opening.area?.unit === "in2";
    const face = isInch ? "A" : "(A / 645.16)";
    const common = {
      subject: { kind: "cutout", id: opening.id },
      quantity: "face-velocity",
      unit: "ft/min",
    } as const;
    const Q = derived("flow of the fan", flow);
    const A = derived("area of the opening", opening.area);
    const areaOf = (A: number) => (isInch ? A : A / 645.16);
    if (side.length === 1) {
      const velocity = keep(
        derive({
          ...common,
          formula: `144 * Q / ${face}`,
          operands: { Q, A },
          compute: (n) => (144 * n.Q) / areaOf(n.A),
        }),
      );
      return { opening, velocity };
    }
    const velocity = keep(
      derive({
        ...common,
        formula: `144 * Q * e / sum(g) / ${face}`,
        operands: { Q, e: derived("effective area of this opening", effective), g: all, A },
        compute: (n) => (144 * n.Q * n.e) / n.g.reduce((total, one) => total + one, 0) / areaOf(n.A),
      }),
    );
    return { opening, velocity };
  });
}
