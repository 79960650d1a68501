import { type Assessment, holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { conditionName } from "../wording";
import { conditionPlace } from "./places";
import { existingLoad, runningIn, sourceExample } from "./source-example";

export const batteryEnduranceShort = defineRule<{
  battery: string;
  condition: string;
  isSpent: boolean;
  /** In min; for a spent battery the charge that recognition and landing take, in Ah. */
  value: number;
  /** In min; for a spent battery its usable charge, in Ah. */
  limit: number;
}>({
  id: "battery-endurance-short",
  severity: "error",
  area: "sources",
  title: "The battery does not feed the essential loads for long enough after the loss of every alternator",
  why:
    "Then nothing but the battery is left to reach a landing. Three quarters of its rated capacity count; five minutes " +
    "go by at the full load until the loss is recognised, a shorter peak for as long as it lasts, and ten are kept " +
    "for the landing.",
  sources: [
    {
      document: "14 CFR 23.1353(h)",
      edition: "Amdt 23-62",
      standing: "published",
      note: "the times of 30 and 60 min are from memory",
    },
    {
      document: "Installation manuals 190-01007-A3 and 190-02246-10",
      edition: "rev. 4; rev. 11",
      at: "fig. 3-19; p. 3-38",
      standing: "published",
    },
  ],
  say: ({ battery, condition, isSpent, value, limit }) => ({
    what: isSpent
      ? `${battery} is spent before cruise in ${condition}: recognition and landing take ${formatMeasure(value, "Ah")} ` +
        `of ${formatMeasure(limit, "Ah")} usable.`
      : `${battery} lasts ${formatMeasure(value, "min")} in ${condition}, short of the ${formatMeasure(limit, "min")} needed.`,
    todo: "Shed more loads when the source is lost, keep the kit off then, or fit a larger battery.",
  }),
  *check(project): Iterable<Assessment> {
    const found = electricalOf(project).sources.endurance;
    if (!found) return;
    const { battery, condition, isSpent, usable, reserved, endurance, needed } = found;
    const [value, limit] = isSpent ? [reserved, usable] : [endurance, needed];
    if (!value || !limit) return;
    const sense = isSpent ? "at-most" : "at-least";
    yield {
      rule: "battery-endurance-short",
      subject: { kind: "source", id: battery.id!.value },
      place: conditionPlace(condition),
      value,
      limit,
      sense,
      holds: holds(value.value, sense, limit.value),
      facts: {
        battery: battery.id!.value,
        condition: conditionName(condition),
        isSpent,
        value: value.value,
        limit: limit.value,
      },
      related: [battery.capacity, battery.endurance].flatMap((written, index) =>
        written ? [{ place: written.place, words: index === 0 ? "its capacity" : "the time needed" }] : [],
      ),
    };
  },
  examples: () => [
    {
      title: "24 Ah for a load of 38 A in cruise and 26 A after the loss",
      text: sourceExample({ conditions: [runningIn("cruise"), failed("{ RACK: survey }")] }),
      finds: [],
    },
    {
      title: "The same battery, of which an hour is asked",
      text: sourceExample({
        battery: "bus: MAIN, rating: 200 A, resistance: 20 mohm, capacity: 24 Ah, endurance: 60 min",
        conditions: [runningIn("cruise"), failed("{ RACK: survey }")],
      }),
      finds: ["BATT lasts 39.* min in lost, short of the 60 min needed"],
    },
    {
      title: "A battery of 9 Ah",
      text: sourceExample({
        battery: "bus: MAIN, rating: 200 A, resistance: 20 mohm, capacity: 9 Ah",
        conditions: [runningIn("cruise"), failed("{ RACK: survey }")],
      }),
      finds: ["BATT is spent before cruise in lost: recognition and landing take 7.5 Ah of 6.75 Ah usable"],
    },
    {
      title: "A peak of 20 s in cruise does not last until the loss is recognised",
      text: sourceExample({
        draw: "current: 18 A }, { mode: peak, current: 100 A",
        conditions: [
          runningIn("cruise"),
          "{ id: burst, phase: cruise, duration: 20 s, engine-speed: 2000 rpm, altitude: 0 ft, ambient: 40 degC, loads: { RACK: peak } }",
          failed("{ RACK: survey }"),
        ],
      }),
      finds: [],
    },
    {
      title: "Loads that are shed in their order, and the kit off",
      text: sourceExample({
        existing: [existingLoad("avionics", 12, 8), existingLoad("cabin", 6, 0, ", shed: 1")],
        conditions: [runningIn("cruise"), failed("{}")],
      }),
      finds: [],
    },
  ],
});

function failed(loads: string): string {
  return `{ id: lost, phase: source-failed, failed: [ALT], altitude: 0 ft, ambient: 40 degC, loads: ${loads} }`;
}
