import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { holdRecorded, ofEachWire } from "./recorded";

const limit = wireInstallationLimits.strands;

export const wireStrandsTooFew = defineRule<{ wire: string; strands: number; least: number }>({
  id: "wire-strands-too-few",
  severity: "error",
  area: "wires",
  title: "A wire has too few strands for an aircraft",
  why:
    "Vibration works a conductor until it breaks. Many thin strands bend where a few thick ones, or a solid wire, " +
    "harden and crack.",
  sources: [limit.source],
  say: ({ wire, strands, least }) => ({
    what: `Wire ${wire} has ${strands} ${strands === 1 ? "strand" : "strands"}; fewer than ${least} are not used.`,
    todo: `Take a wire with ${least} strands or more.`,
  }),
  check: ofEachWire(function* (wire, subject) {
    const held = holdRecorded(
      { subject, quantity: "strand-count", name: "number of strands", written: wire.strands },
      limit,
      "least-strands",
    );
    if (!held) return;
    yield {
      ...held,
      rule: "wire-strands-too-few",
      facts: { wire: subject.id, strands: held.value.value, least: held.limit.value },
    };
  }),
  examples: () => [
    {
      title: "Seven strands",
      text: circuitExample({ keys: "strands: 7" }),
      finds: ["P1 has 7 strands; fewer than 19 are not used"],
    },
    { title: "Nineteen strands", text: circuitExample({ keys: "strands: 19" }), finds: [] },
  ],
});
