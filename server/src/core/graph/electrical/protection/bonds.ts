import type { Bond } from "../../../records/types";
import { type Bond as BondKind, bondingLimits } from "../../../tables/bonding-limits";
import { covered } from "../../../tables/lookup";
import { derive, type Keep, tabled, type Value, written } from "../../value";

export interface BondResult {
  readonly bond: Bond;
  readonly id: string;
  readonly resistance: Value;
  readonly limit: Value;
  /** Whether the limit itself is allowed. */
  readonly isInclusive: boolean;
}

const kinds = {
  jumper: "jumper-connection",
  frame: "equipment-frame",
  "ground-return": "ground-return",
  static: "static-bond",
} as const satisfies Record<NonNullable<Bond["kind"]>["value"], BondKind>;

/** Bonds whose kind and resistance are known, each with the limit of its kind. */
export function deriveBonds(bonds: readonly Bond[], keep: Keep): BondResult[] {
  return bonds.flatMap((bond): BondResult[] => {
    if (!bond.id || !bond.kind || !bond.resistance) return [];
    const id = bond.id.value;
    const { ohms, isInclusive, source, note } = bondingLimits[kinds[bond.kind.value]];
    const common = { subject: { kind: "bond", id }, unit: "ohm" } as const;
    const resistance = keep(
      derive({
        ...common,
        quantity: "bond-resistance",
        formula: "R",
        operands: { R: written("resistance of the bond", bond.resistance, "ohm") },
        compute: ({ R }) => R,
      }),
    );
    const limit = keep(
      derive({
        ...common,
        quantity: "bond-limit",
        formula: "R_limit",
        operands: {
          R_limit: tabled("limit of this kind of bond", covered(ohms, source, note ? [note] : []), "ohm", [
            bond.kind.place,
          ]),
        },
        compute: ({ R_limit }) => R_limit,
        sources: [source],
        notes: isInclusive ? [] : ["The resistance has to be below the limit, not at it."],
      }),
    );
    return resistance && limit ? [{ bond, id, resistance, limit, isInclusive }] : [];
  });
}
