import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { circuitExample } from "../wires/circuit-example";

export const conditionsNotRecorded = defineRule<{ kit: string }>({
  id: "conditions-not-recorded",
  severity: "information",
  area: "sources",
  title: "The kit draws current, but the record has no conditions",
  why:
    "A condition says which loads run, in which modes, at which altitude and temperature. Without one there is no " +
    "current in any wire, and silence about wires, protection and sources says nothing.",
  sources: [],
  say: ({ kit }) => ({
    what: `Not checked: wires, protection and sources; no condition says when the loads of ${kit} run.`,
    todo: "Add 'conditions': one for each phase in which the loads run, and one for after the loss of a source.",
  }),
  *check({ install, kit }): Iterable<Problem> {
    const hasLoads = kit?.components?.some(({ draws }) => (draws?.length ?? 0) > 0);
    if (!hasLoads || (install.conditions?.length ?? 0) > 0) return;
    yield {
      rule: "conditions-not-recorded",
      place: install.kit && "path" in install.kit ? install.kit.path.place : install.place,
      facts: { kit: kit?.kit?.number?.value ?? "the kit" },
    };
  },
  examples: () => [
    {
      title: "A load, and not a word about when it runs",
      text: circuitExample().replace(/conditions:\n.*\n/, ""),
      finds: ["no condition says when the loads of QSR-60 run"],
    },
    { title: "A condition", text: circuitExample(), finds: [] },
  ],
});
