import type { Problem } from "../../findings/finding";
import { airOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { airExample } from "./air-example";

export const coolingDataMissing = defineRule<{
  path: string;
  cools: string;
  mode: string;
  lacks: "cooling" | "heat" | "rise";
}>({
  id: "cooling-data-missing",
  severity: "warning",
  area: "air",
  title: "The kit does not say how much cooling air is needed",
  why: "Without the maker's figures the air that is delivered is held against nothing; none is invented here.",
  sources: [],
  say: ({ path, cools, mode, lacks }) => ({
    what: `The air of ${path} is held against nothing: ${cools} gives no ${what(lacks, mode)}.`,
    todo: "Add the maker's figures to the kit: the heat of each mode and the rise that is allowed, or the air needed.",
  }),
  *check(project): Iterable<Problem> {
    for (const { path, id, conditions } of airOf(project).paths) {
      const first = conditions.find(({ lacks }) => lacks !== undefined);
      if (!first || !path.cools) continue;
      yield {
        rule: "cooling-data-missing",
        subject: { kind: "air-path", id },
        place: path.cools.place,
        facts: { path: id, cools: path.cools.value, mode: first.mode, lacks: first.lacks },
      };
    }
  },
  examples: () => [
    {
      title: "A mode without heat",
      text: airExample({ draw: "{ mode: run, current: 20 A }" }),
      finds: ["CHILLER gives no heat in mode run"],
    },
    { title: "Heat and rise are there", text: airExample(), finds: [] },
  ],
});

function what(lacks: "cooling" | "heat" | "rise", mode: string): string {
  if (lacks === "heat") return `heat in mode ${mode}`;
  return lacks === "rise" ? "rise of its air that it allows" : "cooling data";
}
