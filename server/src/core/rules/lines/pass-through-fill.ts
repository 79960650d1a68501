import { holds } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { percentLimit } from "../../graph/lines/limits";
import { convert, formatApart, roundUp } from "../../quantities";
import { passThroughFill as limit } from "../../tables/line-installation-limits";
import { defineRule, rewrite } from "../rule";
import { lineExample } from "./line-example";

export const passThroughFill = defineRule<{ passThrough: string; fill: number; most: number }>({
  id: "pass-through-fill",
  severity: "warning",
  area: "lines",
  title: "A pass-through is fuller than is good for what goes through it",
  why:
    "In a crammed hole nothing can be drawn through without scraping, and all press against the grommet. No published " +
    "figure was found for pass-throughs; the one used is the advice for conduit, from memory, and only warns. The " +
    "hole's own size and reinforcement are for the rules of openings.",
  sources: [limit.source],
  say: ({ passThrough, fill, most }) => {
    const [is, asked] = formatApart(fill, most);
    return {
      what: `Pass-through ${passThrough} is ${is} % full; ${asked} % is usual at most.`,
      todo: "Make the hole larger, or lead some of it through another.",
    };
  },
  *check(project) {
    for (const { passThrough, id, fill } of linesOf(project).passThroughs) {
      const subject = { kind: "pass-through", id } as const;
      const most = percentLimit(subject, "most-pass-through-fill", limit.value, limit.source);
      if (!fill || !most || !passThrough.hole) continue;
      yield {
        rule: "pass-through-fill",
        subject,
        place: passThrough.hole.place,
        value: fill,
        limit: most,
        sense: "at-most",
        holds: holds(fill.value, "at-most", most.value),
        facts: { passThrough: id, fill: fill.value, most: most.value },
        related: [],
      };
    }
  },
  /** Area grows with the square of the diameter. */
  *remedies({ subject, value, limit: most, place }, project) {
    const found = linesOf(project).passThroughs.find(({ id }) => id === subject.id);
    const hole = found?.passThrough.hole;
    if (!hole) return;
    const unit = hole.value.unit === "mm" ? "mm" : "in";
    const wanted = convert(hole.value.si, "m", unit) * Math.sqrt(value.value / most.value);
    const text = `${roundUp(wanted, unit === "mm" ? 1 : 1 / 16)} ${unit}`;
    yield rewrite(`Make the hole of ${subject.id} ${text}`, place, text);
  },
  examples: () => [
    {
      title: "Two 1/2 in tubes through a 3/4 in hole",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 8, material: aluminium",
        sections: [
          "  - { id: L2, kind: tube, fluid: water, dash: 8, material: aluminium }",
          "pass-throughs: [{ id: PT1, hole: 0.75 in, grommet: true, lines: [L1, L2] }]",
        ],
      }),
      finds: ["PT1 is 88.89 % full; 64 % is usual at most"],
    },
    {
      title: "One of them",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 8, material: aluminium",
        sections: ["pass-throughs: [{ id: PT1, hole: 0.75 in, grommet: true, lines: [L1] }]"],
      }),
      finds: [],
    },
  ],
});
