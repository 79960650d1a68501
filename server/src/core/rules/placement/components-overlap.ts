import { solidsSource } from "../../graph/placement/boxes";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { movesThatClear } from "./moves";
import { placementExample } from "./placement-example";
import { type SharedRoom, sharedRooms } from "./shared-room";

export const componentsOverlap = defineRule<SharedRoom>({
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
  check: (project) => sharedRooms("components-overlap", "component", project),
  remedies: movesThatClear,
  examples: () => [
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
