import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered } from "./lookup";

export interface AluminiumWireRow {
  /** AWG number; 0 is 1/0, -1 is 00, -2 is 000, -3 is 0000. */
  readonly gauge: number;
  /** Largest resistance at 20 degC. */
  readonly ohmsPer1000Feet: number;
}

/** Aluminium conductors: resistance. */
export const aluminiumWire: readonly AluminiumWireRow[] = [
  { gauge: 8, ohmsPer1000Feet: 1.093 },
  { gauge: 6, ohmsPer1000Feet: 0.641 },
  { gauge: 4, ohmsPer1000Feet: 0.427 },
  { gauge: 2, ohmsPer1000Feet: 0.268 },
  { gauge: 1, ohmsPer1000Feet: 0.214 },
  { gauge: 0, ohmsPer1000Feet: 0.169 },
  { gauge: -1, ohmsPer1000Feet: 0.133 },
  { gauge: -2, ohmsPer1000Feet: 0.109 },
  { gauge: -3, ohmsPer1000Feet: 0.085 },
];

export const aluminiumWireSource = advisoryCircular(
  "Table 11-10",
  "memory",
  "every ampacity is 0.79 to 0.80 of the copper entry of Table 11-9",
);

/** Table 11-10: largest resistance at 20 degC, in ohm per 1000 ft. */
export function aluminiumResistance(gauge: number): Lookup<number> {
  const row = aluminiumWire.find((each) => each.gauge === gauge);
  return row === undefined ? unknownGauge(gauge) : covered(row.ohmsPer1000Feet, aluminiumWireSource);
}

function unknownGauge(gauge: number) {
  const gauges = aluminiumWire.map((row) => row.gauge);
  return notCovered({ quantity: "gauge", asked: gauge, unit: "", covers: list(gauges) }, aluminiumWireSource);
}
