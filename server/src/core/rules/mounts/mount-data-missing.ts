import type { Problem } from "../../findings/finding";
import { mountsOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { mountExample } from "./mount-example";

export const mountDataMissing = defineRule<{ component: string; missing: readonly string[] }>({
  id: "mount-data-missing",
  severity: "warning",
  area: "mounts",
  title: "A mount can't be checked in full, because data of it is missing",
  why:
    "Strengths that no table here covers, places of fasteners and centres of gravity come from the makers. None is " +
    "assumed: what rests on them is left open, and a mount that was not checked must not look like one that holds.",
  sources: [],
  say: ({ component, missing }) => ({
    what: `The mount of ${component} is not checked in full for want of ${listWords(missing, "and")}.`,
    todo: "Record the maker's data, each with the document that gives it.",
  }),
  *check(project): Iterable<Problem> {
    for (const { mount, id, missing } of mountsOf(project).mounts) {
      if (missing.length === 0) continue;
      yield {
        rule: "mount-data-missing",
        subject: { kind: "component", id },
        place: (mount.component ?? mount).place,
        facts: { component: id, missing },
      };
    }
  },
  examples: () => [
    {
      title: "A kit without centre of gravity",
      text: mountExample({ cg: "{ from-front: 6 in }" }),
      finds: ["for want of cg: from-left of RACK in the kit and cg: from-bottom of RACK"],
    },
    {
      title: "Rivets that are pulled, in a sheet of a material that no table covers",
      text: mountExample({
        fastener: "{ kind: ad-rivet, diameter: 1/8 in }",
        shelf: "material: mild steel, thickness: 0.032 in",
      }),
      finds: ["for want of fastener: tension and bearing-strength of shelf AFT-SHELF"],
    },
    {
      title: "Outside, and nothing says what the air pulls",
      text: outside(""),
      finds: ["for want of air-load"],
    },
    {
      title: "Outside, with its drag",
      text: outside(
        ", air-load: { kind: other, area: 0.5 ft2, airspeed: 180 kt, coefficient: 1.1, data: Drag test }",
      ),
      finds: [],
    },
    { title: "Everything recorded", text: mountExample(), finds: [] },
  ],
});

/** A box on the skin. */
function outside(keys: string): string {
  return mountExample({
    document: ", load-factors: AC 43.13-2B",
    category: "utility",
    mounts: [
      `{ component: RACK, where: external, shelf: AFT-SHELF, fastener: { kind: an-bolt, diameter: 3/16 in }, edge-distance: 0.5 in${keys} }`,
    ],
  });
}
