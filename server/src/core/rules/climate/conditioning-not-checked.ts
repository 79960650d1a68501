import type { Problem } from "../../findings/finding";
import type { Component } from "../../records/types";
import { placedOrRunning } from "../placed-or-running";
import { defineRule } from "../rule";
import { climateExample } from "./climate-example";

export const conditioningNotChecked = defineRule<{ component: string }>({
  id: "conditioning-not-checked",
  severity: "information",
  area: "climate",
  title: "No space is recorded that a cooling or heating unit serves",
  why:
    "What a unit cools or heats is held against the sun, the walls, the people and the equipment of a space. Without " +
    "one in the record nobody knows whether the unit is enough.",
  sources: [],
  say: ({ component }) => ({
    what: `${component} cools or heats, but no space is served by it, so its capacity is held against nothing.`,
    todo: `Add the space under 'climate', with 'served-by: [${component}]', its set-point and its cases.`,
  }),
  *check({ install, kit }): Iterable<Problem> {
    const serving = new Set(
      install.climate?.flatMap(({ servedBy }) => servedBy?.map(({ value }) => value) ?? []),
    );
    const isOpen = ({ conditioning = [] }: Component, id: string) =>
      conditioning.length > 0 && !serving.has(id);
    for (const { id, place } of placedOrRunning(install, kit, isOpen)) {
      yield {
        rule: "conditioning-not-checked",
        subject: { kind: "component", id },
        place,
        facts: { component: id },
      };
    }
  },
  examples: () => [
    {
      title: "A cooling unit that runs, and no space",
      text: climateExample().replace("served-by: [CHILLER]", "served-by: []"),
      finds: ["^CHILLER cools or heats, but no space is served by it"],
    },
    { title: "The space that it serves", text: climateExample(), finds: [] },
  ],
});
