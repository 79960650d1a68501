/**
 * Loads of constant power: the highest voltages at which every load gets what it asks for.
 *
 * Two steps, from voltages that are not below the answer:
 * - fixed point: each load draws its power over its last voltage, a constant current. Never falls below the
 *   answer, and moves the sources on the way, but is slow near the collapse point;
 * - Newton: each load draws along its tangent, I(V) = 2 P / V₀ − (P / V₀²) V: a negative conductance in the same
 *   matrix. Fast up to the collapse point, but blind to a source that begins to help.
 * A Newton step is taken when the matrix is positive definite and no source has to move; otherwise one of the
 * fixed point.
 *
 * Why collapse is found, not guessed at from slow convergence: P / V is convex, so that a Newton step from
 * above stays above. At the highest answer the matrix is at least semidefinite; at higher voltages, and with
 * idle sources counted as holding, it is more so. Where even that matrix is not definite, there is no answer.
 * The argument is strict where a current drawn at one load raises no other load's voltage, which holds for
 * returns to ground and fails only in bridge-like circuits. Beside an idle source, and within some 1e-5 of the
 * collapse point, the fixed point may run out of steps: then the answer is that it did not converge.
 *
 * Source: derived; monotone Newton iteration as in Ortega and Rheinboldt, Iterative Solution of Nonlinear
 * Equations in Several Variables, 13.3 (from memory).
 */
import type { Circuit } from "./circuit";
import { isExhausted } from "./ties";

export type Carried =
  | { readonly kind: "carried" }
  | { readonly kind: "voltage-collapse"; readonly load: number; readonly ratio: number }
  | { readonly kind: "overloaded"; readonly sources: readonly number[] }
  | { readonly kind: "unsettled" };

/**
 * Leaves in the circuit the voltages at which all loads draw what they ask for.
 *
 * @param warm start from the voltages that are there: for a circuit that changed a little
 */
export function carry(circuit: Circuit, warm: boolean): Carried {
  if (!warm) return carryCold(circuit);
  const carried = circuit.power.length > 0 ? iterate(circuit) : settleLoads(circuit);
  // From voltages that may lie below the answer, failure proves nothing.
  return carried.kind === "carried" ? carried : carryCold(circuit);
}

function carryCold(circuit: Circuit): Carried {
  circuit.restart();
  for (const load of circuit.drawing) circuit.draw(load, circuit.amps[load]!);
  const settled = settleLoads(circuit);
  return settled.kind === "carried" && circuit.power.length > 0 ? iterate(circuit) : settled;
}

/** Voltages for the currents that the loads draw now; refused when one of them would have none left. */
function settleLoads(circuit: Circuit): Carried {
  const settled = circuit.settle();
  if (settled === "unsettled") return { kind: "unsettled" };
  return settled !== "held" || starves(circuit) ? refusal(circuit) : { kind: "carried" };
}

function iterate(circuit: Circuit): Carried {
  let last = Number.POSITIVE_INFINITY;
  for (let step = 0; step < mostSteps; step++) {
    const before = circuit.power.map((load) => circuit.voltsAlong(load));
    const taken = newton(circuit, before);
    if (taken !== "taken") {
      const hopeless = taken === "impossible" && !couldBeHelped(circuit, before);
      drawConstant(circuit, before);
      const settled = settleLoads(circuit);
      if (settled.kind !== "carried") return settled;
      if (hopeless) return refusal(circuit);
    }
    const change = largestChange(circuit, before);
    if (isSettled(change, taken === "taken" ? last : undefined)) {
      return starves(circuit) ? refusal(circuit) : { kind: "carried" };
    }
    last = taken === "taken" ? change : Number.POSITIVE_INFINITY;
  }
  return { kind: "unsettled" };
}

/** `moved`: a source has to change its position. `impossible`: with these positions there is no answer. */
function newton(circuit: Circuit, before: readonly number[]): "taken" | "moved" | "impossible" {
  drawTangents(circuit, before);
  if (circuit.nodal.solve(circuit.ties, circuit.positions) !== "held") return "impossible";
  if (circuit.power.some((load) => !(circuit.voltsAlong(load) > 0))) return "impossible";
  return circuit.steps().some((step) => step !== 0) ? "moved" : "taken";
}

/** Whether the tangents would be held if every source that can still step in did. */
function couldBeHelped(circuit: Circuit, before: readonly number[]): boolean {
  const { ties, positions, nodal } = circuit;
  const helping = positions.map((position, index) =>
    position % 2 === 0 && position < ties[index]!.lastPosition ? position + 1 : position,
  );
  if (helping.every((position, index) => position === positions[index])) return false;
  drawTangents(circuit, before);
  return nodal.solve(ties, helping) === "held";
}

function drawTangents(circuit: Circuit, before: readonly number[]): void {
  circuit.power.forEach((load, index) => {
    const amps = circuit.watts[load]! / before[index]!;
    circuit.draw(load, 2 * amps, -amps / before[index]!);
  });
}

function drawConstant(circuit: Circuit, before: readonly number[]): void {
  circuit.power.forEach((load, index) => {
    circuit.draw(load, circuit.watts[load]! / before[index]!);
  });
}

const starves = (circuit: Circuit): boolean =>
  circuit.drawing.some((load) => !(circuit.voltsAlong(load) > 0));

function largestChange(circuit: Circuit, before: readonly number[]): number {
  let largest = 0;
  circuit.power.forEach((load, index) => {
    largest = Math.max(largest, Math.abs(circuit.voltsAlong(load) / before[index]! - 1));
  });
  return largest;
}

/** Why the currents that the circuit's loads now ask for can't be had. */
function refusal(circuit: Circuit): Carried {
  const { drawing, ties, reach } = circuit;
  if (drawing.length === 0) return { kind: "unsettled" };
  const asked = drawing.map((load) => circuit.voltsAlong(load));
  const positions = circuit.positions.slice();
  for (const load of drawing) circuit.draw(load, 0);
  circuit.restart();
  if (circuit.settle() === "unsettled") return { kind: "unsettled" };
  const ratios = drawing.map((load, index) => {
    const open = circuit.voltsAlong(load);
    return open > 0 && asked[index]! > 0 ? asked[index]! / open : 0;
  });
  const ratio = ratios.reduce((least, one) => Math.min(least, one));
  const worst = drawing[ratios.indexOf(ratio)]!;

  const part = circuit.partOf(worst);
  const feeding = ties.flatMap((tie, index) => (reach.part[tie.at] === part ? [{ tie, index }] : []));
  if (feeding.every(({ tie, index }) => isExhausted(tie, positions[index]!))) {
    const sources = feeding.flatMap(({ tie }) => tie.levels.flatMap((level) => level.sources));
    return { kind: "overloaded", sources: sources.map(({ index }) => index).sort((a, b) => a - b) };
  }
  return { kind: "voltage-collapse", load: worst, ratio };
}

const mostSteps = 200;

/** Relative change of a voltage at which it counts as found. */
const settledChange = 1e-12;
/** Close to collapse rounding keeps the change above that: enough when it is this small and falls no more. */
const noisyChange = 1e-6;

/** @param last the change of the Newton step before, for a Newton step */
function isSettled(change: number, last: number | undefined): boolean {
  if (change <= settledChange) return true;
  if (last === undefined || last === Number.POSITIVE_INFINITY) return false;
  // Each change is in proportion to the square of the one before.
  const next = (change / last) ** 2 * change;
  return next <= settledChange || (change <= noisyChange && change >= last);
}
