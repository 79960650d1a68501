import type { Problem } from "../../findings/finding";
import { holds } from "../../findings/finding";
import { formatMeasure, inUnit } from "../../quantities";
import { defineRule } from "../rule";
import { circuitExample } from "../wires/circuit-example";
import { sourceExample } from "./source-example";

export const componentVoltageAboveSystem = defineRule<{
  component: string;
  least: number;
  airframe: string;
  highest: number;
}>({
  id: "component-voltage-above-system",
  severity: "error",
  area: "sources",
  title: "A component needs more voltage than the airframe's electrical system has",
  why:
    "Wires only lose voltage. Where neither the nominal voltage nor any source reaches the lowest voltage at which " +
    "the component works, it works in no condition.",
  sources: [
    {
      document: "Lowest voltage of the component, from its maker's data",
      standing: "record",
    },
  ],
  say: ({ component, least, airframe, highest }) => ({
    what: `${component} needs ${formatMeasure(least, "V")}, but the system of ${airframe} has ${formatMeasure(highest, "V")} at most.`,
    todo: "No wire can mend this: take the unit that its maker makes for this voltage, or see that kit and airframe belong together.",
  }),
  *check({ airframe, kit }): Iterable<Problem> {
    const { nominal, sources = [] } = airframe?.electrical ?? {};
    if (!nominal) return;
    const known = [nominal, ...sources.flatMap(({ voltage }) => voltage ?? [])];
    const highest = Math.max(...known.map(({ value }) => inUnit(value, "V")));
    for (const { id, draws, leastVoltage } of kit?.components ?? []) {
      if (!id || !leastVoltage || !draws?.length) continue;
      const least = inUnit(leastVoltage.value, "V");
      if (holds(least, "at-most", highest)) continue;
      yield {
        rule: "component-voltage-above-system",
        subject: { kind: "component", id: id.value },
        place: leastVoltage.place,
        facts: {
          component: id.value,
          least,
          airframe: airframe?.aircraft?.serial?.value ?? "the airframe",
          highest,
        },
        related: [{ place: nominal.place, words: "the nominal voltage" }],
      };
    }
  },
  examples: () => [
    {
      title: "A component that works from 24 V up, in an aircraft of 14 V",
      text: circuitExample({
        nominal: "14 V",
        components: [
          "{ id: RACK, weight: 31.2 lb, least-voltage: 24 V, draws: [{ mode: survey, current: 18 A }] }",
        ],
      }),
      finds: ["RACK needs 24 V, but the system of B9-0417 has 14 V at most"],
    },
    {
      title: "Its alternator holds 28 V",
      text: sourceExample({ component: "least-voltage: 24 V" }),
      finds: [],
    },
  ],
});
