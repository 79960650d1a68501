import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { entryOf } from "../../graph/entries";
import { bondingLimits } from "../../tables/bonding-limits";
import { keyPlace } from "../link-places";
import { defineRule } from "../rule";
import { circuitExample } from "../wires/circuit-example";

export const bondsNotRecorded = defineRule<{ loads: number }>({
  id: "bonds-not-recorded",
  severity: "information",
  area: "protection",
  title: "The record has loads, and no bonds",
  why:
    "Each current comes back to its source through a bond: that of the equipment to the structure, or that of the " +
    "ground point where its return wire ends. A bond that was not measured can drop more voltage than the wires, and " +
    "a fault behind it may not open its breaker.",
  sources: [bondingLimits["ground-return"].source],
  say: ({ loads }) => ({
    what: `Not checked: bonds; the record has none for ${loads === 1 ? "its load" : `its ${loads} loads`}.`,
    todo: "Add 'bonds', each with its kind and its measured resistance; write 'bonds: []' where the work touches none.",
  }),
  *check(project): Iterable<Problem> {
    const { install } = project;
    if (entryOf(install, "bonds")) return;
    const wired = electricalOf(project).trace.paths.filter(({ feed }) => feed.length > 0);
    if (wired.length === 0) return;
    yield {
      rule: "bonds-not-recorded",
      place: keyPlace(install, "wires") ?? install.place,
      facts: { loads: wired.length },
    };
  },
  examples: () => [
    {
      title: "A load with a return wire to a ground point",
      text: circuitExample(),
      finds: ["^Not checked: bonds; the record has none for its load"],
    },
    {
      title: "The bond of the ground point",
      text: circuitExample({
        sections: ["bonds: [{ id: GR-1, kind: ground-return, resistance: 2 mohm, onto: aluminium }]"],
      }),
      finds: [],
    },
    { title: "Said to touch none", text: circuitExample({ sections: ["bonds: []"] }), finds: [] },
  ],
});
