import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { formatApart } from "../../quantities";
import { isBelow } from "../../rounding";
import { bondingLimits } from "../../tables/bonding-limits";
import { defineRule } from "../rule";
import { protectionExample } from "./protection-example";

export const bondResistance = defineRule<{
  bond: string;
  kind: string;
  resistance: number;
  limit: number;
  isInclusive: boolean;
}>({
  id: "bond-resistance",
  severity: "error",
  area: "protection",
  title: "A bond has more resistance than its kind may have",
  why:
    "A bond holds metal parts at one potential and carries fault current back. With too much resistance it heats, " +
    "drops voltage, or lets a charge build up until it sparks.",
  sources: Object.values(bondingLimits).map(({ source }) => source),
  say: ({ bond, kind, resistance, limit, isInclusive }) => {
    const scale = limit < 1 ? { by: 1000, unit: "mohm" } : { by: 1, unit: "ohm" };
    const [found, most] = formatApart(resistance * scale.by, limit * scale.by);
    return {
      what: `Bond ${bond} (${kind}) has ${found} ${scale.unit}; ${isInclusive ? "at most" : "below"} ${most} ${scale.unit} is allowed.`,
      todo: "Clean the joint to bare metal, shorten the jumper or add another one, and measure again.",
    };
  },
  *check(project) {
    for (const { bond, id, resistance, limit, isInclusive } of electricalOf(project).protection.bonds) {
      const [value, most] = [resistance.value, limit.value];
      yield {
        rule: "bond-resistance",
        subject: { kind: "bond", id },
        place: bond.resistance!.place,
        value: resistance,
        limit,
        sense: "at-most",
        holds: isInclusive ? holds(value, "at-most", most) : isBelow(value, most),
        facts: { bond: id, kind: bond.kind?.value, resistance: value, limit: most, isInclusive },
        related: [],
      };
    }
  },
  examples: () => [
    {
      title: "A jumper of 3.2 mohm",
      text: protectionExample({ sections: ["bonds: [{ id: BJ-1, kind: jumper, resistance: 3.2 mohm }]"] }),
      finds: ["Bond BJ-1 \\(jumper\\) has 3.2 mohm; at most 3 mohm"],
    },
    {
      title: "A frame has to be below its limit, not at it",
      text: protectionExample({ sections: ["bonds: [{ id: BJ-1, kind: frame, resistance: 2.5 mohm }]"] }),
      finds: ["has 2.5 mohm; below 2.5 mohm is allowed"],
    },
    {
      title: "A jumper at its limit, and a ground return below it",
      text: protectionExample({
        sections: [
          "bonds:",
          "  - { id: BJ-1, kind: jumper, resistance: 3 mohm }",
          "  - { id: GR-1, kind: ground-return, resistance: 4.9 mohm }",
        ],
      }),
      finds: [],
    },
  ],
});
