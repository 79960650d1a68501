import { type Assessment, holds } from "../../findings/finding";
import { mountsOf } from "../../graph/derivations";
import { formatApart } from "../../quantities";
import { leastThicknessRatio } from "../../tables/fastener-strengths";
import { defineRule } from "../rule";
import { placeOf } from "./held";
import { mountExample } from "./mount-example";

export const sheetTooThinForBearing = defineRule<{
  component: string;
  shelf: string;
  ratio: number;
  least: number;
}>({
  id: "sheet-too-thin-for-bearing",
  severity: "error",
  area: "mounts",
  title: "The sheet under a mount is too thin for its fasteners",
  why:
    "In a thin sheet a thick shank buckles the edge of its hole before the sheet's bearing strength is reached. Below a " +
    "thickness of 0.18 diameters no bearing strength is published: it has to be found by test.",
  sources: [leastThicknessRatio.source],
  say: ({ component, shelf, ratio, least }) => {
    const [is, asked] = formatApart(ratio, least);
    return {
      what:
        `The sheet of ${shelf} is ${is} times as thick as the fasteners of ${component} are wide; bearing counts ` +
        `from ${asked} on.`,
      todo: "Thicken the sheet with a doubler and record its thickness, take thinner fasteners, or test the joint.",
    };
  },
  *check(project): Iterable<Assessment> {
    for (const result of mountsOf(project).mounts) {
      const held = result.strengths.thickness;
      if (!held) continue;
      yield {
        rule: "sheet-too-thin-for-bearing",
        subject: held.value.subject,
        place: placeOf(result),
        ...held,
        sense: "at-least",
        holds: holds(held.value.value, "at-least", held.limit.value),
        facts: {
          component: result.id,
          shelf: result.mount.shelf?.value ?? "",
          ratio: held.value.value,
          least: held.limit.value,
        },
        related: result.shelf?.thickness
          ? [{ place: result.shelf.thickness.place, words: "thickness of the sheet" }]
          : [],
      };
    }
  },
  examples: () => [
    {
      title: "1/4 in bolts through 0.032 in",
      text: mountExample({
        fastener: "{ kind: an-bolt, diameter: 1/4 in }",
        shelf: "material: 2024-T3 clad, thickness: 0.032 in",
      }),
      finds: ["is 0.128 times as thick as the fasteners of RACK are wide; bearing counts from 0.18 on"],
    },
    { title: "3/16 in bolts through 0.050 in", text: mountExample(), finds: [] },
  ],
});
