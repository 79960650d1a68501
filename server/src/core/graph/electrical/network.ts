/**
 * The network of a project as the solver takes it, by names and ends alone: what is connected to what, whatever the
 * records say of lengths, gauges and currents.
 */
import { type NetworkAnswer, prepare, reference, type Network as SolverNetwork } from "../../methods/network";
import type { Project } from "../../project";
import type { Wire } from "../../records/types";
import { layoutOf, reversedOf } from "./layout";
import { existingLoads } from "./running";

/** The same object while no name and no end changes. */
export interface Network {
  /** Whether the airframe records its sources; else each bus is held at the nominal voltage. */
  readonly hasSources: boolean;
  /** Names of what the solver's lists hold, to tell what its answer is about. */
  readonly loads: readonly string[];
  readonly sources: readonly string[];
  /** Positions in the solver's lists: of points, of breakers, fuses and contacts, of loads and of sources. */
  readonly nodeOf: ReadonlyMap<string, number>;
  readonly throughOf: ReadonlyMap<string, number>;
  readonly loadOf: ReadonlyMap<string, number>;
  readonly sourceOf: ReadonlyMap<string, number>;
  /** After breakers, fuses and contacts the branches are ties, feeders and seats, with these resistances in ohm. */
  readonly tieOhms: readonly number[];
  /** From this branch on they are wires, in the order of their record. */
  readonly firstWire: number;
  readonly solver: SolverNetwork;
}

/** Lays out the network of a project. Pure. */
export function layOutNetwork(project: Project): Network {
  const { electrical } = project.airframe ?? {};
  const layout = layoutOf(project);
  const nodeOf = new Map<string, number>();
  const node = (point: string): number => {
    const known = nodeOf.get(point) ?? nodeOf.size;
    nodeOf.set(point, known);
    return known;
  };
  const pointNode = (point: string) =>
    project.names.find(["ground"], point).length > 0 ? reference : node(point);
  const branches: { from: number; to: number }[] = [];
  const connect = (from: number, to: number) => branches.push({ from, to }) - 1;

  const throughOf = new Map<string, number>();
  for (const id of layout.inlines.keys()) throughOf.set(id, connect(node(lineOf(id)), node(id)));

  const sources = (electrical?.sources ?? []).filter(({ id, voltage }) => id && voltage);
  const tieOhms: number[] = [];
  const tie = (from: number, to: number, ohms: number) => {
    connect(from, to);
    tieOhms.push(ohms);
  };
  for (const { id, bus } of sources) if (bus) tie(node(id!.value), node(bus.value), 0);
  for (const { from, to, resistance } of electrical?.feeders ?? []) {
    if (from && to) tie(node(from.value), node(to.value), resistance?.value.si ?? 0);
  }

  const components = layout.components.filter((id) => id !== undefined);
  const isComponent = new Set(components);
  const withReturn = new Set<string>();
  const reversed = reversedOf(project);
  layout.from.forEach((from, edge) => {
    const to = layout.to[edge]!;
    const isReversed = reversed.has(edge);
    const isReturn = isComponent.has(from) && !isReversed;
    if (isReturn) withReturn.add(from);
    const start = isReversed ? node(`loose end ${edge}`) : isReturn ? node(returnOf(from)) : pointNode(from);
    const end = pointNode(layout.inlines.has(to) ? lineOf(to) : to);
    if (edge < layout.seats) tie(start, end, 0);
    else connect(start, end);
  });

  const existing = existingLoads(project);
  const hasSources = sources.length > 0;
  const fed = hasSources
    ? sources.map(({ id }) => id!.value)
    : (electrical?.buses ?? []).flatMap(({ id }) => id?.value ?? []);
  const loads = [
    ...components.map((id) => ({ from: node(id), to: withReturn.has(id) ? node(returnOf(id)) : reference })),
    ...existing.map(({ bus }) => ({ from: node(bus!.value), to: reference })),
  ];
  const fedNodes = fed.map((id) => ({ node: node(id) })); // counted below: naming a node makes it
  return {
    hasSources,
    loads: [...components, ...existing.map(({ id }) => id!.value)],
    sources: fed,
    nodeOf,
    throughOf,
    loadOf: positionsOf(components),
    sourceOf: positionsOf(fed),
    tieOhms,
    firstWire: throughOf.size + tieOhms.length,
    solver: prepare({ nodeCount: nodeOf.size, branches, loads, sources: fedNodes }),
  };
}

/** The side of a breaker, fuse or contact that is nearer to the source. */
function lineOf(id: string): string {
  return `${id} line`;
}

/** The side of a component that leads back to ground. */
function returnOf(id: string): string {
  return `${id} return`;
}

function positionsOf(names: readonly string[]): Map<string, number> {
  return new Map(names.map((name, position) => [name, position]));
}

/** The network with the wires of one version of the record. */
export interface WiredNetwork {
  readonly network: Network;
  /** By branch from the network's first wire on, the position of the wire in the record. */
  readonly positions: readonly number[];
  readonly branchOf: ReadonlyMap<Wire, number>;
}

export function wireNetwork(network: Network, { install }: Project): WiredNetwork {
  const positions: number[] = [];
  const branchOf = new Map<Wire, number>();
  (install.wires ?? []).forEach((wire, position) => {
    if (!wire.from || !wire.to) return;
    branchOf.set(wire, network.firstWire + positions.length);
    positions.push(position);
  });
  return { network, positions, branchOf };
}

/** The solution of a network in a condition. Numbers in A, V and ohm; undefined where nothing determines them. */
export class NetworkState {
  constructor(
    readonly answer: NetworkAnswer,
    private readonly wired: WiredNetwork,
  ) {}

  /** In a branch, such as a wire. */
  currentIn(branch: number | undefined): number | undefined {
    return this.read("branchAmps", branch);
  }

  resistanceOf(wire: Wire): number | undefined {
    return this.read("branchOhms", this.wired.branchOf.get(wire));
  }

  /** Through a breaker, fuse or contact. */
  currentThrough(id: string): number | undefined {
    return this.read("branchAmps", this.wired.network.throughOf.get(id));
  }

  currentOf(component: string): number | undefined {
    return this.read("loadAmps", this.wired.network.loadOf.get(component));
  }

  voltageAt(component: string): number | undefined {
    return this.read("loadVolts", this.wired.network.loadOf.get(component));
  }

  potentialOf(point: string): number | undefined {
    return this.read("potentials", this.wired.network.nodeOf.get(point));
  }

  sourceCurrent(source: string): number | undefined {
    return this.read("sourceAmps", this.wired.network.sourceOf.get(source));
  }

  private read(
    list: "branchAmps" | "branchOhms" | "loadAmps" | "loadVolts" | "potentials" | "sourceAmps",
    position: number | undefined,
  ): number | undefined {
    if (this.answer.kind !== "solved" || position === undefined) return undefined;
    const value = this.answer[list][position];
    return value === undefined || Number.isNaN(value) ? undefined : value;
  }
}
