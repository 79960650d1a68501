/**
 * The whole network of a project as the solver takes it, and its answer in each condition: plain numbers, from
 * which the values are made.
 */
import {
  type NetworkAnswer,
  prepare,
  reference,
  type Load as SolverLoad,
  type Source as SolverSource,
} from "../../methods/network";
import { conductorTemperature, resistanceAt } from "../../methods/wires";
import { onceEach } from "../../once-each";
import type { Project } from "../../project";
import { inUnit, type Quantity } from "../../quantities";
import type { Component, Condition, Draw, ExistingLoad, Source, Wire } from "../../records/types";
import type { Pair, Written } from "../../records/written";
import { edgesOf, inlinesOf } from "./layout";

/** What the network needs to know of a wire in a condition. */
export interface WireNumbers {
  readonly material: "copper" | "aluminium";
  readonly ohmsPer1000FeetAt20: number;
  readonly lengthFeet: number;
  readonly ambientCelsius: number;
  readonly ratingCelsius: number;
  /** Undefined where no table gives it: the conductor is then taken at its rating. */
  readonly allowedAmps: number | undefined;
}

/** Numbers in A, V and ohm; undefined where nothing determines them. */
export interface NetworkState {
  readonly answer: NetworkAnswer;
  currentIn(wire: Wire): number | undefined;
  resistanceOf(wire: Wire): number | undefined;
  /** Through a breaker, fuse or contact. */
  currentThrough(id: string): number | undefined;
  currentOf(component: string): number | undefined;
  voltageAt(component: string): number | undefined;
  potentialOf(point: string): number | undefined;
  sourceCurrent(source: string): number | undefined;
}

export interface Network {
  /** Whether the airframe records its sources; else each bus is held at the nominal voltage. */
  readonly hasSources: boolean;
  /** Names of what the solver's lists hold, to tell what its answer is about. */
  readonly loads: readonly string[];
  readonly sources: readonly string[];
  solve(
    condition: Condition,
    numbersOf: (wire: Wire) => WireNumbers | undefined,
    mostOf: SourceLimits,
  ): NetworkState;
}

/** What a source can give in a condition, in A; undefined for one that is off. */
export type SourceLimits = (source: Source) => { readonly amps: number | undefined } | undefined;

/** The draw of a component in a condition; undefined while it does not run, or its mode is not known. */
export function drawIn(component: Component, condition: Condition): Draw | undefined {
  const mode = runOf(component, condition)?.value;
  return mode && component.draws?.find((draw) => draw.mode?.value === mode.value);
}

/** Where a condition lets a component run, with its mode as far as it is written; undefined while it does not run. */
export function runOf({ id }: Component, condition: Condition): Pair | undefined {
  return id && runsOf(condition).get(id.value);
}

/** What a condition lets run, by the component's id; of a name that stands twice, the first. */
const runsOf = onceEach(
  ({ loads = [] }: Condition): ReadonlyMap<string, Pair> =>
    new Map(loads.toReversed().map((pair): [string, Pair] => [pair.key.value, pair])),
);

/** Components that a condition lets run, and of which it is not known what they draw: the solution has them as none. */
export function undrawnIn(condition: Condition, components: ReadonlyMap<string, Component>): string[] {
  return (condition.loads ?? []).flatMap(({ key, value }) => {
    const component = components.get(key.value);
    const draw = value && component?.draws?.find(({ mode }) => mode?.value === value.value);
    return component && !solverLoad(draw) ? [key.value] : [];
  });
}

/** Current of an existing load in a condition's phase. */
export function existingCurrent(
  load: ExistingLoad,
  condition: Condition,
): Written<Quantity<"current">> | undefined {
  const key = condition.phase?.value.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
  return load.currents?.[key as Exclude<keyof NonNullable<ExistingLoad["currents"]>, "place">];
}

/** Builds the network of a project once, for all its conditions. */
export function buildNetwork(project: Project): Network {
  return new Builder(project).build();
}

class Builder {
  private readonly nodes = new Map<string, number>();
  private readonly branches: { from: number; to: number; ohms: number; wire?: Wire }[] = [];
  private readonly wires = new Map<Wire, number>();
  private readonly throughs = new Map<string, number>();
  private readonly inlines: ReturnType<typeof inlinesOf>;

  constructor(private readonly project: Project) {
    this.inlines = inlinesOf(project);
  }

  build(): Network {
    const { airframe, kit } = this.project;
    const electrical = airframe?.electrical;
    const sources = (electrical?.sources ?? []).filter(({ id, voltage }) => id && voltage);
    const buses = (electrical?.buses ?? []).flatMap(({ id }) => id?.value ?? []);
    const components = (kit?.components ?? []).filter(({ id }) => id);
    const existing = (electrical?.existingLoads ?? []).filter(({ id, bus }) => id && bus);

    for (const [id, inline] of this.inlines) {
      const record = inline.kind === "contact" ? inline.record : this.device(inline.record.device?.value);
      this.throughs.set(id, this.connect(this.node(line(id)), this.node(id), ohmsOf(record?.resistance)));
    }
    for (const source of sources) {
      if (source.bus) this.connect(this.node(source.id!.value), this.node(source.bus.value), 0);
    }
    for (const { from, to, resistance } of electrical?.feeders ?? []) {
      if (from && to) this.connect(this.node(from.value), this.node(to.value), ohmsOf(resistance));
    }
    const withReturn = this.connectEdges(new Set(components.map(({ id }) => id!.value)));

    const loads = [
      ...components.map(({ id }) => ({
        from: this.node(id!.value),
        to: withReturn.has(id!.value) ? this.node(returnOf(id!.value)) : reference,
      })),
      ...existing.map(({ bus }) => ({ from: this.node(bus!.value), to: reference })),
    ];
    const hasSources = sources.length > 0;
    const fed = hasSources ? sources.map(({ id }) => id!.value) : buses;
    const fedNodes = fed.map((id) => ({ node: this.node(id) })); // counted below: naming a node makes it
    const network = prepare({
      nodeCount: this.nodes.size,
      branches: this.branches.map(({ from, to }) => ({ from, to })),
      loads,
      sources: fedNodes,
    });
    const loadIndex = new Map(components.map(({ id }, index) => [id!.value, index]));
    const sourceIndex = new Map(fed.map((id, index) => [id, index]));

    return {
      hasSources,
      loads: [...components.map(({ id }) => id!.value), ...existing.map(({ id }) => id!.value)],
      sources: fed,
      solve: (condition, numbersOf, mostOf) => {
        const numbers = this.branches.map(({ wire }) => wire && numbersOf(wire));
        const answer = network.solve({
          ohms: this.branches.map(({ ohms, wire }, branch) => (wire ? startOhms(numbers[branch]) : ohms)),
          loads: [
            ...components.map((component) => solverLoad(drawIn(component, condition))),
            ...existing.map((load) => currentLoad(existingCurrent(load, condition))),
          ],
          sources: hasSources
            ? sources.map((source) => solverSource(source, mostOf(source)))
            : buses.map(() => stiff(electrical?.nominal)),
          resistanceAt: (branch, amps) => {
            const wire = numbers[branch];
            return wire ? warmOhms(wire, amps) : this.branches[branch]!.ohms;
          },
        });
        return this.stateOf(answer, loadIndex, sourceIndex);
      },
    };
  }

  /** Adds wires and seats; tells the components whose current leads back through a wire. */
  private connectEdges(components: ReadonlySet<string>): Set<string> {
    const withReturn = new Set<string>();
    for (const { from, to, wire } of edgesOf(this.project)) {
      if (components.has(from)) withReturn.add(from);
      const start = components.has(from) ? this.node(returnOf(from)) : this.pointNode(from);
      const end = this.pointNode(this.inlines.has(to) ? line(to) : to);
      const branch = this.connect(start, end, 0, wire);
      if (wire) this.wires.set(wire, branch);
    }
    return withReturn;
  }

  private pointNode(point: string): number {
    return this.project.names.find(["ground"], point).length > 0 ? reference : this.node(point);
  }

  private node(point: string): number {
    const known = this.nodes.get(point) ?? this.nodes.size;
    this.nodes.set(point, known);
    return known;
  }

  private connect(from: number, to: number, ohms: number, wire?: Wire): number {
    return this.branches.push({ from, to, ohms, ...(wire && { wire }) }) - 1;
  }

  private device(id: string | undefined) {
    return this.project.kit?.devices?.find((device) => device.id?.value === id);
  }

  private stateOf(
    answer: NetworkAnswer,
    loads: ReadonlyMap<string, number>,
    sources: ReadonlyMap<string, number>,
  ): NetworkState {
    const solved = answer.kind === "solved" ? answer : undefined;
    const at = <T>(list: readonly T[] | undefined, index: number | undefined) =>
      index === undefined ? undefined : list?.[index];
    return {
      answer,
      currentIn: (wire) => at(solved?.branchAmps, this.wires.get(wire)),
      resistanceOf: (wire) => at(solved?.branchOhms, this.wires.get(wire)),
      currentThrough: (id) => at(solved?.branchAmps, this.throughs.get(id)),
      currentOf: (component) => at(solved?.loadAmps, loads.get(component)),
      voltageAt: (component) => at(solved?.loadVolts, loads.get(component)),
      potentialOf: (point) => at(solved?.potentials, this.nodes.get(point)),
      sourceCurrent: (source) => at(solved?.sourceAmps, sources.get(source)),
    };
  }
}

/** The side of a breaker, fuse or contact that is nearer to the source. */
function line(id: string): string {
  return `${id} line`;
}

/** The side of a component that leads back to ground. */
function returnOf(id: string): string {
  return `${id} return`;
}

function ohmsOf(resistance: Written<Quantity> | undefined): number {
  return resistance?.value.si ?? 0;
}

/** An unknown resistance leaves the wire open: what is behind it is then an island, and not computed. */
function startOhms(numbers: WireNumbers | undefined): number {
  return numbers ? warmOhms(numbers, 0) : Number.POSITIVE_INFINITY;
}

/**
 * Current in A below which a wire counts as carrying none while the network is solved: the temperature rises
 * with the root of the current, so that the noise of a current that is nothing would never settle.
 */
const currentNoise = 1e-6;

/** Resistance of a whole run at the temperature that a current warms it to. AC 43.13-1B par. 11-66. */
export function warmOhms(wire: WireNumbers, amps: number): number {
  const { material, ratingCelsius, ambientCelsius, allowedAmps } = wire;
  const conductorCelsius =
    allowedAmps === undefined
      ? ratingCelsius
      : conductorTemperature({
          ambientCelsius,
          ratingCelsius,
          amps: Math.max(0, amps - currentNoise),
          allowedAmps,
        });
  const per1000Feet = resistanceAt({
    material,
    resistanceAt20Celsius: wire.ohmsPer1000FeetAt20,
    conductorCelsius,
  });
  return (per1000Feet * wire.lengthFeet) / 1000;
}

function solverLoad(draw: Draw | undefined): SolverLoad | undefined {
  if (draw?.current) return { kind: "current", amps: draw.current.value.si };
  if (draw?.power) return { kind: "power", watts: draw.power.value.si };
  if (draw?.resistance && draw.resistance.value.si > 0)
    return { kind: "resistance", ohms: draw.resistance.value.si };
  return undefined;
}

function currentLoad(current: Written<Quantity> | undefined): SolverLoad | undefined {
  return current && { kind: "current", amps: current.value.si };
}

function solverSource(source: Source, limit: ReturnType<SourceLimits>): SolverSource | undefined {
  if (!limit) return undefined;
  return {
    volts: source.voltage!.value.si,
    ohms: ohmsOf(source.resistance),
    ...(limit.amps !== undefined && { mostAmps: limit.amps }),
    oneWay: true,
  };
}

function stiff(nominal: Written<Quantity<"voltage">> | undefined): SolverSource | undefined {
  return nominal && { volts: inUnit(nominal.value, "V"), ohms: 0, oneWay: true };
}
