import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered } from "./lookup";

export interface WireChartRow {
  /** AWG number; 0 is 1/0. */
  readonly gauge: number;
  /** `null` where the chart's cell is blank. */
  readonly breakerAmps: number | null;
  readonly fuseAmps: number;
}

/** Copper wire and the largest protector the chart gives for it. */
export const wireChart: readonly WireChartRow[] = [
  { gauge: 22, breakerAmps: 5, fuseAmps: 5 },
  { gauge: 20, breakerAmps: 7.5, fuseAmps: 5 },
  { gauge: 18, breakerAmps: 10, fuseAmps: 10 },
  { gauge: 16, breakerAmps: 15, fuseAmps: 10 },
  { gauge: 14, breakerAmps: 20, fuseAmps: 15 },
  { gauge: 12, breakerAmps: 30, fuseAmps: 20 },
  { gauge: 10, breakerAmps: 40, fuseAmps: 30 },
  { gauge: 8, breakerAmps: 50, fuseAmps: 50 },
  { gauge: 6, breakerAmps: 80, fuseAmps: 70 },
  { gauge: 4, breakerAmps: 100, fuseAmps: 70 },
  { gauge: 2, breakerAmps: 125, fuseAmps: 100 },
  { gauge: 1, breakerAmps: null, fuseAmps: 150 },
  { gauge: 0, breakerAmps: null, fuseAmps: 150 },
];

export const wireChartSource = advisoryCircular("Table 11-3, p. 11-15, par. 11-49", "published");

const chartNotes = [
  "The chart is a guide, generally conservative for ordinary installations (par. 11-49).",
  "Basis of the chart, from memory: bundles of 15 or more copper wires carrying at most 20 % of their capacity, 57.2 degC (135 degF) ambient, up to 30,000 ft, protectors at 75 to 85 degF.",
];
const coolWireNote =
  "Under the chart's own conditions this breaker is above the allowed current of 105 degC wire (derived from figures 11-4 to 11-6); check the wire's own allowed current as well.";

/** Largest breaker that Table 11-3 gives for a copper wire, in A. Blank for gauges 1 and 0: not covered. */
export function wireChartBreaker(gauge: number): Lookup<number> {
  return protectorFor(gauge, "breakerAmps", gauge <= 16 ? [...chartNotes, coolWireNote] : chartNotes);
}

/** Largest fuse that Table 11-3 gives for a copper wire, in A. */
export function wireChartFuse(gauge: number): Lookup<number> {
  return protectorFor(gauge, "fuseAmps", chartNotes);
}

function protectorFor(
  gauge: number,
  column: "breakerAmps" | "fuseAmps",
  notes: readonly string[],
): Lookup<number> {
  const amps = wireChart.find((row) => row.gauge === gauge)?.[column] ?? undefined;
  if (amps !== undefined) return covered(amps, wireChartSource, notes);
  const given = column === "breakerAmps" ? "circuit breaker column" : "fuse column";
  const gauges = wireChart.filter((row) => row[column] !== null).map((row) => row.gauge);
  return notCovered(
    { quantity: "gauge", asked: gauge, unit: "", covers: list(gauges), given },
    wireChartSource,
  );
}
