import type { UnitSymbol } from "../../quantities";
import type { AirframeRecord } from "../../records/types";

/** Units that belong together: weight x arm is the moment, volume x density the weight. */
export interface BalanceUnits {
  readonly weight: UnitSymbol<"mass">;
  readonly arm: UnitSymbol<"length">;
  readonly moment: UnitSymbol<"moment">;
  readonly volume: UnitSymbol<"volume">;
  readonly density: UnitSymbol<"density">;
}

const pounds = { weight: "lb", volume: "gal", density: "lb/gal" } as const;
const kilograms = { weight: "kg", volume: "L", density: "kg/L" } as const;

/** The first of each weight unit is taken where the arm is written in none of them. */
const systems: readonly BalanceUnits[] = [
  { ...pounds, arm: "in", moment: "lb in" },
  { ...pounds, arm: "ft", moment: "lb ft" },
  { ...kilograms, arm: "mm", moment: "kg mm" },
  { ...kilograms, arm: "cm", moment: "kg cm" },
  { ...kilograms, arm: "m", moment: "kg m" },
];

/**
 * The units of the empty weight statement, or without one of the weighing, which are those of the aircraft's data;
 * pounds and inches without either.
 */
export function balanceUnits(airframe: AirframeRecord | undefined): BalanceUnits {
  const { empty, weighing } = airframe ?? {};
  const scale = weighing?.scales?.[0];
  const written = (empty?.weight ?? scale?.reading)?.value.unit;
  const arm = (empty ? empty.arm : (scale?.arm ?? scale?.offset))?.value.unit;
  const weight = written === "kg" || written === "g" ? "kg" : "lb";
  const ofWeight = systems.filter((system) => system.weight === weight);
  return ofWeight.find((system) => system.arm === arm) ?? ofWeight[0]!;
}
