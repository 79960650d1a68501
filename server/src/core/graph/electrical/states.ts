import type { NetworkAnswer, Load as SolverLoad, Source as SolverSource } from "../../methods/network";
import type { Project } from "../../project";
import { inUnit, type Quantity } from "../../quantities";
import type { Condition, Source } from "../../records/types";
import type { Written } from "../../records/written";
import { Memory } from "../remember";
import { noValues } from "../value";
import { holderOf, inlinesOf } from "./layout";
import { type Network, NetworkState, type WiredNetwork } from "./network";
import { loadsIn } from "./running";
import type { SourceOutputs } from "./source-outputs";
import { type WarmWire, warmOhms } from "./warm-wire";
import type { WireRating } from "./wire-ratings";

/** What the network is solved with. */
interface Given {
  readonly project: Project;
  readonly conditions: readonly Condition[];
  readonly wired: WiredNetwork;
  /** By branch up to the first wire, what does not warm. */
  readonly unwarmedOhms: readonly number[];
  /** By the position of the wire in the record. */
  readonly ratings: readonly WireRating[];
  readonly outputs: SourceOutputs;
}

/**
 * The network's solution in each condition, and again only where something that it is solved with has changed: an
 * edit of one condition leaves the others solved.
 */
export function solveConditions(given: Given): ReadonlyMap<Condition, NetworkState> {
  const { project, conditions, wired, unwarmedOhms, ratings, outputs } = given;
  const electrical = project.airframe?.electrical;
  const rated = wired.positions.map((position) => ratings[position]!);
  return new Map(
    conditions.map((condition, index) => {
      const loads = loadsIn(condition, project);
      const limits = outputs.sources.map((source) => outputs.limitOf(source, condition));
      const wires = rated.map((rating) => rating.states[index]!.numbers);
      const rests = [wired, electrical, unwarmedOhms, loads, ...limits, ...wires];
      const state = states.recall(condition, condition, rests, noValues, () => {
        const sources = wired.network.hasSources
          ? outputs.sources.map((source, position) => solverSource(source, limits[position]))
          : wired.network.sources.map(() => stiff(electrical?.nominal));
        return new NetworkState(solve(wired.network, { unwarmedOhms, wires, loads, sources }), wired);
      });
      return [condition, state];
    }),
  );
}

const states = new Memory<Condition, Condition, NetworkState>();

/** @param given `wires` by branch from the first wire on */
function solve(
  { firstWire, solver }: Network,
  given: {
    readonly unwarmedOhms: readonly number[];
    readonly wires: readonly (WarmWire | undefined)[];
    readonly loads: readonly (SolverLoad | undefined)[];
    readonly sources: readonly (SolverSource | undefined)[];
  },
): NetworkAnswer {
  const { unwarmedOhms, wires, loads, sources } = given;
  const ohms = new Float64Array(firstWire + wires.length);
  ohms.set(unwarmedOhms);
  for (let position = 0; position < wires.length; position++) {
    const wire = wires[position];
    // An unknown resistance leaves the wire open: what is behind it is then an island, and not computed.
    ohms[firstWire + position] = wire ? warmOhms(wire, 0) : Number.POSITIVE_INFINITY;
  }
  return solver.solve({
    ohms,
    loads,
    sources,
    resistanceAt: (branch, amps) => {
      const wire = wires[branch - firstWire];
      return wire ? warmOhms(wire, amps) : ohms[branch]!;
    },
  });
}

function solverSource(source: Source, mostAmps: number | undefined): SolverSource | undefined {
  if (mostAmps === undefined) return undefined;
  return {
    volts: source.voltage!.value.si,
    ohms: source.resistance?.value.si ?? 0,
    ...(mostAmps !== Number.POSITIVE_INFINITY && { mostAmps }),
    oneWay: true,
  };
}

function stiff(nominal: Written<Quantity<"voltage">> | undefined): SolverSource | undefined {
  return nominal && { volts: inUnit(nominal.value, "V"), ohms: 0, oneWay: true };
}

/** By branch up to the first wire, what does not warm: breakers, fuses and contacts, then ties, feeders and seats. */
export function resistancesOf(project: Project, { tieOhms }: Network): number[] {
  const holders = [...inlinesOf(project).values()].map((inline) => holderOf(inline, project));
  return [...holders.map((record) => record?.resistance?.value.si ?? 0), ...tieOhms];
}
