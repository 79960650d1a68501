/** Cooling air of one path in a condition: what its fan delivers, what is needed of it, and what meshes see. */
import { heatOfAir } from "../../methods/air/atmosphere";
import { leastWireReynolds, screenSources } from "../../methods/air/screens";
import type { Component } from "../../records/types";
import type { Source } from "../../source";
import { covered } from "../../tables/lookup";
import type { CutoutResult, Distance } from "../openings";
import { derive, derived, type Keep, type Subject, tabled, type Value, written } from "../value";
import { type ConditionAir, modeIn } from "./conditions";
import type { PathParts } from "./paths";
import { meshWire } from "./through-opening";

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

export interface FaceVelocity {
  readonly opening: CutoutResult;
  /** ft/min */
  readonly velocity: Value | undefined;
}

/** cfm over in2 as m/s: 0.3048^3 / 60 / 0.0254^2. */
export const speed = 0.73152;
/** (kg/m3) cfm as lb/min: 0.3048^3 / 0.45359237. */
const massFlow = 0.3048 ** 3 / 0.45359237;
/** kg/s as lb/min. */
const poundsPerMinute = 60 / 0.45359237;

export function conditionOf(
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
