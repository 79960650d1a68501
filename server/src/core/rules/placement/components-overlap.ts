import { type Assessment, holds } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { solidsSource } from "../../graph/placement/boxes";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { defineRule } from "../rule";
import { movesThatClear, placeOf } from "./moves";
import { nothingShared } from "./nothing-shared";
import { placementExample } from "./placement-example";

export const componentsOverlap = defineRule<{
  component: string;
  other: string;
  depth: number;
  unit: UnitSymbol;
}>({
  id: "components-overlap",
  severity: "error",
  area: "placement",
  title: "Two components stand in the same place",
  why:
    "Two boxes can't share room. Places are those of the centres of gravity, sizes and centres come from the kit; a wrong " +
    "sign or a component that is turned otherwise shows here first.",
  sources: [solidsSource],
  say: ({ component, other, depth, unit }) => ({
    what: `${component} and ${other} share room, ${formatMeasure(depth, unit)} deep.`,
    todo: "Move or turn one of them until they are clear.",
  }),
  *check(project): Iterable<Assessment> {
    for (const { placed, other, value, least } of placementsOf(project).clearances) {
      if (other.kind !== "component" || (least && value.value >= 0)) continue;
      yield {
        rule: "components-overlap",
        subject: value.subject,
        place: placeOf(placed),
        value,
        limit: nothingShared(value),
        sense: "at-least",
        holds: holds(value.value, "at-least", 0),
        scale: { of: undefined },
        facts: {
          component: placed.id,
          other: other.id,
          depth: Math.abs(value.value),
          unit: value.unit as UnitSymbol,
        },
        related: [{ place: other.place, words: other.id }],
      };
    }
  },
  remedies: movesThatClear,
  examples: [
    {
      title: "A box in the rack",
      text: placementExample({ box: "arm: 152 in, butt-line: 0 in, water-line: 20 in" }),
      finds: ["^BOX and RACK share room, 1 in deep"],
    },
    {
      title: "A box behind the rack",
      text: placementExample({ box: "arm: 154 in, butt-line: 0 in, water-line: 20 in" }),
      finds: [],
    },
  ],
});
