import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { splitToSize } from "./bundle-split";
import { circuitExample } from "./circuit-example";
import { apart, holdRecorded } from "./recorded";

const { bundleWires, bundleDiameter } = wireInstallationLimits;

export const bundleTooLarge = defineRule<{
  bundle: string;
  by: "count" | "diameter";
  /** A number of wires, or in. */
  size: number;
  most: number;
}>({
  id: "bundle-too-large",
  severity: "warning",
  area: "wires",
  title: "A bundle is larger than is usual",
  why:
    "A thick bundle is hard to support, to bend and to mend, its inner wires run hot, and one fault in it reaches many " +
    "circuits. 75 wires, or 2 in across, is the usual end.",
  sources: [bundleWires.source],
  say: ({ bundle, by, size, most }) => {
    const [is, usual] = by === "count" ? [`${size} wires`, `${most}`] : apart(size, most, "in");
    return {
      what: `Bundle ${bundle} ${by === "count" ? `has ${is}` : `is ${is} across`}; more than ${usual} is not usual.`,
      todo: "Share the wires out among smaller bundles.",
    };
  },
  *check({ install }) {
    for (const { id, wires, diameter } of install.bundles ?? []) {
      if (!id) continue;
      const subject = { kind: "bundle", id: id.value } as const;
      const held = {
        count: holdRecorded(
          { subject, quantity: "bundle-count", name: "wires in the bundle", written: wires },
          bundleWires,
          "most-bundle-wires",
        ),
        diameter: holdRecorded(
          { subject, quantity: "bundle-diameter", name: "diameter of the bundle", written: diameter },
          bundleDiameter,
          "widest-bundle",
        ),
      };
      for (const by of ["count", "diameter"] as const) {
        const one = held[by];
        if (!one) continue;
        yield {
          ...one,
          rule: "bundle-too-large",
          facts: { bundle: id.value, by, size: one.value.value, most: one.limit.value },
        };
      }
    }
  },
  *remedies({ subject, value, limit }, project) {
    if (value.quantity === "bundle-count") yield* splitToSize(subject.id, limit.value, project);
  },
  examples: () => [
    {
      title: "Ninety wires",
      text: circuitExample({ bundle: "{ id: B1, wires: 90, loading: 20 % }" }),
      finds: ["B1 has 90 wires; more than 75 is not usual"],
    },
    {
      title: "Sixty thick wires",
      text: circuitExample({ bundle: "{ id: B1, wires: 60, loading: 20 %, diameter: 2.2 in }" }),
      finds: ["B1 is 2.2 in across; more than 2 in is not usual"],
    },
    {
      title: "Twelve wires",
      text: circuitExample({ bundle: "{ id: B1, wires: 12, loading: 20 %, diameter: 0.6 in }" }),
      finds: [],
    },
  ],
});
