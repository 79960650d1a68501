import { type Assessment, holds } from "../../findings/finding";
import { mountsOf } from "../../graph/derivations";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { mountExample } from "./mount-example";

export const shelfOverloaded = defineRule<{ shelf: string; weight: number; limit: number }>({
  id: "shelf-overloaded",
  severity: "error",
  area: "mounts",
  title: "More stands on a shelf or floor than it may carry",
  why:
    "A shelf's limit is for everything on it: the kit, what was there before and stays, and what the record says is " +
    "carried besides. The limit comes from the airframe's data; it is a weight, before any load factor.",
  sources: [],
  say: ({ shelf, weight, limit }) => ({
    what: `${shelf} carries ${formatMeasure(weight, "lb")} in all; it may carry ${formatMeasure(limit, "lb")}.`,
    todo: "Mount something elsewhere, take out what is no longer needed, or reinforce the shelf by data for that.",
  }),
  *check(project): Iterable<Assessment> {
    for (const { id, mounts, load } of mountsOf(project).shelves) {
      const place = mounts.at(-1)?.shelf?.place;
      if (!load || !place) continue;
      yield {
        rule: "shelf-overloaded",
        subject: { kind: "shelf", id },
        place,
        ...load,
        sense: "at-most",
        holds: holds(load.value.value, "at-most", load.limit.value),
        facts: { shelf: id, weight: load.value.value, limit: load.limit.value },
        related: [],
      };
    }
  },
  examples: () => [
    {
      title: "With the radio that stands on it already",
      text: mountExample({
        airframe: ["equipment: [{ id: radio, weight: 50 lb, arm: 140 in, shelf: AFT-SHELF }]"],
      }),
      finds: ["^AFT-SHELF carries 65 lb in all; it may carry 60 lb"],
    },
    { title: "The box alone", text: mountExample(), finds: [] },
  ],
});
