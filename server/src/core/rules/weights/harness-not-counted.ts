import type { Problem } from "../../findings/finding";
import { wiringOf } from "../../graph/derivations";
import { entryOf } from "../../graph/entries";
import { conductorWeightMethod } from "../../methods/conductor-weight";
import type { Project } from "../../project";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { keyPlace } from "../link-places";
import { defineRule } from "../rule";
import { circuitExample } from "../wires/circuit-example";

export const harnessNotCounted = defineRule<{ weight: number; unit: UnitSymbol<"mass"> }>({
  id: "harness-not-counted",
  severity: "information",
  area: "weights",
  title: "The wires weigh something, and nothing says that the change counts it",
  why:
    "Wires count only by an added item that stands for them, or by their computed weight where the record asks for " +
    "it. Where it says neither, the new empty weight may have been worked out without them.",
  sources: [conductorWeightMethod.source],
  say: ({ weight, unit }) => ({
    what: `${formatMeasure(weight, unit)} of wires are in no item of the weight change.`,
    todo:
      "Write harness: { arm: 96.0 in, counted: computed }, or add the weighed harness under 'added'; where another " +
      "item has the wires in it, write counted: recorded.",
  }),
  *check(project): Iterable<Problem> {
    const weight = wiringOf(project).harnessWeight;
    if (!weight || isCounted(project)) return;
    yield {
      rule: "harness-not-counted",
      subject: weight.subject,
      place:
        keyPlace(project.install, "harness") ?? keyPlace(project.install, "wires") ?? project.install.place,
      facts: { weight: weight.value, unit: weight.unit as UnitSymbol<"mass"> },
    };
  },
  examples: () => [
    {
      title: "Wires, and nothing that counts them",
      text: circuitExample(),
      finds: ["^0\\.3964 lb of wires are in no item"],
    },
    {
      title: "Counted by their computed weight",
      text: circuitExample({ sections: ["harness: { arm: 96 in, counted: computed }"] }),
      finds: [],
    },
    {
      title: "An added item stands for them",
      text: circuitExample({
        sections: ["added: [{ id: W-1, part: HM-0412-20 wiring, weight: 1.2 lb, arm: 96 in }]"],
      }),
      finds: [],
    },
  ],
});

/** Whether the record says how its wires are counted, or has an added item that is called after them. */
function isCounted({ install: { harness, added = [] } }: Project): boolean {
  if (harness && entryOf(harness, "counted")) return true;
  return added.some(({ id, part }) => [id, part].some((name) => /harness|wir/i.test(name?.value ?? "")));
}
