import type { Source } from "../source";
import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered, range } from "./lookup";

/** A straight line of the log-log figure: amperes = coefficientAmps x riseKelvin ^ exponent. */
export interface FreeAirFit {
  /** Current at a rise of 1 K. */
  readonly coefficientAmps: number;
  readonly exponent: number;
}

export interface FreeAirRow extends FreeAirFit {
  /** AWG number; 0 is 1/0, -1 is 00, -2 is 000, -3 is 0000. */
  readonly gauge: number;
}

/** Lines through points that a third party read from the printed figure at 30, 60 and 250 K. */
export const freeAirRead: readonly FreeAirRow[] = [
  { gauge: 26, coefficientAmps: 0.964, exponent: 0.458 },
  { gauge: 24, coefficientAmps: 1.355, exponent: 0.447 },
  { gauge: 22, coefficientAmps: 1.826, exponent: 0.442 },
  { gauge: 20, coefficientAmps: 2.206, exponent: 0.461 },
  { gauge: 18, coefficientAmps: 2.769, exponent: 0.474 },
  { gauge: 16, coefficientAmps: 3.121, exponent: 0.483 },
  { gauge: 14, coefficientAmps: 4.195, exponent: 0.482 },
  { gauge: 12, coefficientAmps: 5.811, exponent: 0.473 },
  { gauge: 10, coefficientAmps: 7.557, exponent: 0.475 },
];

/** Lines derived from Table 11-9, its bundle factor (0.775) and altitude factor (0.785) divided out. */
export const freeAirDerived: readonly FreeAirRow[] = [
  { gauge: 8, coefficientAmps: 11.454, exponent: 0.478 },
  { gauge: 6, coefficientAmps: 13.642, exponent: 0.505 },
  { gauge: 4, coefficientAmps: 18.182, exponent: 0.51 },
  { gauge: 2, coefficientAmps: 28.086, exponent: 0.482 },
  { gauge: 1, coefficientAmps: 34.692, exponent: 0.472 },
  { gauge: 0, coefficientAmps: 37.032, exponent: 0.489 },
  { gauge: -1, coefficientAmps: 40.23, exponent: 0.504 },
  { gauge: -2, coefficientAmps: 46.434, exponent: 0.508 },
  { gauge: -3, coefficientAmps: 55.94, exponent: 0.504 },
];

export const freeAirReadSource = advisoryCircular(
  "Figure 11-4",
  "secondary",
  "points read from the same figure in MIL-W-5088L, fig. 3; the line meets them within 3 %",
);
export const freeAirDerivedSource = advisoryCircular(
  "Figure 11-4",
  "derived",
  "worked back from Table 11-9 at 35, 80 and 130 K and cross-checked at 48 and 250 K within 5 %",
);

interface Family {
  /** By gauge, made once: each wire of a record asks in each condition. */
  readonly answers: ReadonlyMap<number, Lookup<FreeAirFit>>;
  readonly source: Source;
  /** Smallest and largest rise that a point or a cross-check supports. */
  readonly fromKelvin: number;
  readonly toKelvin: number;
}

const families: readonly Family[] = [
  familyOf(freeAirRead, freeAirReadSource, 30, 250),
  familyOf(freeAirDerived, freeAirDerivedSource, 35, 250),
];

function familyOf(rows: readonly FreeAirRow[], source: Source, fromKelvin: number, toKelvin: number): Family {
  const answers = rows.map(({ gauge, ...fit }): [number, Lookup<FreeAirFit>] => [
    gauge,
    covered(fit, source),
  ]);
  return { answers: new Map(answers), source, fromKelvin, toKelvin };
}

/**
 * Figure 11-4: the line of a single copper wire in free air, for a conductor rating that lies this far above
 * the ambient. Covered from 30 K (26 to 10) or 35 K (8 to 0000) up to 250 K, where points or cross-checks exist.
 */
export function freeAirFit(gauge: number, riseKelvin: number): Lookup<FreeAirFit> {
  for (const { answers, source, fromKelvin, toKelvin } of families) {
    const answer = answers.get(gauge);
    if (answer === undefined) continue;
    if (!(riseKelvin >= fromKelvin && riseKelvin <= toKelvin)) {
      const covers = range(fromKelvin, toKelvin);
      return notCovered({ quantity: "temperature rise", asked: riseKelvin, unit: "K", covers }, source);
    }
    return answer;
  }
  const gauges = families.flatMap(({ answers }) => [...answers.keys()]);
  return notCovered({ quantity: "gauge", asked: gauge, unit: "", covers: list(gauges) }, freeAirReadSource);
}
