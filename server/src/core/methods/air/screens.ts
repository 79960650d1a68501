/** Meshes and perforated plates: free area by geometry, and pressure loss. */
import type { Source } from "../../source";

export type ScreenPattern = "square-mesh" | "holes-square" | "holes-staggered";

/**
 * Share of the area that is open, by plane geometry.
 *
 * @param opening clear width between wires, or diameter of holes
 * @param spacing diameter of the wires of a mesh, or distance between hole centres; the same unit
 */
export function freeArea(pattern: ScreenPattern, opening: number, spacing: number): number {
  switch (pattern) {
    case "square-mesh":
      return (opening / (opening + spacing)) ** 2;
    case "holes-square":
      return (Math.PI / 4) * (opening / spacing) ** 2;
    case "holes-staggered":
      return (Math.PI / (2 * Math.sqrt(3))) * (opening / spacing) ** 2;
  }
}

const handbook = (what: string): Source => ({
  document: "Handbook of Hydraulic Resistance",
  at: what,
  standing: "memory",
});

export const screenSources = {
  mesh: handbook("screen of round wires, turbulent"),
  plate: handbook("thin sharp-edged grille"),
} as const;

/** Below this Reynolds number of its wires a mesh loses more than its formula says. */
export const leastWireReynolds = 400;

/** Loss coefficient of a mesh of round wires, on the velocity ahead of it: 1.3 (1 - f) + (1/f - 1)2. */
export const meshLoss = (free: number): number => 1.3 * (1 - free) + (1 / free - 1) ** 2;

/** Loss coefficient of a thin sharp-edged grille, on the velocity ahead: (0.707 sqrt(1 - f) + 1 - f)2 / f2. */
export const plateLoss = (free: number): number =>
  (edgeFactor * Math.sqrt(1 - free) + 1 - free) ** 2 / free ** 2;

/** As the formula is written, in three digits. */
const edgeFactor = 707 / 1000;
