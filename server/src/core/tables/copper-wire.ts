import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered } from "./lookup";

export interface CopperWireRow {
  /** AWG number; 0 is 1/0, -1 is 00, -2 is 000, -3 is 0000. */
  readonly gauge: number;
  /** Largest resistance of tin-plated conductor at 20 degC. */
  readonly ohmsPer1000Feet: number;
  /** Nominal conductor area. */
  readonly circularMils: number;
}

/** Copper conductors: resistance and area. The table's currents in bundles are what the figures come to (tests). */
export const copperWire: readonly CopperWireRow[] = [
  { gauge: 24, ohmsPer1000Feet: 28.4, circularMils: 475 },
  { gauge: 22, ohmsPer1000Feet: 16.2, circularMils: 755 },
  { gauge: 20, ohmsPer1000Feet: 9.88, circularMils: 1216 },
  { gauge: 18, ohmsPer1000Feet: 6.23, circularMils: 1900 },
  { gauge: 16, ohmsPer1000Feet: 4.81, circularMils: 2426 },
  { gauge: 14, ohmsPer1000Feet: 3.06, circularMils: 3831 },
  { gauge: 12, ohmsPer1000Feet: 2.02, circularMils: 5874 },
  { gauge: 10, ohmsPer1000Feet: 1.26, circularMils: 9354 },
  { gauge: 8, ohmsPer1000Feet: 0.7, circularMils: 16983 },
  { gauge: 6, ohmsPer1000Feet: 0.44, circularMils: 26818 },
  { gauge: 4, ohmsPer1000Feet: 0.28, circularMils: 42615 },
  { gauge: 2, ohmsPer1000Feet: 0.18, circularMils: 66500 },
  { gauge: 1, ohmsPer1000Feet: 0.15, circularMils: 81700 },
  { gauge: 0, ohmsPer1000Feet: 0.12, circularMils: 104500 },
  { gauge: -1, ohmsPer1000Feet: 0.09, circularMils: 133000 },
  { gauge: -2, ohmsPer1000Feet: 0.07, circularMils: 166500 },
  { gauge: -3, ohmsPer1000Feet: 0.06, circularMils: 210900 },
];

export const copperWireSource = advisoryCircular("Table 11-9, p. 11-23", "published");

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
