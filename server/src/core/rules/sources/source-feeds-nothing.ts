import type { Problem } from "../../findings/finding";
import { isConnected } from "../../graph/electrical/source-ways";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { runningIn, sourceExample } from "./source-example";

export const sourceFeedsNothing = defineRule<{ source: string }>({
  id: "source-feeds-nothing",
  severity: "warning",
  area: "sources",
  title: "A source is on no bus",
  why:
    "What is on no bus, and from which neither a feeder nor a wire leads, gives no current in any condition. A battery " +
    "like that carries nothing after the loss of the other sources, and no endurance is computed for it.",
  sources: [],
  say: ({ source }) => ({
    what: `${source} feeds nothing: it is on no bus, and no feeder or wire leads from it.`,
    todo: "Add 'bus' to it in the airframe record, or the feeder that leads from it.",
  }),
  *check(project): Iterable<Problem> {
    for (const source of project.airframe?.electrical?.sources ?? []) {
      if (!source.id || isConnected(source, project)) continue;
      yield {
        rule: "source-feeds-nothing",
        subject: { kind: "source", id: source.id.value },
        ...placeInAirframe(project, source.id.place, "the source"),
        facts: { source: source.id.value },
      };
    }
  },
  examples: () => [
    {
      title: "A battery without its bus",
      text: sourceExample({
        battery: "rating: 200 A, capacity: 24 Ah",
        conditions: [runningIn("cruise"), runningIn("source-failed", "failed: [ALT]")],
      }),
      finds: ["BATT feeds nothing: it is on no bus"],
    },
    {
      title: "The same battery on its bus",
      text: sourceExample({ battery: "bus: MAIN, rating: 200 A, capacity: 24 Ah" }),
      finds: [],
    },
  ],
});
