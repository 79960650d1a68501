import type { Problem } from "../../findings/finding";
import { groupBy } from "../../graph/group-by";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";

export const componentPlacedTwice = defineRule<{ component: string }>({
  id: "component-placed-twice",
  severity: "error",
  area: "weights",
  title: "A component of the kit is placed more than once",
  why:
    "A component is one thing at one arm. With two arms the empty weight and centre of gravity are open, and they are " +
    "left so.",
  sources: [],
  say: ({ component }) => ({
    what: `${component} is placed more than once.`,
    todo: "Keep one placement. If the kit has several of the part, give each its own component in the kit.",
  }),
  *check({ install }): Iterable<Problem> {
    const placements = (install.placement ?? []).flatMap(({ component }) => (component ? [component] : []));
    for (const [id, [first, ...more]] of groupBy(placements, (component) => component.value)) {
      for (const { place } of more) {
        yield {
          rule: "component-placed-twice",
          subject: { kind: "component", id },
          place,
          facts: { component: id },
          related: [{ place: first.place, words: "placed here first" }],
        };
      }
    }
  },
  examples: () => [
    {
      title: "One rack at two arms",
      text: balanceExample({
        placement: ["{ component: RACK, arm: 112.0 in }", "{ component: RACK, arm: 131.0 in }"],
      }),
      finds: ["^RACK is placed more than once"],
    },
    { title: "One rack at one arm", text: balanceExample(), finds: [] },
  ],
});
