/** The outside air of each condition. */
import { densityOf, standardAir, standardAtmosphere, viscosityOf } from "../../methods/air/atmosphere";
import { inUnit } from "../../quantities";
import type { Condition } from "../../records/types";
import type { CoverageGap } from "../../tables/lookup";
import { Memory } from "../remember";
import { assumed, derive, type Keep, type Operand, type Value, written } from "../value";

export interface ConditionAir {
  readonly condition: Condition;
  readonly id: string;
  /** kg/m3; undefined where the altitude is not covered or not known. */
  readonly density: Value | undefined;
  /** Pa s */
  readonly viscosity: number | undefined;
  readonly gap: CoverageGap | undefined;
}

/** Density from pressure altitude and temperature, for each condition that has an id. */
export function conditionAirs(conditions: readonly Condition[] | undefined, keep: Keep): ConditionAir[] {
  return (conditions ?? []).flatMap((condition) => {
    const id = condition.id?.value;
    if (id === undefined || !condition.altitude) return [];
    return [known.recall(condition, condition, [], keep, (keep) => airOf(condition, id, keep))];
  });
}

const known = new Memory<Condition, Condition, ConditionAir>();

function airOf(condition: Condition, id: string, keep: Keep): ConditionAir {
  const altitude = condition.altitude!;
  const standard = standardAir(altitude.value.si);
  if (!standard.covered) {
    const { reason } = standard;
    const inFeet = (metres: number) => Math.round(metres / 0.3048);
    const covers = reason.covers.kind === "range" ? reason.covers : { from: 0, to: 0 };
    const gap: CoverageGap = {
      ...reason,
      asked: inUnit(altitude.value, "ft"),
      unit: "ft",
      covers: { kind: "range", from: inFeet(covers.from), to: inFeet(covers.to) },
    };
    return { condition, id, density: undefined, viscosity: undefined, gap };
  }
  const { pressure } = standard.value;
  const outside = condition.outsideAir;
  const temperature = outside?.value.si ?? standard.value.temperature;
  const T: Operand = outside
    ? written("outside air temperature", outside, "K")
    : assumed(
        "temperature of the standard atmosphere",
        temperature,
        "K",
        "The condition records no outside air.",
      );
  const density = keep(
    derive({
      subject: { kind: "condition", id },
      quantity: "air-density",
      condition: id,
      unit: "kg/m3",
      formula: "101325 * (1 - 0.0065 * h / 288.15)^5.25588 / (287.053 * T)",
      operands: { h: written("pressure altitude", altitude, "m"), T },
      compute: (n) => densityOf({ temperature: n.T, pressure }),
      sources: [standardAtmosphere],
    }),
  );
  return { condition, id, density, viscosity: viscosityOf(temperature), gap: undefined };
}

/** Whether a component runs in a condition, and in which mode. */
export function modeIn({ loads }: Condition, component: string | undefined): string | undefined {
  return loads?.find(({ key }) => key.value === component)?.value?.value;
}
