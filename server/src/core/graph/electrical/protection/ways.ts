/** What a fault current runs through on its way from the sources. */
import type { Project } from "../../../project";
import type { Electrical, Source, Wire } from "../../../records/types";
import { derive, type Keep, type Operand, sumOf, type Value, written } from "../../value";
import { type Edge, edgesAtOf, edgesOf, type Inline, inlinesOf } from "../layout";

/** The one way from a bus to a point; what stands at the point itself is counted. */
export interface Way {
  readonly bus: string;
  readonly wires: readonly Wire[];
  readonly inlines: readonly Inline[];
}

/** Follows the circuit toward the buses. */
export class Ways {
  private readonly into: ReadonlyMap<string, readonly number[]>;
  private readonly edges: readonly Edge[];
  private readonly inlines: ReadonlyMap<string, Inline>;
  private readonly buses: ReadonlySet<string>;

  constructor(project: Project) {
    this.into = edgesAtOf(project).into;
    this.edges = edgesOf(project);
    this.inlines = inlinesOf(project);
    this.buses = new Set((project.airframe?.electrical?.buses ?? []).flatMap(({ id }) => id?.value ?? []));
  }

  /** Undefined where the point is fed in more than one way, or in none. */
  to(point: string): Way | undefined {
    const wires: Wire[] = [];
    const inlines: Inline[] = [];
    const passed = new Set<string>();
    for (let at = point; !this.buses.has(at); ) {
      if (passed.has(at)) return undefined;
      passed.add(at);
      const inline = this.inlines.get(at);
      if (inline) inlines.push(inline);
      const into = this.into.get(at);
      if (into?.length !== 1) return undefined;
      const edge = this.edges[into[0]!]!;
      if (edge.wire) wires.push(edge.wire);
      at = edge.from;
      if (this.buses.has(at)) return { bus: at, wires: wires.toReversed(), inlines: inlines.toReversed() };
    }
    return { bus: point, wires, inlines };
  }

  /** The breakers and fuses that feed one directly, with none between. */
  guardsAhead(id: string): string[] {
    const guards: string[] = [];
    const points = new Set(this.pointsAhead(id));
    for (const point of points) {
      if (point === id) continue;
      if (this.inlines.get(point)?.kind === "protection") guards.push(point);
      else for (const ahead of this.pointsAhead(point)) points.add(ahead);
    }
    return guards;
  }

  private pointsAhead(point: string): string[] {
    return (this.into.get(point) ?? []).map((edge) => this.edges[edge]!.from);
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
