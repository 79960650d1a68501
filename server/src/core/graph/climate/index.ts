/**
 * Heat balance of each space in each condition that it has to be comfortable in: what the sun, the walls, the
 * fresh air, people and equipment bring in against what the kit takes out, and how long a hot soak takes to go.
 * Nothing is computed as if a missing figure were none: it is told instead.
 */
import { heatBalanceSource } from "../../methods/heat-balance";
import type { Project } from "../../project";
import type { Climate, ClimateCase, Space } from "../../records/types";
import type { Electrical } from "../electrical";
import { isWholeEntry, isWholeList } from "../entries";
import { Memory } from "../remember";
import { derive, derived, type Keep, type Value } from "../value";
import { type Balance, beginBalance, type ClimateGap, powersIn, servingIn, sumOfHeats } from "./basis";
import { kitCapacity } from "./capacity";
import {
  conductionGain,
  equipmentGains,
  freshAirGains,
  moistureGains,
  outsideDensity,
  peopleGains,
  sunGain,
} from "./gains";
import { heatExchange, steadyState, timeToSetPoint } from "./temperatures";

export interface ClimateResults {
  readonly cases: readonly CaseResult[];
}

/** One space in one condition. */
export interface CaseResult {
  readonly entry: Climate;
  readonly climateCase: ClimateCase;
  readonly space: string;
  readonly condition: string;
  /** Whether what serves the space cools or heats it here; undefined where nothing of it runs. */
  readonly does: "cool" | "heat" | undefined;
  /** Heat that has to be taken out, or put in, to hold the set point, in W. */
  readonly load: Value | undefined;
  readonly capacity: Value | undefined;
  /** Temperature that the space settles at, in degC. */
  readonly steady: Value | undefined;
  /** From the soak to the set point, in s; undefined where it is never reached or no soak is recorded. */
  readonly time: Value | undefined;
  readonly gaps: readonly ClimateGap[];
}

/** Pure; what is missing in the record is left out of the result. */
export function deriveClimate(project: Project, electrical: () => Electrical, keep: Keep): ClimateResults {
  const cases = (project.install.climate ?? []).flatMap((entry) =>
    (entry.cases ?? []).flatMap((climateCase): CaseResult[] => {
      const space = project.airframe?.spaces?.find(({ id }) => id && id.value === entry.space?.value);
      const condition = project.install.conditions?.find(
        ({ id }) => id && id.value === climateCase.condition?.value,
      );
      if (!space || !condition || !entry.setPoint || !isWhole(entry, climateCase, space)) return [];
      const powers = powersIn(entry, condition, electrical);
      const serving = servingIn(entry, condition, project);
      const rests = [
        entry,
        condition,
        ...powers.flatMap(({ volts, amps }) => [volts, amps]),
        ...serving.flatMap(({ points }) => points),
      ];
      return [
        remembered.recall(climateCase, space, rests, keep, (kept) =>
          balanceOf(beginBalance({ entry, climateCase, space, condition, powers, serving }, kept)),
        ),
      ];
    }),
  );
  return { cases };
}

const remembered = new Memory<ClimateCase, Space, CaseResult>();

/** What could not be typed is a finding of its own; a balance without it would be too good. */
function isWhole(entry: Climate, climateCase: ClimateCase, space: Space): boolean {
  return (
    isWholeList(space, "glazing", space.glazing) &&
    isWholeList(entry, "equipment", entry.equipment) &&
    isWholeList(entry, "served-by", entry.servedBy) &&
    isWholeEntry(entry, "fresh-air", entry.freshAir) &&
    isWholeEntry(climateCase, "people", climateCase.people)
  );
}

function balanceOf(balance: Balance): CaseResult {
  const { entry, climateCase, space, condition } = balance.basis;
  const sun = sunGain(balance);
  const persons = peopleGains(balance);
  const equipment = equipmentGains(balance);
  const density = outsideDensity(balance);
  const fixed = sumOfHeats(balance, "fixed-heat-gain", [
    ...sun.map((one) => derived("sun through the glazing", one)),
    ...persons.sensible.map((one) => derived("people, sensible", one)),
    ...equipment.map((one) => derived(`power of ${one?.subject.id ?? "a component"}`, one)),
  ]);
  const air = entry.freshAir ? [freshAirGains(balance, density)] : [];
  const sensible = sumOfHeats(balance, "heat-gain", [
    derived("sun, people and equipment", fixed),
    derived("walls", conductionGain(balance)),
    ...air.map((one) => derived("fresh air", one)),
  ]);
  const moisture = balance.does === "heat" ? [] : moistureGains(balance, density, persons.latent);
  const load = heatLoad(balance, sensible, moisture);
  const capacity = kitCapacity(balance);
  const exchange = heatExchange(balance, density);
  const steady = steadyState(balance, fixed, moisture, exchange, capacity);
  return {
    entry,
    climateCase,
    space: space.id!.value,
    condition: condition.id?.value ?? "",
    does: balance.does,
    load,
    capacity,
    steady,
    time: timeToSetPoint(balance, exchange, steady),
    gaps: balance.gaps,
  };
}

function heatLoad(
  balance: Balance,
  sensible: Value | undefined,
  moisture: readonly (Value | undefined)[],
): Value | undefined {
  const q = derived("sensible gains", sensible);
  if (balance.does !== "heat") {
    return sumOfHeats(balance, "cooling-load", [q, ...moisture.map((one) => derived("moisture", one))]);
  }
  return balance.keep(
    derive({
      ...balance.common,
      quantity: "heating-load",
      unit: "W",
      formula: "-q",
      operands: { q },
      compute: (numbers) => -numbers.q,
      sources: [heatBalanceSource],
    }),
  );
}
