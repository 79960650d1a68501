import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { WireResult } from "../../graph/electrical/wires";
import { formatMeasure } from "../../quantities";
import type { Condition } from "../../records/types";
import { defineRule } from "../rule";
import { governing, thickerGauges } from "../wires/governing";
import { conditionName } from "../wording";
import { runPlace } from "./places";
import { runningIn, sourceExample } from "./source-example";

export const loadVoltageLow = defineRule<{
  component: string;
  voltage: number;
  least: number;
  condition: string;
}>({
  id: "load-voltage-low",
  severity: "error",
  area: "sources",
  title: "A component gets less than the lowest voltage at which it works",
  why:
    "Below that voltage its maker does not say that it works. The voltage is that of the whole network: the sources " +
    "that run in the condition, less all that is dropped on the way there and back.",
  sources: [
    {
      document: "Lowest voltage of the component, from its maker's data",
      standing: "record",
    },
  ],
  say: ({ component, voltage, least, condition }) => ({
    what:
      `${component} gets ${formatMeasure(voltage, "V")} in ${condition}, below the ${formatMeasure(least, "V")} ` +
      "at which it still works.",
    todo:
      "Keep it off in this condition or take less from its sources; where its bus has enough voltage and the way " +
      "to it loses too much, fit thicker or shorter wires.",
  }),
  *check(project) {
    const { loads, sources } = electricalOf(project);
    for (const { path, states } of loads) {
      const limit = sources.leastVoltages.get(path.id);
      if (!limit) continue;
      const worst = governing(
        states,
        "at-least",
        ({ voltage }) => voltage,
        () => limit,
      );
      if (!worst) continue;
      const { condition, worst: wires } = worst.state;
      const isKept = holds(worst.value.value, "at-least", limit.value);
      // At full heat it would be too low, and how warm a wire in an unknown bundle gets is not known.
      if (!isKept && wires.some((wire) => isOfUnknownHeat(wire, condition))) continue;
      const gauge = wires[0]?.wire.gauge;
      yield {
        rule: "load-voltage-low",
        subject: { kind: "component", id: path.id },
        place: runPlace(condition, path.id),
        value: worst.value,
        limit,
        sense: "at-least",
        holds: isKept,
        facts: {
          component: path.id,
          voltage: worst.value.value,
          least: limit.value,
          condition: conditionName(condition),
        },
        related: gauge ? [{ place: gauge.place, words: "the wire that drops most on the way" }] : [],
      };
    }
  },
  *remedies({ subject, value }, project) {
    const load = electricalOf(project).loads.find(({ path }) => path.id === subject.id);
    const wire = load?.states.find(({ condition }) => condition.id?.value === value.condition)?.worst[0];
    if (wire) yield* thickerGauges(wire.wire.gauge, wire.id);
  },
  examples: () => [
    {
      title: "On a battery of 25 V behind 20 mohm, of a component that needs 24.5 V",
      text: sourceExample({
        component: "least-voltage: 24.5 V",
        conditions: [runningIn("cruise"), runningIn("source-failed", "failed: [ALT]")],
      }),
      finds: ["RACK gets 24.\\d+ V in source-failed, below the 24.5 V"],
    },
    {
      title: "In a bundle that is misspelt: how warm the wire gets, and what it drops, is not known",
      text: sourceExample({
        component: "least-voltage: 24.5 V",
        conditions: [runningIn("cruise"), runningIn("source-failed", "failed: [ALT]")],
      }).replace("length: 10 ft,", "length: 10 ft, bundle: B-1,"),
      finds: [],
    },
    {
      title: "One that works from 22 V",
      text: sourceExample({
        component: "least-voltage: 22 V",
        conditions: [runningIn("cruise"), runningIn("source-failed", "failed: [ALT]")],
      }),
      finds: [],
    },
  ],
});

function isOfUnknownHeat({ states }: WireResult, condition: Condition): boolean {
  return states.some((state) => state.condition === condition && state.current && !state.drop);
}
