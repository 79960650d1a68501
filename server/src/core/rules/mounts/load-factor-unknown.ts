import type { Problem } from "../../findings/finding";
import { mountsOf } from "../../graph/derivations";
import { emergencyFactors } from "../../tables/load-factors";
import { defineRule } from "../rule";
import { mountExample } from "./mount-example";

const published = emergencyFactors("14 CFR 23 before Amdt 23-64", "occupant-compartment");

export const loadFactorUnknown = defineRule<{ component: string; where: string; asked: string }>({
  id: "load-factor-unknown",
  severity: "warning",
  area: "mounts",
  title: "No emergency load factor is known for where a component is mounted",
  why:
    "What a mount has to hold in a hard landing depends on the aircraft's certification basis. Some bases give no " +
    "numbers, and the text of others was not read: their factors come from the type's own data, and none is assumed.",
  sources: [published.source],
  say: ({ component, where, asked }) => ({
    what: `The mount of ${component} (${where}) is held against no emergency landing: none is known for ${asked}.`,
    todo: `Record the type's own factors under 'load-factors' in the airframe record, with their document.`,
  }),
  *check(project): Iterable<Problem> {
    for (const { mount, id, gap } of mountsOf(project).mounts) {
      if (!gap || gap.covered || !mount.where) continue;
      yield {
        rule: "load-factor-unknown",
        subject: { kind: "component", id },
        place: mount.where.place,
        facts: { component: id, where: mount.where.value, asked: String(gap.reason.asked) },
      };
    }
  },
  examples: () => [
    {
      title: "A basis without numbers",
      text: mountExample({ basis: "14 CFR 23 from Amdt 23-64" }),
      finds: ["^The mount of RACK \\(occupant-compartment\\) is held against no emergency landing"],
    },
    {
      title: "The same, the maker's factors recorded as limit factors",
      text: mountExample({
        basis: "14 CFR 23 from Amdt 23-64",
        airframe: [
          "load-factors: [{ where: occupant-compartment, forward: 12 g, aft: 1 g, side: 3 g, up: 2 g, down: 4 g, stated: limit, data: B9-53 }]",
        ],
      }),
      finds: [],
    },
    {
      title: "The static-test factors of AC 43.13-2B, which the record follows",
      text: mountExample({ basis: "CAR 3", category: "utility", document: ", load-factors: AC 43.13-2B" }),
      finds: [],
    },
    { title: "14 CFR 23 before Amdt 23-64", text: mountExample(), finds: [] },
  ],
});
