import { type Assessment, holds } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { solidsSource } from "../../graph/placement/boxes";
import type { UnitSymbol } from "../../quantities";
import { defineRule } from "../rule";
import { apart } from "../wires/recorded";
import { movesThatClear, neighbourWords, placeOf } from "./moves";
import { cableExample, placementExample } from "./placement-example";

export const clearanceTooSmall = defineRule<{
  component: string;
  other: string;
  purpose: string;
  distance: number;
  least: number;
  unit: UnitSymbol<"length">;
}>({
  id: "clearance-too-small",
  severity: "error",
  area: "placement",
  title: "A component comes nearer to something than is allowed",
  why:
    "Things move: structure bends, cables swing, shock mounts give. The distance that has to be kept is recorded with " +
    "the document that asks for it, with the airframe for room that is kept free, with the kit for its components.",
  sources: [solidsSource],
  say: ({ component, other, purpose, distance, least, unit }) => {
    const [is, asked] = apart(distance, least, unit);
    return {
      what: `${component} comes within ${is} of ${neighbourWords(purpose, other)}; ${asked} must be kept.`,
      todo: "Move the component, or turn it.",
    };
  },
  *check(project): Iterable<Assessment> {
    for (const { placed, other, value, least } of placementsOf(project).clearances) {
      if (!least || value.value < 0) continue;
      yield {
        rule: "clearance-too-small",
        subject: value.subject,
        place: placeOf(placed),
        value,
        limit: least,
        sense: "at-least",
        holds: holds(value.value, "at-least", least.value),
        facts: {
          component: placed.id,
          other: other.id,
          purpose: other.purpose,
          distance: value.value,
          least: least.value,
          unit: value.unit as UnitSymbol,
        },
        related: [{ place: other.place, words: other.id }],
      };
    }
  },
  remedies: movesThatClear,
  examples: () => [
    {
      title: "A control cable half an inch from the rack",
      text: placementExample({ airframe: [cableExample("7 in")] }),
      finds: ["^RACK comes within 0.5 in of the control run ELEVATOR; 1 in must be kept"],
    },
    {
      title: "A box too near to a rack that needs air",
      text: placementExample({
        component:
          "size: { length: 20 in, width: 12 in, height: 10 in }, cg: { from-front: 10 in, from-left: 6 in, from-bottom: 5 in }, clearance: { least: 2 in, data: QSR-60 par. 3.2 }",
        box: "arm: 154 in, butt-line: 0 in, water-line: 20 in",
      }),
      finds: ["^BOX comes within 1 in of RACK; 2 in must be kept"],
    },
    {
      title: "The cable 2.5 in away",
      text: placementExample({ airframe: [cableExample("9 in")] }),
      finds: [],
    },
  ],
});
