/**
 * What leads where in a circuit, by names and positions alone. Nothing of it says what a wire is made of, so that an
 * edit of a length, a gauge or a rating leaves all of it as it is; `circuit.ts` puts the record's things in.
 *
 * Points are named by id. Wires lead from the end nearer the source to the end nearer the load; what starts at
 * a component leads its current back to ground. Breakers, fuses, switches and the like are points that current
 * runs through: what leads to one is its line side, what starts at it is its load side.
 */
import type { Project } from "../../project";
import type { Contact, Protection, Wire } from "../../records/types";
import type { Place } from "../../records/written";
import { recalled } from "../recall";

/** Something that current runs through at one point. */
export type Inline =
  | { readonly kind: "protection"; readonly id: string; readonly record: Protection }
  | { readonly kind: "contact"; readonly id: string; readonly record: Contact };

/** A wire, or the seat of a device that sits directly on what feeds it. */
export interface Edge {
  readonly from: string;
  readonly to: string;
  readonly place: Place;
  readonly wire?: Wire;
}

/** Every edge that the record draws, in the order of its text: first seats, then wires. */
export const edgesOf: (project: Project) => readonly Edge[] = recalled(({ install }) => {
  const edges: Edge[] = [];
  for (const devices of [install.protection, install.contacts]) {
    for (const { id, mountedOn } of devices ?? []) {
      if (id && mountedOn) edges.push({ from: mountedOn.value, to: id.value, place: mountedOn.place });
    }
  }
  for (const wire of install.wires ?? []) {
    const { from, to } = wire;
    if (from && to) edges.push({ from: from.value, to: to.value, place: to.place, wire });
  }
  return edges;
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

/** Edges by their position among `edgesOf`, and the names that they lead to. */
export interface Layout {
  readonly from: readonly string[];
  readonly to: readonly string[];
  /** How many of the edges are seats; the wires come after them. */
  readonly seats: number;
  readonly inlines: ReadonlyMap<string, Inline["kind"]>;
  /** Of the kit, in its order; undefined for one without an id. */
  readonly components: readonly (string | undefined)[];
}

/** The same object while no name and no end of the circuit changes. */
export const layoutOf: (project: Project) => Layout = recalled((project) => {
  const edges = edgesOf(project);
  return {
    from: edges.map(({ from }) => from),
    to: edges.map(({ to }) => to),
    seats: edges.filter(({ wire }) => !wire).length,
    inlines: new Map([...inlinesOf(project)].map(([id, { kind }]) => [id, kind])),
    components: (project.kit?.components ?? []).map(({ id }) => id?.value),
  };
});

/** For each point, the positions of edges. */
type EdgesAt = ReadonlyMap<string, readonly number[]>;

/** The edges that lead to each point, and those that start there. */
export const edgesAtOf: (project: Project) => { readonly into: EdgesAt; readonly outOf: EdgesAt } = recalled(
  (project) => {
    const { from, to } = layoutOf(project);
    return { into: positionsOf(to), outOf: positionsOf(from) };
  },
);

function positionsOf(names: readonly string[]): EdgesAt {
  const positions = new Map<string, number[]>();
  names.forEach((name, position) => {
    const known = positions.get(name);
    if (known) known.push(position);
    else positions.set(name, [position]);
  });
  return positions;
}
