import type { Problem } from "../../findings/finding";
import { ofEach } from "../../graph/recall";
import { none } from "../../none";
import { formatMeasure } from "../../quantities";
import { isAtMost } from "../../rounding";
import type { Source } from "../../source";
import { defineRule } from "../rule";
import { runningIn, sourceExample } from "./source-example";

/** Shortest interval of a load analysis: what lasts longer is a load of it. */
const momentaryUpToSeconds = 5;

const loadIntervals: Source = {
  document: "MIL-E-7016F",
  edition: "20 July 1976",
  standing: "memory",
  note: "loads are analysed over intervals of 5 s, of 5 min and continuous",
};

export const inrushNotMomentary = defineRule<{
  component: string;
  mode: string;
  current: number;
  time: number;
}>({
  id: "inrush-not-momentary",
  severity: "warning",
  area: "sources",
  title: "An inrush lasts so long that it is a load of its own",
  why:
    "An inrush is held against the opening times of breakers and fuses and against the ratings of all sources, and " +
    "nothing else. What lasts longer than the shortest interval of a load analysis also lowers the voltage at the " +
    "component, warms wires and takes charge from the battery: as an inrush none of that is checked.",
  sources: [loadIntervals],
  say: ({ component, mode, current, time }) => ({
    what:
      `Not checked: voltage, wires and sources while ${component} draws its inrush of ${formatMeasure(current, "A")}; ` +
      `at ${formatMeasure(time, "s")} it is a load of its own.`,
    todo:
      `Write it as a mode of its own beside ${mode}, as in { mode: peak, current: ${formatMeasure(current, "A")} }, ` +
      `and let that run in a condition with duration: ${formatMeasure(time, "s")}.`,
  }),
  check: ofEach(
    ({ kit }) => kit?.components ?? none,
    function* ({ id, draws = [] }): Iterable<Problem> {
      for (const { mode, inrush, inrushTime } of draws) {
        if (!id || !inrush || !inrushTime || isAtMost(inrushTime.value.si, momentaryUpToSeconds)) continue;
        yield {
          rule: "inrush-not-momentary",
          subject: { kind: "component", id: id.value },
          place: inrushTime.place,
          facts: {
            component: id.value,
            mode: mode?.value ?? "its mode",
            current: inrush.value.si,
            time: inrushTime.value.si,
          },
        };
      }
    },
  ),
  examples: () => [
    {
      title: "An inrush of 20 s",
      text: sourceExample({ draw: "current: 18 A, inrush: 40 A, inrush-time: 20 s" }),
      finds: ["^Not checked: voltage, wires and sources while RACK draws its inrush of 40 A; at 20 s"],
    },
    {
      title: "The same as a mode of its own in a short condition",
      text: sourceExample({
        draw: "current: 18 A }, { mode: peak, current: 40 A",
        conditions: [
          runningIn("cruise"),
          "{ id: burst, phase: cruise, duration: 20 s, engine-speed: 2000 rpm, altitude: 0 ft, ambient: 40 degC, loads: { RACK: peak } }",
        ],
      }),
      finds: [],
    },
    {
      title: "An inrush that is over after 5 s",
      text: sourceExample({ draw: "current: 18 A, inrush: 40 A, inrush-time: 5 s" }),
      finds: [],
    },
  ],
});
