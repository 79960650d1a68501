/** The ways of the current, followed through a circuit's layout. */
import { none } from "../../none";
import { remembered } from "../../once-each";
import type { Project } from "../../project";
import { recalled } from "../recall";
import { edgesAtOf, isWire, type Layout, layoutOf } from "./layout";

/** What was followed; wires by the position of their edge. The same object while the layout is. */
export interface Trace {
  /** To the components that a bus feeds, in the kit's order. */
  readonly paths: readonly TracedPath[];
  /** For each wire on a path, the breakers and fuses that a fault current in it would run through next. */
  readonly protecting: ReadonlyMap<number, ReadonlySet<string>>;
  /** Wires on a path with a way to a bus that no device guards. */
  readonly unguarded: ReadonlySet<number>;
  readonly loops: readonly Loop[];
}

export interface TracedPath {
  readonly id: string;
  /** Position of the component in the kit. */
  readonly component: number;
  /** Buses that feed it. */
  readonly buses: readonly string[];
  /** Whether the current has one way only, so that each wire on it carries all of it. */
  readonly isSingle: boolean;
  /** Wires on the way from the buses, those nearest to a bus first. */
  readonly feed: readonly number[];
  /** Breakers, fuses and contacts passed on the way, in the same order. */
  readonly through: readonly string[];
  /** Wires on the way to ground; empty when it returns through the structure. */
  readonly returns: readonly number[];
}

/** An edge that leads back to where its current came from. */
export interface Loop {
  readonly edge: number;
  readonly point: string;
  /** All edges that lead to the point. */
  readonly feeds: readonly number[];
}

/** Loops are told, and not followed. */
export const traceOf: (project: Project) => Trace = recalled((project) => new Tracer(project).trace());

/** What lies toward the sources from a point. */
interface Upstream {
  readonly wires: readonly number[];
  readonly points: ReadonlySet<string>;
  readonly buses: readonly string[];
  readonly isSingle: boolean;
}

class Tracer {
  private readonly layout: Layout;
  private readonly into: (point: string) => readonly number[];
  private readonly outOf: (point: string) => readonly number[];
  private readonly loops: Loop[] = [];
  private readonly inLoops = new Set<string>();

  private readonly isBus = remembered((point: string) => this.project.names.find(["bus"], point).length > 0);
  private readonly isGround = remembered(
    (point: string) => this.project.names.find(["ground"], point).length > 0,
  );

  constructor(private readonly project: Project) {
    this.layout = layoutOf(project);
    const { into, outOf } = edgesAtOf(project);
    this.into = (point) => into.get(point) ?? none;
    this.outOf = (point) => outOf.get(point) ?? none;
  }

  trace(): Trace {
    const paths = this.layout.components.flatMap((id, component) => {
      const path = id === undefined ? undefined : this.pathTo(id, component);
      return path ? [path] : [];
    });
    const protecting = new Map<number, Set<string>>();
    const unguarded = new Set<number>();
    const guard = (wire: number, from: string) => {
      const { devices, isOpen } = this.guardsOf(from);
      const known = protecting.get(wire) ?? new Set();
      for (const device of devices) known.add(device);
      protecting.set(wire, known);
      if (isOpen) unguarded.add(wire);
    };
    for (const path of paths) {
      for (const wire of path.feed) guard(wire, this.layout.from[wire]!);
      for (const wire of path.returns) guard(wire, path.id);
    }
    return { paths, protecting, unguarded, loops: this.loops };
  }

  private pathTo(id: string, component: number): TracedPath | undefined {
    const feed = this.upstreamOf(id);
    if (feed.buses.length === 0) return undefined;
    const returns = this.returnsOf(id);
    return {
      id,
      component,
      buses: feed.buses,
      isSingle: feed.isSingle && returns.isSingle,
      feed: feed.wires.toReversed(),
      through: [...feed.points].filter((point) => this.layout.inlines.has(point)).toReversed(),
      returns: returns.wires,
    };
  }

  /** Everything between a point and the buses, nearest to the point first. */
  private upstreamOf(start: string): Upstream {
    const wires: number[] = [];
    const points = new Set([start]);
    const buses: string[] = [];
    let isSingle = true;
    for (const point of points) {
      if (this.isBus(point)) {
        buses.push(point);
        continue;
      }
      const into = this.into(point);
      if (into.length > 1) isSingle = false;
      for (const edge of into) {
        if (this.leadsInCircle(edge)) continue;
        if (isWire(this.layout, edge)) wires.push(edge);
        points.add(this.layout.from[edge]!);
      }
    }
    return { wires, points, buses, isSingle };
  }

  /** The wires that lead from a component to ground, and on the way there. */
  private returnsOf(id: string): { wires: number[]; isSingle: boolean } {
    const wires: number[] = [];
    const points = new Set([id]);
    let isSingle = true;
    for (const point of points) {
      if (this.isGround(point)) continue;
      const outOf = this.outOf(point).filter((edge) => this.reachesGround(this.layout.to[edge]!));
      if (outOf.length > 1) isSingle = false;
      for (const edge of outOf) {
        if (isWire(this.layout, edge)) wires.push(edge);
        points.add(this.layout.to[edge]!);
      }
    }
    return { wires, isSingle };
  }

  private readonly reachesGround = remembered((start: string): boolean => {
    const points = new Set([start]);
    for (const point of points) {
      if (this.isGround(point)) return true;
      for (const edge of this.outOf(point)) points.add(this.layout.to[edge]!);
    }
    return false;
  });

  /** The devices that guard a point, itself counted, and whether some way to a bus has none. */
  private readonly guardsOf = remembered((start: string): { devices: string[]; isOpen: boolean } => {
    const devices: string[] = [];
    let isOpen = false;
    const points = new Set([start]);
    for (const point of points) {
      if (this.layout.inlines.get(point) === "protection") devices.push(point);
      else if (this.isBus(point)) isOpen = true;
      else for (const edge of this.into(point)) points.add(this.layout.from[edge]!);
    }
    return { devices, isOpen };
  });

  /** Whether an edge starts at a point that lies behind its own end; told once. */
  private readonly leadsInCircle = remembered((edge: number): boolean => {
    const from = this.layout.from[edge]!;
    const point = this.layout.to[edge]!;
    if (!this.liesBehind(from, point)) return false;
    if (!this.inLoops.has(point)) this.loops.push({ edge, point, feeds: this.into(point) });
    this.inLoops.add(from).add(point);
    return true;
  });

  private liesBehind(point: string, start: string): boolean {
    const points = new Set([start]);
    for (const one of points) {
      for (const edge of this.outOf(one)) {
        const to = this.layout.to[edge]!;
        if (to === point) return true;
        points.add(to);
      }
    }
    return false;
  }
}
