import { solidsSource } from "../../graph/placement/boxes";
import { freeRoomParagraphs } from "../../tables/cockpit-paragraphs";
import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { heldRoutes, type RouteFacts, routeWords } from "../wires/passed-route";
import { routeAlong, routeExample } from "../wires/route-example";
import { movesOfRoute } from "../wires/route-moves";

export const lineRouteTooNear = defineRule<RouteFacts>({
  id: "line-route-too-near",
  severity: "error",
  area: "lines",
  title: "A hose's or tube's route comes too near to a control run",
  why:
    "A line that touches a control jams it, and is sawn through by its cable. Here the distance is computed from the " +
    "line's recorded route, straight from point to point. The airframe's own clearance of a control run is kept first; the " +
    "distance to control cables is from memory and only warns. A guard or a clamp counts where the line's pass by a control " +
    "cable says so. Wires are judged from their side.",
  sources: [
    wireInstallationLimits.controlCableSeparation.source,
    ...freeRoomParagraphs.slice(0, 1),
    solidsSource,
  ],
  say: (facts) => routeWords("Line", facts),
  check: (project) => heldRoutes("line-route-too-near", "line", project),
  remedies: movesOfRoute,
  examples: () => [
    {
      title: "Nearer to a control cable than its manual allows",
      text: routeExample({
        line: `kind: tube, fluid: water, dash: 8, material: steel, route: ${routeAlong("11 in", "20 in")}`,
        cable: "12.5 in",
      }),
      finds: ["Line L1 passes control run ELEVATOR at 0.75 in .*; 1 in must be kept"],
    },
    {
      title: "As the manual asks, but nearer than cables are passed",
      text: routeExample({
        line: `kind: tube, fluid: water, dash: 8, material: steel, route: ${routeAlong("10 in", "20 in")}`,
        cable: "12.5 in",
      }),
      finds: ["at 1.75 in .*; 3 in must be kept"],
    },
    {
      title: "The same behind a guard",
      text: routeExample({
        line: `kind: tube, fluid: water, dash: 8, material: steel, route: ${routeAlong("10 in", "20 in")}, passes: [{ by: control-cable, distance: 1.75 in, guarded: true }]`,
        cable: "12.5 in",
      }),
      finds: [],
    },
  ],
});
