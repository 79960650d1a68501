import type { Source } from "../source";
import { covered, type Lookup, notCovered, range } from "./lookup";

export type Activity =
  | "seated-at-rest"
  | "seated-very-light-work"
  | "moderate-office-work"
  | "standing-light-work"
  | "light-bench-work"
  | "heavy-work";

/** Heat that one person gives off, in W. */
export interface PersonHeat {
  readonly sensible: number;
  readonly latent: number;
}

export const peopleHeatSource: Source = {
  document: "ASHRAE Handbook, Fundamentals",
  edition: "2009 and 2013",
  at: "ch. 18 Table 1",
  standing: "published",
};

/** Adjusted for the usual mix of men and women, at 24 degC: [sensible, latent], W. */
const rows: Readonly<Record<Activity, readonly [number, number]>> = {
  "seated-at-rest": [65, 30],
  "seated-very-light-work": [70, 45],
  "moderate-office-work": [75, 55],
  "standing-light-work": [75, 55],
  "light-bench-work": [80, 140],
  "heavy-work": [170, 255],
};

/** Air temperatures that the table's page speaks of, degC. */
export const peopleHeatTemperatures = { printed: 24, warmer: 27 } as const;

/** At the warmer of them the sensible part is this much less, and the latent part as much more. */
const sensibleShareWhenWarmer = 0.8;

/**
 * Heat of one person in air of 24 to 27 degC: as printed at the one end, a fifth less sensible heat with the
 * same total at the other, a straight line between.
 */
export function peopleHeat(activity: Activity, celsius: number): Lookup<PersonHeat> {
  const { printed, warmer } = peopleHeatTemperatures;
  if (!(celsius >= printed && celsius <= warmer)) {
    const covers = range(printed, warmer);
    return notCovered(
      { quantity: "air temperature", asked: celsius, unit: "degC", covers },
      peopleHeatSource,
    );
  }
  const [sensible, latent] = rows[activity];
  const share = 1 - ((1 - sensibleShareWhenWarmer) * (celsius - printed)) / (warmer - printed);
  return covered(
    { sensible: share * sensible, latent: sensible + latent - share * sensible },
    peopleHeatSource,
  );
}
