import type { Problem } from "../../findings/finding";
import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { keyPlace } from "../link-places";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { circuitExample } from "./circuit-example";

const { supportSpacing, bendRadius } = wireInstallationLimits;

export const wireRoutingNotRecorded = defineRule<{ missing: readonly string[] }>({
  id: "wire-routing-not-recorded",
  severity: "information",
  area: "wires",
  title: "No wire of the record says how it is supported or bent",
  why:
    "How far apart the supports are, and how tightly a wire is bent, are held against their limits where the record " +
    "gives them. Where it gives them for no wire, silence about them says nothing.",
  sources: [supportSpacing.source, bendRadius.source],
  say: ({ missing }) => ({
    what: `Not checked: ${listWords(
      missing.map((key) => checks[key]!),
      "and",
    )} of wires; no wire records it.`,
    todo: `Add ${listWords(
      missing.map((key) => `'${key}'`),
      "and",
    )} to the wires, at least where they are largest and least${missing.includes("bend-radius") ? ", with their 'outside-diameter'" : ""}.`,
  }),
  *check({ install }): Iterable<Problem> {
    const { wires = [] } = install;
    if (wires.length === 0) return;
    const missing = [
      ...(wires.some((wire) => wire.supportSpacing) ? [] : ["support-spacing"]),
      ...(wires.some((wire) => wire.bendRadius) ? [] : ["bend-radius"]),
    ];
    if (missing.length === 0) return;
    yield {
      rule: "wire-routing-not-recorded",
      place: keyPlace(install, "wires") ?? install.place,
      facts: { missing },
    };
  },
  examples: () => [
    {
      title: "Neither",
      text: circuitExample(),
      finds: ["^Not checked: distance between supports and bend radius of wires; no wire records it"],
    },
    {
      title: "Supports, and no bend",
      text: circuitExample({ keys: "support-spacing: 18 in" }),
      finds: ["^Not checked: bend radius of wires"],
    },
    {
      title: "Both, for the feeder",
      text: circuitExample({
        keys: "support-spacing: 18 in, bend-radius: 2.5 in, outside-diameter: 0.15 in",
      }),
      finds: [],
    },
  ],
});

const checks: Readonly<Record<string, string>> = {
  "support-spacing": "distance between supports",
  "bend-radius": "bend radius",
};
