/** Drag of what stands outside. */
import type { Source } from "../source";

/** Antennas: its constant is that of a drag coefficient of 0.128 at sea level, far below that of a box. */
export const antennaSource: Source = {
  document: "FAA AC 43.13-2A",
  at: "ch. 3, drag of antennas",
  standing: "memory",
  note: "agrees with the physics of a drag coefficient of 0.128",
};

export const dragSource: Source = {
  document: "Drag at sea-level density",
  standing: "derived",
  note: "coefficient of the record, on the area seen from ahead",
};

/** Density of the standard atmosphere at sea level, kg/m3: that of an equivalent airspeed. */
const seaLevel = 1.225;

/** lbf, of an area in ft2 at a speed in mph. */
export function antennaDrag(area: number, mph: number): number {
  return 0.000327 * area * mph ** 2;
}

/** N, of an area in m2 at an equivalent airspeed in m/s. */
export function drag(coefficient: number, area: number, speed: number): number {
  return (coefficient * seaLevel * area * speed ** 2) / 2;
}
