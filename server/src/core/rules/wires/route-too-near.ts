import { solidsSource } from "../../graph/placement/boxes";
import { freeRoomParagraphs } from "../../tables/cockpit-paragraphs";
import { chafingPractice } from "../../tables/line-installation-limits";
import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { heldRoutes, type RouteFacts, routeWords } from "./passed-route";
import { routeAlong, routeExample } from "./route-example";
import { movesOfRoute } from "./route-moves";

const { fluidLineSeparation, fluidLineSeparationClamped, controlCableSeparation } = wireInstallationLimits;

export const routeTooNear = defineRule<RouteFacts>({
  id: "route-too-near",
  severity: "error",
  area: "wires",
  title: "A bundle's route comes too near to a line or a control run",
  why:
    "A wire that touches a line burns a hole in it when it arcs, and one that touches a cable is sawn through or jams it. " +
    "Here the distance is computed from the recorded routes, straight from point to point, so that nobody has to have " +
    "measured it. A clamp or a guard counts where all recorded passes of the bundle's wires and of the line say so. What " +
    "rests on memory or common practice only warns.",
  sources: [
    fluidLineSeparation.source,
    fluidLineSeparationClamped.source,
    controlCableSeparation.source,
    ...freeRoomParagraphs.slice(0, 1),
    chafingPractice,
    solidsSource,
  ],
  say: (facts) => routeWords("Bundle", facts),
  check: (project) => heldRoutes("route-too-near", "bundle", project),
  remedies: movesOfRoute,
  examples: () => [
    {
      title: "Beside a fuel line",
      text: routeExample({
        bundle: `route: ${routeAlong("10 in", "20 in")}`,
        line: `kind: tube, fluid: fuel, dash: 8, material: steel, route: ${routeAlong("14 in", "20 in")}`,
      }),
      finds: [
        "Bundle B1 passes fuel line L1 at 3.75 in between points 1 and 2 of its route; 6 in must be kept",
      ],
    },
    {
      title: "Clamped on both sides, but still too near; the bundle's own diameter counts",
      text: routeExample({
        bundle: `diameter: 0.5 in, route: ${routeAlong("10 in", "20 in")}`,
        line: `kind: tube, fluid: fuel, dash: 8, material: steel, route: ${routeAlong("12 in", "20 in")}, passes: [{ by: wire, distance: 2 in, clamped: true }]`,
        passes: "[{ by: fuel-line, distance: 2 in, clamped: true }]",
      }),
      finds: ["at 1.5 in between points 1 and 2 of its route; 2 in must be kept"],
    },
    {
      title: "Through a refrigerant hose, and 2 in from a control cable",
      text: routeExample({
        bundle: `route: ${routeAlong("10 in", "20 in")}`,
        line: "kind: hose, fluid: r-134a, dash: 6, route: [{ arm: 100 in, butt-line: 0 in, water-line: 20 in }, { arm: 100 in, butt-line: 30 in, water-line: 20 in }]",
        cable: "12.5 in",
      }),
      finds: ["runs into r-134a line L1", "passes control run ELEVATOR at 2 in .*; 3 in must be kept"],
    },
    {
      title: "Far enough, guarded, or where nothing burns",
      text: routeExample({
        bundle: `route: ${routeAlong("10 in", "20 in")}`,
        line: `kind: hose, fluid: r-134a, dash: 6, route: ${routeAlong("9 in", "20 in")}`,
        cable: "12.5 in",
        passes: "[{ by: control-cable, distance: 2 in, guarded: true }]",
      }),
      finds: [],
    },
  ],
});
