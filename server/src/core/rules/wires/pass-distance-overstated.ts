import type { Problem } from "../../findings/finding";
import { routesOf } from "../../graph/derivations";
import { solidsSource } from "../../graph/placement/boxes";
import { inUnit } from "../../quantities";
import { isBelow } from "../../rounding";
import { defineRule } from "../rule";
import { apart } from "./recorded";
import { routeAlong, routeExample } from "./route-example";

export const passDistanceOverstated = defineRule<{
  kind: string;
  route: string;
  passed: string;
  recorded: number;
  separation: number;
}>({
  id: "pass-distance-overstated",
  severity: "information",
  area: "wires",
  title: "The recorded routes come nearer than the recorded distance",
  why:
    "A distance that somebody recorded and one that follows from the routes say different things about the same place. " +
    "Both are held against their limits; one of them is not as it is installed.",
  sources: [solidsSource],
  say: ({ kind, route, passed, recorded, separation }) => {
    const [is, said] = apart(separation, recorded, "in");
    return {
      what: `By their routes ${kind} ${route} passes ${passed} at ${is}; the least distance recorded is ${said}.`,
      todo: "Measure it, then correct the pass or the route.",
    };
  },
  *check(project): Iterable<Problem> {
    for (const { kind, id, passed, place, value, passes } of routesOf(project).separations) {
      const [least] = passes
        .flatMap(({ distance }) => distance ?? [])
        .sort((a, b) => a.value.si - b.value.si);
      const recorded = least && inUnit(least.value, "in");
      if (recorded === undefined || !isBelow(value.value, recorded)) continue;
      yield {
        rule: "pass-distance-overstated",
        subject: { kind, id },
        place: least!.place,
        facts: { kind, route: id, passed: passed.id, recorded, separation: value.value },
        related: [{ place, words: `route of ${id}` }],
      };
    }
  },
  examples: () => [
    {
      title: "Recorded as farther from a fuel line than the routes are",
      text: routeExample({
        bundle: `route: ${routeAlong("10 in", "20 in")}`,
        line: `kind: tube, fluid: fuel, dash: 8, material: steel, route: ${routeAlong("17 in", "20 in")}`,
        passes: "[{ by: fuel-line, distance: 7 in }]",
      }),
      finds: ["By their routes bundle B1 passes L1 at 6.75 in; the least distance recorded is 7 in"],
    },
    {
      title: "Recorded as nearer, and nothing recorded",
      text: routeExample({
        bundle: `route: ${routeAlong("10 in", "20 in")}`,
        line: `kind: tube, fluid: fuel, dash: 8, material: steel, route: ${routeAlong("17 in", "20 in")}`,
        cable: "0 in",
        passes: "[{ by: fuel-line, distance: 6.5 in }]",
      }),
      finds: [],
    },
  ],
});
