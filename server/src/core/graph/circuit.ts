/**
 * The circuit as the record draws it: which wires and devices lie between a bus, a load and its ground.
 * Circuits are trees here: each point is fed from one side. Feeders in parallel are reported, not guessed at.
 */
import type { Problem } from "../findings/finding";
import type { Project } from "../project";
import type { Component, Protection, Wire } from "../records/types";
import type { Place } from "../records/written";

/** The way of the current to one component and back to ground. */
export interface LoadPath {
  readonly component: Component;
  readonly id: string;
  /** From the bus to the component. */
  readonly feed: readonly Wire[];
  /** Breakers and fuses passed on the way, the one nearest to the bus first. */
  readonly devices: readonly Protection[];
  /** From the component to ground; empty when it returns through the structure. */
  readonly returns: readonly Wire[];
  readonly bus: string;
}

export interface Circuit {
  readonly paths: readonly LoadPath[];
  /** The devices that a wire lies behind, the nearest one on each path. */
  readonly protecting: ReadonlyMap<Wire, ReadonlySet<Protection>>;
  readonly problems: readonly Problem[];
}

interface Edge {
  readonly from: string;
  readonly place: Place;
  /** Left out where a device sits directly on what feeds it. */
  readonly wire?: Wire;
}

/** Draws the circuit of a project. Pure; loops and dead ends become problems. */
export function traceCircuit(project: Project): Circuit {
  const tracer = new Tracer(project);
  const paths: LoadPath[] = [];
  for (const component of project.kit?.components ?? []) {
    const path = component.id && tracer.pathTo(component, component.id.value);
    if (path) paths.push(path);
  }
  return { paths, protecting: nearestDevices(paths), problems: tracer.problems };
}

class Tracer {
  readonly problems: Problem[] = [];
  private readonly intoPoint = new Map<string, Edge[]>();
  private readonly outOfPoint = new Map<string, Wire[]>();
  private readonly devices = new Map<string, Protection>();
  private readonly reported = new Set<string>();

  constructor(private readonly project: Project) {
    for (const device of project.install.protection ?? []) {
      if (!device.id) continue;
      this.devices.set(device.id.value, device);
      if (device.mountedOn) {
        this.addInto(device.id.value, { from: device.mountedOn.value, place: device.mountedOn.place });
      }
    }
    for (const wire of project.install.wires ?? []) {
      if (!wire.from || !wire.to) continue;
      this.addInto(wire.to.value, { from: wire.from.value, place: wire.to.place, wire });
      const leaving = this.outOfPoint.get(wire.from.value);
      if (leaving) leaving.push(wire);
      else this.outOfPoint.set(wire.from.value, [wire]);
    }
  }

  pathTo(component: Component, id: string): LoadPath | undefined {
    const feed: Wire[] = [];
    const devices: Protection[] = [];
    const passed = new Set<string>();
    let point = id;
    while (!this.isBus(point)) {
      if (passed.has(point)) {
        this.report("circuit-loop", point);
        return undefined;
      }
      passed.add(point);
      const edges = this.intoPoint.get(point) ?? [];
      if (edges.length > 1) {
        this.report("circuit-fed-twice", point);
        return undefined;
      }
      const edge = edges[0];
      if (!edge) return undefined; // nothing feeds it; whether that is a fault depends on the conditions
      const device = this.devices.get(point);
      if (device) devices.unshift(device);
      if (edge.wire) feed.unshift(edge.wire);
      point = edge.from;
    }
    return { component, id, feed, devices, returns: this.returnFrom(id), bus: point };
  }

  private returnFrom(id: string): Wire[] {
    const returns: Wire[] = [];
    const passed = new Set<string>();
    let point = id;
    while (!passed.has(point)) {
      passed.add(point);
      const wire = this.outOfPoint.get(point)?.find((one) => this.leadsToGround(one, passed));
      if (!wire?.to) return returns;
      returns.push(wire);
      point = wire.to.value;
    }
    return returns;
  }

  private leadsToGround(wire: Wire, passed: ReadonlySet<string>): boolean {
    const seen = new Set(passed);
    const waiting = [wire];
    for (let one = waiting.pop(); one; one = waiting.pop()) {
      const end = one.to?.value;
      if (end === undefined || seen.has(end)) continue;
      if (this.project.names.find(["ground"], end).length > 0) return true;
      seen.add(end);
      waiting.push(...(this.outOfPoint.get(end) ?? []));
    }
    return false;
  }

  private isBus(point: string): boolean {
    return this.project.names.find(["bus"], point).length > 0;
  }

  private addInto(point: string, edge: Edge): void {
    const edges = this.intoPoint.get(point);
    if (edges) edges.push(edge);
    else this.intoPoint.set(point, [edge]);
  }

  private report(rule: "circuit-loop" | "circuit-fed-twice", point: string): void {
    if (this.reported.has(point)) return;
    this.reported.add(point);
    const edges = this.intoPoint.get(point)!;
    const last = edges.at(-1)!;
    this.problems.push({
      rule,
      place: last.place,
      facts: { point, feeds: edges.map((edge) => edge.wire?.id?.value ?? edge.from) },
      related: edges.slice(0, -1).map((edge) => ({ place: edge.place, words: "also leads here" })),
    });
  }
}

function nearestDevices(paths: readonly LoadPath[]): Map<Wire, Set<Protection>> {
  const protecting = new Map<Wire, Set<Protection>>();
  const add = (wire: Wire, device: Protection | undefined) => {
    const devices = protecting.get(wire) ?? new Set();
    if (device) devices.add(device);
    protecting.set(wire, devices);
  };
  for (const path of paths) {
    let nearest: Protection | undefined;
    for (const wire of path.feed) {
      const start = path.devices.find((device) => device.id?.value === wire.from?.value);
      nearest = start ?? nearest;
      add(wire, nearest);
    }
    for (const wire of path.returns) add(wire, nearest ?? path.devices.at(-1));
  }
  return protecting;
}
