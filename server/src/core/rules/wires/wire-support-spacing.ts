import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { apart, holdRecorded, lengthThatKeeps, ofEachWire, wireOf } from "./recorded";

const limit = wireInstallationLimits.supportSpacing;

export const wireSupportSpacing = defineRule<{ wire: string; spacing: number; most: number }>({
  id: "wire-support-spacing",
  severity: "error",
  area: "wires",
  title: "The supports of a wire are too far apart",
  why:
    "Between supports a wire sags and swings. The farther apart they are, the more it chafes on what is near, and " +
    "the more its ends are pulled. In troughs, ducts and conduit the limit does not hold: leave the spacing out there.",
  sources: [limit.source],
  say: ({ wire, spacing, most }) => {
    const [is, allowed] = apart(spacing, most, "in");
    return {
      what: `Wire ${wire} is supported every ${is}, farther apart than the ${allowed} allowed.`,
      todo: "Add clamps along the run.",
    };
  },
  check: ofEachWire(function* (wire, subject) {
    const held = holdRecorded(
      {
        subject,
        quantity: "support-spacing",
        name: "distance between supports",
        written: wire.supportSpacing,
      },
      limit,
      "widest-support-spacing",
    );
    if (!held) return;
    yield {
      ...held,
      rule: "wire-support-spacing",
      facts: { wire: subject.id, spacing: held.value.value, most: held.limit.value },
    };
  }),
  *remedies(assessment, project) {
    const recorded = wireOf(assessment, project)?.supportSpacing;
    yield* lengthThatKeeps(
      assessment,
      recorded,
      (length) => `Support wire ${assessment.subject.id} every ${length}`,
    );
  },
  examples: () => [
    {
      title: "A clamp every 30 in",
      text: circuitExample({ keys: "support-spacing: 30 in" }),
      finds: ["supported every 30 in, farther apart than the 24 in allowed"],
    },
    { title: "A clamp every 2 ft", text: circuitExample({ keys: "support-spacing: 2 ft" }), finds: [] },
  ],
});
