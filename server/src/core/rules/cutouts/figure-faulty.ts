import type { Facts, Problem } from "../../findings/finding";
import { openingsOf } from "../../graph/derivations";
import type { FaultyFigure } from "../../graph/openings";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { panelExample } from "./panel-example";

export const figureFaulty = defineRule<{ owner: string; id: string; fault: string }>({
  id: "figure-faulty",
  severity: "error",
  area: "cutouts",
  title: "The sizes of an outline do not make a figure",
  why: "Nothing can be measured on it, so the opening, or everything in the panel, goes unchecked.",
  sources: [],
  say: ({ owner, id, fault }) => ({
    what: `The outline of ${owner} ${id} is no figure: ${fault}.`,
    todo: "Check its sizes and the order of its points, around the outline without crossing it.",
  }),
  *check(project): Iterable<Problem> {
    for (const { owner, figure, unit, problem } of openingsOf(project).faulty) {
      if ((figure.points?.length ?? 3) < 3) continue; // too short a list is found where the record is read
      const facts: Facts = { owner: owner.kind, id: owner.id, fault: faultWords(problem, unit) };
      const isOwn = figure.place.file === project.file.file;
      const link = project.install.airframe;
      const place = isOwn ? figure.place : link && "path" in link ? link.path.place : project.install.place;
      yield {
        rule: "figure-faulty",
        subject: owner,
        place,
        facts,
        related: isOwn ? [] : [{ place: figure.place, words: "the outline" }],
      };
    }
  },
  examples: () => [
    {
      title: "A slot shorter than it is wide",
      text: panelExample({ openings: ["{ shape: slot, length: 1 in, width: 3 in }"] }),
      finds: ["cutout C1 is no figure: the slot is 1 in long and 3 in wide"],
    },
    {
      title: "A polygon that crosses itself",
      text: panelExample({
        openings: [
          "{ shape: polygon, points: [{ x: 0 in, y: 0 in }, { x: 3 in, y: 3 in }, { x: 3 in, y: 0 in }, { x: 0 in, y: 3 in }] }",
        ],
      }),
      finds: ["cross"],
    },
    { title: "A circle", text: panelExample(), finds: [] },
  ],
});

function faultWords(problem: FaultyFigure["problem"], unit: FaultyFigure["unit"]): string {
  const size = (value: number) => formatMeasure(value, unit);
  switch (problem.kind) {
    case "size-not-finite":
      return `its ${problem.dimension} is no number`;
    case "size-not-positive":
      return `its ${problem.dimension} is ${size(problem.value)}`;
    case "slot-shorter-than-wide":
      return `the slot is ${size(problem.length)} long and ${size(problem.width)} wide`;
    case "corner-radius-too-large":
      return `its corner radius is ${size(problem.value)}, more than half its smaller side (${size(problem.limit)})`;
    case "point-not-finite":
      return `point ${problem.index + 1} has a coordinate that is no number`;
    case "too-many-points":
      return `it has ${problem.count} points, more than the limit of ${problem.limit}`;
    case "too-few-points":
      return `it has ${problem.count} different points, and a polygon needs three`;
    case "zero-area":
      return "its points lie on one line";
    case "self-intersecting":
      return `the edges after points ${problem.edges[0] + 1} and ${problem.edges[1] + 1} cross or touch`;
  }
}
