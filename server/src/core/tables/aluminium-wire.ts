import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered } from "./lookup";

/** Conductor temperature ratings that Table 11-10 has a column for, in degC. */
export const aluminiumRatings = [105, 150] as const;
export type AluminiumRating = (typeof aluminiumRatings)[number];

export interface AluminiumWireRow {
  /** AWG number; 0 is 1/0, -1 is 00, -2 is 000, -3 is 0000. */
  readonly gauge: number;
  /** Bundle ampacity, by conductor rating in degC. */
  readonly amps: Readonly<Record<AluminiumRating, number>>;
  /** Largest resistance at 20 degC. */
  readonly ohmsPer1000Feet: number;
}

/** Aluminium conductors: current in bundles and resistance. */
export const aluminiumWire: readonly AluminiumWireRow[] = [
  { gauge: 8, amps: { 105: 30, 150: 45 }, ohmsPer1000Feet: 1.093 },
  { gauge: 6, amps: { 105: 40, 150: 61 }, ohmsPer1000Feet: 0.641 },
  { gauge: 4, amps: { 105: 54, 150: 82 }, ohmsPer1000Feet: 0.427 },
  { gauge: 2, amps: { 105: 76, 150: 113 }, ohmsPer1000Feet: 0.268 },
  { gauge: 1, amps: { 105: 90, 150: 133 }, ohmsPer1000Feet: 0.214 },
  { gauge: 0, amps: { 105: 102, 150: 153 }, ohmsPer1000Feet: 0.169 },
  { gauge: -1, amps: { 105: 117, 150: 178 }, ohmsPer1000Feet: 0.133 },
  { gauge: -2, amps: { 105: 138, 150: 209 }, ohmsPer1000Feet: 0.109 },
  { gauge: -3, amps: { 105: 163, 150: 248 }, ohmsPer1000Feet: 0.085 },
];

export const aluminiumWireSource = advisoryCircular(
  "Table 11-10",
  "memory",
  "every ampacity is 0.79 to 0.80 of the copper entry of Table 11-9",
);

/** Table 11-10: bundle ampacity in A. */
export function aluminiumBundleAmps(gauge: number, ratingCelsius: number): Lookup<number> {
  const row = aluminiumWire.find((each) => each.gauge === gauge);
  if (row === undefined) return unknownGauge(gauge);
  const rating = aluminiumRatings.find((each) => each === ratingCelsius);
  if (rating === undefined) {
    return notCovered(
      { quantity: "conductor rating", asked: ratingCelsius, unit: "degC", covers: list(aluminiumRatings) },
      aluminiumWireSource,
    );
  }
  return covered(row.amps[rating], aluminiumWireSource, [
    "Conditions are taken to be those of Table 11-9, Note 1, for size 8 and larger (derived from the ratio to copper).",
  ]);
}

/** Table 11-10: largest resistance at 20 degC, in ohm per 1000 ft. */
export function aluminiumResistance(gauge: number): Lookup<number> {
  const row = aluminiumWire.find((each) => each.gauge === gauge);
  return row === undefined ? unknownGauge(gauge) : covered(row.ohmsPer1000Feet, aluminiumWireSource);
}

function unknownGauge(gauge: number) {
  const gauges = aluminiumWire.map((row) => row.gauge);
  return notCovered({ quantity: "gauge", asked: gauge, unit: "", covers: list(gauges) }, aluminiumWireSource);
}
