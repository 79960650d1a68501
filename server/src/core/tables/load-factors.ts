/**
 * Inertia load factors that the attachment of an item of mass has to hold, as published: those of an emergency
 * landing are ultimate, those of a manoeuvre are limit.
 */
import type { Source } from "../source";
import { covered, type Lookup, list, notCovered } from "./lookup";

export type CertificationBasis =
  | "CAR 3"
  | "14 CFR 23 before Amdt 23-64"
  | "14 CFR 23 from Amdt 23-64"
  | "14 CFR 25"
  | "14 CFR 29";

/** Ways in which a mount is loaded: where the item pulls. Left and right are alike. */
export const loadDirections = ["forward", "aft", "side", "up", "down"] as const;
export type LoadDirection = (typeof loadDirections)[number];

/** Where an item stands, as far as it decides what it may do to the occupants. */
export type MountPlace = "occupant-compartment" | "aft-of-occupants" | "cargo-only" | "external";

type Factors = Readonly<Partial<Record<LoadDirection, number>>>;

interface Row {
  readonly factors: Factors;
  readonly source: Source;
}

const annualEdition = "CFR 2015, Amdt 23-62 level";

const part23 = (at: string): Source => ({
  document: `14 CFR ${at}`,
  edition: annualEdition,
  standing: "published",
});

/** What each basis prescribes for an emergency landing, by place; a direction left out is not prescribed. */
const emergencyRows: Readonly<Partial<Record<CertificationBasis, Partial<Record<MountPlace, Row>>>>> = {
  "14 CFR 23 before Amdt 23-64": {
    "occupant-compartment": {
      factors: { up: 3, forward: 18, side: 4.5 },
      source: part23("23.561(b)(3) and (e)"),
    },
    "aft-of-occupants": { factors: { forward: 9 }, source: part23("23.787(a)(3)") },
    // 23.561(e) is not asked of aeroplanes that carry only cargo (23.787(c)); what holds is the manoeuvre.
    "cargo-only": { factors: {}, source: part23("23.561(e), exception of 23.787(c)") },
  },
  "14 CFR 25": {
    "occupant-compartment": {
      factors: { up: 3, forward: 9, side: 3, down: 6, aft: 1.5 },
      source: { document: "14 CFR 25.561(b)(3)", standing: "published" },
    },
  },
  "14 CFR 29": {
    "occupant-compartment": {
      factors: { up: 4, forward: 16, side: 8, down: 20, aft: 1.5 },
      source: { document: "14 CFR 29.561(b)(3)", standing: "published" },
    },
    "aft-of-occupants": {
      factors: { up: 1.5, forward: 12, side: 6, down: 12, aft: 1.5 },
      source: { document: "14 CFR 29.561(c)", standing: "published", note: "items above or behind" },
    },
  },
};

/**
 * The emergency-landing factors of a place, ultimate. Not covered: a basis whose text gives none or was not
 * read, and a place that it does not speak of.
 *
 * @returns the factors by direction; a direction that is left out is not prescribed
 */
export function emergencyFactors(basis: CertificationBasis | undefined, place: MountPlace): Lookup<Factors> {
  const rows = basis && emergencyRows[basis];
  const row = rows?.[place];
  if (row) return covered(row.factors, row.source);
  const source = {
    document: `${basis ?? "no certification basis"}, emergency landing`,
    standing: "published",
  } as const;
  const quantity = "load factors for";
  return rows
    ? notCovered({ quantity, asked: place, unit: "", covers: list(Object.keys(rows)) }, source)
    : notCovered(
        { quantity, asked: basis ?? "none", unit: "", covers: list(Object.keys(emergencyRows)) },
        source,
      );
}

/** AC 43.13-2A and -2B ch. 1: the table is an image in every copy that was found. */
const staticTests: Source = {
  document: "FAA AC 43.13-2B",
  edition: "3/3/08",
  at: "ch. 1, static-test load factors",
  standing: "memory",
};

/** Read in the text of AC 43.13-2A ch. 1. */
const externalForward: Source = {
  document: "FAA AC 43.13-2A",
  at: "ch. 1, note to the static-test load factors",
  standing: "published",
};

export type Category = "normal" | "utility" | "acrobatic" | "commuter";

const staticTestFactors: Readonly<Partial<Record<Category, Factors>>> = {
  utility: { up: 3, forward: 9, side: 1.5, down: 6.6 },
  acrobatic: { up: 4.5, forward: 9, side: 1.5, down: 9 },
};

/**
 * The static-test factors of AC 43.13-2B ch. 1, ultimate, from memory. Forward, 2 g are enough where the mount
 * is outside, to one side or ahead of the occupants. Not covered: categories that the table was not recalled for.
 */
export function staticTestFactor(
  category: Category | undefined,
  place: MountPlace,
  direction: LoadDirection,
): Lookup<number> {
  const row = category && staticTestFactors[category];
  if (!row) {
    const covers = list(Object.keys(staticTestFactors));
    return notCovered({ quantity: "category", asked: category ?? "none", unit: "", covers }, staticTests);
  }
  if (place === "external" && direction === "forward") return covered(2, externalForward);
  const factor = row[direction];
  if (factor === undefined) {
    return notCovered(
      { quantity: "direction", asked: direction, unit: "", covers: list(Object.keys(row)) },
      staticTests,
    );
  }
  return covered(factor, staticTests);
}

/** A manoeuvre's limit load factors: `positive` loads a mount down, `negative` up. */
export interface ManoeuvreFactors {
  readonly positive: Lookup<number>;
  /** The share of the positive factor that the negative one is, or the factor itself. */
  readonly negative: Lookup<{ readonly share: number } | { readonly factor: number }>;
}

const part23Manoeuvre = part23("23.337");

/** Limit manoeuvre load factor. `weight` is the maximum take-off weight in lb. 14 CFR 23.337(a)(1). */
function normalManoeuvreFactor(weight: number): number {
  return Math.min(3.8, 2.1 + 24_000 / (weight + 10_000));
}

/**
 * 14 CFR 23.337, 25.337 and 29.337. `weight` is the maximum take-off weight in lb. Not covered: other bases, and
 * part 23 without a category.
 */
export function manoeuvreFactors(
  basis: CertificationBasis | undefined,
  category: Category | undefined,
  weight: number | undefined,
): ManoeuvreFactors | undefined {
  if (basis === "14 CFR 29") {
    const source: Source = { document: "14 CFR 29.337", standing: "published" };
    return { positive: covered(3.5, source), negative: covered({ factor: 1 }, source) };
  }
  if (weight === undefined) return undefined;
  if (basis === "14 CFR 25") {
    const source: Source = { document: "14 CFR 25.337", standing: "published" };
    return {
      positive: covered(Math.max(2.5, normalManoeuvreFactor(weight)), source),
      negative: covered({ factor: 1 }, source),
    };
  }
  if (basis !== "14 CFR 23 before Amdt 23-64" || !category) return undefined;
  const positive =
    category === "utility" ? 4.4 : category === "acrobatic" ? 6 : normalManoeuvreFactor(weight);
  return {
    positive: covered(positive, part23Manoeuvre),
    negative: covered({ share: category === "acrobatic" ? 0.5 : 0.4 }, part23Manoeuvre),
  };
}

/** Ultimate over limit. 14 CFR 23.303. What is prescribed as ultimate is not multiplied again (25.303). */
export const factorOfSafety = covered(1.5, part23("23.303"), [
  "A factor that is prescribed as ultimate, such as that of an emergency landing, is not multiplied again (14 CFR 25.303).",
]);

/** On fittings, their attachment and bearing, unless proven by test or resting on comprehensive test data. */
export const fittingFactor = covered(1.15, part23("23.625"));

/** On the local attachments of what is taken out often. */
export const frequentRemovalFactor = covered(1.33, {
  document: "14 CFR 25.561(c)(2)",
  standing: "published",
} satisfies Source);
