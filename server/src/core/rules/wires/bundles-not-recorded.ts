import type { Problem } from "../../findings/finding";
import { entryOf } from "../../graph/entries";
import { bundleDeratingSource } from "../../tables/bundle-derating";
import { keyPlace } from "../link-places";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";

export const bundlesNotRecorded = defineRule<{ wires: number }>({
  id: "bundles-not-recorded",
  severity: "information",
  area: "wires",
  title: "No wire of the record stands in a bundle",
  why:
    "A wire outside any bundle counts as alone in free air, where it may carry the most. Wires that run together " +
    "warm each other and may carry less. Where the bundles are only left out, what the wires may carry is overstated.",
  sources: [bundleDeratingSource],
  say: ({ wires }) => ({
    what: `Not checked: heat of wires in bundles; each of the ${wires} wires counts as alone in free air.`,
    todo: "Add 'bundles' and name in each wire the one that it runs in; write 'bundles: []' where each runs by itself.",
  }),
  *check({ install }): Iterable<Problem> {
    const { wires = [] } = install;
    // One wire has nothing to be bundled with, but what is in the aircraft.
    if (wires.length < 2 || entryOf(install, "bundles")) return;
    yield {
      rule: "bundles-not-recorded",
      place: keyPlace(install, "wires") ?? install.place,
      facts: { wires: wires.length },
    };
  },
  examples: () => [
    {
      title: "A wire there and a wire back, and no word of bundles",
      text: circuitExample(),
      finds: ["^Not checked: heat of wires in bundles; each of the 2 wires counts as alone"],
    },
    {
      title: "The feeder runs in a bundle",
      text: circuitExample({ bundle: "{ id: B1, wires: 4, loading: 60 % }" }),
      finds: [],
    },
    { title: "Said to run by themselves", text: circuitExample({ sections: ["bundles: []"] }), finds: [] },
  ],
});
