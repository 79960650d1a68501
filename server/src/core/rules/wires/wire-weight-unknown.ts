import type { Problem } from "../../findings/finding";
import { wiringOf } from "../../graph/derivations";
import { conductorWeightMethod } from "../../methods/conductor-weight";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";

export const wireWeightUnknown = defineRule<{ wire: string; what: string }>({
  id: "wire-weight-unknown",
  severity: "error",
  area: "wires",
  title: "The harness is counted by its wires, and the weight of one is not known",
  why:
    "A sum without one of its wires would look like the whole. Weight and balance stay open until every wire has a " +
    "weight. Only that of a copper conductor of a listed gauge can be computed.",
  sources: [conductorWeightMethod.source],
  say: ({ wire, what }) => ({
    what: `Wire ${wire} (${what}) has no weight that can be computed, and the harness is counted by its wires.`,
    todo: "State weight-per-length from the maker's data, or weigh the harness and record it as an added item.",
  }),
  *check(project): Iterable<Problem> {
    if (project.install.harness?.counted?.value !== "computed") return;
    for (const { wire, id, weight } of wiringOf(project).runs) {
      // Without a gauge or a length the record is faulty, and that is told.
      if (weight || !wire.gauge || !wire.length) continue;
      yield {
        rule: "wire-weight-unknown",
        subject: { kind: "wire", id },
        place: (wire.material ?? wire.gauge).place,
        facts: {
          wire: id,
          what: `${wire.material?.value ?? "copper"}, ${formatMeasure(wire.gauge.value.si, "AWG")}`,
        },
        related: [{ place: project.install.harness.counted.place, words: "counted by its wires" }],
      };
    }
  },
  examples: () => [
    {
      title: "Aluminium without its maker's weight",
      text: circuitExample({
        material: "aluminium",
        gauge: "8 AWG",
        sections: ["harness: { arm: 96 in, counted: computed }"],
      }),
      finds: ["P1 \\(aluminium, 8 AWG\\) has no weight that can be computed"],
    },
    {
      title: "Aluminium with it",
      text: circuitExample({
        material: "aluminium",
        gauge: "8 AWG",
        keys: "weight-per-length: 24 lb/1000 ft",
        sections: ["harness: { arm: 96 in, counted: computed }"],
      }),
      finds: [],
    },
    {
      title: "The harness is an added item",
      text: circuitExample({ material: "aluminium", gauge: "8 AWG", sections: ["harness: { arm: 96 in }"] }),
      finds: [],
    },
  ],
});
