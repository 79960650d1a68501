import { holds } from "../../findings/finding";
import type { DeviceState } from "../../graph/electrical/devices";
import { ofEach } from "../../graph/recall";
import { formatMeasure } from "../../quantities";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { governing, guardsOf, largerDevices } from "./governing";

export const protectionBelowLoad = defineRule<{
  protection: string;
  current: number;
  rating: number;
  condition: string;
}>({
  id: "protection-below-load",
  severity: "error",
  area: "wires",
  title: "The loads behind a breaker or fuse draw more than its rating",
  why: "The device opens in normal use, and the equipment behind it is lost when it is needed.",
  sources: [advisoryCircular("par. 11-48", "published")],
  say: ({ protection, current, rating, condition }) => ({
    what:
      `${protection} carries ${formatMeasure(current, "A")}, above its rating of ${formatMeasure(rating, "A")} ` +
      `(${condition}).`,
    todo: "Take a larger device, with wires to match, or move loads to another one.",
  }),
  check: ofEach(guardsOf, function* ({ place, id, rating, currents }) {
    const worst = governing(currents, "at-most", currentThrough, () => rating);
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
        condition: worst.state.condition.id?.value,
      },
      related: [],
    };
  }),
  *remedies(assessment, project) {
    const device = guardsOf(project).find(({ id }) => id === assessment.subject.id);
    if (device) yield* largerDevices(device, project);
  },
  examples: () => [
    {
      title: "18 A behind a 15 A breaker",
      text: circuitExample({ device: "{ id: CB-20, kind: breaker, rating: 15 A }" }),
      finds: ["CB-RACK carries 18 A, above its rating of 15 A"],
    },
    { title: "18 A behind a 20 A breaker", text: circuitExample(), finds: [] },
  ],
});

function currentThrough({ current }: DeviceState) {
  return current;
}
