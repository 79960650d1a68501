import { holds } from "../../findings/finding";
import { counted } from "../../graph/recorded";
import { derive, type Operand, tabled } from "../../graph/value";
import { covered } from "../../tables/lookup";
import { strandDamageSource } from "../../tables/strand-damage";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { strandDamageOf } from "./damage";
import { ofEachWire } from "./recorded";

export const wireStrandsDamaged = defineRule<{
  wire: string;
  kind: "damaged" | "broken";
  strands: number;
  most: number;
}>({
  id: "wire-strands-damaged",
  severity: "error",
  area: "wires",
  title: "More strands of a wire are nicked or broken than may be",
  why:
    "A nicked strand breaks next, and the rest carry its current and its share of the load. Thin conductors may have " +
    "a few nicks and no broken strand, aluminium none of either.",
  sources: [strandDamageSource],
  say: ({ wire, kind, strands, most }) => ({
    what:
      `Wire ${wire} has ${strands} ${kind === "broken" ? "broken" : "nicked or broken"} ` +
      `${strands === 1 ? "strand" : "strands"}; ${most === 0 ? "none is allowed" : `${most} in all are the most`}.`,
    todo: "Cut the end back to sound strands and terminate it again, or replace the wire.",
  }),
  check: ofEachWire(function* (wire, subject) {
    const found = strandDamageOf(wire);
    if (!found?.covered) return;
    const { gauge, material, strands, nickedStrands, brokenStrands } = wire;
    const n = counted("nicked strands", nickedStrands);
    const b = counted("broken strands", brokenStrands);
    const keys = [gauge?.place, material?.place, strands?.place];
    for (const kind of ["damaged", "broken"] as const) {
      const recorded = kind === "damaged" ? nickedStrands : brokenStrands;
      if (!recorded) continue;
      // Where no broken ones are recorded, the nicked ones alone may already be more than all together may.
      const counts: Record<string, Operand> = kind === "broken" ? { b } : { n, ...(b && { b }) };
      const value = derive({
        subject,
        quantity: `${kind}-strands`,
        unit: "1",
        formula: Object.keys(counts).join(" + "),
        operands: counts,
        compute: (numbers) => Object.values(numbers).reduce((sum, count) => sum + count, 0),
      });
      const limit = derive({
        subject,
        quantity: `most-${kind}-strands`,
        unit: "1",
        formula: "limit",
        operands: {
          limit: tabled(
            "limit of the document",
            covered(found.value[kind], found.source, found.notes),
            "1",
            keys,
          ),
        },
        compute: (numbers) => numbers.limit,
        sources: [found.source],
      });
      if (!value || !limit) continue;
      yield {
        rule: "wire-strands-damaged",
        subject,
        place: recorded.place,
        value,
        limit,
        sense: "at-most",
        holds: holds(value.value, "at-most", limit.value),
        facts: { wire: subject.id, kind, strands: value.value, most: limit.value },
        related: [],
      };
    }
  }),
  examples: () => [
    {
      title: "Four nicks and a broken strand in 12 AWG",
      text: circuitExample({
        gauge: "12 AWG",
        current: "5 A",
        keys: "strands: 37, nicked-strands: 4, broken-strands: 1",
      }),
      finds: [
        "P1 has 5 nicked or broken strands; 4 in all are the most",
        "P1 has 1 broken strand; none is allowed",
      ],
    },
    {
      title: "One nick in aluminium",
      text: circuitExample({ gauge: "8 AWG", keys: "material: aluminium, nicked-strands: 1" }),
      finds: ["P1 has 1 nicked or broken strand; none is allowed"],
    },
    {
      title: "Four nicks in 10 AWG",
      text: circuitExample({ keys: "strands: 37, nicked-strands: 4, broken-strands: 0" }),
      finds: [],
    },
  ],
});
