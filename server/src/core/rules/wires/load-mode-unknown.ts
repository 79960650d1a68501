import type { Problem } from "../../findings/finding";
import { ofEach, recalled } from "../../graph/recall";
import type { Component, Condition } from "../../records/types";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { circuitExample } from "./circuit-example";

const noConditions: readonly Condition[] = [];

/** Of an id that stands twice, the first. */
const componentsById = recalled(({ kit }): ReadonlyMap<string, Component> => {
  const components = new Map<string, Component>();
  for (const component of kit?.components ?? []) {
    const id = component.id?.value;
    if (id !== undefined && !components.has(id)) components.set(id, component);
  }
  return components;
});

function* judge({ loads }: Condition, components: ReadonlyMap<string, Component>): Iterable<Problem> {
  for (const { key, value } of loads ?? []) {
    const component = components.get(key.value);
    if (!component || !value) continue;
    const { draws = [] } = component;
    if (draws.some(({ mode }) => mode?.value === value.value)) continue;
    yield {
      rule: "load-mode-unknown",
      subject: { kind: "component", id: key.value },
      place: value.place,
      facts: {
        component: key.value,
        mode: value.value,
        known: draws.flatMap(({ mode }) => (mode ? [mode.value] : [])),
      },
    };
  }
}

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
  check: ofEach(({ install }) => install.conditions ?? noConditions, judge, componentsById),
  examples: () => [
    {
      title: "A mode that is not there",
      text: circuitExample({ loads: "{ RACK: surveying }" }),
      finds: ["no mode 'surveying' in the kit: the others' voltages are computed without it"],
    },
    { title: "The kit's own word", text: circuitExample(), finds: [] },
  ],
});
