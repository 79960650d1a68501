/** The circuit as the record draws it: what lies between the buses, a load and its ground. */
import type { Problem } from "../../findings/finding";
import type { Project } from "../../project";
import type { Component, Protection, Wire } from "../../records/types";
import { recalled } from "../recall";
import { Memory } from "../remember";
import { noValues } from "../value";
import { type Edge, edgesOf, type Inline, inlinesOf } from "./layout";
import { type Loop, type TracedPath, traceOf } from "./trace";

/** A component that a bus feeds, by whatever way. */
export interface FedLoad extends Pick<TracedPath, "id" | "buses" | "isSingle"> {
  readonly component: Component;
}

/** The way of the current to one component and back to ground. The same object while all that lies on it is. */
export interface LoadPath extends FedLoad {
  /** Wires on the way from the buses, those nearest to a bus first. */
  readonly feed: readonly Wire[];
  /** Breakers, fuses and contacts passed on the way, in the same order. */
  readonly through: readonly Inline[];
  /** Wires on the way to ground; empty when it returns through the structure. */
  readonly returns: readonly Wire[];
}

export interface Circuit {
  readonly inlines: ReadonlyMap<string, Inline>;
  /** By component, those that a bus feeds. */
  readonly paths: readonly LoadPath[];
  /** For each wire on a path, the devices that a fault current in it would run through next. */
  readonly protecting: ReadonlyMap<Wire, ReadonlySet<Protection>>;
  /** Wires on a path with a way to a bus that no device guards. */
  readonly unguarded: ReadonlySet<Wire>;
  readonly problems: readonly Problem[];
}

/** Puts what the record holds into its traced layout. Pure; loops become problems. */
export function drawCircuit(project: Project): Circuit {
  const { paths, unguarded, loops } = traceOf(project);
  const components = project.kit?.components ?? [];
  const edges = edgesOf(project);
  const inlines = inlinesOf(project);
  const wireAt = (edge: number) => edges[edge]!.wire!;
  const protecting = new Map<Wire, ReadonlySet<Protection>>();
  for (const [edge, devices] of protectingOf(project)) protecting.set(wireAt(edge), devices);
  return {
    inlines,
    paths: paths.map((path) => pathOf(path, components[path.component]!, wireAt, inlines)),
    protecting,
    unguarded: new Set([...unguarded].map(wireAt)),
    problems: loops.map((loop) => problemOf(loop, edges)),
  };
}

/** What the paths lead to: an edit of a wire on the way leaves it as it is. */
export function fedLoads(project: Project): FedLoad[] {
  const components = project.kit?.components ?? [];
  return traceOf(project).paths.map(({ component: position, id, buses, isSingle }) => {
    const component = components[position]!;
    return fed.recall(component, component, [isSingle, ...buses], noValues, () => ({
      component,
      id,
      buses,
      isSingle,
    }));
  });
}

const paths = new Memory<Component, Component, LoadPath>();
const fed = new Memory<Component, Component, FedLoad>();

/** By the position of a wire's edge, the devices that guard it. */
const protectingOf = recalled((project): ReadonlyMap<number, ReadonlySet<Protection>> => {
  const inlines = inlinesOf(project);
  const devicesOf = (ids: ReadonlySet<string>) =>
    new Set([...ids].map((id) => inlines.get(id)!.record as Protection));
  return new Map([...traceOf(project).protecting].map(([edge, ids]) => [edge, devicesOf(ids)]));
});

function pathOf(
  path: TracedPath,
  component: Component,
  wireAt: (edge: number) => Wire,
  inlines: ReadonlyMap<string, Inline>,
): LoadPath {
  const { id, buses, isSingle } = path;
  const feed = path.feed.map(wireAt);
  const through = path.through.map((one) => inlines.get(one)!);
  const returns = path.returns.map(wireAt);
  // The lengths keep the lists apart.
  const lengths = [feed.length, through.length, returns.length];
  const rests = [isSingle, ...lengths, ...feed, ...through.map(({ record }) => record), ...returns, ...buses];
  return paths.recall(component, component, rests, noValues, () => ({
    component,
    id,
    feed,
    through,
    returns,
    buses,
    isSingle,
  }));
}

function problemOf({ edge, point, feeds }: Loop, edges: readonly Edge[]): Problem {
  return {
    rule: "circuit-loop",
    place: edges[edge]!.place,
    facts: {
      point,
      feeds: feeds.map((feed) => edges[feed]!.wire?.id?.value ?? edges[feed]!.from),
    },
  };
}
