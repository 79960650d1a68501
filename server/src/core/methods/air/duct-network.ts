/**
 * Flow in a tree of ducts, from one supply to any number of outlets. SI units.
 *
 * Pressures are total pressures against the room that the outlets blow into. With friction factors held, every
 * part loses in proportion to the square of its flow, so the whole tree has one resistance in closed form and
 * the flows follow from the top down; the factors are then taken at those flows, until nothing changes.
 */
import { crossing, type FanPoint } from "./fan-point";
import { frictionFactor } from "./friction";

export interface DuctSegment {
  /** Index of the segment that feeds it; undefined for the supply. */
  readonly after: number | undefined;
  /** m */
  readonly length: number;
  /** Hydraulic diameter, m */
  readonly diameter: number;
  /** m2 */
  readonly area: number;
  /** m */
  readonly roughness: number;
  /** Sum of the loss coefficients of its fittings, on its own velocity. */
  readonly losses: number;
}

export interface DuctOutlet {
  /** Index of the segment that it ends. */
  readonly on: number;
  /** m2 */
  readonly area: number;
  /** On the velocity in that area; above zero. */
  readonly loss: number;
}

export type DuctSupply =
  | { readonly kind: "flow"; readonly flow: number }
  | { readonly kind: "pressure"; readonly pressure: number }
  | { readonly kind: "fan"; readonly curve: readonly FanPoint[] };

export interface DuctNetwork {
  readonly segments: readonly DuctSegment[];
  readonly outlets: readonly DuctOutlet[];
  readonly supply: DuctSupply;
  /** kg/m3 */
  readonly density: number;
  /** Pa s */
  readonly viscosity: number;
}

export interface DuctSolution {
  readonly kind: "solved";
  /** Flow of the supply, m3/s, and its total pressure, Pa. */
  readonly flow: number;
  readonly pressure: number;
  /** Of each segment: m3/s, friction factor (0 without flow), pressure lost in it (Pa). */
  readonly segments: readonly { readonly flow: number; readonly factor: number; readonly loss: number }[];
  /** Of each outlet, m3/s. */
  readonly outlets: readonly number[];
}

export type DuctProblem =
  | { readonly kind: "no-such-segment" }
  | { readonly kind: "loop"; readonly segment: number }
  | { readonly kind: "no-way-out" }
  | { readonly kind: "no-resistance"; readonly outlet: number }
  | { readonly kind: "outside-curve"; readonly side: "before-curve" | "beyond-curve" }
  | { readonly kind: "curve-not-falling"; readonly index: number }
  | { readonly kind: "not-converged" };

const mostRounds = 300;
const tolerance = 1e-13;

/** Solves a network; bad input and what does not settle are told as values. */
export function solveDuct(network: DuctNetwork): DuctSolution | DuctProblem {
  const { segments, outlets, supply, density } = network;
  const isThere = (index: number | undefined) => index === undefined || segments[index] !== undefined;
  if (!segments.every(({ after }) => isThere(after)) || !outlets.every(({ on }) => isThere(on))) {
    return { kind: "no-such-segment" };
  }
  const order = topDown(segments);
  if (!Array.isArray(order)) return order;
  const open = outlets.findIndex(({ loss }) => !(loss > 0));
  if (open >= 0) return { kind: "no-resistance", outlet: open };
  const outletConductance = outlets.map(({ area, loss }) => area * Math.sqrt(2 / (density * loss)));
  let factors: readonly number[] = segments.map(() => 0.02);
  for (let round = 0; round < mostRounds; round++) {
    const tree = conductances(network, order, factors, outletConductance);
    if (!(tree.whole > 0)) return { kind: "no-way-out" };
    const fed = feed(supply, tree.whole);
    if ("kind" in fed) return fed;
    const flows = flowsOf(network, order, tree, fed.flow);
    const next = flows.map((flow, index) => factorAt(network, segments[index]!, flow));
    const isSettled = next.every(
      (factor, index) => Math.abs(factor - factors[index]!) <= tolerance * factor || factor === 0,
    );
    if (isSettled) return solution(network, tree, fed, flows, next, outletConductance);
    // Half way, in logarithms: where flow turns turbulent the factor rises faster than the flow that it holds back.
    factors = next.map((factor, index) =>
      factor > 0 ? Math.sqrt(factor * factors[index]!) : factors[index]!,
    );
  }
  return { kind: "not-converged" };
}

/** Segments so that each comes after the one that feeds it. */
function topDown(segments: readonly DuctSegment[]): number[] | DuctProblem {
  const order: number[] = [];
  const placed = new Set<number>();
  for (const start of segments.keys()) {
    const line: number[] = [];
    for (let at: number | undefined = start; at !== undefined && !placed.has(at); at = segments[at]?.after) {
      if (line.includes(at)) return { kind: "loop", segment: at };
      line.push(at);
    }
    for (const one of line.reverse()) {
      placed.add(one);
      order.push(one);
    }
  }
  return order;
}

interface Tree {
  /** Flow over the square root of pressure: of each segment with all behind it, and of what is behind it alone. */
  readonly through: readonly number[];
  readonly behind: readonly number[];
  readonly whole: number;
}

function conductances(
  { segments, outlets, density }: DuctNetwork,
  order: readonly number[],
  factors: readonly number[],
  outletConductance: readonly number[],
): Tree {
  const behind = segments.map(() => 0);
  for (const [index, { on }] of outlets.entries()) behind[on]! += outletConductance[index]!;
  const through = segments.map(() => 0);
  let whole = 0;
  for (const index of order.toReversed()) {
    const segment = segments[index]!;
    const open = behind[index]!;
    if (open > 0)
      through[index] = 1 / Math.sqrt(resistance(segment, factors[index]!, density) + 1 / open ** 2);
    if (segment.after === undefined) whole += through[index]!;
    else behind[segment.after]! += through[index]!;
  }
  return { through, behind, whole };
}

/** Pressure over the square of flow. */
function resistance(
  { length, diameter, area, losses }: DuctSegment,
  factor: number,
  density: number,
): number {
  return ((factor * length) / diameter + losses) * (density / 2 / area ** 2);
}

function feed(
  supply: DuctSupply,
  conductance: number,
): { readonly flow: number; readonly pressure: number } | DuctProblem {
  switch (supply.kind) {
    case "flow":
      return { flow: supply.flow, pressure: (supply.flow / conductance) ** 2 };
    case "pressure":
      return { flow: conductance * Math.sqrt(supply.pressure), pressure: supply.pressure };
    case "fan": {
      const found = crossing(supply.curve, 1 / conductance ** 2);
      if (found.kind === "found") return { flow: found.flow, pressure: found.pressure };
      if (found.kind === "not-falling") return { kind: "curve-not-falling", index: found.index };
      return { kind: "outside-curve", side: found.kind };
    }
  }
}

function flowsOf(
  { segments }: DuctNetwork,
  order: readonly number[],
  { through, behind, whole }: Tree,
  flow: number,
): number[] {
  const flows = segments.map(() => 0);
  for (const index of order) {
    const { after } = segments[index]!;
    const [all, above] = after === undefined ? [whole, flow] : [behind[after]!, flows[after]!];
    flows[index] = all > 0 ? (above * through[index]!) / all : 0;
  }
  return flows;
}

function factorAt({ density, viscosity }: DuctNetwork, segment: DuctSegment, flow: number): number {
  const reynolds = (density * (flow / segment.area) * segment.diameter) / viscosity;
  return reynolds > 0 ? frictionFactor(reynolds, segment.roughness / segment.diameter) : 0;
}

function solution(
  { segments, outlets, density }: DuctNetwork,
  { behind }: Tree,
  fed: { readonly flow: number; readonly pressure: number },
  flows: readonly number[],
  factors: readonly number[],
  outletConductance: readonly number[],
): DuctSolution {
  return {
    kind: "solved",
    ...fed,
    segments: segments.map((segment, index) => ({
      flow: flows[index]!,
      factor: factors[index]!,
      loss: resistance(segment, factors[index]!, density) * flows[index]! ** 2,
    })),
    outlets: outlets.map(({ on }, index) => (flows[on]! * outletConductance[index]!) / behind[on]!),
  };
}
