import { formatNumber } from "../../quantities";
import { defineRule } from "../rule";
import { deviationExample } from "./deviation-example";

export const deviationExceeded = defineRule<{
  rule: string;
  subject: string;
  margin: number;
  leastMargin: number;
}>({
  id: "deviation-exceeded",
  severity: "warning",
  area: "deviations",
  title: "A value has become worse than the deviation accepts",
  why: "The deviation was accepted for a fault of one size, and the fault has grown. The finding counts in full.",
  sources: [],
  say: ({ rule, subject, margin, leastMargin }) => ({
    what:
      `The deviation of ${rule} for ${subject} accepts a margin of ${percent(leastMargin)}, and it is ` +
      `${percent(margin)} now; it does not cover this.`,
    todo: "Bring the value back to what was accepted, or have the deviation accepted anew.",
  }),
  examples: () => [
    {
      title: "A wire that has become thinner",
      text: deviationExample({}, "16 AWG"),
      finds: ["accepts a margin of -60 %, and it is -\\d+.*% now"],
    },
    { title: "Within what was accepted", text: deviationExample(), finds: [] },
  ],
});

function percent(share: number): string {
  return `${formatNumber(100 * share, 3)} %`;
}
