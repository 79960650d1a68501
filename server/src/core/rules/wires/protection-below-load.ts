import { type Assessment, holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { DeviceState } from "../../graph/electrical/devices";
import type { PeakResult } from "../../graph/electrical/protection/peaks";
import { ofEach } from "../../graph/recall";
import { none } from "../../none";
import { formatMeasure } from "../../quantities";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { conditionName } from "../wording";
import { circuitExample } from "./circuit-example";
import { type Guard, governing, guardsOf, largerThanJudged } from "./governing";

export const protectionBelowLoad = defineRule<{
  protection: string;
  current: number;
  rating: number;
  condition: string;
  /** The condition has a duration, and the points of the device don't tell how long it holds. */
  isShort: boolean;
}>({
  id: "protection-below-load",
  severity: "error",
  area: "wires",
  title: "The loads behind a breaker or fuse draw more than its rating",
  why:
    "The device opens in normal use, and the equipment behind it is lost when it is needed. In a condition with a " +
    "duration the opening times of the device decide, where they are recorded.",
  sources: [advisoryCircular("par. 11-48", "published")],
  say: ({ protection, current, rating, condition, isShort }) => ({
    what:
      `${protection} carries ${formatMeasure(current, "A")}, above its rating of ${formatMeasure(rating, "A")} ` +
      `(${condition}).`,
    todo:
      "Take a larger device, with wires to match, or move loads to another one." +
      (isShort ? " For a peak that it holds, record its maker's opening times in the kit." : ""),
  }),
  check: ofEach(guardsOf, judge, (project) => electricalOf(project).protection.peaks),
  remedies: largerThanJudged,
  examples: () => [
    {
      title: "18 A behind a 15 A breaker",
      text: circuitExample({ device: "{ id: CB-20, kind: breaker, rating: 15 A }" }),
      finds: ["CB-RACK carries 18 A, above its rating of 15 A"],
    },
    { title: "18 A behind a 20 A breaker", text: circuitExample(), finds: [] },
    {
      title: "For 90 s, of a breaker with no opening times",
      text: circuitExample({ device: "{ id: CB-20, kind: breaker, rating: 15 A }", duration: "90 s" }),
      finds: ["CB-RACK carries 18 A, above its rating of 15 A"],
    },
    {
      title: "For 90 s, of a breaker that opens after 100 s at 18 A",
      text: circuitExample({
        device:
          "{ id: CB-20, kind: breaker, rating: 15 A, opening: [{ at: 120 %, earliest: 100 s, latest: 1000 s }, " +
          "{ at: 200 %, earliest: 8 s, latest: 40 s }] }",
        duration: "90 s",
      }),
      finds: [],
    },
  ],
});

function currentThrough({ current }: DeviceState) {
  return current;
}

/** A peak that is held against the opening times of the device is no matter of its rating. */
function* judge({ place, id, rating, currents }: Guard, peaks: readonly PeakResult[]): Iterable<Assessment> {
  const timed = peaks.find(({ device }) => device.id === id)?.states ?? none;
  const lasting = currents.filter(({ condition }) => !timed.some((peak) => peak.condition === condition));
  const worst = governing(lasting, "at-most", currentThrough, () => rating);
  if (!worst) return;
  yield {
    rule: "protection-below-load",
    subject: { kind: "protection", id },
    place,
    value: worst.value,
    limit: rating,
    sense: "at-most",
    holds: holds(worst.value.value, "at-most", rating.value),
    facts: {
      protection: id,
      current: worst.value.value,
      rating: rating.value,
      condition: conditionName(worst.state.condition),
      isShort: worst.state.condition.duration !== undefined,
    },
    related: [],
  };
}
