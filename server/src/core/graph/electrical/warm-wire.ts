/**
 * The resistance of a whole wire by the current that warms it: the temperature rises with the root of the current,
 * and the resistance with the temperature (AC 43.13-1B par. 11-66), so that two numbers tell it.
 */
import { type ConductorMaterial, resistanceAt } from "../../methods/wires";

export interface WarmWire {
  /** Without a current, ohm. */
  readonly coldOhms: number;
  /** What the root of a current in A adds, ohm. */
  readonly ohmsPerRootAmp: number;
}

/** @param allowedAmps undefined where no table gives it: the conductor is then taken at its rating */
export function warmWire(of: {
  readonly material: ConductorMaterial;
  readonly ohmsPer1000FeetAt20: number;
  readonly lengthFeet: number;
  readonly ambientCelsius: number;
  readonly ratingCelsius: number;
  readonly allowedAmps: number | undefined;
}): WarmWire {
  const { material, allowedAmps } = of;
  const ohmsAt = (conductorCelsius: number) =>
    (resistanceAt({ material, resistanceAt20Celsius: of.ohmsPer1000FeetAt20, conductorCelsius }) *
      of.lengthFeet) /
    1000;
  const ratedOhms = ohmsAt(of.ratingCelsius);
  if (allowedAmps === undefined) return { coldOhms: ratedOhms, ohmsPerRootAmp: 0 };
  const coldOhms = ohmsAt(of.ambientCelsius);
  return { coldOhms, ohmsPerRootAmp: (ratedOhms - coldOhms) / Math.sqrt(allowedAmps) };
}

/**
 * Current in A below which a wire counts as carrying none while the network is solved: the root of a current that
 * is nothing but noise would never settle.
 */
const currentNoise = 1e-6;

/** Resistance in ohm at a current in A. */
export function warmOhms({ coldOhms, ohmsPerRootAmp }: WarmWire, amps: number): number {
  return coldOhms + ohmsPerRootAmp * Math.sqrt(Math.max(0, amps - currentNoise));
}
