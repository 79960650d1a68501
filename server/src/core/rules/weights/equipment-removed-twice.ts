import type { Problem } from "../../findings/finding";
import { groupBy } from "../../graph/group-by";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";

export const equipmentRemovedTwice = defineRule<{ equipment: string }>({
  id: "equipment-removed-twice",
  severity: "error",
  area: "weights",
  title: "A piece of equipment is removed more than once",
  why: "What is listed twice may be two things of which the second was meant to be another. Its weight is taken off once.",
  sources: [],
  say: ({ equipment }) => ({
    what: `${equipment} is removed more than once; its weight is taken off once.`,
    todo: "Keep one entry, or name the other piece of equipment that was meant.",
  }),
  *check({ install }): Iterable<Problem> {
    const removals = (install.removed ?? []).flatMap(({ equipment }) => (equipment ? [equipment] : []));
    for (const [id, [first, ...more]] of groupBy(removals, (equipment) => equipment.value)) {
      for (const { place } of more) {
        yield {
          rule: "equipment-removed-twice",
          subject: { kind: "equipment", id },
          place,
          facts: { equipment: id },
          related: [{ place: first.place, words: "removed here first" }],
        };
      }
    }
  },
  examples: () => [
    {
      title: "The bench is listed twice",
      text: balanceExample({ removed: ["aft-bench", "aft-bench"] }),
      finds: ["^aft-bench is removed more than once"],
    },
    { title: "The bench is listed once", text: balanceExample({ removed: ["aft-bench"] }), finds: [] },
  ],
});
