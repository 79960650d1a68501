/** What a unit that cools gives to its own air: by the kit, and at least. */
import { rejectedHeat } from "../../methods/heat-balance";
import type { Quantity } from "../../quantities";
import type { Component, Draw } from "../../records/types";
import type { Written } from "../../records/written";
import type { Source } from "../../source";
import { derive, type Keep, type Operand, type Value, written } from "../value";

export interface RejectedHeat {
  readonly mode: string;
  /** W, as the kit records it. */
  readonly recorded: Value;
  /** W: the greatest capacity of the mode, and its power. */
  readonly least: Value;
}

export const firstLaw: Source = {
  document: "First law of thermodynamics",
  standing: "derived",
  note: "what a cooling unit takes out and what drives it leave together with its own air",
};

/**
 * Each mode that cools and has a heat. One figure of heat stands for all outside temperatures, so that it has to
 * do for the greatest capacity.
 */
export function rejectedHeats(
  { id, draws, conditioning }: Component,
  nominal: Written<Quantity<"voltage">> | undefined,
  keep: Keep,
): RejectedHeat[] {
  return (draws ?? []).flatMap((draw): RejectedHeat[] => {
    const { mode, heat } = draw;
    if (!id || !mode || !heat) return [];
    const [most] = (conditioning ?? [])
      .filter((one) => one.mode?.value === mode.value && one.does?.value === "cool")
      .flatMap(({ capacity }) => capacity ?? [])
      .sort((a, b) => b.value.si - a.value.si);
    if (!most) return [];
    const common = { subject: { kind: "component", id: id.value }, unit: "W" } as const;
    const recorded = keep(
      derive({
        ...common,
        quantity: "heat-to-air",
        formula: "q",
        operands: { q: written(`heat in mode ${mode.value}`, heat, "W") },
        compute: ({ q }) => q,
      }),
    );
    const least = keep(
      derive({
        ...common,
        quantity: "least-heat-to-air",
        ...driven(written(`greatest capacity in mode ${mode.value}`, most, "W"), draw, nominal),
        sources: [firstLaw],
      }),
    );
    return recorded && least ? [{ mode: mode.value, recorded, least }] : [];
  });
}

/** With the power that is recorded, or else the current at the nominal voltage. */
function driven(
  Q: Operand,
  { power, current }: Draw,
  nominal: Written<Quantity<"voltage">> | undefined,
): {
  readonly formula: string;
  readonly operands: Readonly<Record<string, Operand>>;
  readonly compute: (numbers: Readonly<Record<string, number>>) => number;
} {
  if (power) {
    return {
      formula: "Q + P",
      operands: { Q, P: written("power", power, "W") },
      compute: (n) => rejectedHeat(n.Q!, n.P!),
    };
  }
  return {
    formula: "Q + I * U",
    operands: { Q, I: written("current", current, "A"), U: written("nominal voltage", nominal, "V") },
    compute: (n) => rejectedHeat(n.Q!, n.I! * n.U!),
  };
}
