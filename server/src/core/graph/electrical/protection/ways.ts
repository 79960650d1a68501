/** What a fault current runs through on its way from the sources. */

import { remembered } from "../../../once-each";
import type { Project } from "../../../project";
import type { Electrical, Source } from "../../../records/types";
import { derive, type Keep, type Operand, sumOf, type Value, written } from "../../value";
import { edgesAtOf, isWire, type Layout, layoutOf } from "../layout";
import { type TracedPath, traceOf } from "../trace";

/** The one way from a bus to a point, by names and positions; what stands at the point itself is counted. */
export interface Way {
  readonly bus: string;
  /** Positions of edges. */
  readonly wires: readonly number[];
  readonly inlines: readonly string[];
}

/** The end of the way that a fault current takes: from a point on, it runs through nothing else. */
export interface End {
  readonly from: string;
  /** The run that fails, where it leads to a load or on from a point; undefined where it leads back. */
  readonly run: number | undefined;
  /** What leads back to ground from there, and the run itself where it does. */
  readonly returns: readonly number[];
}

/** Follows the circuit's layout toward the buses and to ground. It rests on names and ends alone. */
export class Ways {
  private readonly layout: Layout;
  private readonly into: ReadonlyMap<string, readonly number[]>;
  private readonly buses: ReadonlySet<string>;
  private readonly pathOfReturn = new Map<number, TracedPath>();
  private readonly pathOfLoad = new Map<string, TracedPath>();

  constructor(project: Project) {
    this.layout = layoutOf(project);
    this.into = edgesAtOf(project).into;
    this.buses = new Set((project.airframe?.electrical?.buses ?? []).flatMap(({ id }) => id?.value ?? []));
    for (const path of traceOf(project).paths) {
      this.pathOfLoad.set(path.id, path);
      for (const edge of path.returns) if (!this.pathOfReturn.has(edge)) this.pathOfReturn.set(edge, path);
    }
  }

  /** Undefined where the point is fed in more than one way, or in none. */
  readonly to = remembered((point: string): Way | undefined => {
    const wires: number[] = [];
    const inlines: string[] = [];
    const passed = new Set<string>();
    let at = point;
    while (!this.buses.has(at)) {
      if (passed.has(at)) return undefined;
      passed.add(at);
      if (this.layout.inlines.has(at)) inlines.push(at);
      const [edge, ...others] = this.into.get(at) ?? [];
      if (edge === undefined || others.length > 0) return undefined;
      if (isWire(this.layout, edge)) wires.push(edge);
      at = this.layout.from[edge]!;
    }
    return { bus: at, wires: wires.reverse(), inlines: inlines.reverse() };
  });

  /**
   * From where the current of a fault runs through nothing but a wire and what follows it to ground. Undefined
   * where several wires lead a return to it.
   */
  readonly endOf = remembered((edge: number): End | undefined => {
    const ofReturn = this.pathOfReturn.get(edge);
    if (ofReturn) {
      const returns = this.oneWayThrough(edge, ofReturn);
      return returns && { from: ofReturn.id, run: undefined, returns };
    }
    const ofLoad = this.pathOfLoad.get(this.layout.to[edge]!);
    const returns = ofLoad ? this.oneWayBack(ofLoad.id, ofLoad.returns) : [];
    return { from: this.layout.from[edge]!, run: edge, returns };
  });

  /** The breakers and fuses that feed one directly, with none between. */
  readonly guardsAhead = remembered((id: string): readonly string[] => {
    const guards: string[] = [];
    const points = new Set(this.pointsAhead(id));
    for (const point of points) {
      if (point === id) continue;
      if (this.layout.inlines.get(point) === "protection") guards.push(point);
      else for (const ahead of this.pointsAhead(point)) points.add(ahead);
    }
    return guards;
  });

  private pointsAhead(point: string): string[] {
    return (this.into.get(point) ?? []).map((edge) => this.layout.from[edge]!);
  }

  /** From a point on toward ground; where a return divides, as if the other ways were off. */
  private oneWayBack(point: string, returns: readonly number[]): number[] {
    const { from, to } = this.layout;
    const way: number[] = [];
    for (let at = point; ; ) {
      const next = returns.find((edge) => from[edge] === at);
      if (next === undefined || way.includes(next)) return way;
      way.push(next);
      at = to[next]!;
    }
  }

  /** The same from a load, by way of one of its return wires; undefined where several lead to that. */
  private oneWayThrough(edge: number, { id, returns }: TracedPath): number[] | undefined {
    const { from, to } = this.layout;
    const ahead: number[] = [];
    for (let at = from[edge]!; at !== id; ) {
      const [before, ...others] = returns.filter((one) => to[one] === at);
      if (before === undefined || others.length > 0 || ahead.includes(before)) return undefined;
      ahead.unshift(before);
      at = from[before]!;
    }
    return [...ahead, edge, ...this.oneWayBack(to[edge]!, returns)];
  }
}

/** Ways from sources that are followed for one bus; a real system has a handful. */
const mostWays = 16;

/** What lies between the sources and a bus; undefined where no resistance is recorded. */
export interface Supply {
  /** All sources together: the largest fault current. */
  readonly least: Value | undefined;
  /** The weakest source alone: the smallest. */
  readonly weakest: Value | undefined;
}

/** Resistance ahead of a bus, out of what the airframe records of its sources and feeders. */
export function supplyOf(bus: string, electrical: Electrical, keep: Keep): Supply {
  const ways = waysFromSources(bus, electrical);
  const resistive = ways.filter((way) => way.length > 0);
  if (resistive.length === 0) return { least: undefined, weakest: undefined };
  const operands = Object.fromEntries(resistive.map((way, index) => [`R_${index + 1}`, way]));
  const sums = resistive.map((_, index) => `sum(R_${index + 1})`);
  const ohms = (numbers: Readonly<Record<string, readonly number[]>>) => Object.values(numbers).map(sumOf);
  const common = { subject: { kind: "bus", id: bus }, unit: "ohm", operands } as const;
  const notes = ["Of sources and feeders without a recorded resistance, none is counted."];
  return {
    least:
      resistive.length < ways.length
        ? undefined
        : keep(
            derive({
              ...common,
              quantity: "least-supply-resistance",
              formula: sums.length === 1 ? sums[0]! : `1 / (${sums.map((sum) => `1 / ${sum}`).join(" + ")})`,
              compute: (numbers) => 1 / sumOf(ohms(numbers).map((each) => 1 / each)),
              notes,
            }),
          ),
    weakest: keep(
      derive({
        ...common,
        quantity: "supply-resistance",
        formula: sums.length === 1 ? sums[0]! : `max(${sums.join(", ")})`,
        compute: (numbers) => Math.max(...ohms(numbers)),
        notes,
      }),
    ),
  };
}

/** For each source that feeds a bus, the recorded resistances on the way. */
function waysFromSources(bus: string, { sources = [], feeders = [] }: Electrical): Operand[][] {
  const ways: Operand[][] = [];
  const ohmsOf = (source: Source): Operand[] =>
    source.resistance && source.resistance.value.si > 0
      ? [written(`resistance of ${source.id?.value}`, source.resistance, "ohm")]
      : [];
  const follow = (point: string, ohms: readonly Operand[], passed: readonly string[]): void => {
    if (ways.length >= mostWays || passed.includes(point)) return;
    for (const source of sources) {
      if (source.id?.value === point || source.bus?.value === point) ways.push([...ohms, ...ohmsOf(source)]);
    }
    for (const feeder of feeders) {
      if (feeder.to?.value !== point || !feeder.from) continue;
      const own =
        feeder.resistance && feeder.resistance.value.si > 0
          ? [written(`resistance of feeder ${feeder.id?.value}`, feeder.resistance, "ohm")]
          : [];
      follow(feeder.from.value, [...ohms, ...own], [...passed, point]);
    }
  };
  follow(bus, [], []);
  return ways;
}
