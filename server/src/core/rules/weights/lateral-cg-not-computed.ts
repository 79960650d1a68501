import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { everyLoadingExample } from "./every-loading-example";
import { changePlace } from "./permitted-limit";

export const lateralCgNotComputed = defineRule<{ items: readonly string[] }>({
  id: "lateral-cg-not-computed",
  severity: "information",
  area: "weights",
  title: "The aircraft's data give a CG to the side, and the change does not say where its items stand",
  why:
    "Where the empty weight statement has a butt line, a change that leaves it out of its items would leave the new " +
    "statement without one. Nothing is taken to stand on the centreline because nobody said so.",
  sources: [],
  say: ({ items }) => ({
    what: `The CG to the side is not computed: ${items.length === 1 ? `${items[0]} has` : `${items.length} items have`} no butt line.`,
    todo: `Add 'butt-line' to ${listWords(items, "and")}.`,
  }),
  *check(project): Iterable<Problem> {
    const { change } = weightsOf(project);
    if (!change.before.buttLine) return;
    const items = change.items.filter(({ buttLine }) => !buttLine).map(({ subject }) => subject.id);
    if (items.length === 0) return;
    yield { rule: "lateral-cg-not-computed", place: changePlace(project), facts: { items } };
  },
  examples: () => [
    {
      title: "Equipment that nobody has measured to the side",
      text: everyLoadingExample({ butt: "6 in", sections: "removed: [{ equipment: aft-bench }]" }),
      finds: ["^The CG to the side is not computed: aft-bench has no butt line"],
    },
    {
      title: "A hose with its weight",
      text: everyLoadingExample({
        butt: "6 in",
        sections:
          "lines: [{ id: L1, kind: hose, fluid: water, dash: 6, installed-weight: { weight: 2.1 lb, arm: 110 in } }]",
      }),
      finds: ["^The CG to the side is not computed: L1 has no butt line"],
    },
    {
      title: "Equipment with its butt line",
      text: everyLoadingExample({
        butt: "6 in",
        bench: ", butt-line: 0 in",
        sections: "removed: [{ equipment: aft-bench }]",
      }),
      finds: [],
    },
  ],
});
