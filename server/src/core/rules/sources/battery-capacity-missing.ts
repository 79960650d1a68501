import type { Problem } from "../../findings/finding";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { conditionName } from "../wording";
import { runningIn, sourceExample } from "./source-example";

export const batteryCapacityMissing = defineRule<{ battery: string; condition: string }>({
  id: "battery-capacity-missing",
  severity: "information",
  area: "sources",
  title: "A condition loses its sources, and the battery's capacity is not recorded",
  why: "How long the battery feeds the loads can't be told without it, so nothing is held against the time needed.",
  sources: [],
  say: ({ battery, condition }) => ({
    what: `How long ${battery} lasts in ${condition} is not checked: it has no capacity.`,
    todo: "Add 'capacity' to the battery in the airframe record, from its data plate.",
  }),
  *check(project): Iterable<Problem> {
    const sources = project.airframe?.electrical?.sources ?? [];
    const batteries = sources.filter(({ kind }) => kind?.value === "battery");
    const lost = project.install.conditions?.find(({ phase }) => phase?.value === "source-failed");
    const battery = batteries[0];
    if (!battery?.id || !lost || batteries.some(({ capacity }) => capacity)) return;
    yield {
      rule: "battery-capacity-missing",
      subject: { kind: "source", id: battery.id.value },
      ...placeInAirframe(project, battery.id.place, "the battery"),
      facts: { battery: battery.id.value, condition: conditionName(lost) },
    };
  },
  examples: () => [
    {
      title: "A battery without a capacity, and an alternator that is lost",
      text: sourceExample({
        battery: "bus: MAIN, rating: 200 A",
        conditions: [runningIn("cruise"), runningIn("source-failed", "failed: [ALT]")],
      }),
      finds: ["How long BATT lasts in source-failed is not checked: it has no capacity"],
    },
    {
      title: "No condition in which a source is lost",
      text: sourceExample({ battery: "bus: MAIN, rating: 200 A" }),
      finds: [],
    },
    {
      title: "A battery of 24 Ah",
      text: sourceExample({
        conditions: [runningIn("cruise"), runningIn("source-failed", "failed: [ALT]")],
      }),
      finds: [],
    },
  ],
});
