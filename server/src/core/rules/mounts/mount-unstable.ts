import type { Problem } from "../../findings/finding";
import { mountsOf } from "../../graph/derivations";
import { staticsSource } from "../../graph/mounts";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { placeOf } from "./held";
import { mountExample } from "./mount-example";

export const mountUnstable = defineRule<{ component: string; directions: readonly string[] }>({
  id: "mount-unstable",
  severity: "error",
  area: "mounts",
  title: "A mount has its fasteners in one line, and the load tips the component over it",
  why:
    "Fasteners in one line can't hold what turns about that line; they would have to pry against the edge of the " +
    "component, and how they do is for a test or the maker to say. One fastener holds no moment at all.",
  sources: [staticsSource],
  say: ({ component, directions }) => ({
    what: `The fasteners of ${component} can't keep it from tipping under its load ${listWords(directions, "and")}.`,
    todo: "Fasten it in at least three places that are not in one line, or brace it.",
  }),
  *check(project): Iterable<Problem> {
    for (const result of mountsOf(project).mounts) {
      const directions = result.cases.filter(({ isStable }) => !isStable).map(({ direction }) => direction);
      if (directions.length === 0) continue;
      yield {
        rule: "mount-unstable",
        subject: { kind: "component", id: result.id },
        place: placeOf(result),
        facts: { component: result.id, directions },
        related: result.component.mount
          ? [{ place: result.component.mount.place, words: "fasteners of the kit" }]
          : [],
      };
    }
  },
  examples: () => [
    {
      title: "Two screws across, the centre of gravity above them",
      text: mountExample({
        fasteners: ["{ from-front: 6 in, from-left: 2 in }", "{ from-front: 6 in, from-left: 6 in }"],
      }),
      finds: ["^The fasteners of RACK can't keep it from tipping under its load forward"],
    },
    { title: "Four places", text: mountExample(), finds: [] },
  ],
});
