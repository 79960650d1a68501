import type { ConductorMaterial, MethodCard } from "./wires";

/**
 * Heat of a short circuit in a conductor, taken as adiabatic: all of it stays in the metal. That is the safe way
 * for any time, and close to the truth for a few seconds only.
 * Areas in mm², currents in A, times in s, temperatures in degC.
 *
 * Every function is total: a final temperature that is not above the initial one leaves no room for heat (no
 * time, infinite area); other impossible inputs give Infinity or NaN.
 * Worked examples are in tests/published-values/protection.test.ts.
 */
export const faultHeatMethods = {
  factor: {
    formula: "k = K × √(ln((θf + β) / (θi + β))); K = 226, β = 234.5 copper; K = 148, β = 228 aluminium",
    source: {
      document: "IEC 60949",
      standing: "secondary",
      note: "constants read in two third-party copies; they reproduce the usual list of k",
    },
  },
  withstandTime: {
    formula: "t = (k × S / I)²",
    source: { document: "IEC 60949", standing: "secondary", note: "adiabatic form" },
  },
  area: {
    formula: "S = I × √t / k",
    source: { document: "IEC 60949", standing: "secondary", note: "adiabatic form, solved for the area" },
  },
  circularMils: {
    formula: "S = π/4 × (0.0254 mm)² × CM",
    source: { document: "Definition of the circular mil", standing: "derived" },
  },
} as const satisfies Record<string, MethodCard>;

/** What a conductor is made of, and from where to where it may warm up. */
export interface FaultHeating {
  readonly material: ConductorMaterial;
  /** Of the conductor when the fault begins. */
  readonly initialCelsius: number;
  /** That the insulation stands for the duration of a fault. */
  readonly finalCelsius: number;
}

/** K in A·√s/mm², and β in K: the metal's resistance, drawn on as a straight line, meets zero at −β degC. */
const metals: Readonly<Record<ConductorMaterial, { readonly scale: number; readonly beta: number }>> = {
  copper: { scale: 226, beta: 234.5 },
  aluminium: { scale: 148, beta: 228 },
};

/** k = K × √(ln((θf + β) / (θi + β))), in A·√s/mm². Example: "k of the usual temperatures". */
export function faultFactor({ material, initialCelsius, finalCelsius }: FaultHeating): number {
  const { scale, beta } = metals[material];
  return scale * Math.sqrt(Math.max(0, Math.log((finalCelsius + beta) / (initialCelsius + beta))));
}

/** t = (k × S / I)²: how long in s a conductor stands a current. Example: "2500 A for 0.1 s". */
export function withstandSeconds(
  input: FaultHeating & { readonly areaMm2: number; readonly amps: number },
): number {
  return ((faultFactor(input) * input.areaMm2) / input.amps) ** 2;
}

const mm2PerCircularMil = (Math.PI / 4) * 0.0254 ** 2;

/** Area of metal in mm² of a conductor given in circular mils, stranded or solid. Example: "circular mils". */
export function conductorArea(circularMils: number): number {
  return circularMils * mm2PerCircularMil;
}
