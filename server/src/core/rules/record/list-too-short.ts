import type { RecordFacts } from "../../records/problem-facts";
import { recordExample } from "../example-record";
import { defineRule } from "../rule";
import { nameOf, sentence } from "../wording";

export const listTooShort = defineRule<RecordFacts["list-too-short"]>({
  id: "list-too-short",
  severity: "error",
  area: "record",
  title: "A list has fewer entries than its meaning needs",
  why: "Two corners enclose nothing, and a limit without a point limits nothing: what rests on the list can't be checked.",
  sources: [],
  say: ({ found, least, ...where }) => ({
    what: `${sentence(nameOf(where))} has ${entries(found)}; it needs ${least} or more.`,
    todo: `Add at least ${entries(least - found)}.`,
  }),
  examples: () => [
    {
      title: "A polygon of two corners",
      text: polygon("{ x: 0 in, y: 0 in }, { x: 5 in, y: 0 in }"),
      finds: ["'points' of 'opening' of cutout C1 has 2 entries; it needs 3 or more"],
    },
    {
      title: "A triangle",
      text: polygon("{ x: 0 in, y: 0 in }, { x: 5 in, y: 0 in }, { x: 3 in, y: 4 in }"),
      finds: [],
    },
  ],
});

function entries(count: number): string {
  return count === 1 ? "1 entry" : `${count === 0 ? "no" : count} entries`;
}

function polygon(points: string): string {
  const opening = `shape: polygon\n      points: [${points}]`;
  return recordExample({
    sections: `cutouts:\n  - id: C1\n    panel: AFT-FLOOR\n    opening:\n      ${opening}`,
  });
}
