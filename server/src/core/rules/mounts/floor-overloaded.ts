import { type Assessment, holds } from "../../findings/finding";
import { mountsOf } from "../../graph/derivations";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { mountExample } from "./mount-example";

export const floorOverloaded = defineRule<{
  component: string;
  shelf: string;
  load: number;
  limit: number;
}>({
  id: "floor-overloaded",
  severity: "error",
  area: "mounts",
  title: "A component weighs more on the area that it stands on than the floor bears",
  why:
    "A small heavy box dents a floor that would carry its weight spread out. The weight on the area of the face that " +
    "rests on the floor is held against the floor's own limit, from the airframe's data.",
  sources: [],
  say: ({ component, shelf, load, limit }) => ({
    what:
      `${component} loads ${shelf} with ${formatMeasure(load, "lb/ft2")}; it bears ` +
      `${formatMeasure(limit, "lb/ft2")}.`,
    todo: "Spread the load over a larger plate or over the beams, by data for that.",
  }),
  *check(project): Iterable<Assessment> {
    for (const { mount, id, floorLoad } of mountsOf(project).mounts) {
      if (!floorLoad || !mount.shelf) continue;
      yield {
        rule: "floor-overloaded",
        subject: floorLoad.value.subject,
        place: mount.shelf.place,
        ...floorLoad,
        sense: "at-most",
        holds: holds(floorLoad.value.value, "at-most", floorLoad.limit.value),
        facts: {
          component: id,
          shelf: mount.shelf.value,
          load: floorLoad.value.value,
          limit: floorLoad.limit.value,
        },
        related: [],
      };
    }
  },
  examples: () => [
    {
      title: "40 lb on 12 by 8 in",
      text: mountExample({ weight: "40 lb" }),
      finds: ["^RACK loads AFT-SHELF with 60 lb/ft2; it bears 50 lb/ft2"],
    },
    { title: "15 lb on 12 by 8 in", text: mountExample(), finds: [] },
  ],
});
