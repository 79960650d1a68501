import type { Bus, Condition, Source } from "../../records/types";
import { sameWithinRounding } from "../../rounding";
import { derive, derived, known, type Operand, sumOf, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { SourceBalance } from "./source-balance";
import type { SourceOutputs } from "./source-outputs";

/** One source in a condition in which it runs. */
export interface SourceLoad {
  readonly source: Source;
  readonly condition: Condition;
  /** Undefined where the network has no solution, or leaves open how sources of one voltage share. */
  readonly current: Value | undefined;
  /** Share of what it can give that is left, in per cent; undefined where that is not recorded. */
  readonly margin: Value | undefined;
  /** Whether it gives all that it can, and no longer holds its voltage. */
  readonly isAtLimit: boolean;
}

/** What one bus has to feed in a condition. */
export interface BusDemand {
  readonly bus: Bus;
  readonly condition: Condition;
  /** Of the loads that it alone feeds, of which there is one at least; undefined while one of them is not known. */
  readonly demand: Value | undefined;
}

/** What each source gives, by the solution of the whole network. */
export function deriveSourceLoads(basis: ElectricalBasis, outputs: SourceOutputs): SourceLoad[] {
  return basis.conditions.flatMap((condition) =>
    outputs.running(condition).map((source) => sourceLoad(source, condition, basis, outputs)),
  );
}

function sourceLoad(
  source: Source,
  condition: Condition,
  basis: ElectricalBasis,
  outputs: SourceOutputs,
): SourceLoad {
  const id = source.id!.value;
  const state = basis.states.get(condition);
  const about = { subject: { kind: "source", id }, condition: condition.id?.value } as const;
  const current = basis.keep(
    known(state?.sourceCurrent(id), "A", () => ({
      ...about,
      quantity: "source-current",
      method: "solution of the whole network",
      operands: {
        V: written(`voltage of ${id}`, source.voltage, "V"),
        R: written(`resistance of ${id}`, source.resistance, "ohm"),
      },
    })),
  );
  const isAlternator = source.kind?.value === "alternator";
  const output = isAlternator ? outputs.outputOf(source, condition) : undefined;
  // The rated output of an alternator is the most that an unknown one can be, and no measure of what is left.
  const most: Operand = isAlternator
    ? derived(`output of ${id}`, output)
    : written(`rating of ${id}`, source.rating, "A");
  const margin = basis.keep(
    derive({
      ...about,
      quantity: "source-current-margin",
      unit: "%",
      formula: "(I_most - I) / I_most * 100",
      operands: { I_most: most, I: derived("current that it gives", current) },
      // At its limit it gives just that, but for the noise of the solution.
      compute: ({ I_most, I }) => (sameWithinRounding(I, I_most) ? 0 : ((I_most - I) / I_most) * 100),
    }),
  );
  const solved = state?.answer.kind === "solved" ? state.answer : undefined;
  const isAtLimit = solved?.sourceStates[basis.network.sources.indexOf(id)] === "at-limit";
  return { source, condition, current, margin, isAtLimit };
}

/** What each bus feeds, where the aircraft has several: a load that several feed is counted for none of them. */
export function deriveBusDemands(basis: ElectricalBasis, balances: readonly SourceBalance[]): BusDemand[] {
  const buses = basis.project.airframe?.electrical?.buses ?? [];
  if (buses.length < 2) return [];
  return balances.flatMap(({ condition, loads }) =>
    buses.flatMap((bus): BusDemand[] => {
      if (!bus.id) return [];
      const id = bus.id.value;
      const own = loads.filter((load) => load.buses.length === 1 && load.buses[0] === id);
      if (own.length === 0) return [];
      const shared = loads.filter((load) => load.buses.length > 1 && load.buses.includes(id));
      const demand = derive({
        subject: { kind: "bus", id },
        quantity: "bus-demand",
        condition: condition.id?.value,
        unit: "A",
        formula: "sum(I)",
        operands: { I: own.map((load) => derived(`current of ${load.id}`, load.current)) },
        compute: ({ I }) => sumOf(I),
        notes: shared.map((load) => `${load.id}, which other buses feed too, is not counted.`),
      });
      return [{ bus, condition, demand: basis.keep(demand) }];
    }),
  );
}
