import type { Problem } from "../../findings/finding";
import type { Component } from "../../records/types";
import { placedOrRunning } from "../placed-or-running";
import { defineRule } from "../rule";
import { airExample } from "./air-example";

export const coolingNotChecked = defineRule<{ component: string }>({
  id: "cooling-not-checked",
  severity: "information",
  area: "air",
  title: "No path of air is recorded for what the kit says needs cooling",
  why:
    "What needs cooling air and has no path for it in the record is held against nothing: the record is not shown to " +
    "be wrong here, and not shown to be right.",
  sources: [],
  say: ({ component }) => ({
    what: `${component} needs cooling air, but no air path cools it, so its cooling is not checked.`,
    todo: `Add its way under 'air-paths': the fan, 'cools: ${component}', and the cutouts that its air comes in and goes out by.`,
  }),
  *check({ install, kit }): Iterable<Problem> {
    const cooled = new Set(install.airPaths?.map(({ cools }) => cools?.value));
    const isOpen = ({ cooling }: Component, id: string) => cooling !== undefined && !cooled.has(id);
    for (const { id, place } of placedOrRunning(install, kit, isOpen)) {
      yield {
        rule: "cooling-not-checked",
        subject: { kind: "component", id },
        place,
        facts: { component: id },
      };
    }
  },
  examples: () => [
    {
      title: "A cooling unit that runs without a path for its air",
      text: airExample({ hasPath: false }),
      finds: ["^CHILLER needs cooling air, but no air path cools it"],
    },
    { title: "Its air has a way", text: airExample(), finds: [] },
    {
      title: "It neither runs nor has a place",
      text: airExample({ hasPath: false, loads: "{ FANS: run }" }),
      finds: [],
    },
  ],
});
