import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered } from "./lookup";

/** What a DC switch controls: lamps, relays and solenoids, heaters, or motors. */
export type SwitchLoad = "lamp" | "inductive" | "resistive" | "motor";

export interface SwitchDeratingRow {
  readonly systemVolts: number;
  /** The same system called by its other usual voltage. */
  readonly alsoVolts: number;
  readonly factors: Readonly<Record<SwitchLoad, number>>;
}

/** Required nominal rating of a switch over the continuous current of what it controls. */
export const switchDerating: readonly SwitchDeratingRow[] = [
  { systemVolts: 28, alsoVolts: 24, factors: { lamp: 8, inductive: 4, resistive: 2, motor: 3 } },
  { systemVolts: 12, alsoVolts: 14, factors: { lamp: 5, inductive: 2, resistive: 1, motor: 2 } },
];

export const switchDeratingSource = advisoryCircular("Table 11-4, p. 11-17, par. 11-53f", "published");

/** Table 11-4: derating factor of a switch in a DC system. */
export function switchFactor(systemVolts: number, load: SwitchLoad): Lookup<number> {
  const row = switchDerating.find(
    (each) => each.systemVolts === systemVolts || each.alsoVolts === systemVolts,
  );
  if (row === undefined) {
    const volts = switchDerating.map((each) => each.systemVolts);
    return notCovered(
      { quantity: "nominal voltage", asked: systemVolts, unit: "V", covers: list(volts) },
      switchDeratingSource,
    );
  }
  const notes =
    row.alsoVolts === systemVolts
      ? [
          `The table heads this row ${row.systemVolts} V DC; a ${systemVolts} V system is read as that (common practice, no source).`,
        ]
      : [];
  return covered(row.factors[load], switchDeratingSource, notes);
}
