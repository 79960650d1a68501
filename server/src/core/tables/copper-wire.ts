import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered } from "./lookup";

/** Conductor temperature ratings that Table 11-9 has a column for, in degC. */
export const copperRatings = [105, 150, 200] as const;
export type CopperRating = (typeof copperRatings)[number];

export interface CopperWireRow {
  /** AWG number; 0 is 1/0, -1 is 00, -2 is 000, -3 is 0000. */
  readonly gauge: number;
  /** Bundle ampacity under the table's Note 1, by conductor rating in degC. */
  readonly amps: Readonly<Record<CopperRating, number>>;
  /** Largest resistance of tin-plated conductor at 20 degC. */
  readonly ohmsPer1000Feet: number;
  /** Nominal conductor area. */
  readonly circularMils: number;
}

/** Copper conductors: current in bundles, resistance and area. */
export const copperWire: readonly CopperWireRow[] = [
  { gauge: 24, amps: { 105: 2.5, 150: 4, 200: 5 }, ohmsPer1000Feet: 28.4, circularMils: 475 },
  { gauge: 22, amps: { 105: 3, 150: 5, 200: 6 }, ohmsPer1000Feet: 16.2, circularMils: 755 },
  { gauge: 20, amps: { 105: 4, 150: 7, 200: 9 }, ohmsPer1000Feet: 9.88, circularMils: 1216 },
  { gauge: 18, amps: { 105: 6, 150: 9, 200: 12 }, ohmsPer1000Feet: 6.23, circularMils: 1900 },
  { gauge: 16, amps: { 105: 7, 150: 11, 200: 14 }, ohmsPer1000Feet: 4.81, circularMils: 2426 },
  { gauge: 14, amps: { 105: 10, 150: 14, 200: 18 }, ohmsPer1000Feet: 3.06, circularMils: 3831 },
  { gauge: 12, amps: { 105: 13, 150: 19, 200: 25 }, ohmsPer1000Feet: 2.02, circularMils: 5874 },
  { gauge: 10, amps: { 105: 17, 150: 26, 200: 32 }, ohmsPer1000Feet: 1.26, circularMils: 9354 },
  { gauge: 8, amps: { 105: 38, 150: 57, 200: 71 }, ohmsPer1000Feet: 0.7, circularMils: 16983 },
  { gauge: 6, amps: { 105: 50, 150: 76, 200: 97 }, ohmsPer1000Feet: 0.44, circularMils: 26818 },
  { gauge: 4, amps: { 105: 68, 150: 103, 200: 133 }, ohmsPer1000Feet: 0.28, circularMils: 42615 },
  { gauge: 2, amps: { 105: 95, 150: 141, 200: 179 }, ohmsPer1000Feet: 0.18, circularMils: 66500 },
  { gauge: 1, amps: { 105: 113, 150: 166, 200: 210 }, ohmsPer1000Feet: 0.15, circularMils: 81700 },
  { gauge: 0, amps: { 105: 128, 150: 192, 200: 243 }, ohmsPer1000Feet: 0.12, circularMils: 104500 },
  { gauge: -1, amps: { 105: 147, 150: 222, 200: 285 }, ohmsPer1000Feet: 0.09, circularMils: 133000 },
  { gauge: -2, amps: { 105: 172, 150: 262, 200: 335 }, ohmsPer1000Feet: 0.07, circularMils: 166500 },
  { gauge: -3, amps: { 105: 204, 150: 310, 200: 395 }, ohmsPer1000Feet: 0.06, circularMils: 210900 },
];

export const copperWireSource = advisoryCircular("Table 11-9, p. 11-23", "published");

/** Table 11-9: bundle ampacity in A, only under the conditions of its Note 1. */
export function copperBundleAmps(gauge: number, ratingCelsius: number): Lookup<number> {
  const row = copperWire.find((each) => each.gauge === gauge);
  if (row === undefined) return unknownGauge(gauge);
  const rating = copperRatings.find((each) => each === ratingCelsius);
  if (rating === undefined) {
    return notCovered(
      { quantity: "conductor rating", asked: ratingCelsius, unit: "degC", covers: list(copperRatings) },
      copperWireSource,
    );
  }
  const bundle = gauge >= 10 ? "33 or more wires" : "9 wires";
  return covered(row.amps[rating], copperWireSource, [
    `Holds for 70 degC ambient, a bundle of ${bundle} with not more than 20 % of the harness capacity in use, 60,000 ft (Note 1).`,
  ]);
}

/** Table 11-9: resistance and area of a copper conductor. */
export function copperConductor(
  gauge: number,
): Lookup<Pick<CopperWireRow, "ohmsPer1000Feet" | "circularMils">> {
  return conductors.get(gauge) ?? unknownGauge(gauge);
}

/** Table 11-9: largest resistance at 20 degC, in ohm per 1000 ft. */
export function copperResistance(gauge: number): Lookup<number> {
  return resistances.get(gauge) ?? unknownGauge(gauge);
}

/** Made once: each wire of a record asks in each condition. */
const conductors = new Map(
  copperWire.map((row) => {
    const { gauge, ohmsPer1000Feet, circularMils } = row;
    return [gauge, covered({ ohmsPer1000Feet, circularMils }, copperWireSource, conductorNotes(row))];
  }),
);
const resistances = new Map(
  Array.from(conductors, ([gauge, { value, source, notes }]) => [
    gauge,
    covered(value.ohmsPer1000Feet, source, notes),
  ]),
);

function conductorNotes({ gauge, ohmsPer1000Feet }: CopperWireRow): string[] {
  const notes = [
    "Largest resistance of tin-plated conductor; for other platings see the wire's specification (Note 2).",
  ];
  if (gauge === 24) {
    notes.push(
      "28.40 ohm per 1000 ft is 1.30 x the ideal for 475 circular mils: it fits a high-strength alloy, and is above what soft tin-plated copper needs. Used as printed, which is the safe way.",
    );
  }
  if (gauge <= 8) {
    const percent = Math.ceil((0.005 / ohmsPer1000Feet) * 100);
    notes.push(`Printed to the nearest 0.01 ohm per 1000 ft: the rounding is worth up to ${percent} %.`);
  }
  return notes;
}

function unknownGauge(gauge: number) {
  const gauges = copperWire.map((row) => row.gauge);
  return notCovered({ quantity: "gauge", asked: gauge, unit: "", covers: list(gauges) }, copperWireSource);
}
