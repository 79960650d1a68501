import { eightyPercentRule, type SourceLoadCase, sourceMethods } from "../../methods/sources";
import type { Condition, ExistingLoad, Source } from "../../records/types";
import { isBelow } from "../../rounding";
import { derive, derived, type Operand, sumOf, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { LoadCurrents } from "./load-currents";
import { drawIn, existingCurrent, runOf } from "./running";
import type { SourceOutputs } from "./source-outputs";

/** What is asked of the sources in one condition, and what they give. */
export interface SourceBalance {
  readonly condition: Condition;
  readonly loads: readonly BalancedLoad[];
  /** Mean current of all loads; undefined while one of them is not known. */
  readonly demand: Value | undefined;
  /** What alternators and ground power can give; undefined where none of them runs. */
  readonly capacity: Value | undefined;
  /** False where an alternator's rated output stands in for its output: the capacity is then at most that. */
  readonly isCapacityKnown: boolean;
  /** Share of the capacity that the loads leave, in per cent. */
  readonly margin: Value | undefined;
  /** What the battery has to give: all, or what is asked beyond the capacity; undefined where nothing is. */
  readonly batteryCurrent: Value | undefined;
  /** Comparisons with the share of the rating that a continuous load may take. */
  readonly shares: readonly SourceShare[];
}

/** One load of a condition; `current` is a mean for one that cycles. */
export interface BalancedLoad {
  readonly kind: "component" | "existing-load";
  readonly id: string;
  readonly buses: readonly string[];
  readonly current: Value | undefined;
  /** What an existing load is for; left out where it draws nothing. */
  readonly use?: NonNullable<ExistingLoad["use"]>["value"];
}

export interface SourceShare {
  readonly loadCase: SourceLoadCase;
  readonly isMonitored: boolean;
  readonly demand: Value;
  readonly limit: Value;
}

export function balanceOf(
  condition: Condition,
  basis: ElectricalBasis,
  currents: LoadCurrents,
  outputs: SourceOutputs,
): SourceBalance {
  const loads = [...existingLoads(condition, basis), ...componentLoads(condition, basis, currents)];
  const demand = totalOf("source-demand", loads, condition, basis);
  const { capacity, isCapacityKnown } = capacityOf(condition, basis, outputs);
  return {
    condition,
    loads,
    demand,
    capacity,
    isCapacityKnown,
    margin: isCapacityKnown ? marginOf(demand, capacity, condition, basis) : undefined,
    batteryCurrent: batteryCurrentOf(demand, capacity, condition, basis, outputs),
    shares: sharesOf(loads, demand, condition, basis, outputs),
  };
}

function existingLoads(condition: Condition, basis: ElectricalBasis): BalancedLoad[] {
  const existing = basis.project.airframe?.electrical?.existingLoads ?? [];
  return existing.flatMap((load): BalancedLoad[] => {
    const amps = existingCurrent(load, condition);
    if (!load.id || !amps) return [];
    const id = load.id.value;
    const current = basis.keep(
      derive({
        subject: { kind: "existing-load", id },
        quantity: "existing-current",
        condition: condition.id?.value,
        unit: "A",
        formula: "I",
        operands: { I: written(`current in phase ${condition.phase?.value}`, amps, "A") },
        compute: ({ I }) => I,
      }),
    );
    const isOn = amps.value.si > 0;
    return [
      {
        kind: "existing-load",
        id,
        buses: load.bus ? [load.bus.value] : [],
        current,
        ...(isOn && load.use && { use: load.use.value }),
      },
    ];
  });
}

function componentLoads(
  condition: Condition,
  basis: ElectricalBasis,
  currents: LoadCurrents,
): BalancedLoad[] {
  const { project, fed } = basis;
  const wired = new Set(fed.map(({ id }) => id));
  const unwired = (project.kit?.components ?? []).flatMap((component): BalancedLoad[] => {
    const id = component.id?.value;
    if (id === undefined || wired.has(id) || !component.draws || !runOf(component, condition)) return [];
    return [{ kind: "component", id, buses: [], current: undefined }];
  });
  const index = basis.conditions.indexOf(condition);
  const loads = fed.flatMap(({ id, component, buses }, position): BalancedLoad[] => {
    if (!runOf(component, condition)) return [];
    const draw = drawIn(component, condition);
    const current = currents[position]![index];
    // Without its mode a load that runs is not known, which is not the same as none.
    return [{ kind: "component", id, buses, current: draw && current && meanCurrent(current, draw, basis) }];
  });
  // A load that runs and that no wire leads to yet draws no less for it.
  return [...loads, ...unwired];
}

/** The current of a component that cycles, averaged over its duty. */
function meanCurrent(
  current: Value,
  { duty }: NonNullable<ReturnType<typeof drawIn>>,
  basis: ElectricalBasis,
): Value | undefined {
  if (!duty) return current;
  return basis.keep(
    derive({
      subject: current.subject,
      quantity: "mean-current",
      condition: current.condition,
      unit: "A",
      formula: "I * d / 100",
      operands: { I: derived("current", current), d: written("share of the time", duty, "%") },
      compute: ({ I, d }) => (I * d) / 100,
      sources: [sourceMethods.cyclicAverage.source],
    }),
  );
}

function totalOf(
  quantity: "source-demand" | "source-demand-without-light",
  loads: readonly BalancedLoad[],
  condition: Condition,
  basis: ElectricalBasis,
): Value | undefined {
  return basis.keep(
    derive({
      ...aircraftIn(condition, basis),
      quantity,
      unit: "A",
      formula: loads.length === 0 ? "0" : "sum(I)",
      operands: { I: loads.map(({ id, current }) => derived(`current of ${id}`, current)) },
      compute: ({ I }) => sumOf(I),
    }),
  );
}

function capacityOf(
  condition: Condition,
  basis: ElectricalBasis,
  outputs: SourceOutputs,
): Pick<SourceBalance, "capacity" | "isCapacityKnown"> {
  const given = outputs
    .running(condition)
    .filter(({ kind }) => kind?.value !== "battery")
    .map((source) => givenBy(source, condition, outputs));
  const capacity =
    given.length === 0
      ? undefined
      : basis.keep(
          derive({
            ...aircraftIn(condition, basis),
            quantity: "source-capacity",
            unit: "A",
            formula: "sum(I)",
            operands: { I: given.map(({ operand }) => operand) },
            compute: ({ I }) => sumOf(I),
          }),
        );
  return { capacity, isCapacityKnown: given.every(({ isKnown }) => isKnown) };
}

function givenBy(
  source: Source,
  condition: Condition,
  outputs: SourceOutputs,
): { readonly operand: Operand; readonly isKnown: boolean } {
  const id = source.id!.value;
  const rating = written(`rating of ${id}`, source.rating, "A");
  if (source.kind?.value !== "alternator") return { operand: rating, isKnown: true };
  const output = outputs.outputOf(source, condition);
  if (output) return { operand: derived(`output of ${id}`, output), isKnown: true };
  return {
    operand: rating && {
      ...rating,
      notes: ["Its output in this condition is not known; the rated output is the most that it can be."],
    },
    isKnown: false,
  };
}

function marginOf(
  demand: Value | undefined,
  capacity: Value | undefined,
  condition: Condition,
  basis: ElectricalBasis,
): Value | undefined {
  return basis.keep(
    derive({
      ...aircraftIn(condition, basis),
      quantity: "source-margin",
      unit: "%",
      formula: "(I_capacity - I_demand) / I_capacity * 100",
      operands: { I_capacity: derived("capacity", capacity), I_demand: derived("demand", demand) },
      compute: ({ I_capacity, I_demand }) => ((I_capacity - I_demand) / I_capacity) * 100,
    }),
  );
}

function batteryCurrentOf(
  demand: Value | undefined,
  capacity: Value | undefined,
  condition: Condition,
  basis: ElectricalBasis,
  outputs: SourceOutputs,
): Value | undefined {
  const common = { ...aircraftIn(condition, basis), quantity: "battery-current", unit: "A" } as const;
  const I_demand = derived("demand", demand);
  const isAlone = outputs.running(condition).every(({ kind }) => kind?.value === "battery");
  if (isAlone) {
    return basis.keep(
      derive({
        ...common,
        formula: "I_demand",
        operands: { I_demand },
        compute: (numbers) => numbers.I_demand,
        notes: ["Nothing but the battery feeds the aircraft in this condition."],
      }),
    );
  }
  if (!demand || !capacity || !isBelow(capacity.value, demand.value)) return undefined;
  return basis.keep(
    derive({
      ...common,
      formula: "I_demand - I_capacity",
      operands: { I_demand, I_capacity: derived("capacity", capacity) },
      compute: (numbers) => numbers.I_demand - numbers.I_capacity,
    }),
  );
}

/** The 80 % rule, for loads that last and sources that all run as they should. */
function sharesOf(
  loads: readonly BalancedLoad[],
  demand: Value | undefined,
  condition: Condition,
  basis: ElectricalBasis,
  outputs: SourceOutputs,
): SourceShare[] {
  const phase = condition.phase?.value;
  if (condition.duration || phase === "source-failed" || !demand) return [];
  const rating = ratingOf(condition, basis, outputs);
  if (!rating) return [];
  const isOn = (use: BalancedLoad["use"]) => loads.some((load) => load.use === use);
  const isTakeOffOrLanding = phase === "take-off" || phase === "landing";
  const withoutLight =
    isTakeOffOrLanding && isOn("pitot-heat") && isOn("landing-light")
      ? totalOf(
          "source-demand-without-light",
          loads.filter(({ use }) => use !== "landing-light"),
          condition,
          basis,
        )
      : undefined;
  const monitored = basis.project.airframe?.electrical?.monitored;
  const isMonitored = monitored?.value === true;
  const checks = eightyPercentRule({
    ratingAmps: rating.value,
    demandAmps: demand.value,
    isMonitored,
    ...(withoutLight && { landingLightOffAmps: withoutLight.value }),
  });
  return checks.flatMap(({ loadCase, limitShare, limitAmps, source }) => {
    const isWithout = loadCase === "landing-light-off";
    const compared = isWithout ? withoutLight : demand;
    const limit = basis.keep(
      derive({
        ...aircraftIn(condition, basis),
        quantity: isWithout ? "source-limit-without-light" : "source-limit",
        unit: "A",
        formula: "s * I_rated",
        operands: {
          s: {
            name: "share that the loads may take",
            value: limitShare,
            unit: "1",
            places: isMonitored ? [monitored.place] : [],
            source,
            notes: [],
          },
          I_rated: derived("rated output", rating),
        },
        compute: () => limitAmps,
        sources: [source],
      }),
    );
    return compared && limit ? [{ loadCase, isMonitored, demand: compared, limit }] : [];
  });
}

function ratingOf(condition: Condition, basis: ElectricalBasis, outputs: SourceOutputs): Value | undefined {
  const alternators = outputs.running(condition).filter(({ kind }) => kind?.value === "alternator");
  if (alternators.length === 0) return undefined;
  return basis.keep(
    derive({
      ...aircraftIn(condition, basis),
      quantity: "source-rating",
      unit: "A",
      formula: "sum(I)",
      operands: { I: alternators.map(({ id, rating }) => written(`rating of ${id!.value}`, rating, "A")) },
      compute: ({ I }) => sumOf(I),
    }),
  );
}

/** Subject and condition of a value that belongs to the aircraft as a whole. */
export function aircraftIn(condition: Condition, { project }: ElectricalBasis) {
  const id = project.airframe?.aircraft?.serial?.value ?? "aircraft";
  return { subject: { kind: "aircraft", id }, condition: condition.id?.value } as const;
}
