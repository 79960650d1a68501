import type { Source } from "../source";
import { advisoryCircular } from "../tables/electrical-documents";

/** Whose maximum-except-take-off power the rule is read for. */
export type PowerCounted = "one-engine" | "all-engines";

export interface MinimumFuel {
  readonly gallons: number;
  /** Of gasoline at 6 lb/US gal. */
  readonly pounds: number;
  readonly counted: PowerCounted;
  /** Several engines, and nobody said how their power counts: the other reading, which is more fuel. */
  readonly otherReading?: { readonly gallons: number; readonly pounds: number };
}

export const minimumFuelSource: Source = advisoryCircular(
  "chapter 10, par. 10-2p",
  "published",
  "FAA-H-8083-30 counts one engine of a twin, the wording of the circular counts both",
);

/**
 * The most fuel that a balance check may count on where little fuel is the adverse case: 1/12 US gal per METO
 * horsepower, in pounds half the horsepower (AC 43.13-1B 10-2p; worked: figure 10-10, 165 hp). Piston engines
 * only: of a turbine the maker states it.
 *
 * Documents do not agree whether a twin counts one engine or both. Unless `counted` says it, one engine is
 * counted, as less fuel is the adverse side, and the other reading stands beside it.
 */
export function minimumFuel(powerOfOneEngine: number, engines: number, counted?: PowerCounted): MinimumFuel {
  const of = (power: number) => ({ gallons: power / 12, pounds: power / 2 });
  const one = of(powerOfOneEngine);
  const all = of(powerOfOneEngine * engines);
  if (engines <= 1 || counted === "all-engines") return { ...all, counted: "all-engines" };
  return { ...one, counted: "one-engine", ...(counted === undefined ? { otherReading: all } : {}) };
}
