/**
 * The circuit as the record draws it: what lies between the buses, a load and its ground.
 *
 * Points are named by id. Wires lead from the end nearer the source to the end nearer the load; what starts at
 * a component leads its current back to ground. Breakers, fuses, switches and the like are points that current
 * runs through: what leads to one is its line side, what starts at it is its load side.
 */
import type { Problem } from "../../findings/finding";
import type { Project } from "../../project";
import type { Component, Contact, Protection, Wire } from "../../records/types";
import type { Place } from "../../records/written";
import { recalled } from "../recall";
import { Memory } from "../remember";
import { noValues } from "../value";

/** A component that a bus feeds, by whatever way. */
export interface FedLoad {
  readonly component: Component;
  readonly id: string;
  /** Buses that feed it. */
  readonly buses: readonly string[];
  /** Whether the current has one way only, so that each wire on it carries all of it. */
  readonly isSingle: boolean;
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

/** Something that current runs through at one point. */
export type Inline =
  | { readonly kind: "protection"; readonly id: string; readonly record: Protection }
  | { readonly kind: "contact"; readonly id: string; readonly record: Contact };

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

/** A wire, or the seat of a device that sits directly on what feeds it. */
export interface Edge {
  readonly from: string;
  readonly to: string;
  readonly place: Place;
  readonly wire?: Wire;
}

/** Draws the circuit of a project. Pure; loops become problems. */
export function traceCircuit(project: Project): Circuit {
  return new Tracer(project).trace();
}

/** Every edge that the record draws, in the order of its text. */
export const edgesOf: (project: Project) => readonly Edge[] = recalled(({ install }) => {
  const { protection = [], contacts = [], wires = [] } = install;
  const seats = [...protection, ...contacts].flatMap(({ id, mountedOn }): Edge[] =>
    id && mountedOn ? [{ from: mountedOn.value, to: id.value, place: mountedOn.place }] : [],
  );
  const runs = wires.flatMap((wire): Edge[] =>
    wire.from && wire.to ? [{ from: wire.from.value, to: wire.to.value, place: wire.to.place, wire }] : [],
  );
  return [...seats, ...runs];
});

/** Breakers, fuses and contacts by id. */
export const inlinesOf: (project: Project) => ReadonlyMap<string, Inline> = recalled(({ install }) => {
  const inlines = new Map<string, Inline>();
  for (const record of install.protection ?? []) {
    if (record.id) inlines.set(record.id.value, { kind: "protection", id: record.id.value, record });
  }
  for (const record of install.contacts ?? []) {
    if (record.id) inlines.set(record.id.value, { kind: "contact", id: record.id.value, record });
  }
  return inlines;
});

/** What the paths lead to: an edit of a wire on the way leaves it as it is. */
export function fedLoads({ paths }: Circuit): FedLoad[] {
  return paths.map(({ component, id, buses, isSingle }) =>
    fed.recall(component, component, [isSingle, ...buses], noValues, () => ({
      component,
      id,
      buses,
      isSingle,
    })),
  );
}

/** What lies toward the sources from a point. */
interface Upstream {
  readonly edges: readonly Edge[];
  readonly points: ReadonlySet<string>;
  readonly buses: readonly string[];
  readonly isSingle: boolean;
}

const paths = new Memory<Component, Component, LoadPath>();
const fed = new Memory<Component, Component, FedLoad>();

class Tracer {
  private readonly into = new Map<string, Edge[]>();
  private readonly outOf = new Map<string, Edge[]>();
  private readonly inlines: ReadonlyMap<string, Inline>;
  private readonly problems: Problem[] = [];
  private readonly loops = new Set<string>();

  private readonly isBus = remembered((point: string) => this.project.names.find(["bus"], point).length > 0);
  private readonly isGround = remembered(
    (point: string) => this.project.names.find(["ground"], point).length > 0,
  );

  constructor(private readonly project: Project) {
    this.inlines = inlinesOf(project);
    for (const edge of edgesOf(project)) {
      push(this.into, edge.to, edge);
      push(this.outOf, edge.from, edge);
    }
  }

  trace(): Circuit {
    const traced = (this.project.kit?.components ?? []).flatMap((component) => {
      const path = component.id && this.pathTo(component, component.id.value);
      return path ? [path] : [];
    });
    const protecting = new Map<Wire, Set<Protection>>();
    const unguarded = new Set<Wire>();
    const guard = (wire: Wire, from: string) => {
      const { devices, isOpen } = this.guardsOf(from);
      const known = protecting.get(wire) ?? new Set();
      for (const device of devices) known.add(device);
      protecting.set(wire, known);
      if (isOpen) unguarded.add(wire);
    };
    for (const path of traced) {
      for (const wire of path.feed) guard(wire, wire.from!.value);
      for (const wire of path.returns) guard(wire, path.id);
    }
    return { inlines: this.inlines, paths: traced, protecting, unguarded, problems: this.problems };
  }

  private pathTo(component: Component, id: string): LoadPath | undefined {
    const feed = this.upstreamOf(id);
    if (feed.buses.length === 0) return undefined;
    const returns = this.returnsOf(id);
    const through = [...feed.points].toReversed().flatMap((point) => this.inlines.get(point) ?? []);
    const wires = feed.edges.toReversed().flatMap(({ wire }) => wire ?? []);
    const isSingle = feed.isSingle && returns.isSingle;
    const records = through.map(({ record }) => record);
    // The names of the lists keep them apart.
    const rests = [
      "feed",
      ...wires,
      "through",
      ...records,
      "returns",
      ...returns.wires,
      "buses",
      ...feed.buses,
    ];
    return paths.recall(component, component, [isSingle, ...rests], noValues, () => ({
      component,
      id,
      feed: wires,
      through,
      returns: returns.wires,
      buses: feed.buses,
      isSingle,
    }));
  }

  /** Everything between a point and the buses, nearest to the point first. */
  private upstreamOf(start: string): Upstream {
    const edges: Edge[] = [];
    const points = new Set([start]);
    const buses = new Set<string>();
    let isSingle = true;
    for (const point of points) {
      if (this.isBus(point)) {
        buses.add(point);
        continue;
      }
      const into = this.into.get(point) ?? [];
      if (into.length > 1) isSingle = false;
      for (const edge of into) {
        if (this.leadsInCircle(edge)) continue;
        edges.push(edge);
        points.add(edge.from);
      }
    }
    return { edges, points, buses: [...buses], isSingle };
  }

  /** The wires that lead from a component to ground, and on the way there. */
  private returnsOf(id: string): { wires: Wire[]; isSingle: boolean } {
    const wires: Wire[] = [];
    const points = new Set([id]);
    let isSingle = true;
    for (const point of points) {
      if (this.isGround(point)) continue;
      const outOf = (this.outOf.get(point) ?? []).filter((edge) => this.reachesGround(edge.to));
      if (outOf.length > 1) isSingle = false;
      for (const edge of outOf) {
        if (edge.wire) wires.push(edge.wire);
        points.add(edge.to);
      }
    }
    return { wires, isSingle };
  }

  private readonly reachesGround = remembered((start: string): boolean => {
    const points = new Set([start]);
    for (const point of points) {
      if (this.isGround(point)) return true;
      for (const edge of this.outOf.get(point) ?? []) points.add(edge.to);
    }
    return false;
  });

  /** The devices that guard a point, itself counted, and whether some way to a bus has none. */
  private readonly guardsOf = remembered((start: string): { devices: Protection[]; isOpen: boolean } => {
    const devices: Protection[] = [];
    let isOpen = false;
    const points = new Set([start]);
    for (const point of points) {
      const inline = this.inlines.get(point);
      if (inline?.kind === "protection") devices.push(inline.record);
      else if (this.isBus(point)) isOpen = true;
      else for (const edge of this.into.get(point) ?? []) points.add(edge.from);
    }
    return { devices, isOpen };
  });

  /** Whether an edge starts at a point that lies behind its own end; told once. */
  private readonly leadsInCircle = remembered((edge: Edge): boolean => {
    if (!this.liesBehind(edge.from, edge.to)) return false;
    if (!this.loops.has(edge.to)) {
      const feeds = (this.into.get(edge.to) ?? []).map(({ wire, from }) => wire?.id?.value ?? from);
      this.problems.push({ rule: "circuit-loop", place: edge.place, facts: { point: edge.to, feeds } });
    }
    for (const point of [edge.from, edge.to]) this.loops.add(point);
    return true;
  });

  private liesBehind(point: string, start: string): boolean {
    const points = new Set([start]);
    for (const one of points) {
      for (const { to } of this.outOf.get(one) ?? []) {
        if (to === point) return true;
        points.add(to);
      }
    }
    return false;
  }
}

function push<K, V>(lists: Map<K, V[]>, key: K, value: V): void {
  const list = lists.get(key);
  if (list) list.push(value);
  else lists.set(key, [value]);
}

/** Answers each question once. */
function remembered<Q, A extends {}>(answer: (question: Q) => A): (question: Q) => A {
  const known = new Map<Q, A>();
  return (question) => {
    const before = known.get(question);
    if (before !== undefined) return before;
    const found = answer(question);
    known.set(question, found);
    return found;
  };
}
