import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import { bundleDeratingSource } from "../../tables/bundle-derating";
import { defineRule, rewrite } from "../rule";
import { circuitExample } from "./circuit-example";

export const bundleCountTooSmall = defineRule<{ bundle: string; stated: number; recorded: number }>({
  id: "bundle-count-too-small",
  severity: "error",
  area: "wires",
  title: "More wires are recorded in a bundle than it is said to have",
  why: "The more wires in a bundle, the less each may carry. A count that is too small overstates all of them.",
  sources: [bundleDeratingSource],
  say: ({ bundle, stated, recorded }) => ({
    what: `Bundle ${bundle} is said to have ${stated} ${stated === 1 ? "wire" : "wires"}, but ${recorded} are recorded in it.`,
    todo: `Count every wire in the bundle, existing ones too: at least ${recorded}.`,
  }),
  check: ofEach(
    (project) => electricalOf(project).bundles,
    function* ({ bundle, id, wires }): Iterable<Problem> {
      const stated = bundle.wires?.value ?? 0;
      if (!bundle.wires || stated < 1 || stated >= wires.length) return;
      yield {
        rule: "bundle-count-too-small",
        subject: { kind: "bundle", id },
        place: bundle.wires.place,
        facts: { bundle: id, stated, recorded: wires.length },
      };
    },
  ),
  *corrections({ facts: { bundle, recorded }, place }) {
    yield rewrite(`Count ${recorded} wires in ${bundle}`, place, String(recorded));
  },
  isSafe: true,
  examples: () => [
    {
      title: "Two wires in a bundle of one",
      text: circuitExample({
        bundle: "{ id: B1, wires: 1, loading: 20 % }",
        wires: [
          "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC, bundle: B1 }",
          "{ id: P2N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC, bundle: B1 }",
        ],
      }),
      finds: ["said to have 1 wire, but 2 are recorded"],
    },
    {
      title: "Room for existing wires",
      text: circuitExample({ bundle: "{ id: B1, wires: 6, loading: 40 % }" }),
      finds: [],
    },
  ],
});
