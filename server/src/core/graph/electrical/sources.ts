/**
 * What the sources give and what is asked of them: the load analysis.
 */
import {
  alternatorOutput,
  batteryEndurance,
  enduranceBasis,
  leastEngineSpeed,
  sourceMethods,
} from "../../methods/sources";
import type { Project } from "../../project";
import { inUnit } from "../../quantities";
import type { Condition, Source } from "../../records/types";
import type { Source as Citation } from "../../source";
import {
  assumed,
  derive,
  derived,
  type Keep,
  type Operand,
  sumOf,
  tabled,
  type Value,
  written,
} from "../value";
import type { ElectricalBasis } from "./index";
import type { LoadCurrents } from "./load-currents";
import { drawIn, existingCurrent } from "./network";

export interface Sources {
  /** The load analysis, a row for each condition; empty where the airframe records no sources. */
  readonly balances: readonly SourceBalance[];
  readonly endurance: EnduranceResult | undefined;
  readonly leastSpeeds: readonly LeastSpeed[];
  /** Conditions in which an alternator's output could not be had, and why. */
  readonly unknown: readonly UnknownOutput[];
}

export interface SourceBalance {
  readonly condition: Condition;
  /** Mean current of all loads. */
  readonly demand: Value | undefined;
  /** What alternators and ground power can give. */
  readonly capacity: Value | undefined;
  /** Rated output of the alternators that run. */
  readonly rating: Value | undefined;
  /** Demand without the landing light, where one is on. */
  readonly demandWithoutLight: Value | undefined;
  readonly hasPitotHeat: boolean;
}

export interface EnduranceResult {
  readonly battery: Source;
  readonly endurance: Value | undefined;
  readonly needed: Value | undefined;
  /** True where the usable charge does not last through recognition and landing. */
  readonly isSpent: boolean;
}

/** The engine speed from which on an alternator holds the loads of a condition on the ground. */
export interface LeastSpeed {
  readonly condition: Condition;
  readonly source: Source;
  readonly speed: Value | undefined;
  readonly isReached: boolean;
}

export interface UnknownOutput {
  readonly source: Source;
  readonly condition: Condition;
  readonly why: "no-points" | "no-drive-ratio" | "no-engine-speed" | "outside-points";
}

/** Outputs of the sources by condition, as far as the record gives them. */
export class SourceOutputs {
  readonly unknown: UnknownOutput[] = [];
  private readonly outputs = new Map<Source, Map<Condition, Value | undefined>>();

  constructor(
    private readonly project: Project,
    private readonly keep: Keep,
  ) {}

  get sources(): readonly Source[] {
    return (this.project.airframe?.electrical?.sources ?? []).filter(({ id, voltage }) => id && voltage);
  }

  isOn(source: Source, condition: Condition): boolean {
    if (condition.failed?.some((failed) => failed.value === source.id?.value)) return false;
    switch (source.kind?.value) {
      case "ground-power":
        return condition.phase?.value === "ground-power";
      case "alternator":
        return condition.phase?.value !== "ground-power" && condition.phase?.value !== "start";
      default:
        return true;
    }
  }

  /** Most that a source gives; undefined while it is off, and without a number where none is recorded. */
  limitOf(source: Source, condition: Condition): { readonly amps: number | undefined } | undefined {
    if (!this.isOn(source, condition)) return undefined;
    if (source.kind?.value !== "alternator") return { amps: source.rating?.value.si };
    return { amps: this.outputOf(source, condition)?.value ?? source.rating?.value.si };
  }

  /** Output of an alternator that runs, never above its rating; undefined where the record does not tell it. */
  outputOf(source: Source, condition: Condition): Value | undefined {
    const known = this.outputs.get(source) ?? new Map<Condition, Value | undefined>();
    this.outputs.set(source, known);
    if (!known.has(condition)) known.set(condition, this.computeOutput(source, condition));
    return known.get(condition);
  }

  private computeOutput(source: Source, condition: Condition): Value | undefined {
    const unknown = (why: UnknownOutput["why"]): undefined => {
      this.unknown.push({ source, condition, why });
    };
    const speed = condition.engineSpeed;
    const ratio = source.driveRatio;
    if (!source.output || source.output.length === 0) return unknown("no-points");
    if (!ratio) return unknown("no-drive-ratio");
    if (!speed) return unknown("no-engine-speed");
    const subject = { kind: "source", id: source.id!.value } as const;
    const n = this.keep(
      derive({
        subject,
        quantity: "source-speed",
        condition: condition.id?.value,
        unit: "rpm",
        formula: "n_engine * r",
        operands: {
          n_engine: written("engine speed", speed, "rpm"),
          r: { name: "drive ratio", value: ratio.value, unit: "1", places: [ratio.place], notes: [] },
        },
        compute: ({ n_engine, r }) => n_engine * r,
      }),
    );
    const points = outputPoints(source);
    const lookup = n && alternatorOutput(points, n.value, citationOf(source));
    if (!lookup?.covered) return unknown("outside-points");
    return this.keep(
      derive({
        subject,
        quantity: "source-output",
        condition: condition.id?.value,
        unit: "A",
        ...(source.rating ? { formula: "min(I_n, I_rated)" } : { formula: "I_n" }),
        operands: {
          I_n: withInput(tabled("output at this speed", lookup, "A", placesOf(source)), n),
          ...(source.rating && { I_rated: written("rated output", source.rating, "A") }),
        },
        compute: ({ I_n, I_rated = Number.POSITIVE_INFINITY }) => Math.min(I_n, I_rated),
        sources: [lookup.source],
      }),
    );
  }
}

/** The load analysis of a project, once its network is solved. */
export function deriveSources(
  basis: ElectricalBasis,
  currents: LoadCurrents,
  outputs: SourceOutputs,
): Sources {
  if (outputs.sources.length === 0)
    return { balances: [], endurance: undefined, leastSpeeds: [], unknown: [] };
  const balances = basis.conditions.map((condition) => balance(condition, basis, currents, outputs));
  return {
    balances,
    endurance: endurance(basis, balances, outputs),
    leastSpeeds: balances.flatMap((one) => leastSpeed(one, basis, outputs)),
    unknown: outputs.unknown,
  };
}

function balance(
  condition: Condition,
  basis: ElectricalBasis,
  currents: LoadCurrents,
  outputs: SourceOutputs,
): SourceBalance {
  const common = { subject: aircraftSubject(basis), condition: condition.id?.value, unit: "A" } as const;
  const existing = basis.project.airframe?.electrical?.existingLoads ?? [];
  const existingOperands = existing.map((load) => {
    const current = existingCurrent(load, condition);
    const use = load.use?.value;
    const operand = written(`${load.id?.value}`, current, "A");
    return { use: current && current.value.si > 0 ? use : undefined, operand };
  });
  const components = basis.circuit.paths.flatMap((path) => {
    const current = currents.get(path.id)?.get(condition);
    return current ? [meanCurrent(current, path.component, condition, basis)] : [];
  });
  const demandOf = (quantity: "source-demand" | "source-demand-without-light", kept: readonly Operand[]) =>
    basis.keep(
      derive({
        ...common,
        quantity,
        formula: components.length + kept.length === 0 ? "0" : "sum(I)",
        operands: { I: [...kept, ...components] },
        compute: ({ I }) => sumOf(I),
      }),
    );
  const present = existingOperands.filter(({ operand }) => operand !== undefined);
  const hasLight = present.some(({ use }) => use === "landing-light");
  const alternators = outputs.sources.filter(
    (source) => source.kind?.value !== "battery" && outputs.isOn(source, condition),
  );
  const capacities = alternators.map((source) =>
    source.kind?.value === "alternator"
      ? derived(`output of ${source.id!.value}`, outputs.outputOf(source, condition))
      : written(`rating of ${source.id!.value}`, source.rating, "A"),
  );
  const ratings = alternators
    .filter((source) => source.kind?.value === "alternator")
    .map((source) => written(`rating of ${source.id!.value}`, source.rating, "A"));
  const sum = (quantity: "source-capacity" | "source-rating", of: readonly Operand[]) =>
    of.length === 0
      ? undefined
      : basis.keep(
          derive({
            ...common,
            quantity,
            formula: "sum(I)",
            operands: { I: of },
            compute: ({ I }) => sumOf(I),
          }),
        );
  return {
    condition,
    demand: demandOf(
      "source-demand",
      present.map(({ operand }) => operand),
    ),
    capacity: sum("source-capacity", capacities),
    rating: sum("source-rating", ratings),
    demandWithoutLight: hasLight
      ? demandOf(
          "source-demand-without-light",
          present.filter(({ use }) => use !== "landing-light").map(({ operand }) => operand),
        )
      : undefined,
    hasPitotHeat: present.some(({ use }) => use === "pitot-heat"),
  };
}

/** The current of a component that cycles, averaged over its duty. */
function meanCurrent(
  current: Value,
  component: Parameters<typeof drawIn>[0],
  condition: Condition,
  basis: ElectricalBasis,
): Operand {
  const duty = drawIn(component, condition)?.duty;
  if (!duty) return derived(`current of ${current.subject.id}`, current);
  const mean = basis.keep(
    derive({
      subject: current.subject,
      quantity: "mean-current",
      condition: condition.id?.value,
      unit: "A",
      formula: "I * d / 100",
      operands: { I: derived("current", current), d: written("share of the time", duty, "%") },
      compute: ({ I, d }) => (I * d) / 100,
      sources: [sourceMethods.cyclicAverage.source],
    }),
  );
  return derived(`mean current of ${current.subject.id}`, mean);
}

/** The published method: three quarters of the rated capacity, 5 min to recognise, 10 min to land. */
function endurance(
  basis: ElectricalBasis,
  balances: readonly SourceBalance[],
  outputs: SourceOutputs,
): EnduranceResult | undefined {
  const battery = outputs.sources.find((source) => source.kind?.value === "battery" && source.capacity);
  const inPhase = (phase: string) =>
    largest(balances.filter(({ condition }) => condition.phase?.value === phase));
  const emergency = inPhase("source-failed");
  if (!battery || !emergency) return undefined;
  const subject = { kind: "source", id: battery.id!.value } as const;
  const cruise = inPhase("cruise") ?? emergency;
  const operands = {
    C: written("rated capacity", battery.capacity, "Ah"),
    I_1: derived("current before shedding", cruise),
    I_3: derived("current after shedding", emergency),
    ...enduranceConstants,
  };
  let isSpent = false;
  const value = basis.keep(
    derive({
      subject,
      quantity: "battery-endurance",
      unit: "min",
      formula: "t_1 + t_2 + (s * 60 * C - t_1 * I_1 - t_2 * I_3) / I_3",
      operands,
      compute: ({ C, I_1, I_3 }) => {
        const { totalMinutes } = batteryEndurance({
          ratedAmpHours: C,
          cruiseAmps: I_1,
          emergencyCruiseAmps: I_3,
          emergencyLandingAmps: I_3,
        });
        isSpent = totalMinutes === undefined;
        return totalMinutes ?? Number.NaN;
      },
      sources: [sourceMethods.batteryEndurance.source],
      notes: ["The current after shedding is taken for the landing too."],
    }),
  );
  const needed = basis.keep(
    derive({
      subject,
      quantity: "endurance-needed",
      unit: "min",
      formula: "t",
      operands: {
        t: battery.endurance
          ? written("endurance that the record asks for", battery.endurance, "min")
          : assumed(
              "endurance needed",
              30,
              "min",
              "The record asks for none, so 30 min is taken (up to 25,000 ft).",
            ),
      },
      compute: ({ t }) => t,
      sources: [enduranceNeededSource],
    }),
  );
  return { battery, endurance: value, needed, isSpent };
}

const enduranceConstants = {
  s: assumed("usable share", enduranceBasis.usableShare, "1", "Of the rated capacity three quarters count."),
  t_1: assumed(
    "time to recognise",
    enduranceBasis.recognitionMinutes,
    "min",
    "Five minutes pass before loads are shed.",
  ),
  t_2: assumed("time to land", enduranceBasis.landingMinutes, "min", "Ten minutes are kept for the landing."),
};

/** 14 CFR 23.1353(h): the requirement was read in text, the times are from memory. */
const enduranceNeededSource: Citation = {
  document: "14 CFR 23.1353(h)",
  edition: "Amdt 23-62",
  standing: "secondary",
  note: "the requirement was read in text; 30 min up to 25,000 ft and 60 min above are from memory",
};

function largest(balances: readonly SourceBalance[]): Value | undefined {
  return balances
    .map(({ demand }) => demand)
    .filter((demand) => demand !== undefined)
    .toSorted((a, b) => b.value - a.value)[0];
}

/** Where one alternator feeds the aircraft on the ground, the engine speed that its loads need. */
function leastSpeed(balanceOf: SourceBalance, basis: ElectricalBasis, outputs: SourceOutputs): LeastSpeed[] {
  const { condition, demand } = balanceOf;
  const running = outputs.sources.filter(
    (source) => source.kind?.value === "alternator" && outputs.isOn(source, condition),
  );
  const source = running[0];
  if (
    condition.phase?.value !== "taxi" ||
    running.length !== 1 ||
    !source?.driveRatio ||
    !source.output ||
    !demand
  ) {
    return [];
  }
  const lookup = leastEngineSpeed(
    outputPoints(source),
    source.driveRatio.value,
    demand.value,
    citationOf(source),
  );
  if (!lookup.covered) return [];
  const found = lookup.value;
  const speed = basis.keep(
    derive({
      subject: { kind: "source", id: source.id!.value },
      quantity: "least-engine-speed",
      condition: condition.id?.value,
      unit: "rpm",
      method: "lowest engine speed from which on the recorded output holds the demand",
      operands: { demand: derived("demand", demand) },
      compute: () => (found.isReached ? found.engineRpm : Number.NaN),
      sources: [lookup.source],
      notes: found.isReached && found.isLowestGiven ? ["The recorded points go no lower."] : [],
    }),
  );
  return [{ condition, source, speed, isReached: found.isReached }];
}

function outputPoints(source: Source) {
  return (source.output ?? []).flatMap(({ speed, current }) =>
    speed && current ? [{ rpm: inUnit(speed.value, "rpm"), amps: inUnit(current.value, "A") }] : [],
  );
}

function placesOf(source: Source) {
  return (source.output ?? []).map(({ place }) => place);
}

function citationOf(source: Source): Citation {
  return {
    document: source.data?.value ?? `source ${source.id?.value} of the airframe record`,
    standing: "record",
  };
}

/** A looked-up number that itself depends on a derived one. */
function withInput(operand: Operand, from: Value | undefined): Operand {
  return operand && from && { ...operand, derivedFrom: from };
}

function aircraftSubject({ project }: ElectricalBasis) {
  return { kind: "aircraft", id: project.airframe?.aircraft?.serial?.value ?? "aircraft" } as const;
}
