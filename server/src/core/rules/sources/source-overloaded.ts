import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { conditionName } from "../wording";
import { dropCauses } from "./drop-causes";
import { conditionPlace } from "./places";
import { sourceCapacity } from "./references";
import { existingLoad, runningIn, sourceExample } from "./source-example";

export const sourceOverloaded = defineRule<{
  demand: number;
  capacity: number;
  condition: string;
  battery: number | undefined;
  hasBattery: boolean;
}>({
  id: "source-overloaded",
  severity: "error",
  area: "sources",
  title: "The loads ask for more than alternators and ground power give",
  why:
    "What the sources don't give, the battery does, until it is flat: the voltage falls, and the battery is missing " +
    "when a source is lost. An alternator gives less than its rating at low speed, so each condition counts by itself.",
  sources: [sourceCapacity],
  say: ({ demand, capacity, condition, battery, hasBattery }) => ({
    what:
      `The loads ask for ${formatMeasure(demand, "A")} in ${condition}, above the ${formatMeasure(capacity, "A")} that its ` +
      `sources give${hasBattery && battery !== undefined ? `; the battery must give ${formatMeasure(battery, "A")}` : ""}.`,
    todo: `${hasBattery ? "" : "No battery is recorded to give the rest. "}Run fewer loads in this condition, or have the sources give more: a higher engine speed, or a larger source.`,
  }),
  *check(project) {
    const { balances } = electricalOf(project).sources;
    const batteries = project.airframe?.electrical?.sources?.filter(({ kind }) => kind?.value === "battery");
    for (const { condition, demand, capacity, isCapacityKnown, batteryCurrent } of balances) {
      if (!demand || !capacity) continue; // where the battery alone is left, its endurance is judged
      const isEnough = holds(demand.value, "at-most", capacity.value);
      if (isEnough && !isCapacityKnown) continue; // what a source gives at most proves no more than a shortage
      yield {
        rule: "source-overloaded",
        subject: demand.subject,
        place: conditionPlace(condition),
        value: demand,
        limit: capacity,
        sense: "at-most",
        holds: isEnough,
        facts: {
          demand: demand.value,
          capacity: capacity.value,
          condition: conditionName(condition),
          battery: batteryCurrent?.value,
          hasBattery: Boolean(batteries?.length),
        },
        related: isEnough ? [] : dropCauses(project, condition),
      };
    }
  },
  examples: () => [
    {
      title:
        "38 A at an engine speed at which the alternator gives 31 A, for ten minutes; cruise puts it back",
      text: sourceExample({
        conditions: [runningIn("taxi", "duration: 10 min, engine-speed: 900 rpm"), runningIn("cruise")],
      }),
      finds: ["38 A in taxi, above the 31 A that its sources give; the battery must give 7 A"],
    },
    {
      title: "26 A with one of two alternators lost, and 20 A from the other",
      text: sourceExample({
        moreSources: ["{ id: ALT2, kind: alternator, voltage: 28 V, bus: MAIN, rating: 20 A }"],
        conditions: [runningIn("source-failed", "failed: [ALT], engine-speed: 2000 rpm")],
      }),
      finds: ["26 A in source-failed, above the 20 A that its sources give; the battery must give 6 A"],
    },
    {
      title: "26 A with the only alternator lost: how long the battery lasts is judged instead",
      text: sourceExample({ conditions: [runningIn("source-failed", "failed: [ALT]")] }),
      finds: [],
    },
    {
      title: "38 A at 1,000 rpm, where it gives 40 A",
      text: sourceExample({ conditions: [runningIn("taxi", "engine-speed: 1000 rpm")] }),
      finds: [],
    },
    {
      title: "68 A, more than even the rated output, where the output is not known",
      text: sourceExample({
        alternator: "bus: MAIN, rating: 60 A",
        existing: [existingLoad("avionics", 50, 8)],
      }),
      finds: ["68 A in cruise, above the 60 A"],
    },
  ],
});
