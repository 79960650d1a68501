/**
 * What the sources give and what is asked of them: the load analysis and what follows from it.
 */
import { derive, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import { deriveRecharging, type EnduranceResult, enduranceOf } from "./battery";
import { deriveFeeders, type FeederResult } from "./feeders";
import { deriveInrushes, type Inrush } from "./inrush";
import { type LeastSpeed, leastSpeedOf } from "./least-speed";
import { analyseLoads, type LoadAnalysis } from "./load-analysis";
import type { LoadCurrents } from "./load-currents";
import { deriveShedding, type SheddingStep } from "./shedding";
import { balanceOf, type SourceBalance } from "./source-balance";
import { type BusDemand, deriveBusDemands, deriveSourceLoads, type SourceLoad } from "./source-loads";
import type { UnknownOutput } from "./source-outputs";

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

/** The load analysis of a project, once its network is solved. */
export function deriveSources(basis: ElectricalBasis, currents: LoadCurrents): Sources {
  const { outputs } = basis;
  const hasSources = outputs.sources.length > 0;
  const balances = hasSources
    ? basis.conditions.map((condition) => balanceOf(condition, basis, currents, outputs))
    : [];
  deriveRecharging(basis, balances, outputs);
  return {
    balances,
    analysis: analyseLoads(balances),
    sourceLoads: deriveSourceLoads(basis, outputs),
    busDemands: deriveBusDemands(basis, balances),
    endurance: enduranceOf(basis, balances, outputs),
    shedding: deriveShedding(basis, balances),
    leastSpeeds: balances.flatMap((balance) => leastSpeedOf(balance, basis, outputs)),
    feeders: deriveFeeders(basis, outputs),
    inrushes: deriveInrushes(basis, balances, outputs),
    unknown: outputs.unknown,
    leastVoltages: leastVoltages(basis),
  };
}

function leastVoltages(basis: ElectricalBasis): Map<string, Value> {
  const least = new Map<string, Value>();
  for (const { id, component } of basis.circuit.paths) {
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
