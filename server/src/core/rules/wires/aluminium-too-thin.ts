import { formatMeasure } from "../../quantities";
import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { thickerGauges } from "./governing";
import { copperInstead, holdGauge, ofEachWire, wireOf } from "./recorded";

const limit = wireInstallationLimits.thinnestAluminiumGauge;

export const aluminiumTooThin = defineRule<{ wire: string; gauge: number; thinnest: number }>({
  id: "aluminium-too-thin",
  severity: "warning",
  area: "wires",
  title: "An aluminium wire is thinner than No. 8",
  why:
    "Aluminium is weaker than copper and creeps under a terminal, and a thin wire has nothing to spare. Sizes below " +
    "No. 8 are not recommended, and the tables do not rate them.",
  sources: [limit.source],
  say: ({ wire, gauge, thinnest }) => ({
    what: `Wire ${wire} is aluminium of ${formatMeasure(gauge, "AWG")}; below ${formatMeasure(thinnest, "AWG")} it is not recommended.`,
    todo: "Take a thicker gauge, or copper, which may be two gauge numbers thinner for the same current.",
  }),
  check: ofEachWire(function* (wire, subject) {
    if (wire.material?.value !== "aluminium") return;
    yield* holdGauge("aluminium-too-thin", wire, subject, limit);
  }),
  *remedies(assessment, project) {
    const wire = wireOf(assessment, project);
    yield* thickerGauges(wire?.gauge, assessment.subject.id);
    yield* copperInstead(wire);
  },
  examples: () => [
    {
      title: "Aluminium of 10 AWG",
      text: circuitExample({ material: "aluminium" }),
      finds: ["P1 is aluminium of 10 AWG; below 8 AWG it is not recommended"],
    },
    {
      title: "Aluminium of 8 AWG",
      text: circuitExample({ material: "aluminium", gauge: "8 AWG" }),
      finds: [],
    },
    { title: "Copper of 10 AWG", text: circuitExample({ material: "copper" }), finds: [] },
  ],
});
