import { type Assessment, holds } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { freeRoomParagraphs } from "../../tables/cockpit-paragraphs";
import { defineRule } from "../rule";
import { movesThatClear, neighbourWords, placeOf } from "./moves";
import { nothingShared } from "./nothing-shared";
import { cableExample, placementExample } from "./placement-example";

export const keepOutEntered = defineRule<{
  component: string;
  other: string;
  purpose: string;
  depth: number;
  unit: UnitSymbol;
}>({
  id: "keep-out-entered",
  severity: "error",
  area: "placement",
  title: "A component stands in room that must be kept free",
  why:
    "Controls jam, doors do not open, a recovery device is held back and heads strike what stands in their way. What must " +
    "be kept free is recorded with the airframe. Where it is entered, the component has to go elsewhere.",
  sources: freeRoomParagraphs,
  say: ({ component, other, purpose, depth, unit }) => ({
    what: `${component} stands in ${neighbourWords(purpose, other)}, ${formatMeasure(depth, unit)} deep.`,
    todo: "Move or turn the component until it is clear.",
  }),
  *check(project): Iterable<Assessment> {
    for (const { placed, other, value, least } of placementsOf(project).clearances) {
      if (other.kind !== "keep-out" || (least && value.value >= 0)) continue;
      yield {
        rule: "keep-out-entered",
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
          purpose: other.purpose,
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
      title: "A control cable through the rack",
      text: placementExample({ airframe: [cableExample("4 in")] }),
      finds: ["^RACK stands in the control run ELEVATOR, 2.5 in deep"],
    },
    { title: "The cable beside it", text: placementExample({ airframe: [cableExample("9 in")] }), finds: [] },
  ],
});
