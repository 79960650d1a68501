/**
 * What leads where in a circuit, by names and positions alone. Nothing of it says what a wire is made of, so that an
 * edit of a length, a gauge or a rating leaves all of it as it is; `circuit.ts` puts the record's things in.
 *
 * Points are named by id. Wires lead from the end nearer the source to the end nearer the load; what starts at
 * a component leads its current back to ground. Breakers, fuses, switches and the like are points that current
 * runs through: what leads to one is its line side, what starts at it is its load side.
 */
import { none } from "../../none";
import { onceEach } from "../../once-each";
import type { Project } from "../../project";
import type { Contact, Device, Protection, Wire } from "../../records/types";
import type { Place } from "../../records/written";
import { byIdOf } from "../by-id";
import { groupBy } from "../group-by";
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

/** Breakers, fuses and contacts by id; each the same object while its record is. */
export const inlinesOf: (project: Project) => ReadonlyMap<string, Inline> = recalled(({ install }) => {
  const inlines = new Map<string, Inline>();
  for (const record of install.protection ?? []) if (record.id) inlines.set(record.id.value, guardOf(record));
  for (const record of install.contacts ?? []) if (record.id) inlines.set(record.id.value, contactOf(record));
  return inlines;
});

const guardOf = onceEach(
  (record: Protection): Inline => ({ kind: "protection", id: record.id!.value, record }),
);
const contactOf = onceEach((record: Contact): Inline => ({ kind: "contact", id: record.id!.value, record }));

/** What records the resistance of something that current runs through: the contact itself, or the kit's device. */
export function holderOf(inline: Inline, { kit }: Project): Contact | Device | undefined {
  if (inline.kind === "contact") return inline.record;
  return kit?.devices?.find(({ id }) => id?.value === inline.record.device?.value);
}

/** Edges by their position among `edgesOf`, and the names that they lead to. */
export interface Layout {
  readonly from: readonly string[];
  readonly to: readonly string[];
  /** How many of the edges are seats; the wires come after them. */
  readonly seats: number;
  readonly inlines: ReadonlyMap<string, Inline["kind"]>;
  /** Of the kit, in its order; undefined for one without an id, and for the second of two with one id. */
  readonly components: readonly (string | undefined)[];
}

/** The same object while no name and no end of the circuit changes. */
export const layoutOf: (project: Project) => Layout = recalled((project) => {
  const from: string[] = [];
  const to: string[] = [];
  let seats = 0;
  for (const edge of edgesOf(project)) {
    from.push(edge.from);
    to.push(edge.to);
    if (!edge.wire) seats += 1;
  }
  return { from, to, seats, inlines: inlineKindsOf(project), components: componentIdsOf(project) };
});

const inlineKindsOf = recalled(
  (project) => new Map([...inlinesOf(project)].map(([id, { kind }]) => [id, kind])),
);

const componentIdsOf = recalled(({ kit }) => {
  const first = byIdOf(kit?.components);
  return (kit?.components ?? []).map((one) =>
    one.id && first.get(one.id.value) === one ? one.id.value : undefined,
  );
});

/** Whether a wire is at this position, and no seat. */
export function isWire({ seats }: Layout, edge: number): boolean {
  return edge >= seats;
}

/** For each point, the positions of edges. */
type EdgesAt = ReadonlyMap<string, readonly number[]>;

const drawnIntoOf = recalled((project): EdgesAt => {
  const { to } = layoutOf(project);
  return groupBy([...to.keys()], (position) => to[position]!);
});

export interface WaysToGround {
  readonly points: ReadonlySet<string>;
  /** Ground points, and those from which a way leads on to one without passing a component. */
  readonly leading: ReadonlySet<string>;
}

export const waysToGroundOf: (project: Project) => WaysToGround = recalled((project) => {
  const { grounds = [] } = project.airframe?.electrical ?? {};
  const { from, components } = layoutOf(project);
  const into = drawnIntoOf(project);
  const ends = new Set(components);
  const points = new Set(grounds.flatMap(({ id }) => id?.value ?? []));
  const leading = new Set(points);
  for (const point of leading) {
    for (const edge of into.get(point) ?? none) if (!ends.has(from[edge]!)) leading.add(from[edge]!);
  }
  return { points, leading };
});

/**
 * Positions of wires whose ends are written the wrong way round: from a ground point, or from a component to what
 * something else feeds. Taken as written they would join the two sides of a load, which is a short circuit. So they
 * lead nowhere, and are told.
 */
export const reversedOf: (project: Project) => ReadonlySet<number> = recalled((project) => {
  const layout = layoutOf(project);
  const { from, to } = layout;
  const into = drawnIntoOf(project);
  const { points, leading } = waysToGroundOf(project);
  const components = new Set(layout.components);
  const feeds = (edge: number) => !components.has(from[edge]) && !points.has(from[edge]!);
  const isFed = (point: string) => into.get(point)!.some(feeds);
  const reversed = new Set<number>();
  for (let edge = layout.seats; edge < from.length; edge++) {
    const isReversed =
      points.has(from[edge]!) ||
      (components.has(from[edge]) &&
        !components.has(to[edge]) &&
        !leading.has(to[edge]!) &&
        isFed(to[edge]!));
    if (isReversed) reversed.add(edge);
  }
  return reversed;
});

/** The edges that lead to each point, and those that start there; none that are reversed. */
export const edgesAtOf: (project: Project) => { readonly into: EdgesAt; readonly outOf: EdgesAt } = recalled(
  (project) => {
    const { from, to } = layoutOf(project);
    const reversed = reversedOf(project);
    const positions = [...from.keys()].filter((position) => !reversed.has(position));
    return {
      into: groupBy(positions, (position) => to[position]!),
      outOf: groupBy(positions, (position) => from[position]!),
    };
  },
);
