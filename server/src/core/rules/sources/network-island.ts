import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { LoadPath } from "../../graph/electrical/circuit";
import { layoutOf } from "../../graph/electrical/layout";
import type { NetworkState } from "../../graph/electrical/network";
import { groupBy } from "../../graph/group-by";
import type { Island } from "../../methods/network";
import type { Project } from "../../project";
import type { Condition, Wire } from "../../records/types";
import { defineRule } from "../rule";
import { conditionName, listWords, shorten } from "../wording";
import { conditionPlace } from "./places";
import { exampleAlternator, sourceExample } from "./source-example";

export const networkIsland = defineRule<{
  loads: readonly string[];
  lacks: "source" | "return";
  condition: string;
  others: number;
}>({
  id: "network-island",
  severity: "error",
  area: "sources",
  title: "Loads run in a condition in which no source reaches them",
  why: "They are dead there, and their currents are missing from wires and devices, which look better than they are.",
  sources: [],
  say: ({ loads, lacks, condition, others }) => ({
    what:
      `${lacks === "source" ? "No source reaches" : "No way leads back to a source from"} ` +
      `${listWords(loads.slice(0, 3).map(shorten), "and")}${loads.length > 3 ? " and others" : ""} in ${condition}` +
      `${others > 0 ? ` and ${others} more` : ""}.`,
    todo:
      lacks === "source"
        ? "Give a source that runs in this condition the bus that it feeds, or a feeder; or keep the loads off."
        : "Lead the return to a ground point of the airframe.",
  }),
  *check(project): Iterable<Problem> {
    if (!project.airframe || !project.kit || electricalOf(project).trace.loops.length > 0) return;
    const alike = groupBy(deadLoads(project), ({ lacks, loads }) => [lacks, ...loads].join("\n"));
    for (const [{ loads, lacks, condition }, ...others] of alike.values()) {
      yield {
        rule: "network-island",
        subject: { kind: "condition", id: conditionName(condition) },
        place: conditionPlace(condition),
        facts: { loads, lacks, condition: conditionName(condition), others: others.length },
      };
    }
  },
  examples: () => [
    {
      title: "Alternator and battery feed AUX, and no feeder leads from there to MAIN",
      text: sourceExample({
        alternator: exampleAlternator.replace("bus: MAIN", "bus: AUX"),
        battery: "bus: AUX, rating: 200 A, capacity: 24 Ah",
      }),
      finds: ["No source reaches RACK and avionics in cruise"],
    },
    {
      title: "The same with a feeder",
      text: sourceExample({
        alternator: exampleAlternator.replace("bus: MAIN", "bus: AUX"),
        battery: "bus: AUX, rating: 200 A, capacity: 24 Ah",
        feeders: ["{ id: TIE, from: AUX, to: MAIN, resistance: 2 mohm }"],
      }),
      finds: [],
    },
    { title: "Both feed the bus", text: sourceExample(), finds: [] },
  ],
});

interface DeadLoads {
  readonly loads: readonly string[];
  readonly lacks: Island["lacks"];
  readonly condition: Condition;
}

function deadLoads(project: Project): DeadLoads[] {
  const { circuit, network, states } = electricalOf(project);
  const dead: DeadLoads[] = [];
  let paths: ReadonlyMap<string, LoadPath> | undefined;
  for (const [condition, state] of states) {
    if (state.answer.kind !== "solved") continue;
    for (const { loads, lacks } of state.answer.islands) {
      if (loads.length === 0) continue;
      paths ??= new Map(circuit.paths.toReversed().map((path) => [path.id, path]));
      const named = loads.flatMap((load) => network.loads[load] ?? []);
      const { components } = layoutOf(project);
      const untold = named.filter((load) => !components.includes(load) || isWhole(paths!.get(load), state));
      if (untold.length > 0) dead.push({ loads: untold, lacks, condition });
    }
  }
  return dead;
}

/** A component without wires to it, or with a wire whose resistance is not known, is told elsewhere. */
function isWhole(path: LoadPath | undefined, state: NetworkState): boolean {
  const isKnown = (wire: Wire) => state.resistanceOf(wire) !== Number.POSITIVE_INFINITY;
  if (!path) return false;
  return path.feed.every(isKnown) && path.returns.every(isKnown);
}
