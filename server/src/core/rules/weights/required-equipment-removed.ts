import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";

export const requiredEquipmentRemoved = defineRule<{
  equipment: string;
  /** What it is required for, which stays. */
  owner: string | undefined;
}>({
  id: "required-equipment-removed",
  severity: "warning",
  area: "weights",
  title: "Required equipment is taken out, and nothing is said to take its place",
  why:
    "What the equipment list marks as required has to be in the aircraft. It may leave with what it is required for, " +
    "as belts do with their seat, or be replaced; without either the aircraft lacks it.",
  sources: [
    { document: "Marks of the aircraft's equipment list", standing: "record" },
    { document: "Belts leave with their seat", standing: "common-practice" },
  ],
  say: ({ equipment, owner }) => ({
    what: owner
      ? `${equipment} is required with ${owner}, which stays in; it is taken out, and nothing is said to replace it.`
      : `${equipment} is required equipment; it is taken out, and nothing is said to replace it.`,
    todo:
      "Leave it in, or name what takes its place with 'replaced-by'" +
      (owner
        ? `, or take out ${owner} too.`
        : "; where it is required for something that leaves with it, the airframe record says so with 'required-with'."),
  }),
  *check({ airframe, install }): Iterable<Problem> {
    const removed = new Set((install.removed ?? []).map(({ equipment }) => equipment?.value));
    for (const { equipment, replacedBy } of install.removed ?? []) {
      const item = airframe?.equipment?.find(({ id }) => id !== undefined && id.value === equipment?.value);
      if (!equipment || item?.class?.value !== "required" || replacedBy) continue;
      const owner = item.requiredWith?.value;
      if (owner !== undefined && removed.has(owner)) continue;
      yield {
        rule: "required-equipment-removed",
        subject: { kind: "equipment", id: equipment.value },
        place: equipment.place,
        facts: { equipment: equipment.value, owner },
        related: [{ place: item.class.place, words: "its mark in the equipment list" }],
      };
    }
  },
  examples: () => [
    {
      title: "Belts are taken out, and their bench stays",
      text: withBelts("required-with: aft-bench", ["{ equipment: aft-belts }"]),
      finds: ["^aft-belts is required with aft-bench, which stays in; it is taken out"],
    },
    {
      title: "Nothing says what they are required for",
      text: withBelts("", ["{ equipment: aft-belts }", "{ equipment: aft-bench }"]),
      finds: ["^aft-belts is required equipment; it is taken out"],
    },
    {
      title: "They leave with their bench",
      text: withBelts("required-with: aft-bench", ["{ equipment: aft-belts }", "{ equipment: aft-bench }"]),
      finds: [],
    },
    {
      title: "Others take their place",
      text: withBelts("required-with: aft-bench", ["{ equipment: aft-belts, replaced-by: new-belts }"]),
      finds: [],
    },
  ],
});

/** Belts of the bench with one more key, removals, and other belts that are added. */
function withBelts(key: string, removed: readonly string[]): string {
  const belts = `    - { id: aft-belts, class: required, weight: 3.1 lb, arm: 119.5 in${key ? `, ${key}` : ""} }\n`;
  return `${balanceExample({ added: ["{ id: new-belts, weight: 3 lb, arm: 119.5 in }"] }).replace(
    "kit:\n",
    `${belts}kit:\n`,
  )}removed:\n${removed.map((one) => `  - ${one}\n`).join("")}`;
}
