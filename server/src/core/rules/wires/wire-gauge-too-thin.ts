import { formatMeasure } from "../../quantities";
import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { thickerGauges } from "./governing";
import { holdGauge, ofEachWire, wireOf } from "./recorded";

const limit = wireInstallationLimits.thinnestGauge;

export const wireGaugeTooThin = defineRule<{ wire: string; gauge: number; thinnest: number }>({
  id: "wire-gauge-too-thin",
  severity: "error",
  area: "wires",
  title: "A copper wire is thinner than the thinnest in general use",
  why:
    "A thin wire breaks by handling and vibration long before it is loaded. 22 AWG is said to be the thinnest, 24 " +
    "and 26 AWG an exception for high-strength alloy; the limit is from memory and only warns. Below 20 AWG a wire " +
    "wants extra clamps, support at its terminations, and at least three other wires beside it.",
  sources: [limit.source, wireInstallationLimits.strands.source],
  say: ({ wire, gauge, thinnest }) => ({
    what: `Wire ${wire} is ${formatMeasure(gauge, "AWG")}, thinner than ${formatMeasure(thinnest, "AWG")}.`,
    todo: "Take a thicker gauge, or show that its conductor is a high-strength alloy.",
  }),
  check: ofEachWire(function* (wire, subject) {
    if (wire.material?.value === "aluminium") return;
    yield* holdGauge("wire-gauge-too-thin", wire, subject, limit);
  }),
  *remedies(assessment, project) {
    yield* thickerGauges(wireOf(assessment, project)?.gauge, assessment.subject.id);
  },
  examples: () => [
    {
      title: "24 AWG out and back",
      text: circuitExample({ gauge: "24 AWG", current: "0.2 A" }),
      finds: ["P1 is 24 AWG, thinner than 22 AWG", "P2N"],
    },
    { title: "22 AWG", text: circuitExample({ gauge: "22 AWG", current: "0.2 A" }), finds: [] },
  ],
});
