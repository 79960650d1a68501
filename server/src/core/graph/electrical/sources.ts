/**
 * What the sources give and what is asked of them: the load analysis and what follows from it.
 */
import type { Project } from "../../project";
import { type Part, together } from "../part";
import { recalled } from "../recall";
import { derive, type Value, written } from "../value";
import { type ElectricalBasis, electricalPart, outputsOf } from "./basis";
import { deriveRecharging, type EnduranceResult, enduranceOf } from "./battery";
import { deriveFeeders, type FeederResult } from "./feeders";
import { deriveInrushes, type Inrush } from "./inrush";
import { type LeastSpeed, leastSpeedOf } from "./least-speed";
import { analyseLoads, type LoadAnalysis } from "./load-analysis";
import { currentsOf } from "./parts";
import { deriveShedding, type SheddingStep } from "./shedding";
import { balanceOf, type SourceBalance } from "./source-balance";
import { type BusDemand, deriveBusDemands, deriveSourceLoads, type SourceLoad } from "./source-loads";
import type { SourceOutputs, UnknownOutput } from "./source-outputs";

/** All lists but the last are empty where the airframe records no sources. */
export interface Sources {
  /** The load analysis, a row for each condition. */
  readonly balances: readonly SourceBalance[];
  /** The same as the table that a worksheet prints. */
  readonly analysis: LoadAnalysis;
  /** Each source that runs, in each condition. */
  readonly sourceLoads: readonly SourceLoad[];
  /** Empty where there is one bus only. */
  readonly busDemands: readonly BusDemand[];
  readonly endurance: EnduranceResult | undefined;
  /** Existing loads in the order in which they are shed. */
  readonly shedding: readonly SheddingStep[];
  readonly leastSpeeds: readonly LeastSpeed[];
  readonly feeders: readonly FeederResult[];
  readonly inrushes: readonly Inrush[];
  /** Conditions in which an alternator's output could not be had, and why. */
  readonly unknown: readonly UnknownOutput[];
  /** Lowest voltage at which a component works, by its id. */
  readonly leastVoltages: ReadonlyMap<string, Value>;
}

const balancesOf = electricalPart((basis): SourceBalance[] => {
  const { outputs, conditions, project } = basis;
  return outputs.sources.length > 0
    ? conditions.map((condition) => balanceOf(condition, basis, currentsOf(project), outputs))
    : [];
});
const analysisOf = recalled((project) => analyseLoads(balancesOf(project)));
const rechargingOf = balanced(deriveRecharging);
const sourceLoadsOf = electricalPart((basis) => deriveSourceLoads(basis, basis.outputs));
const busDemandsOf = balanced(deriveBusDemands);
const enduranceResultOf = balanced(enduranceOf);
const sheddingOf = balanced(deriveShedding);
const leastSpeedsOf = balanced((basis, balances, outputs) =>
  balances.flatMap((balance) => leastSpeedOf(balance, basis, outputs)),
);
const feedersOf = electricalPart((basis) => deriveFeeders(basis, basis.outputs));
const inrushesOf = balanced(deriveInrushes);
const leastVoltagesOf = electricalPart(leastVoltages);

/** What follows from the load analysis. */
function balanced<R>(
  derive: (basis: ElectricalBasis, balances: readonly SourceBalance[], outputs: SourceOutputs) => R,
): Part<R> {
  return electricalPart((basis) => derive(basis, balancesOf(basis.project), basis.outputs));
}

/** In the order in which a worksheet shows their values. */
export const sourceParts = [
  balancesOf,
  rechargingOf,
  sourceLoadsOf,
  busDemandsOf,
  enduranceResultOf,
  sheddingOf,
  leastSpeedsOf,
  feedersOf,
  inrushesOf,
  leastVoltagesOf,
] as const;

/** The load analysis of a project, once its network is solved. */
export const sourcesOf: (project: Project) => Sources = together({
  balances: balancesOf,
  analysis: analysisOf,
  sourceLoads: sourceLoadsOf,
  busDemands: busDemandsOf,
  endurance: enduranceResultOf,
  shedding: sheddingOf,
  leastSpeeds: leastSpeedsOf,
  feeders: feedersOf,
  inrushes: inrushesOf,
  unknown: (project) => outputsOf(project).unknown,
  leastVoltages: leastVoltagesOf,
});

function leastVoltages(basis: ElectricalBasis): Map<string, Value> {
  const least = new Map<string, Value>();
  for (const { id, component } of basis.fed) {
    const value = basis.keep(
      derive({
        subject: { kind: "component", id },
        quantity: "least-voltage",
        unit: "V",
        formula: "V",
        operands: { V: written("lowest voltage at which it works", component.leastVoltage, "V") },
        compute: ({ V }) => V,
      }),
    );
    if (value) least.set(id, value);
  }
  return least;
}
