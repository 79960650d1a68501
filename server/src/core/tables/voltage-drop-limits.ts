import type { Source, Standing } from "../source";
import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered } from "./lookup";

export type Duty = "continuous" | "intermittent";

export interface VoltageDropRow {
  readonly nominalVolts: number;
  /** The same system called by its battery instead of its bus. */
  readonly batteryVolts?: number;
  readonly continuousVolts: number;
  readonly intermittentVolts: number;
  readonly standing: Standing;
}

/** Allowable voltage drop between the bus and the equipment's ground. */
export const voltageDropLimits: readonly VoltageDropRow[] = [
  { nominalVolts: 14, batteryVolts: 12, continuousVolts: 0.5, intermittentVolts: 1, standing: "secondary" },
  { nominalVolts: 28, batteryVolts: 24, continuousVolts: 1, intermittentVolts: 2, standing: "published" },
  { nominalVolts: 115, continuousVolts: 4, intermittentVolts: 8, standing: "secondary" },
  { nominalVolts: 200, continuousVolts: 7, intermittentVolts: 14, standing: "secondary" },
];

const intermittentNote =
  "Intermittent is taken as at most 2 minutes (read by a third party and from memory, not checked against the text).";

/** Table 11-6: allowable drop in V for a system of this nominal voltage. */
export function voltageDropLimit(systemVolts: number, duty: Duty): Lookup<number> {
  const row = voltageDropLimits.find(
    (each) => each.nominalVolts === systemVolts || each.batteryVolts === systemVolts,
  );
  if (row === undefined) {
    const volts = voltageDropLimits.map((each) => each.nominalVolts);
    return notCovered(
      { quantity: "nominal voltage", asked: systemVolts, unit: "V", covers: list(volts) },
      sourceOf("published"),
    );
  }
  const notes = duty === "intermittent" ? [intermittentNote] : [];
  if (row.batteryVolts === systemVolts) {
    notes.push(
      `The table heads this row ${row.nominalVolts} V; a ${systemVolts} V battery feeds that system (common practice, no source).`,
    );
  }
  const volts = duty === "continuous" ? row.continuousVolts : row.intermittentVolts;
  return covered(volts, sourceOf(row.standing), notes);
}

function sourceOf(standing: Standing): Source {
  return standing === "published"
    ? advisoryCircular("Table 11-6, par. 11-66", standing)
    : advisoryCircular(
        "Table 11-6, par. 11-66",
        standing,
        "row values taken from two third-party copies; the column heads were read in text",
      );
}

/**
 * Main power wires, source or battery to bus: largest drop as a share of the regulated voltage, with the
 * generator at rated current or the battery discharged at the 5-minute rate.
 */
export const mainPowerDropShare = 0.02;
export const mainPowerDropSource = advisoryCircular("par. 11-66", "published");

/** Largest resistance, in ohm, from the generator's or battery's ground point to a device's ground terminal. */
export const groundReturnLimitOhms = 0.005;
export const groundReturnSource = advisoryCircular("par. 11-66", "published");
