import type { Problem } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { lineExample } from "./line-example";

export const passThroughFillUnknown = defineRule<{ passThrough: string; unknown: readonly string[] }>({
  id: "pass-through-fill-unknown",
  severity: "information",
  area: "lines",
  title: "How full a pass-through is can't be told",
  why:
    "A wire or line without an outside diameter would count as none, and the hole would look emptier than it is. A hose " +
    "has its outside diameter from the table that its specification names.",
  sources: [],
  say: ({ passThrough, unknown }) => ({
    what: `Pass-through ${passThrough}: the outside diameter of ${listWords(unknown, "and")} is not known, so its fill is not either.`,
    todo: "Record the outside diameter of the wire, or the specification of the hose.",
  }),
  *check(project): Iterable<Problem> {
    for (const { passThrough, id, unknown } of linesOf(project).passThroughs) {
      if (unknown.length === 0 || !passThrough.id) continue;
      yield {
        rule: "pass-through-fill-unknown",
        subject: { kind: "pass-through", id },
        place: passThrough.id.place,
        facts: { passThrough: id, unknown },
      };
    }
  },
  examples: () => [
    {
      title: "A hose of no specification",
      text: lineExample({
        line: "kind: hose, fluid: water, dash: 8",
        sections: ["pass-throughs: [{ id: PT1, hole: 1.5 in, grommet: true, lines: [L1] }]"],
      }),
      finds: ["Pass-through PT1: the outside diameter of L1 is not known"],
    },
    {
      title: "A tube",
      text: lineExample({
        sections: ["pass-throughs: [{ id: PT1, hole: 1.5 in, grommet: true, lines: [L1] }]"],
      }),
      finds: [],
    },
  ],
});
