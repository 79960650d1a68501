import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { splitToSize } from "./bundle-split";
import { circuitExample } from "./circuit-example";
import { holdRecorded } from "./recorded";

const limit = wireInstallationLimits.bundleWires;

export const bundleTooLarge = defineRule<{ bundle: string; count: number; most: number }>({
  id: "bundle-too-large",
  severity: "warning",
  area: "wires",
  title: "A bundle has more wires than is usual",
  why:
    "A thick bundle is hard to support, to bend and to mend, its inner wires run hot, and one fault in it reaches many " +
    "circuits. 75 wires, or 2 in across, is the usual end.",
  sources: [limit.source],
  say: ({ bundle, count, most }) => ({
    what: `Bundle ${bundle} has ${count} wires; more than ${most} is not usual.`,
    todo: "Share the wires out among smaller bundles.",
  }),
  *check({ install }) {
    for (const { id, wires } of install.bundles ?? []) {
      const held =
        id &&
        holdRecorded(
          {
            subject: { kind: "bundle", id: id.value },
            quantity: "bundle-count",
            name: "wires in the bundle",
            written: wires,
          },
          limit,
          "most-bundle-wires",
        );
      if (!held) continue;
      yield {
        ...held,
        rule: "bundle-too-large",
        facts: { bundle: id.value, count: held.value.value, most: held.limit.value },
      };
    }
  },
  *remedies({ subject, limit }, project) {
    yield* splitToSize(subject.id, limit.value, project);
  },
  examples: [
    {
      title: "Ninety wires",
      text: circuitExample({ bundle: "{ id: B1, wires: 90, loading: 20 % }" }),
      finds: ["B1 has 90 wires; more than 75 is not usual"],
    },
    {
      title: "Twelve wires",
      text: circuitExample({ bundle: "{ id: B1, wires: 12, loading: 20 % }" }),
      finds: [],
    },
  ],
});
