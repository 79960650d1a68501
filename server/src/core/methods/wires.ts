import type { Source } from "../source";
import { advisoryCircular } from "../tables/electrical-documents";

/**
 * Wire sizing. Lengths are in feet and resistances in ohm per 1000 ft, as the wire tables print them;
 * temperatures in degC, temperature differences in K, currents in A, drops in V.
 *
 * Every function is total: impossible inputs (zero or negative current where it divides, a current without
 * a rating) give Infinity or NaN, never an exception, and the caller decides what may be asked.
 * Worked examples are named after the tests in tests/published-values/electrical.test.ts.
 */

/** How a method is shown beside its result. */
export interface MethodCard {
  readonly formula: string;
  readonly source: Source;
}

export const wireMethods = {
  freeAirCurrent: {
    formula: "I free = b × ΔT^m",
    source: advisoryCircular("Figure 11-4", "secondary", "a straight line on log-log paper"),
  },
  allowedCurrent: {
    formula: "I allowed = I free × bundle factor × altitude factor",
    source: advisoryCircular(
      "Figures 11-4, 11-5 and 11-6",
      "derived",
      "this product reproduces Table 11-9; the wording of par. 11-69 is from memory",
    ),
  },
  harnessCapacity: {
    formula: "capacity = Σ count × I allowed",
    source: advisoryCircular("par. 11-69", "memory"),
  },
  bundleLoading: {
    formula: "loading = Σ I / capacity",
    source: advisoryCircular("Table 11-9, Note 1", "derived", "reading of “harness capacity in use”"),
  },
  conductorTemperature: {
    formula: "T2 = T1 + (TR − T1) × √(I2 / I max)",
    source: advisoryCircular(
      "par. 11-66d(6)",
      "secondary",
      "the variables were read in the text, the formula line by a third party; a quite conservative estimate by the AC's own words",
    ),
  },
  conductorTemperatureBySquare: {
    formula: "T2 = T1 + (TR − T1) × (I2 / I max)²",
    source: {
      document: "Steady heat balance of a resistive conductor",
      standing: "derived",
      note: "not the AC's formula, and lower than it",
    },
  },
  resistanceAt: {
    formula: "R(T2) = R20 × (T0 + T2) / (T0 + 20); T0 = 234.5 copper, 238.1 aluminium",
    source: advisoryCircular("par. 11-66", "derived", "the inverse of the published correction of length"),
  },
  voltageDrop: {
    formula: "VD = R′ × L × I",
    source: advisoryCircular("par. 11-66, p. 11-22", "published"),
  },
  longestRun: {
    formula: "L = VD / (R′ × I)",
    source: advisoryCircular("Figures 11-2 and 11-3, Table 11-8", "published"),
  },
  longestRunWarm: {
    formula: "L2 = L1 × (T0 + 20) / (T0 + T2); T0 = 234.5 copper, 238.1 aluminium",
    source: advisoryCircular("par. 11-66, p. 11-22", "published"),
  },
  largestResistance: {
    formula: "R′ = VD / (L × I)",
    source: advisoryCircular("par. 11-66, p. 11-22", "published", "solved for the resistance"),
  },
  contactDrop: {
    formula: "VD = R × I",
    source: { document: "Ohm's law", standing: "derived" },
  },
  switchRating: {
    formula: "rating = I × factor",
    source: advisoryCircular("par. 11-53f", "published"),
  },
  largestSwitchCurrent: {
    formula: "I = rating / factor",
    source: advisoryCircular("par. 11-53f", "memory", "the same algebra, solved for the current"),
  },
} as const satisfies Record<string, MethodCard>;

export type ConductorMaterial = "copper" | "aluminium";

/** T0: the metal's straight line of resistance against temperature, drawn on, meets zero at −T0 degC. */
const resistanceZero: Readonly<Record<ConductorMaterial, number>> = {
  copper: 234.5,
  aluminium: 238.1,
};

/**
 * I = b × ΔT^m: current in A that warms a single wire in free air from the ambient to its rating.
 * Source: AC 43.13-1B figure 11-4. Example: "1.12 harness", step 1.
 */
export function freeAirCurrent(input: {
  /** b of the gauge's line. */
  readonly coefficientAmps: number;
  /** m of the gauge's line. */
  readonly exponent: number;
  /** Conductor rating less ambient. */
  readonly riseKelvin: number;
}): number {
  return input.coefficientAmps * input.riseKelvin ** input.exponent;
}

/**
 * I allowed = I free × bundle factor × altitude factor, in A.
 * Source: AC 43.13-1B figures 11-4 to 11-6. Example: "1.12 harness", steps 2 and 3.
 */
export function allowedCurrent(input: {
  readonly freeAirAmps: number;
  readonly bundleFactor: number;
  readonly altitudeFactor: number;
}): number {
  return input.freeAirAmps * input.bundleFactor * input.altitudeFactor;
}

/**
 * Σ count × I allowed: capacity of a harness in A.
 * Source: AC 43.13-1B par. 11-69 (memory). Example: "1.12 harness", step 4.
 */
export function harnessCapacity(
  wires: readonly { readonly count: number; readonly allowedAmps: number }[],
): number {
  return wires.reduce((total, { count, allowedAmps }) => total + count * allowedAmps, 0);
}

/**
 * T2 = T1 + (TR − T1) × √(I2 / I max): estimate of conductor temperature in degC, the AC's conservative form.
 * Conservative only up to the allowed current: above it the heat balance is the higher of the two.
 * Source: AC 43.13-1B par. 11-66d(6). Example: "1.5 conductor temperature".
 */
export function conductorTemperature(input: TemperatureEstimate): number {
  return input.ambientCelsius + riseToRating(input) * Math.sqrt(input.amps / input.allowedAmps);
}

/**
 * T2 = T1 + (TR − T1) × (I2 / I max)²: conductor temperature in degC from the heat that the current makes.
 * Not the AC's formula: lower than it below the allowed current, so a view has to name it.
 * Source: derived. Example: "1.5 conductor temperature".
 */
export function conductorTemperatureBySquare(input: TemperatureEstimate): number {
  return input.ambientCelsius + riseToRating(input) * (input.amps / input.allowedAmps) ** 2;
}

export interface TemperatureEstimate {
  readonly ambientCelsius: number;
  /** Temperature rating of the conductor. */
  readonly ratingCelsius: number;
  readonly amps: number;
  /** Current that the wire may carry at its rating, after all derating. */
  readonly allowedAmps: number;
}

function riseToRating(input: TemperatureEstimate): number {
  return input.ratingCelsius - input.ambientCelsius;
}

/**
 * R(T2) = R20 × (T0 + T2) / (T0 + 20), T0 = 234.5 (copper) or 238.1 (aluminium). Any unit of resistance, or of
 * resistance per length; the answer has the same.
 * The AC corrects above 20 degC only; for a colder conductor keep R20, the safe way.
 * Source: AC 43.13-1B par. 11-66. Example: "1.5 temperature correction".
 */
export function resistanceAt(input: {
  readonly material: ConductorMaterial;
  readonly resistanceAt20Celsius: number;
  readonly conductorCelsius: number;
}): number {
  return input.resistanceAt20Celsius * resistanceRatio(input.material, input.conductorCelsius);
}

function resistanceRatio(material: ConductorMaterial, conductorCelsius: number): number {
  const zero = resistanceZero[material];
  return (zero + conductorCelsius) / (zero + 20);
}

/**
 * VD = R′ × L × I, in V.
 * Source: AC 43.13-1B par. 11-66. Examples: "V1" to "V7".
 */
export function voltageDrop(input: {
  readonly ohmsPer1000Feet: number;
  /** Including the ground wire where there is one. */
  readonly lengthFeet: number;
  readonly amps: number;
}): number {
  return (input.ohmsPer1000Feet * input.lengthFeet * input.amps) / 1000;
}

/**
 * L = VD / (R′ × I): longest run in ft, ground wire included, whose drop stays within the allowed one.
 * Source: AC 43.13-1B figures 11-2 and 11-3. Examples: "V3" to "V5".
 */
export function longestRun(input: {
  readonly allowedVolts: number;
  readonly ohmsPer1000Feet: number;
  readonly amps: number;
}): number {
  return (1000 * input.allowedVolts) / (input.ohmsPer1000Feet * input.amps);
}

/**
 * L2 = L1 × (T0 + 20) / (T0 + T2): the longest run in ft at a conductor temperature above 20 degC.
 * Source: AC 43.13-1B par. 11-66, p. 11-22. Example: "1.5 temperature correction".
 */
export function longestRunWarm(input: {
  readonly material: ConductorMaterial;
  readonly longestRunAt20Feet: number;
  readonly conductorCelsius: number;
}): number {
  return input.longestRunAt20Feet / resistanceRatio(input.material, input.conductorCelsius);
}

/**
 * R′ = VD / (L × I): largest resistance in ohm per 1000 ft that a run may have; the gauge to choose is the
 * thinnest one below it.
 * Source: AC 43.13-1B par. 11-66. Examples: "V1", "V2" and "V6".
 */
export function largestResistance(input: {
  readonly allowedVolts: number;
  readonly lengthFeet: number;
  readonly amps: number;
}): number {
  return (1000 * input.allowedVolts) / (input.lengthFeet * input.amps);
}

/**
 * VD = R × I, in V: drop of a contact, a protector or the structure return.
 * Source: Ohm's law. Example: "1.4 structure return".
 */
export function contactDrop(input: { readonly ohms: number; readonly amps: number }): number {
  return input.ohms * input.amps;
}

/**
 * I × factor: nominal rating in A that a switch needs for a continuous current.
 * Source: AC 43.13-1B par. 11-53f. Example: "1.3 switch".
 */
export function switchRating(input: { readonly amps: number; readonly factor: number }): number {
  return input.amps * input.factor;
}

/**
 * rating / factor: largest continuous current in A for a switch of this nominal rating.
 * Source: AC 43.13-1B par. 11-53f (memory). Example: "1.3 switch".
 */
export function largestSwitchCurrent(input: {
  readonly ratingAmps: number;
  readonly factor: number;
}): number {
  return input.ratingAmps / input.factor;
}
