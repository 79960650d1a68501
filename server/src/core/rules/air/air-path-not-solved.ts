import type { Problem } from "../../findings/finding";
import type { PathGap } from "../../graph/air/paths";
import { airOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { airExample } from "./air-example";

export const airPathNotSolved = defineRule<{ path: string; reason: string; todo: string }>({
  id: "air-path-not-solved",
  severity: "warning",
  area: "air",
  title: "The flow of an air path can't be found from its data",
  why:
    "The flow is where the fan's curve meets that of its path. Beyond the points of the curve nothing is extrapolated, and a " +
    "screen or a passage without data leaves the path's own curve open.",
  sources: [],
  say: ({ path, reason, todo }) => ({
    what: `The air through ${path} is not known: ${reason}.`,
    todo,
  }),
  *check(project): Iterable<Problem> {
    for (const { path, id, gap } of airOf(project).paths) {
      if (!gap) continue;
      yield {
        rule: "air-path-not-solved",
        subject: { kind: "air-path", id },
        place: (path.fan ?? path).place,
        facts: { path: id, ...words(gap) },
      };
    }
  },
  examples: () => [
    {
      title: "A curve that ends before it meets the path's",
      text: airExample({ curve: "[{ flow: 0 cfm, pressure: 200 Pa }, { flow: 20 cfm, pressure: 195 Pa }]" }),
      finds: ["the path's curve passes beyond the last point of the fan's"],
    },
    {
      title: "Pressure that rises with flow",
      text: airExample({
        curve:
          "[{ flow: 0 cfm, pressure: 150 Pa }, { flow: 50 cfm, pressure: 200 Pa }, { flow: 200 cfm, pressure: 0 Pa }]",
      }),
      finds: ["the fan's curve does not fall at its point 2"],
    },
    {
      title: "A screen of another kind without its loss",
      text: airExample({ screen: "{ kind: other, free-area: 60 % }" }),
      finds: ["the screen of C-IN lacks data"],
    },
    { title: "Curves that meet", text: airExample(), finds: [] },
  ],
});

function words(gap: PathGap): { readonly reason: string; readonly todo: string } {
  switch (gap.kind) {
    case "screen":
      return {
        reason: `the screen of ${gap.cutout} lacks data`,
        todo: "Give the sizes of the screen, or its free area and loss coefficient from data.",
      };
    case "component":
      return {
        reason: "the passage of what is cooled lacks data",
        todo: "Give loss, loss-at and loss-density together, from the maker's data.",
      };
    case "before-curve":
      return {
        reason: "the path's curve passes before the first point of the fan's",
        todo: "Add points of less flow to the fan's curve, from its maker's data.",
      };
    case "beyond-curve":
      return {
        reason: "the path's curve passes beyond the last point of the fan's",
        todo: "Add points of more flow to the fan's curve, from its maker's data.",
      };
    case "not-falling":
      return {
        reason: `the fan's curve does not fall at its point ${gap.index + 1}`,
        todo: "Give flow rising and pressure falling from point to point; leave a stalled part out.",
      };
  }
}
