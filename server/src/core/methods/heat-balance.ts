/**
 * Heat that enters a space, and how its temperature runs: plain steady balances and one lumped heat capacity.
 * Powers in W, temperatures in degC, masses in kg; gains of the space are positive.
 */
import type { Source } from "../source";
import { densityOf, heatOfAir, standardAir } from "./air/atmosphere";

export const heatBalanceSource: Source = {
  document: "heat balance of a space, one lumped heat capacity",
  standing: "derived",
};

/** Heat of evaporation of water, J/kg. */
export const evaporationHeat = 2.5e6;

/**
 * Density of air at a pressure altitude in m and its own temperature, kg/m3; undefined outside the standard
 * atmosphere's formula.
 */
export function airDensity(altitude: number, celsius: number): number | undefined {
  const standard = standardAir(altitude);
  if (!standard.covered) return undefined;
  return densityOf({ pressure: standard.value.pressure, temperature: celsius + 273.15 });
}

/** Sun through a pane: area m2, solar heat gain coefficient and shade as shares, irradiance W/m2. */
export function solarGain(area: number, coefficient: number, shade: number, irradiance: number): number {
  return area * coefficient * shade * irradiance;
}

/** Fresh air, sensible: density kg/m3, flow m3/s. */
export function freshAirGain(density: number, flow: number, outside: number, inside: number): number {
  return density * flow * heatOfAir * (outside - inside);
}

/** Fresh air, its moisture that has to be condensed: humidity ratios kg/kg. Drier air takes nothing off the load. */
export function freshAirMoisture(density: number, flow: number, outside: number, inside: number): number {
  return density * flow * evaporationHeat * Math.max(0, outside - inside);
}

/**
 * Temperature that a space settles at.
 *
 * @param exchange walls and fresh air together, W/K, above zero
 * @param gain all other sensible gains less what is taken out, W
 */
export function steadyTemperature(outside: number, exchange: number, gain: number): number {
  return outside + gain / exchange;
}

/** Time in s until a space that starts at `from` reaches `to` on its way to `steady`; undefined when it never does. */
export function timeToReach(
  heatCapacity: number,
  exchange: number,
  { from, to, steady }: { readonly from: number; readonly to: number; readonly steady: number },
): number | undefined {
  if (from === to) return 0;
  const isOnTheWay = from > to ? to > steady : to < steady;
  return isOnTheWay ? (heatCapacity / exchange) * Math.log((from - steady) / (to - steady)) : undefined;
}

/**
 * Heat that a cooling unit gives to its own air, W: what it takes out and the power that drives it. With a
 * coefficient of performance it is the capacity times 1 + 1 / COP.
 *
 * Source: derived, first law.
 */
export function rejectedHeat(capacity: number, power: number): number {
  return capacity + power;
}
