import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { runningIn, sourceExample } from "./source-example";

const enduring = "bus: MAIN, rating: 200 A, resistance: 20 mohm, capacity: 24 Ah, endurance: 30 min";

export const sourceLossNotCovered = defineRule<{ battery: string }>({
  id: "source-loss-not-covered",
  severity: "information",
  area: "sources",
  title: "The battery has to last for a time, but no condition is after the loss of a source",
  why:
    "How long the battery lasts depends on what still runs once nothing charges it. No condition tells that, so " +
    "silence about its endurance says nothing.",
  sources: [],
  say: ({ battery }) => ({
    what: `Not checked: whether ${battery} lasts; no condition has phase source-failed.`,
    todo: "Add a condition with 'phase: source-failed', the alternators in its 'failed', and the loads that still run.",
  }),
  *check({ install: { conditions = [] }, airframe }): Iterable<Problem> {
    const isCovered = conditions.some(({ phase }) => phase?.value === "source-failed");
    if (isCovered || !conditions[0]) return; // no conditions at all is a finding of its own
    for (const { id, kind, endurance } of airframe?.electrical?.sources ?? []) {
      if (kind?.value !== "battery" || !endurance || !id) continue;
      yield {
        rule: "source-loss-not-covered",
        subject: { kind: "source", id: id.value },
        place: conditions[0].id?.place ?? conditions[0].place,
        facts: { battery: id.value },
        related: [{ place: endurance.place, words: "the time needed" }],
      };
    }
  },
  examples: () => [
    {
      title: "A battery of which half an hour is asked, and a cruise alone",
      text: sourceExample({ battery: enduring }),
      finds: ["whether BATT lasts"],
    },
    {
      title: "A condition after the loss of the alternator",
      text: sourceExample({
        battery: enduring,
        conditions: [runningIn("cruise"), runningIn("source-failed", "failed: [ALT]")],
      }),
      finds: [],
    },
  ],
});
