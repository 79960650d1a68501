import type { Assessment } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { PeakResult } from "../../graph/electrical/protection/peaks";
import { ofEach } from "../../graph/recall";
import { openingMethods } from "../../methods/opening-time";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { largerThanJudged } from "../wires/governing";
import { judgeOpening } from "./early-opening";
import { breakerPoints, peakExample } from "./protection-example";

export const protectionOpensAtPeak = defineRule<{
  protection: string;
  current: number;
  time: number;
  earliest: number;
  condition: string;
}>({
  id: "protection-opens-at-peak",
  severity: "error",
  area: "protection",
  title: "A breaker or fuse may open during a short condition in which it carries more than its rating",
  why:
    "A device carries more than its rating for a while. If a condition with a duration outlasts the earliest time at " +
    "which the device may open, the equipment behind it drops off in normal use.",
  sources: [openingMethods.openingTime.source],
  say: ({ protection, current, time, earliest, condition }) => ({
    what:
      `${protection} may open after ${formatMeasure(earliest, "s")} at ${formatMeasure(current, "A")}; ` +
      `${condition} lasts ${formatMeasure(time, "s")}.`,
    todo: "Take a slower or larger device, with wires to match, or move loads to another one.",
  }),
  check: ofEach(
    (project) => electricalOf(project).protection.peaks,
    function* ({ device, states }: PeakResult): Iterable<Assessment> {
      const judged = judgeOpening("protection-opens-at-peak", device, states);
      if (judged) yield judged;
    },
  ),
  remedies: largerThanJudged,
  examples: () => [
    {
      title: "40 A for 20 s through a 20 A breaker that may open after 8 s",
      text: peakExample(
        { devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPoints} }`] },
        "20 s",
      ),
      finds: ["^CB-RACK may open after 8 s at 40 A; burst lasts 20 s\\.$"],
    },
    {
      title: "The same for 5 s",
      text: peakExample({ devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPoints} }`] }, "5 s"),
      finds: [],
    },
  ],
});
