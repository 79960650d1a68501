import { batteryEndurance, enduranceBasis, rechargeTime, sourceMethods } from "../../methods/sources";
import { inUnit } from "../../quantities";
import type { Condition, Source } from "../../records/types";
import { isBelow } from "../../rounding";
import type { Source as Citation } from "../../source";
import { assumed, derive, derived, type Operand, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { SourceBalance } from "./source-balance";
import type { SourceOutputs } from "./source-outputs";
import { isConnected } from "./source-ways";

/** How long the battery lasts after the loss of every alternator. */
export interface EnduranceResult {
  readonly battery: Source;
  /** The condition whose loads it feeds until the landing. */
  readonly condition: Condition;
  readonly usable: Value | undefined;
  /** What recognition and landing take before any of it is left for emergency cruise. */
  readonly reserved: Value | undefined;
  /** Undefined where the usable charge does not last through recognition and landing. */
  readonly endurance: Value | undefined;
  readonly needed: Value | undefined;
  readonly isSpent: boolean;
}

/**
 * The published method: three quarters of the rated capacity, 5 min to recognise, 10 min to land. Emergency cruise
 * is the condition after the loss that asks most and lasts; the landing takes the most that any of them asks for.
 * The method takes loads in steady state: a peak in cruise that is over before the loss is recognised counts for as
 * long as it lasts, once.
 */
export function enduranceOf(
  basis: ElectricalBasis,
  balances: readonly SourceBalance[],
  outputs: SourceOutputs,
): EnduranceResult | undefined {
  const battery = outputs.sources.find(
    (source) => source.kind?.value === "battery" && source.capacity && isConnected(source, basis.project),
  );
  const landing = largest(balances, "source-failed");
  if (!battery?.capacity || !landing) return undefined;
  const lasting = balances.filter(({ condition }) => !condition.duration);
  const emergency = largest(lasting, "source-failed") ?? landing;
  const cruise = largestCruise(balances) ?? emergency;
  const peak = peakAbove(cruise.demand, balances);
  const run = batteryEndurance({
    ratedAmpHours: inUnit(battery.capacity.value, "Ah"),
    cruiseAmps: cruise.demand.value + (peak ? peak.ampMinutes / enduranceBasis.recognitionMinutes : 0),
    emergencyCruiseAmps: emergency.demand.value,
    emergencyLandingAmps: landing.demand.value,
  });
  const common = {
    subject: { kind: "source", id: battery.id!.value },
    sources: [sourceMethods.batteryEndurance.source],
  } as const;
  const usable = basis.keep(
    derive({
      ...common,
      quantity: "battery-usable-charge",
      unit: "Ah",
      formula: "s * C",
      operands: { s: usableShare, C: written("rated capacity", battery.capacity, "Ah") },
      compute: () => run.usable / 60,
    }),
  );
  const reserved = basis.keep(
    derive({
      ...common,
      quantity: "battery-reserved-charge",
      unit: "Ah",
      formula: peak ? "(t_1 * I_1 + t_p * (I_p - I_1) + t_2 * I_2) / 60" : "(t_1 * I_1 + t_2 * I_2) / 60",
      operands: {
        ...times,
        I_1: derived("current before shedding", cruise.demand),
        ...(peak && {
          t_p: written(`how long ${peak.name} lasts`, peak.condition.duration, "min"),
          I_p: derived(`current of ${peak.name}`, peak.demand),
        }),
        I_2: derived("current of the landing", landing.demand),
      },
      compute: () => (run.recognition + run.landing) / 60,
      notes: [
        ...(peak ? [`Of ${peak.name} one is taken to come before the loss is recognised.`] : []),
        ...(landing.demand === emergency.demand
          ? ["The current of emergency cruise is taken for the landing too."]
          : []),
      ],
    }),
  );
  const endurance = basis.keep(
    derive({
      ...common,
      quantity: "battery-endurance",
      unit: "min",
      formula: "t_1 + t_2 + 60 * (Q_usable - Q_reserved) / I_3",
      operands: {
        ...times,
        Q_usable: derived("usable charge", usable),
        Q_reserved: derived("charge for recognition and landing", reserved),
        I_3: derived("current of emergency cruise", emergency.demand),
      },
      compute: () => run.totalMinutes ?? Number.NaN,
    }),
  );
  return {
    battery,
    condition: emergency.condition,
    usable,
    reserved,
    endurance,
    needed: enduranceNeeded(battery, basis),
    isSpent: run.totalMinutes === undefined,
  };
}

const usableShare = assumed(
  "usable share",
  enduranceBasis.usableShare,
  "1",
  "Of the rated capacity three quarters count.",
);

const times = {
  t_1: assumed(
    "time to recognise",
    enduranceBasis.recognitionMinutes,
    "min",
    "Five minutes pass before loads are shed.",
  ),
  t_2: assumed("time to land", enduranceBasis.landingMinutes, "min", "Ten minutes are kept for the landing."),
};

/** Taken where the record asks for none: the longer one as soon as a condition is above the height. */
const defaultEndurance = { minutes: 30, upToFeet: 25_000, minutesAbove: 60 } as const;

function enduranceNeeded(
  { id, endurance }: Source,
  { conditions, keep }: ElectricalBasis,
): Value | undefined {
  return keep(
    derive({
      subject: { kind: "source", id: id!.value },
      quantity: "endurance-needed",
      unit: "min",
      formula: "t",
      operands: {
        t: endurance
          ? written("endurance that the record asks for", endurance, "min")
          : enduranceByHeight(conditions),
      },
      compute: ({ t }) => t,
      sources: [endurance ? enduranceRequirement : enduranceTimes],
    }),
  );
}

function enduranceByHeight(conditions: readonly Condition[]): Operand {
  const { minutes, upToFeet, minutesAbove } = defaultEndurance;
  const high = conditions.find(({ altitude }) => altitude && isBelow(upToFeet, inUnit(altitude.value, "ft")));
  return {
    name: "endurance needed",
    value: high ? minutesAbove : minutes,
    unit: "min",
    places: high?.altitude ? [high.altitude.place] : [],
    notes: [
      high
        ? `The record asks for none and has a condition above 25,000 ft, so ${minutesAbove} min is taken.`
        : `The record asks for none, so ${minutes} min is taken (up to 25,000 ft).`,
    ],
  };
}

const enduranceRequirement: Citation = {
  document: "14 CFR 23.1353(h)",
  edition: "Amdt 23-62",
  standing: "published",
  note: "the battery has to power the essential loads; for how long is as the record says",
};

const enduranceTimes: Citation = {
  document: "14 CFR 23.1353(h)",
  edition: "Amdt 23-62",
  standing: "memory",
  note: "the requirement was read in text; 30 min up to 25,000 ft and 60 min above are from memory",
};

/** The cruise that asks most and is not over before a loss would be recognised; the most of any if none is so long. */
export function largestCruise(balances: readonly SourceBalance[]): KnownBalance | undefined {
  return (
    largest(
      balances.filter(({ condition }) => !isPeak(condition)),
      "cruise",
    ) ?? largest(balances, "cruise")
  );
}

/** The cruise that is over so soon and takes most charge beyond the current before shedding, in A·min. */
function peakAbove(
  before: Value,
  balances: readonly SourceBalance[],
): (KnownBalance & { readonly name: string; readonly ampMinutes: number }) | undefined {
  return balances
    .flatMap((balance) => {
      const { condition, demand } = balance;
      if (!demand || !isPeak(condition) || condition.phase?.value !== "cruise") return [];
      const ampMinutes = (demand.value - before.value) * inUnit(condition.duration!.value, "min");
      return ampMinutes > 0
        ? [{ ...balance, demand, name: condition.id?.value ?? "the peak", ampMinutes }]
        : [];
    })
    .toSorted((a, b) => b.ampMinutes - a.ampMinutes)[0];
}

function isPeak({ duration }: Condition): boolean {
  return duration !== undefined && isBelow(inUnit(duration.value, "min"), enduranceBasis.recognitionMinutes);
}

type KnownBalance = SourceBalance & { readonly demand: Value };

/** The balance that asks most in a phase. */
function largest(
  balances: readonly SourceBalance[],
  phase: NonNullable<Condition["phase"]>["value"],
): KnownBalance | undefined {
  return balances
    .flatMap((balance) =>
      balance.condition.phase?.value === phase && balance.demand
        ? [{ ...balance, demand: balance.demand }]
        : [],
    )
    .toSorted((a, b) => b.demand.value - a.demand.value)[0];
}

/** For each condition of limited time that discharges the battery, the time in cruise that puts it back. */
export function deriveRecharging(
  basis: ElectricalBasis,
  balances: readonly SourceBalance[],
  outputs: SourceOutputs,
): void {
  const battery = outputs.sources.find((source) => source.kind?.value === "battery");
  const spare = spareInCruise(basis, balances);
  if (!battery || !spare) return;
  const subject = { kind: "source", id: battery.id!.value } as const;
  for (const { condition, batteryCurrent, isCapacityKnown } of balances) {
    const isRecharged = condition.phase?.value !== "source-failed" && outputs.isOn(battery, condition);
    if (!condition.duration || !batteryCurrent || !isCapacityKnown || !isRecharged) continue;
    const taken = basis.keep(
      derive({
        subject,
        quantity: "battery-charge-taken",
        condition: condition.id?.value,
        unit: "Ah",
        formula: "I * t / 60",
        operands: {
          I: derived("what the battery gives", batteryCurrent),
          t: written("how long", condition.duration, "min"),
        },
        compute: ({ I, t }) => (I * t) / 60,
      }),
    );
    basis.keep(
      derive({
        subject,
        quantity: "recharge-time",
        condition: condition.id?.value,
        unit: "h",
        formula: "Q / I_spare",
        operands: { Q: derived("charge taken", taken), I_spare: derived("spare current in cruise", spare) },
        compute: ({ Q, I_spare }) => rechargeTime({ takenAmpHours: Q, spareAmps: I_spare }),
        sources: [sourceMethods.rechargeTime.source],
      }),
    );
  }
}

/** What the sources give beyond the loads, in the lasting cruise that asks most; undefined where that is nothing. */
function spareInCruise(basis: ElectricalBasis, balances: readonly SourceBalance[]): Value | undefined {
  const cruise = largestCruise(balances);
  if (!cruise?.capacity || !cruise.isCapacityKnown || cruise.capacity.value <= cruise.demand.value)
    return undefined;
  return basis.keep(
    derive({
      subject: cruise.demand.subject,
      quantity: "spare-current",
      condition: cruise.condition.id?.value,
      unit: "A",
      formula: "I_capacity - I_demand",
      operands: {
        I_capacity: derived("capacity", cruise.capacity),
        I_demand: derived("demand", cruise.demand),
      },
      compute: ({ I_capacity, I_demand }) => I_capacity - I_demand,
    }),
  );
}
