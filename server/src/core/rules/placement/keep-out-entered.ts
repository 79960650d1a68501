import { formatMeasure } from "../../quantities";
import { freeRoomParagraphs } from "../../tables/cockpit-paragraphs";
import { defineRule } from "../rule";
import { movesThatClear, neighbourWords } from "./moves";
import { cableExample, placementExample } from "./placement-example";
import { type SharedRoom, sharedRooms } from "./shared-room";

export const keepOutEntered = defineRule<SharedRoom>({
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
  check: (project) => sharedRooms("keep-out-entered", "keep-out", project),
  remedies: movesThatClear,
  examples: () => [
    {
      title: "A control cable through the rack",
      text: placementExample({ airframe: [cableExample("4 in")] }),
      finds: ["^RACK stands in the control run ELEVATOR, 2.5 in deep"],
    },
    { title: "The cable beside it", text: placementExample({ airframe: [cableExample("9 in")] }), finds: [] },
  ],
});
