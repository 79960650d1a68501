import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import { derive, written } from "../../graph/value";
import { formatMeasure, roundUp } from "../../quantities";
import { bundleDeratingSource, bundleLoadings } from "../../tables/bundle-derating";
import { defineRule, rewrite } from "../rule";
import { conditionName } from "../wording";
import { circuitExample } from "./circuit-example";
import { governing } from "./governing";

export const bundleLoadingUnderstated = defineRule<{
  bundle: string;
  loading: number;
  stated: number;
  condition: string;
}>({
  id: "bundle-loading-understated",
  severity: "error",
  area: "wires",
  title: "A bundle carries a larger share of its capacity than is stated",
  why:
    "The derating of every wire in the bundle rests on the stated loading. Where all wires of the bundle are in " +
    "this record, the loading can be computed, and the stated one must not be below it.",
  sources: [bundleDeratingSource],
  say: ({ bundle, loading, stated, condition }) => ({
    what:
      `Bundle ${bundle} is loaded to ${formatMeasure(loading, "%")} of its capacity, above the ` +
      `${formatMeasure(stated, "%")} stated (${condition}).`,
    todo: "State the larger loading, or take wires out of the bundle.",
  }),
  check: ofEach(
    (project) => electricalOf(project).bundles,
    function* ({ bundle, id, states }) {
      if (!bundle.loading) return;
      const subject = { kind: "bundle", id } as const;
      const limit = derive({
        subject,
        quantity: "bundle-loading",
        unit: "%",
        formula: "stated",
        operands: { stated: written("stated loading", bundle.loading, "%") },
        compute: ({ stated }) => stated,
      });
      if (!limit) return;
      const worst = governing(
        states,
        "at-most",
        ({ loading }) => loading,
        () => limit,
      );
      if (!worst) return;
      yield {
        rule: "bundle-loading-understated",
        subject,
        place: bundle.loading.place,
        value: worst.value,
        limit,
        sense: "at-most",
        holds: holds(worst.value.value, "at-most", limit.value),
        facts: {
          bundle: id,
          loading: worst.value.value,
          stated: limit.value,
          condition: conditionName(worst.state.condition),
        },
        related: [],
      };
    },
  ),
  *remedies({ subject, place, value }) {
    // Stated higher, the wires may carry less, and the share rises again: the next lines of the figure follow.
    const steps = [roundUp(value.value, 1), ...bundleLoadings];
    for (const step of steps.filter((one) => one >= value.value && one <= 100)) {
      const text = `${step} %`;
      yield rewrite(`State that ${subject.id} is loaded to ${text}`, place, text);
    }
  },
  isSafe: true,
  examples: () => [
    {
      title: "One loaded pair called lightly loaded",
      text: circuitExample({
        bundle: "{ id: B1, wires: 2, loading: 20 % }",
        wires: [
          "{ id: P1, from: CB-RACK, to: RACK, gauge: 12 AWG, length: 12 ft, rating: 150 degC, bundle: B1 }",
          "{ id: P2N, from: RACK, to: GND-AFT, gauge: 12 AWG, length: 2 ft, rating: 150 degC, bundle: B1 }",
        ],
      }),
      finds: ["loaded to \\d+(\\.\\d+)? %"],
    },
    {
      title: "The loading as it is",
      text: circuitExample({
        bundle: "{ id: B1, wires: 2, loading: 60 % }",
        wires: [
          "{ id: P1, from: CB-RACK, to: RACK, gauge: 12 AWG, length: 12 ft, rating: 150 degC, bundle: B1 }",
          "{ id: P2N, from: RACK, to: GND-AFT, gauge: 12 AWG, length: 2 ft, rating: 150 degC, bundle: B1 }",
        ],
      }),
      finds: [],
    },
  ],
});
