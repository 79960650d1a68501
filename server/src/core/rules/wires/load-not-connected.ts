import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { edgesOf, inlinesOf } from "../../graph/electrical/layout";
import type { Project } from "../../project";
import type { Written } from "../../records/written";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { circuitExample } from "./circuit-example";

/** Where the end of a run is still a blank, what it leads to is not known, which is a finding of its own. */
function isBlankEnd({ rule, facts: { path } }: Problem): boolean {
  const isBlank = rule === "value-missing" || rule === "value-still-blank";
  return isBlank && Array.isArray(path) && ["from", "to", "mounted-on"].includes(path.at(-1));
}

/** Names of breakers, fuses and contacts that lie before a point and are themselves fed by nothing. */
function unfedBefore(start: string, project: Project): Written<string>[] {
  const edges = edgesOf(project);
  const inlines = inlinesOf(project);
  const unfed: Written<string>[] = [];
  const points = new Set([start]);
  for (const point of points) {
    const into = edges.filter(({ to }) => to === point);
    const name = inlines.get(point)?.record.id;
    if (into.length === 0 && name) unfed.push(name);
    for (const { from } of into) points.add(from);
  }
  return unfed;
}

export const loadNotConnected = defineRule<{
  component: string;
  condition: string;
  /** Devices on the way that nothing feeds. */
  unfed: readonly string[];
}>({
  id: "load-not-connected",
  severity: "error",
  area: "wires",
  title: "A load runs, but no wire leads to it from a bus",
  why: "Its current is missing from every wire and device, so all of them look better than they are.",
  sources: [],
  say: ({ component, condition, unfed }) =>
    unfed.length > 0
      ? {
          what: `${component} runs in ${condition}, but nothing feeds ${listWords(unfed, "or")}, which its wires start at.`,
          todo: `Say what feeds ${listWords(unfed, "and")}: add 'mounted-on' with the bus that it sits on, or a wire that leads to it.`,
        }
      : {
          what: `${component} runs in ${condition}, but no run of wires leads to it from a bus.`,
          todo: `Add the wires, each from the end nearer the bus, the last one with 'to: ${component}'.`,
        },
  *check(project): Iterable<Problem> {
    const { circuit } = electricalOf(project);
    const connected = new Set(circuit.paths.map((path) => path.id));
    const unclear = circuit.problems.length > 0; // a path that is unclear is already a finding
    if (unclear || !project.kit || !project.airframe) return;
    const { install } = project;
    const isUnfinished = project.file.problems.some(isBlankEnd);
    const told = new Set<string>();
    for (const condition of install.conditions ?? []) {
      for (const { key } of condition.loads ?? []) {
        const isKnown = project.names.find(["component"], key.value).length > 0;
        if (!isKnown || connected.has(key.value) || told.has(key.value)) continue;
        if (isUnfinished && install.wires?.some(({ to }) => to?.value === key.value)) continue;
        told.add(key.value);
        const unfed = unfedBefore(key.value, project);
        yield {
          rule: "load-not-connected",
          subject: { kind: "component", id: key.value },
          place: key.place,
          facts: {
            component: key.value,
            condition: condition.id?.value ?? "a condition",
            unfed: unfed.map(({ value }) => value),
          },
          related: unfed.map(({ place }) => ({ place, words: "fed by nothing" })),
        };
      }
    }
  },
  examples: () => [
    {
      title: "The feeder ends at a junction that goes nowhere",
      text: `${circuitExample({
        wires: ["{ id: P1, from: CB-RACK, to: TB1, gauge: 10 AWG, length: 12 ft, rating: 150 degC }"],
      })}junctions:\n  - { id: TB1 }\n`,
      finds: ["RACK runs in cruise, but no run of wires"],
    },
    {
      title: "Nothing says what the breaker sits on",
      text: circuitExample({ protection: ["{ id: CB-RACK, device: CB-20 }"] }),
      finds: ["RACK runs in cruise, but nothing feeds CB-RACK, which its wires start at"],
    },
    { title: "A feeder from the breaker to the load", text: circuitExample(), finds: [] },
    {
      title: "Where the breaker sits is still to be written",
      text: circuitExample().replace(/mounted-on: \w+/, "mounted-on:"),
      finds: [],
    },
  ],
});
