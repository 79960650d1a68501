import type { Problem } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { defineRule } from "../rule";
import { neighbourWords, placeOf } from "./moves";
import { cableExample, placementExample } from "./placement-example";

export const clearanceNotRecorded = defineRule<{
  component: string;
  other: string;
  purpose: string;
  distance: number;
  unit: UnitSymbol;
}>({
  id: "clearance-not-recorded",
  severity: "information",
  area: "placement",
  title: "Nobody says how far a component must keep from room that is kept free",
  why:
    "No published figure was found for how near equipment may come to controls, doors or heads, and none is invented " +
    "here: the aircraft's data give it. Without it only shared room is a fault.",
  sources: [],
  say: ({ component, other, purpose, distance, unit }) => ({
    what:
      `${component} comes within ${formatMeasure(distance, unit)} of ${neighbourWords(purpose, other)}, and no ` +
      "distance to be kept is recorded.",
    todo: `Add it to ${other}: clearance: ..., data: the document that asks for it.`,
  }),
  *check(project): Iterable<Problem> {
    for (const { placed, other, value, least } of placementsOf(project).clearances) {
      if (other.kind !== "keep-out" || least || value.value < 0) continue;
      yield {
        rule: "clearance-not-recorded",
        subject: value.subject,
        place: placeOf(placed),
        facts: {
          component: placed.id,
          other: other.id,
          purpose: other.purpose,
          distance: value.value,
          unit: value.unit as UnitSymbol,
        },
        related: [{ place: other.place, words: other.id }],
      };
    }
  },
  examples: () => [
    {
      title: "A cable without a distance",
      text: placementExample({ airframe: [cableExample("9 in", "")] }),
      finds: ["^RACK comes within 2.5 in of the control run ELEVATOR, and no distance"],
    },
    { title: "With a distance", text: placementExample({ airframe: [cableExample("9 in")] }), finds: [] },
  ],
});
