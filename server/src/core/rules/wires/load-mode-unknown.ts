import type { Problem } from "../../findings/finding";
import { groupBy } from "../../graph/group-by";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { circuitExample } from "./circuit-example";

export const loadModeUnknown = defineRule<{ component: string; mode: string; known: readonly string[] }>({
  id: "load-mode-unknown",
  severity: "error",
  area: "wires",
  title: "A condition names a mode that the kit does not give for the component",
  why:
    "Without the mode there is no current. Sums of loads are left out then; the voltages of the network, which need " +
    "every load, are computed as if it drew none, and are too high.",
  sources: [],
  say: ({ component, mode, known }) => ({
    what: `${component} has no mode '${mode}' in the kit: the others' voltages are computed without it.`,
    todo:
      known.length > 0
        ? `Name one that it has: ${listWords(known, "or")}.`
        : `Add the mode to ${component}'s draws in the kit.`,
  }),
  *check(project): Iterable<Problem> {
    const components = groupBy(project.kit?.components ?? [], ({ id }) => id?.value);
    for (const condition of project.install.conditions ?? []) {
      for (const { key, value } of condition.loads ?? []) {
        const component = components.get(key.value)?.[0];
        if (!component || !value) continue;
        const known = (component.draws ?? []).flatMap((draw) => (draw.mode ? [draw.mode.value] : []));
        if (known.includes(value.value)) continue;
        yield {
          rule: "load-mode-unknown",
          subject: { kind: "component", id: key.value },
          place: value.place,
          facts: { component: key.value, mode: value.value, known },
        };
      }
    }
  },
  examples: () => [
    {
      title: "A mode that is not there",
      text: circuitExample({ loads: "{ RACK: surveying }" }),
      finds: ["no mode 'surveying' in the kit: the others' voltages are computed without it"],
    },
    { title: "The kit's own word", text: circuitExample(), finds: [] },
  ],
});
