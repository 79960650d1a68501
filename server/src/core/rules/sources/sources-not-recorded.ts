import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { circuitExample } from "../wires/circuit-example";
import { sourceExample } from "./source-example";

export const sourcesNotRecorded = defineRule<{ airframe: string }>({
  id: "sources-not-recorded",
  severity: "information",
  area: "sources",
  title: "The airframe is recorded without its sources",
  why:
    "Without alternator, battery and ground power each bus is taken to hold its nominal voltage whatever is asked of " +
    "it. Whether there is power enough in any phase is then not checked, and silence says nothing.",
  sources: [],
  say: ({ airframe }) => ({
    what: `Not checked: whether there is power enough in any phase; ${airframe} records no sources.`,
    todo: "Add the aircraft's alternators and battery, and the loads it has already, to 'electrical' in its record.",
  }),
  *check({ airframe, install }): Iterable<Problem> {
    const { electrical, aircraft } = airframe ?? {};
    const condition = install.conditions?.find(({ loads }) => (loads?.length ?? 0) > 0);
    if (!electrical || !condition?.id || (electrical.sources?.length ?? 0) > 0) return;
    yield {
      rule: "sources-not-recorded",
      place: condition.id.place,
      facts: { airframe: aircraft?.serial?.value ?? "the airframe" },
    };
  },
  examples: () => [
    {
      title: "Nothing but the nominal voltage",
      text: circuitExample(),
      finds: ["B9-0417 records no sources"],
    },
    { title: "An alternator and a battery", text: sourceExample(), finds: [] },
  ],
});
