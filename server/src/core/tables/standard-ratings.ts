import { copperWire } from "./copper-wire";

/** Gauges of Table 11-9 from the thinnest to the thickest. */
export const standardGauges: readonly number[] = copperWire.map((row) => row.gauge);

/** How a gauge is written in the trade: 24 … 1, then 0, 00, 000 and 0000. */
export function gaugeName(gauge: number): string {
  return gauge > 0 ? String(gauge) : "0".repeat(1 - gauge);
}
