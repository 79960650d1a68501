import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { edgesOf, inlinesOf, reversedOf } from "../../graph/electrical/layout";
import type { Project } from "../../project";
import type { Wire } from "../../records/types";
import type { Written } from "../../records/written";
import { defineRule } from "../rule";
import { conditionName, listWords } from "../wording";
import { circuitExample } from "./circuit-example";
import { swapEnds } from "./swap-ends";

/** Where the end of a run is still a blank, what it leads to is not known, which is a finding of its own. */
function isStillBlank(component: string, { file, install }: Project): boolean {
  const isLedTo = install.wires?.some(({ to }) => to?.value === component) === true;
  return isLedTo && file.problems.some(isBlankEnd);
}

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

/** A wire that leads from a component to what something feeds. */
function reversedFrom(component: string, project: Project): Wire | undefined {
  const edges = edgesOf(project);
  for (const position of reversedOf(project)) {
    const { from, wire } = edges[position]!;
    if (from === component && wire?.id) return wire;
  }
  return undefined;
}

export const loadNotConnected = defineRule<{
  component: string;
  condition: string;
  /** Devices on the way that nothing feeds. */
  unfed: readonly string[];
  /** A wire that leads from the load to what something feeds, and where that is. */
  reversed: string | undefined;
  end: string | undefined;
}>({
  id: "load-not-connected",
  severity: "error",
  area: "wires",
  title: "A load runs, but no wire leads to it from a bus",
  why: "Its current is missing from every wire and device, so all of them look better than they are.",
  sources: [],
  say: ({ component, condition, unfed, reversed, end }) => {
    if (reversed !== undefined) {
      return {
        what: `${component} runs in ${condition}, but wire ${reversed} leads from it to ${end}, and none to it from a bus.`,
        todo: `Swap 'from' and 'to' of wire ${reversed}: a feed runs from the end nearer the bus to the load.`,
      };
    }
    return unfed.length > 0
      ? {
          what: `${component} runs in ${condition}, but nothing feeds ${listWords(unfed, "or")}, which its wires start at.`,
          todo: `Say what feeds ${listWords(unfed, "and")}: add 'mounted-on' with the bus that it sits on, or a wire that leads to it.`,
        }
      : {
          what: `${component} runs in ${condition}, but no run of wires leads to it from a bus.`,
          todo: `Add the wires, each from the end nearer the bus, the last one with 'to: ${component}'.`,
        };
  },
  *check(project): Iterable<Problem> {
    const { paths, loops } = electricalOf(project).trace;
    const connected = new Set(paths.map((path) => path.id));
    const unclear = loops.length > 0; // a path that is unclear is already a finding
    if (unclear || !project.kit || !project.airframe) return;
    const { install } = project;
    const told = new Set<string>();
    for (const condition of install.conditions ?? []) {
      for (const { key } of condition.loads ?? []) {
        const isKnown = project.names.find(["component"], key.value).length > 0;
        if (!isKnown || connected.has(key.value) || told.has(key.value)) continue;
        told.add(key.value);
        if (isStillBlank(key.value, project)) continue;
        const unfed = unfedBefore(key.value, project);
        const reversed = reversedFrom(key.value, project);
        yield {
          rule: "load-not-connected",
          subject: { kind: "component", id: key.value },
          place: key.place,
          facts: {
            component: key.value,
            condition: conditionName(condition),
            unfed: unfed.map(({ value }) => value),
            reversed: reversed?.id?.value,
            end: reversed?.to?.value,
          },
          related: unfed.map(({ place }) => ({ place, words: "fed by nothing" })),
        };
      }
    }
  },
  *corrections({ subject }, project) {
    const wire = subject && project && reversedFrom(subject.id, project);
    if (wire) yield* swapEnds(wire);
  },
  examples: () => [
    {
      title: "The feeder is written from the load to the breaker",
      text: circuitExample({
        wires: [
          "{ id: P1, from: RACK, to: CB-RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC }",
          "{ id: P2N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
        ],
      }),
      finds: ["RACK runs in cruise, but wire P1 leads from it to CB-RACK, and none to it from a bus"],
    },
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
