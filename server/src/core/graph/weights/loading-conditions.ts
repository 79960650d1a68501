/**
 * The loading conditions that AC 43.13-1B par. 10-18 asks to be worked out (full fuel, most passengers, most
 * baggage), of the aircraft after the change: what comes first is loaded first, and the rest takes what is left
 * below the maximum weight. A zero-fuel limit is no part of these conditions; `permitted-loadings` keeps it.
 */
import type { LimitSide } from "../../methods/envelope";
import {
  type LoadingCondition as LoadingConditionSheet,
  type LoadingStep,
  loadingCondition,
  loadingConditionSource,
} from "../../methods/loading-condition";
import type { Project } from "../../project";
import { convert } from "../../quantities";
import { isBelow } from "../../rounding";
import { standardWeights } from "../../tables/standard-weights";
import type { QuantityName } from "../quantity-names";
import { assumed, derive, derived, type Keep, type Value, type ValueUnit, written } from "../value";
import { type CheckCase, type CheckItem, deriveCheckCase, usedStations } from "./adverse-sheets";
import type { BalanceUnits } from "./balance-units";
import { limitPointsOf } from "./limit-points";
import { excessAt } from "./permitted-loadings";
import type { StationLimit } from "./station-limits";
import type { WeightChange } from "./weight-change";

export type ConditionName = "full fuel" | "most passengers" | "most baggage";

/** Those of one envelope. */
export interface LoadingConditions {
  readonly envelope: string;
  /** What is on board in any case: the empty aircraft, the crew, and oil where the empty weight leaves it out. */
  readonly always: readonly { readonly id: string; readonly weight: number; readonly arm: number }[];
  readonly conditions: readonly LoadingCondition[];
}

export interface LoadingCondition {
  readonly name: ConditionName;
  readonly sheet: LoadingConditionSheet;
  readonly weight: Value | undefined;
  readonly cg: Value | undefined;
  readonly limits: readonly { readonly side: LimitSide; readonly limit: Value }[];
  /** Too heavy where what is always on board is heavier than the maximum weight already. */
  readonly verdict: "within" | "beyond-forward" | "beyond-aft" | "above-maximum-weight" | "limit-not-given";
}

type Group = "fuel" | "passengers" | "baggage";

const orders: Readonly<Record<ConditionName, readonly Group[]>> = {
  "full fuel": ["fuel", "passengers", "baggage"],
  "most passengers": ["passengers", "fuel", "baggage"],
  "most baggage": ["baggage", "fuel", "passengers"],
};

/**
 * For each envelope, the crew in the foremost of its seats; none while the record does not say the crew, the
 * maximum weight or what a station may carry, or the change is not known. Pure; values go to `keep`.
 */
export function deriveLoadingConditions(
  project: Project,
  units: BalanceUnits,
  change: WeightChange,
  stations: ReadonlyMap<string, StationLimit>,
  keep: Keep,
): LoadingConditions[] {
  const used = usedStations(stations);
  const person = convert(standardWeights.person.value, "lb", units.weight, "mass");
  const operands = {
    W_e: derived("empty weight", change.emptyWeight),
    x_e: derived("empty CG", change.emptyCg),
    W_max: written("maximum take-off weight", project.airframe?.limits?.takeoff, units.weight),
    p: assumed("weight of one passenger", person, units.weight, "A standard for computing."),
    most: used.map(({ id, after }) => derived(`most at ${id}`, after)),
    x: used.map(({ id, station }) => written(`arm of ${id}`, station.arm, units.arm)),
  };
  return (project.airframe?.envelopes ?? []).flatMap((envelope): LoadingConditions[] => {
    const id = envelope.id?.value;
    const aircraft = deriveCheckCase(project, units, change, used, envelope, "forward");
    if (id === undefined || !aircraft) return [];
    const always = alwaysAboard(aircraft);
    const steps = stepsOf(aircraft, person);
    const conditionOf = (name: ConditionName): LoadingCondition => {
      const inOrder = orders[name].flatMap((group) => steps[group]);
      const sheet = loadingCondition(always, inOrder, aircraft.maximumWeight);
      const { weight, arm } = sheet.total;
      const value = (quantity: QuantityName, what: string, unit: ValueUnit, number: number | undefined) =>
        keep(
          derive({
            subject: { kind: "envelope", id },
            condition: name,
            quantity,
            unit,
            method: `${what}, loaded line by line on the sheet of the condition: ${orders[name].join(", then ")}`,
            operands,
            compute: () => number ?? Number.NaN,
            sources: [loadingConditionSource, standardWeights.person.source],
          }),
        );
      const excess = (side: LimitSide) => {
        const given = limitPointsOf(envelope, side, units);
        return given && arm !== undefined ? excessAt(given.points, side, weight, arm) : undefined;
      };
      const forward = excess("forward");
      const aft = excess("aft");
      const limits = [
        { side: "forward", at: arm !== undefined && forward !== undefined ? arm + forward : undefined },
        { side: "aft", at: arm !== undefined && aft !== undefined ? arm - aft : undefined },
      ] as const;
      const isBeyond = (beyond: number | undefined) => isBelow(0, beyond ?? 0, Math.abs(arm ?? 0));
      return {
        name,
        sheet,
        weight: value("loading-condition-weight", "weight", units.weight, weight),
        cg: value("loading-condition-cg", "CG", units.arm, arm),
        limits: limits.flatMap(({ side, at }) => {
          const what = `${side} limit at the weight`;
          const limit = value(`loading-condition-${side}-limit`, what, units.arm, at);
          return limit ? [{ side, limit }] : [];
        }),
        verdict: isBelow(aircraft.maximumWeight, weight)
          ? "above-maximum-weight"
          : isBeyond(forward)
            ? "beyond-forward"
            : isBeyond(aft)
              ? "beyond-aft"
              : forward === undefined || aft === undefined
                ? "limit-not-given"
                : "within",
      };
    };
    return [{ envelope: id, always, conditions: (Object.keys(orders) as ConditionName[]).map(conditionOf) }];
  });
}

function alwaysAboard({ empty, pilot, oil }: CheckCase): LoadingConditions["always"] {
  return [
    { id: "empty, after", ...empty },
    { id: pilot.id, weight: pilot.weight, arm: pilot.arms[0] },
    ...(oil ? [oil] : []),
  ];
}

/** Each group in the order of the record; persons are whole where seats are counted. */
function stepsOf(
  { items, tanks }: CheckCase,
  person: number,
): Readonly<Record<Group, readonly LoadingStep[]>> {
  const passengers = (item: CheckItem): LoadingStep => ({
    ...item,
    ...(item.seats !== undefined && { most: Math.min(item.most, item.seats * person), each: person }),
  });
  const steps: Readonly<Record<Group, readonly LoadingStep[]>> = {
    fuel: tanks.map(({ id, arm, capacity }) => ({ id, arm, most: capacity })),
    passengers: items.filter(({ kind }) => kind === "seat").map(passengers),
    baggage: items.filter(({ kind }) => kind !== "seat"),
  };
  // A seat that the crew fills has nothing left to load.
  return { ...steps, passengers: steps.passengers.filter(({ most }) => most > 0) };
}
