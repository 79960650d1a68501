/** What runs in a condition, and what it draws. */

import type { Load as SolverLoad } from "../../methods/network";
import { onceEach } from "../../once-each";
import type { Project } from "../../project";
import type { Quantity } from "../../quantities";
import type { Component, Condition, Draw, ExistingLoad } from "../../records/types";
import type { Pair, Written } from "../../records/written";
import { byIdOf } from "../by-id";
import { Memory } from "../remember";
import { noValues } from "../value";

/** The draw of a component in a condition; undefined while it does not run, or its mode is not known. */
export function drawIn(component: Component, condition: Condition): Draw | undefined {
  const mode = runOf(component, condition)?.value;
  return mode && component.draws?.find((draw) => draw.mode?.value === mode.value);
}

/** Where a condition lets a component run, with its mode as far as it is written; undefined while it does not run. */
export function runOf({ id }: Component, condition: Condition): Pair | undefined {
  return id && runsOf(condition).get(id.value);
}

/** What a condition lets run, by the component's id; of a name that stands twice, the first. */
const runsOf = onceEach(
  ({ loads = [] }: Condition): ReadonlyMap<string, Pair> =>
    new Map(loads.toReversed().map((pair): [string, Pair] => [pair.key.value, pair])),
);

/** Components that a condition lets run, and of which it is not known what they draw: the solution has them as none. */
export function undrawnIn(condition: Condition, components: readonly Component[]): string[] {
  const byId = byIdOf(components);
  return (condition.loads ?? []).flatMap(({ key, value }) => {
    const component = byId.get(key.value);
    const draw = value && component?.draws?.find(({ mode }) => mode?.value === value.value);
    return component && !solverLoad(draw) ? [key.value] : [];
  });
}

/** Current of an existing load in a condition's phase. */
export function existingCurrent(
  load: ExistingLoad,
  condition: Condition,
): Written<Quantity<"current">> | undefined {
  const key = condition.phase?.value.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
  return load.currents?.[key as Exclude<keyof NonNullable<ExistingLoad["currents"]>, "place">];
}

/** Existing loads of the airframe that the network holds. */
export function existingLoads({ airframe }: Project): readonly ExistingLoad[] {
  return (airframe?.electrical?.existingLoads ?? []).filter(({ id, bus }) => id && bus);
}

/** What each load of the network draws in a condition. The same list while the loads and the condition are. */
export function loadsIn(condition: Condition, project: Project): readonly (SolverLoad | undefined)[] {
  const components = project.kit?.components;
  return loads.recall(condition, condition, [components, project.airframe?.electrical], noValues, () => [
    ...[...byIdOf(components).values()].map((component) => solverLoad(drawIn(component, condition))),
    ...existingLoads(project).map((load) => currentLoad(existingCurrent(load, condition))),
  ]);
}

const loads = new Memory<Condition, Condition, readonly (SolverLoad | undefined)[]>();

function solverLoad(draw: Draw | undefined): SolverLoad | undefined {
  if (draw?.current) return currentLoad(draw.current);
  if (draw?.power) return { kind: "power", watts: draw.power.value.si };
  if (draw?.resistance && draw.resistance.value.si > 0)
    return { kind: "resistance", ohms: draw.resistance.value.si };
  return undefined;
}

function currentLoad(current: Written<Quantity> | undefined): SolverLoad | undefined {
  return current && { kind: "current", amps: current.value.si };
}
