import { type Assessment, holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { PeakResult } from "../../graph/electrical/protection/peaks";
import { ofEach } from "../../graph/recall";
import { openingMethods } from "../../methods/opening-time";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { governing, guardsOf, largerDevices } from "../wires/governing";
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
    function* ({ device: { id, inline }, states }: PeakResult): Iterable<Assessment> {
      const chosen = inline.kind === "protection" ? inline.record.device : undefined;
      const worst = governing(
        states,
        "at-most",
        ({ time }) => time,
        ({ earliest }) => earliest,
      );
      if (!worst || !chosen) return;
      yield {
        rule: "protection-opens-at-peak",
        subject: { kind: "protection", id },
        place: chosen.place,
        value: worst.value,
        limit: worst.limit,
        sense: "at-most",
        holds: holds(worst.value.value, "at-most", worst.limit.value),
        facts: {
          protection: id,
          current: worst.state.current.value,
          time: worst.value.value,
          earliest: worst.limit.value,
          condition: worst.state.condition.id?.value ?? "the condition",
        },
        related: [],
      };
    },
  ),
  *remedies(assessment, project) {
    const guard = guardsOf(project).find(({ id }) => id === assessment.subject.id);
    if (guard) yield* largerDevices(guard, project);
  },
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
