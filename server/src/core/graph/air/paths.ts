/** Cooling air of one path: what its fan moves through its openings, and what is needed of it. */
import { heatOfAir } from "../../methods/air/atmosphere";
import { type Crossing, crossing } from "../../methods/air/fan-point";
import { leastWireReynolds, screenSources } from "../../methods/air/screens";
import { inUnit } from "../../quantities";
import type { AirPath, Component, Fan } from "../../records/types";
import type { Source } from "../../source";
import { covered } from "../../tables/lookup";
import type { CutoutResult, Distance } from "../openings";
import {
  derive,
  derived,
  type Keep,
  type Operand,
  type Subject,
  tabled,
  type Value,
  written,
} from "../value";
import { type ConditionAir, modeIn } from "./conditions";
import { meshWire, type ThroughOpening, throughOpening } from "./through-opening";

export interface PathParts {
  readonly path: AirPath;
  readonly id: string;
  readonly fan: Fan;
  readonly cooled: Component | undefined;
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
}

export type PathGap =
  | { readonly kind: "screen"; readonly cutout: string }
  | { readonly kind: "component" }
  | Exclude<Crossing, { kind: "found" }>;

/** A condition in which what is cooled runs. */
export interface PathCondition {
  readonly id: string;
  readonly isFanOn: boolean;
  /** lb/min */
  readonly delivered: Value | undefined;
  readonly needed: Value | undefined;
  /** What the kit's record lacks to say how much air is needed. */
  readonly lacks: "cooling" | "heat" | "rise" | undefined;
  readonly mode: string;
  /** Of the meshes whose loss rests on a formula for fast air. */
  readonly wires: readonly (Distance & { readonly cutout: string })[];
}

/** cfm over in2 as m/s: 0.3048^3 / 60 / 0.0254^2. */
const speed = 0.73152;
/** (kg/m3) cfm as lb/min: 0.3048^3 / 0.45359237. */
const massFlow = 0.3048 ** 3 / 0.45359237;
/** kg/s as lb/min. */
const poundsPerMinute = 60 / 0.45359237;

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

interface FaceVelocity {
  readonly opening: CutoutResult;
  /** ft/min */
  readonly velocity: Value | undefined;
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

function conditionOf(
  { fan, cooled }: PathParts,
  subject: Subject,
  { condition, id, density, viscosity }: ConditionAir,
  flow: Value | undefined,
  effective: Value | undefined,
  speeds: readonly FaceVelocity[],
  keep: Keep,
): PathCondition[] {
  const mode = modeIn(condition, cooled?.id?.value);
  if (!cooled || mode === undefined) return [];
  const isFanOn = modeIn(condition, fan.component?.value) !== undefined;
  const rho = derived("density of the outside air", density);
  const Q = derived("flow of the fan", flow);
  const delivered = isFanOn
    ? keep(
        derive({
          subject,
          quantity: "air-delivered",
          condition: id,
          unit: "lb/min",
          formula: "Q * rho * 0.3048^3 / 0.45359237",
          operands: { Q, rho },
          compute: (n) => n.Q * n.rho * massFlow,
        }),
      )
    : undefined;
  if (isFanOn) {
    keep(
      derive({
        subject,
        quantity: "path-pressure-loss",
        condition: id,
        unit: "Pa",
        formula: "rho / 2 * (0.73152 * Q / g)^2",
        operands: { rho, Q, g: derived("effective area of the path", effective) },
        compute: (n) => (n.rho / 2) * ((speed * n.Q) / n.g) ** 2,
      }),
    );
  }
  const wires = isFanOn ? speeds.flatMap((one) => wireSpeed(one, id, density, viscosity, keep)) : [];
  return [{ id, isFanOn, delivered, ...need(subject, cooled, mode, id, keep), mode, wires }];
}

function need(
  subject: Subject,
  cooled: Component,
  mode: string,
  condition: string,
  keep: Keep,
): Pick<PathCondition, "needed" | "lacks"> {
  const { cooling } = cooled;
  if (!cooling) return { needed: undefined, lacks: "cooling" };
  const sources: Source[] = cooling.data ? [{ document: cooling.data.value, standing: "record" }] : [];
  if (cooling.air) {
    const needed = keep(
      derive({
        subject,
        quantity: "air-needed",
        condition,
        unit: "lb/min",
        formula: "m",
        operands: { m: written("cooling air needed", cooling.air, "lb/min") },
        compute: ({ m }) => m,
        sources,
      }),
    );
    return { needed, lacks: undefined };
  }
  const heat = cooled.draws?.find((draw) => draw.mode?.value === mode)?.heat;
  const lacks = !cooling.rise ? "rise" : !heat ? "heat" : undefined;
  const needed = keep(
    derive({
      subject,
      quantity: "air-needed",
      condition,
      unit: "lb/min",
      formula: `60 / 0.45359237 * q / (${heatOfAir} * dT)`,
      operands: {
        q: written("heat to the cooling air", heat, "W"),
        dT: written("rise that is allowed", cooling.rise, "K"),
      },
      compute: ({ q, dT }) => (poundsPerMinute * q) / (heatOfAir * dT),
      sources: [...sources, { document: "Heat balance of the air", standing: "derived" }],
    }),
  );
  return { needed, lacks };
}

function wireSpeed(
  { opening, velocity }: FaceVelocity,
  condition: string,
  density: Value | undefined,
  viscosity: number | undefined,
  keep: Keep,
): PathCondition["wires"] {
  const wire = meshWire(opening);
  if (wire === undefined || viscosity === undefined) return [];
  const subject: Subject = { kind: "cutout", id: opening.id };
  const value = keep(
    derive({
      subject,
      quantity: "wire-reynolds",
      condition,
      unit: "1",
      method: "Reynolds number of a mesh's wires in the air ahead of it",
      operands: {
        rho: derived("density of the outside air", density),
        V: derived("velocity ahead of the mesh", velocity),
        d: written("diameter of the wires", opening.cutout.screen?.wire, "mm"),
      },
      compute: ({ rho, V }) => (rho * ((V * 0.3048) / 60) * wire) / viscosity,
    }),
  );
  const least = keep(
    derive({
      subject,
      quantity: "least-wire-reynolds",
      condition,
      unit: "1",
      formula: "r",
      operands: {
        r: tabled("where the formula ends", covered(leastWireReynolds, screenSources.mesh), "1", []),
      },
      compute: ({ r }) => r,
      sources: [screenSources.mesh],
    }),
  );
  return [{ cutout: opening.id, value, least }];
}
