import type { Source } from "../source";
import { covered, type Lookup, notCovered, range } from "./lookup";

/**
 * Highest temperature that insulation stands for the seconds of a fault, by the rating of the wire.
 *
 * No figure for aircraft wire was found. These are the two final temperatures of the usual list of k for
 * building cable, PVC and cross-linked insulation, carried over from memory: a limit made of them warns only.
 */
export const faultTemperatures = [
  { upToRatingCelsius: 105, finalCelsius: 160 },
  { upToRatingCelsius: 200, finalCelsius: 250 },
] as const;

export const faultTemperatureSource: Source = {
  document: "IEC 60949, final temperatures of the usual list of k",
  standing: "memory",
  note: "160 degC PVC, 250 degC cross-linked; that aircraft insulation of the same class stands as much was not read",
};

/** Final temperature of a fault in degC, for a wire of this rating in degC. */
export function faultTemperature(ratingCelsius: number): Lookup<number> {
  const row = faultTemperatures.find(({ upToRatingCelsius }) => ratingCelsius <= upToRatingCelsius);
  return row
    ? covered(row.finalCelsius, faultTemperatureSource)
    : notCovered(
        {
          quantity: "wire rating",
          asked: ratingCelsius,
          unit: "degC",
          covers: range(0, faultTemperatures[1].upToRatingCelsius),
        },
        faultTemperatureSource,
      );
}
