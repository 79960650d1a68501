import { type Assessment, holds, type Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { formatMeasure, roundUp } from "../../quantities";
import { defineRule, rewrite } from "../rule";
import { conditionName } from "../wording";
import { conditionPlace } from "./places";
import { sourceCapacity } from "./references";
import { existingLoad, runningIn, sourceExample } from "./source-example";

/** Engine speeds are set and read in such steps, in rpm. */
const speedStep = 10;

export const idleSpeedTooLow = defineRule<{
  source: string;
  condition: string;
  demand: number;
  speed: number | undefined;
  least: number | undefined;
}>({
  id: "idle-speed-too-low",
  severity: "error",
  area: "sources",
  title: "At this engine speed the alternator does not hold the loads on the ground",
  why:
    "Below the least engine speed the battery gives the rest, and a long taxi with the kit on empties it. The least " +
    "speed follows from the alternator's own points: from there on they hold the demand at every higher speed.",
  sources: [sourceCapacity],
  say: ({ source, condition, demand, speed, least }) =>
    speed !== undefined && least !== undefined
      ? {
          what:
            `${condition} runs the engine at ${formatMeasure(speed, "rpm")}; ${source} needs ` +
            `${formatMeasure(least, "rpm")} to hold ${formatMeasure(demand, "A")} without the battery.`,
          todo: "Taxi at a higher engine speed, or run fewer loads until take-off.",
        }
      : {
          what: `No recorded speed of ${source} holds the ${formatMeasure(demand, "A")} of ${condition} without the battery.`,
          todo: "Run fewer loads in this condition, or fit a larger alternator.",
        },
  *check(project): Iterable<Assessment | Problem> {
    for (const one of electricalOf(project).sources.leastSpeeds) {
      const { condition, source, demand, engineSpeed, speed, isLowestGiven } = one;
      const subject = { kind: "source", id: source.id!.value } as const;
      const place = condition.engineSpeed?.place ?? conditionPlace(condition);
      const facts = {
        source: source.id!.value,
        condition: conditionName(condition),
        demand: demand.value,
        speed: engineSpeed?.value,
        least: speed?.value,
      };
      if (!speed) yield { rule: "idle-speed-too-low", subject, place, facts };
      if (!speed || !engineSpeed) continue;
      const isHeld = holds(engineSpeed.value, "at-least", speed.value);
      if (!isHeld && isLowestGiven) continue; // below the points nothing is known: that is a finding of its own
      yield {
        rule: "idle-speed-too-low",
        subject,
        place,
        value: engineSpeed,
        limit: speed,
        sense: "at-least",
        holds: isHeld,
        facts,
        related: [],
      };
    }
  },
  *remedies({ place, limit, value }) {
    const text = `${roundUp(limit.value, speedStep)} rpm`;
    yield rewrite(`Run ${value.condition ?? "this condition"} at ${text}`, place, text);
  },
  examples: () => [
    {
      title: "38 A at 900 rpm; the points reach that at 978 rpm",
      text: sourceExample({ conditions: [runningIn("taxi", "engine-speed: 900 rpm")] }),
      finds: ["taxi runs the engine at 900 rpm; ALT needs 97\\d.* rpm to hold 38 A"],
    },
    {
      title: "68 A, which a 60 A alternator never holds",
      text: sourceExample({
        existing: [existingLoad("avionics", 50, 8)],
        conditions: [runningIn("taxi", "engine-speed: 900 rpm")],
      }),
      finds: ["No recorded speed of ALT holds the 68 A of taxi"],
    },
    {
      title: "The same loads at 1,000 rpm",
      text: sourceExample({ conditions: [runningIn("taxi", "engine-speed: 1000 rpm")] }),
      finds: [],
    },
  ],
});
