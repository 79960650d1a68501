/**
 * What a device sees of a dead short whose current has more than one way from the sources: plain numbers, by the
 * network's solver.
 *
 * All loads are off, and all of the current leaves through one last run to ground. The sources stand at the
 * nominal voltage behind their recorded resistances; a bus that no recorded source feeds holds it by itself.
 */
import { prepare, reference } from "../../../methods/network";
import type { Project } from "../../../project";
import type { Feeder, Source, Wire } from "../../../records/types";
import { type Edge, edgesOf, type Inline, reversedOf } from "../layout";

/** Something that the current may run through, from one point to another. */
export interface Part {
  readonly from: string;
  readonly to: string;
  /** A joint without resistance where it is none of these. */
  readonly wire?: Wire;
  readonly inline?: Inline;
  readonly feeder?: Feeder;
}

/** What holds the voltage: a source, or a bus that no recorded source feeds. */
export interface Supply {
  readonly at: string;
  readonly source?: Source;
}

/** All that a current to one point may take: what leads nowhere else is left out. */
export interface Mesh {
  readonly point: string;
  readonly parts: readonly Part[];
  readonly supplies: readonly Supply[];
  /** Wires on a way from the sources through a device to the point; one on no such way only takes from it. */
  wiresThrough(device: string): ReadonlySet<Wire>;
}

/** Resistances in ohm, in the order of the mesh's parts and supplies. */
interface MeshNumbers {
  readonly volts: number;
  readonly ohms: readonly number[];
  readonly supplyOhms: readonly number[];
  /** From the point to ground. */
  readonly lastOhms: number;
}

/** In A. */
export interface SharedCurrents {
  /** Through the device. */
  readonly device: number;
  /** Through the last run: all of it, with every device closed. */
  readonly whole: number;
}

/** So many states are looked through for one device: 2 to the power of its sources and of the other devices. */
const mostStates = 512;

/** Of the whole current, what counts as none in a device that has no part in it. */
const noise = 1e-9;

/** Draws the network ahead of any point. */
export class Meshes {
  private readonly parts: Part[] = [];
  private readonly supplies: Supply[] = [];
  private readonly at = new Map<string, Part[]>();
  private readonly into = new Map<string, Edge[]>();
  private readonly outOf = new Map<string, Edge[]>();
  private readonly meshes = new Map<string, Mesh>();

  constructor(project: Project, inlines: ReadonlyMap<string, Inline>) {
    const { sources = [], feeders = [], buses = [] } = project.airframe?.electrical ?? {};
    const isGround = (point: string) => project.names.find(["ground"], point).length > 0;
    const components = new Set((project.kit?.components ?? []).map(({ id }) => id?.value));
    const fed = new Set<string>();
    for (const source of sources) {
      if (!source.id) continue;
      this.supplies.push({ at: source.id.value, source });
      fed.add(source.id.value);
      if (source.bus) {
        this.parts.push({ from: source.id.value, to: source.bus.value });
        fed.add(source.bus.value);
      }
    }
    for (const feeder of feeders) {
      if (feeder.from && feeder.to) this.parts.push({ from: feeder.from.value, to: feeder.to.value, feeder });
    }
    for (const point of fed) {
      for (const { from, to } of feeders) if (from?.value === point && to) fed.add(to.value);
    }
    for (const { id } of buses) if (id && !fed.has(id.value)) this.supplies.push({ at: id.value });
    for (const [id, inline] of inlines) this.parts.push({ from: lineOf(id), to: id, inline });
    const reversed = reversedOf(project);
    for (const [position, edge] of edgesOf(project).entries()) {
      if (reversed.has(position)) continue;
      const { from, to, wire } = edge;
      push(this.into, to, edge);
      push(this.outOf, from, edge);
      // A load that is off joins nothing; what starts at it leads from its other side.
      if (components.has(from) || isGround(to)) continue;
      this.parts.push({ from, to: inlines.has(to) ? lineOf(to) : to, ...(wire && { wire }) });
    }
    for (const part of this.parts) {
      for (const point of [part.from, part.to]) push(this.at, point, part);
    }
  }

  to(point: string): Mesh {
    const mesh = this.meshes.get(point) ?? this.draw(point);
    this.meshes.set(point, mesh);
    return mesh;
  }

  private draw(point: string): Mesh {
    const reached = new Set([point]);
    for (const one of reached) {
      for (const { from, to } of this.at.get(one) ?? []) reached.add(from).add(to);
    }
    const supplies = this.supplies.filter(({ at }) => reached.has(at));
    const ends = new Set([point, ...supplies.map(({ at }) => at)]);
    const parts = new Set(this.parts.filter(({ from }) => reached.has(from)));
    const left = new Map([...reached].map((one) => [one, this.at.get(one)?.length ?? 0]));
    for (const start of reached) {
      // What hangs on by one part alone, and then what that hung on.
      for (let tip = start; left.get(tip) === 1 && !ends.has(tip); ) {
        const part = this.at.get(tip)!.find((one) => parts.has(one))!;
        parts.delete(part);
        left.set(tip, 0);
        tip = part.from === tip ? part.to : part.from;
        left.set(tip, left.get(tip)! - 1);
      }
    }
    return {
      point,
      parts: [...parts],
      supplies,
      wiresThrough: (device) => {
        const behind = this.met(device, this.outOf, "to");
        const ahead = this.met(point, this.into, "from");
        const toPoint = [...behind].filter((wire) => ahead.has(wire));
        return new Set([...this.met(device, this.into, "from"), ...toPoint]);
      },
    };
  }

  /** Wires that are met from a point on, against the current or with it. */
  private met(start: string, edges: ReadonlyMap<string, Edge[]>, next: "from" | "to"): Set<Wire> {
    const wires = new Set<Wire>();
    const points = new Set([start]);
    for (const point of points) {
      for (const edge of edges.get(point) ?? []) {
        points.add(edge[next]);
        if (edge.wire) wires.add(edge.wire);
      }
    }
    return wires;
  }
}

function push<T>(lists: Map<string, T[]>, key: string, value: T): void {
  const list = lists.get(key);
  if (list) list.push(value);
  else lists.set(key, [value]);
}

/** Which states of a mesh are asked: its sources, and the devices other than the one asked about. */
export type MeshStates = "any sources, any closed" | "all sources, any closed" | "all sources, all closed";

/**
 * The least current that a device sees, whichever sources run and whichever of the other devices have opened before
 * it, as far as the states leave that open.
 *
 * @returns undefined where it has no part in the fault, where the network has no solution or none that is definite,
 *   and where there are too many states to look through
 */
export function leastThrough(
  device: string,
  mesh: Mesh,
  states: MeshStates,
  numbers: MeshNumbers,
): SharedCurrents | undefined {
  const solve = solver(device, mesh, numbers);
  const others = mesh.parts.flatMap(({ inline }) =>
    inline?.kind === "protection" && inline.id !== device ? [inline.id] : [],
  );
  const running = states === "any sources, any closed" ? subsetsOf(mesh.supplies) : [mesh.supplies];
  const opened = states === "all sources, all closed" ? [[]] : subsetsOf(others);
  if (!running || !opened || running.length * opened.length > mostStates) return undefined;
  let least: SharedCurrents | undefined;
  for (const on of running) {
    const closed = solve(on, []);
    for (const open of opened) {
      const state = solve(on, open);
      if (!closed || !state) return undefined;
      const takesPart = state.device > noise * closed.whole;
      if (takesPart && (!least || state.device < least.device)) {
        least = { device: state.device, whole: closed.whole };
      }
    }
  }
  return least;
}

/** All subsets, the empty one too; undefined where there are too many. */
function subsetsOf<T>(list: readonly T[]): T[][] | undefined {
  if (2 ** list.length > mostStates) return undefined;
  let all: T[][] = [[]];
  for (const one of list) all = all.flatMap((subset) => [subset, [...subset, one]]);
  return all;
}

/** Solves one mesh with some of its supplies on and some of its devices open. */
function solver(device: string, mesh: Mesh, { volts, ohms, supplyOhms, lastOhms }: MeshNumbers) {
  const nodes = new Map<string, number>();
  const node = (point: string): number => {
    const known = nodes.get(point) ?? nodes.size;
    nodes.set(point, known);
    return known;
  };
  const branches = mesh.parts.map(({ from, to }) => ({ from: node(from), to: node(to) }));
  const last = branches.push({ from: node(mesh.point), to: reference }) - 1;
  const sources = mesh.supplies.map(({ at }) => ({ node: node(at) }));
  const network = prepare({ nodeCount: nodes.size, branches, loads: [], sources });
  const own = mesh.parts.findIndex(({ inline }) => inline?.id === device);
  return (on: readonly Supply[], open: readonly string[]): SharedCurrents | undefined => {
    if (on.length === 0) return { device: 0, whole: 0 };
    const answer = network.solve({
      ohms: [
        ...mesh.parts.map(({ inline }, part) =>
          inline && open.includes(inline.id) ? Number.POSITIVE_INFINITY : ohms[part]!,
        ),
        lastOhms,
      ],
      loads: [],
      sources: mesh.supplies.map((supply, index) =>
        on.includes(supply) ? { volts, ohms: supplyOhms[index]!, oneWay: true } : undefined,
      ),
    });
    if (answer.kind !== "solved") return undefined;
    const [through, whole] = [own < 0 ? 0 : answer.branchAmps[own]!, answer.branchAmps[last]!];
    if (Number.isNaN(through) || Number.isNaN(whole)) return undefined;
    return { device: Math.abs(through), whole: Math.abs(whole) };
  };
}

/** The side of a breaker, fuse or contact that is nearer to the source. */
function lineOf(id: string): string {
  return `${id} line`;
}
