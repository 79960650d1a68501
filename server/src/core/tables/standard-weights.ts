import type { Source } from "../source";

export interface StandardWeight {
  readonly value: number;
  readonly unit: "lb/US gal" | "lb";
  readonly source: Source;
}

const handbook: Source = {
  document: "FAA-H-8083-30",
  edition: "2008",
  at: "chapter 4",
  standing: "published",
  note: "a standard for computing; where the actual weight or density is on record, that counts",
};

/** Weights assumed where a record gives none. */
export const standardWeights = {
  avgas: { value: 6, unit: "lb/US gal", source: handbook },
  turbineFuel: { value: 6.7, unit: "lb/US gal", source: handbook },
  oil: { value: 7.5, unit: "lb/US gal", source: handbook },
  water: { value: 8.35, unit: "lb/US gal", source: handbook },
  /** Crew member or passenger in general aviation. */
  person: { value: 170, unit: "lb", source: handbook },
} as const satisfies Record<string, StandardWeight>;
