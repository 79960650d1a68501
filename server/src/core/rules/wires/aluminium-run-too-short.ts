import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { apart, copperInstead, holdRecorded, ofEachWire, wireOf } from "./recorded";

const limit = wireInstallationLimits.aluminiumRun;

export const aluminiumRunTooShort = defineRule<{ wire: string; length: number; least: number }>({
  id: "aluminium-run-too-short",
  severity: "warning",
  area: "wires",
  title: "Aluminium wire is used for a short run",
  why:
    "Aluminium saves weight by the foot, and every termination of it is a joint that can corrode and loosen. On a run " +
    "under 3 ft there is little to save.",
  sources: [limit.source],
  say: ({ wire, length, least }) => {
    const [is, asked] = apart(length, least, "ft");
    return {
      what: `Wire ${wire} is aluminium over ${is}; runs under ${asked} are discouraged.`,
      todo: "Take copper for this run.",
    };
  },
  check: ofEachWire(function* (wire, subject) {
    if (wire.material?.value !== "aluminium") return;
    const held = holdRecorded(
      { subject, quantity: "wire-length", name: "length of the run", written: wire.length },
      limit,
      "least-wire-length",
    );
    if (!held) return;
    yield {
      ...held,
      place: wire.material.place,
      rule: "aluminium-run-too-short",
      facts: { wire: subject.id, length: held.value.value, least: held.limit.value },
      related: [{ place: held.place, words: "length of the run" }],
    };
  }),
  *remedies(assessment, project) {
    yield* copperInstead(wireOf(assessment, project));
  },
  examples: () => [
    {
      title: "Thirty inches of aluminium",
      text: circuitExample({ material: "aluminium", gauge: "8 AWG", length: "30 in" }),
      finds: ["P1 is aluminium over 2.5 ft; runs under 3 ft are discouraged"],
    },
    {
      title: "Twelve feet of aluminium",
      text: circuitExample({ material: "aluminium", gauge: "8 AWG" }),
      finds: [],
    },
    { title: "Thirty inches of copper", text: circuitExample({ length: "30 in" }), finds: [] },
  ],
});
