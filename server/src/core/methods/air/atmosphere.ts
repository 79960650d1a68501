/** Air by altitude and temperature: SI units throughout. */
import type { Source } from "../../source";
import { covered, type Lookup, notCovered, range } from "../../tables/lookup";

export const standardAtmosphere: Source = {
  document: "ICAO standard atmosphere",
  at: "troposphere",
  standing: "derived",
  note: "T = 288.15 - 0.0065 h, p = 101325 (T / 288.15)^5.25588",
};

/** Gas constant of dry air, J/(kg K), and its heat at constant pressure, J/(kg K). */
export const gasConstant = 287.053;
export const heatOfAir = 1006;

/** The formulas hold from 5 km below sea level to the tropopause at 11 km. */
const altitudes = { from: -5000, to: 11_000 } as const;

export interface Air {
  /** K */
  readonly temperature: number;
  /** Pa */
  readonly pressure: number;
}

/** Temperature (K) and pressure (Pa) of the standard atmosphere at a pressure altitude in m. */
export function standardAir(altitude: number): Lookup<Air> {
  const { from, to } = altitudes;
  if (!(altitude >= from && altitude <= to)) {
    const gap = { quantity: "altitude", asked: altitude, unit: "m", covers: range(from, to) };
    return notCovered(gap, standardAtmosphere);
  }
  const temperature = 288.15 - 0.0065 * altitude;
  return covered({ temperature, pressure: 101_325 * (temperature / 288.15) ** 5.25588 }, standardAtmosphere);
}

/** kg/m3, of dry air: the perfect gas law. */
export const densityOf = ({ temperature, pressure }: Air): number => pressure / (gasConstant * temperature);

/** Dynamic viscosity in Pa s at a temperature in K: Sutherland's law with the constants of the ICAO atmosphere. */
export const viscosityOf = (temperature: number): number =>
  (1.458e-6 * temperature ** 1.5) / (temperature + 110.4);
