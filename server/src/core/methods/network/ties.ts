/**
 * How sources hold a network, as a staircase of positions with falling voltage: off, holding, at the limit.
 *
 * A source with internal resistance is a tie of its own. Stiff sources that are rigidly in parallel are one
 * tie with a level for each voltage: as the voltage falls, the next level takes hold when those above it are
 * at their limits. Odd position 2i + 1: level i holds. Even position 2i: the levels before i are at their
 * limits, the others off, and the tie gives a fixed current.
 */
import { type Condition, reference, type Source, type SourceState } from "./model";

export interface Level {
  readonly volts: number;
  readonly mostAmps: number;
  /** One of its sources may absorb current without limit. */
  readonly absorbs: boolean;
  readonly sources: readonly { readonly index: number; readonly mostAmps: number }[];
}

export interface Tie {
  /** The unknown, or the reference. */
  readonly at: number;
  readonly ohms: number;
  /** Highest volts first. */
  readonly levels: readonly Level[];
  /** What the levels before i give at their limits, i = 0 … levels. */
  readonly amounts: readonly number[];
  readonly firstPosition: number;
  readonly lastPosition: number;
}

export type Ties =
  | { readonly kind: "ties"; readonly ties: readonly Tie[] }
  | { readonly kind: "unlimited-current"; readonly sources: readonly number[] };

/** Whether a source is on and has a current to give or to take. */
export const canGive = (source: Source | undefined): source is Source =>
  source !== undefined && !(source.oneWay && source.mostAmps === 0);

/** @param fed by source: the unknown of its node, or the reference */
export function makeTies(sources: Condition["sources"], fed: Int32Array): Ties {
  const ties: Tie[] = [];
  const stiff = new Map<number, Level[]>();
  sources.forEach((source, index) => {
    if (!canGive(source)) return;
    const { volts, ohms, mostAmps = Number.POSITIVE_INFINITY, oneWay } = source;
    const level = { volts, mostAmps, absorbs: !oneWay, sources: [{ index, mostAmps }] };
    const at = fed[index]!;
    if (ohms > 0) ties.push(makeTie(at, ohms, [level]));
    else stiff.set(at, [...(stiff.get(at) ?? []), level]);
  });

  for (const [at, levels] of stiff) {
    const tie = makeTie(at, 0, byVoltage(levels));
    const saturated = tie.levels.slice(0, tie.firstPosition >> 1);
    const unlimited = saturated.filter(({ mostAmps }) => mostAmps === Number.POSITIVE_INFINITY);
    if (unlimited.length > 0) {
      const sources = unlimited.flatMap((level) => level.sources.map(({ index }) => index));
      return { kind: "unlimited-current", sources: sources.sort((a, b) => a - b) };
    }
    ties.push(tie);
  }
  return { kind: "ties", ties };
}

/** One level for each voltage, the highest first. */
function byVoltage(levels: readonly Level[]): Level[] {
  const merged = new Map<number, Level>();
  for (const level of levels) {
    const same = merged.get(level.volts);
    merged.set(
      level.volts,
      same
        ? {
            volts: level.volts,
            mostAmps: same.mostAmps + level.mostAmps,
            absorbs: same.absorbs || level.absorbs,
            sources: [...same.sources, ...level.sources],
          }
        : level,
    );
  }
  return [...merged.values()].sort((a, b) => b.volts - a.volts);
}

function makeTie(at: number, ohms: number, levels: readonly Level[]): Tie {
  const amounts = [0];
  for (const { mostAmps } of levels) amounts.push(amounts.at(-1)! + mostAmps);
  const endless = levels.findIndex(({ mostAmps }) => mostAmps === Number.POSITIVE_INFINITY);
  const lastPosition = endless < 0 ? 2 * levels.length : 2 * endless + 1;
  if (at === reference && ohms === 0) {
    const position = 2 * levels.filter(({ volts }) => volts > 0).length;
    return { at, ohms, levels, amounts, firstPosition: position, lastPosition: position };
  }
  // Nothing stiff rises above the lowest level that absorbs: the levels above it are always at their limits.
  const absorbing = levels.findLastIndex(({ absorbs }) => absorbs);
  return { at, ohms, levels, amounts, firstPosition: absorbing < 0 ? 0 : 2 * absorbing + 1, lastPosition };
}

/**
 * Where the search starts, from above: what can't but hold does, and those of the highest voltage. So of the
 * voltages that are possible when a source stands exactly at its limit, the one that it regulates is found.
 */
export function startPositions(ties: readonly Tie[]): Int32Array {
  const highest = ties.reduce((most, { levels }) => Math.max(most, levels[0]!.volts), 0);
  const positions = new Int32Array(ties.length);
  ties.forEach(({ levels, firstPosition, lastPosition }, index) => {
    const canHold = firstPosition % 2 === 0 && firstPosition < lastPosition;
    positions[index] = canHold && levels[0]!.volts === highest ? firstPosition + 1 : firstPosition;
  });
  return positions;
}

/** The level that holds at a position; undefined where the tie gives a fixed current. */
export const holdingLevel = (tie: Tie, position: number): Level | undefined =>
  position % 2 === 1 ? tie.levels[position >> 1] : undefined;

/** The current that a tie gives at a position where no level holds. */
export const fixedAmps = (tie: Tie, position: number): number => tie.amounts[position >> 1]!;

/**
 * Which way a position must move for the voltage and current that were found with it: −1, 0 or 1. Within
 * the tolerances it stays, so that a tie exactly at a corner doesn't move to and fro.
 */
export function stepOf(
  tie: Tie,
  position: number,
  found: { readonly volts: number; readonly amps: number },
  tolerance: { readonly volts: number; readonly amps: number },
): -1 | 0 | 1 {
  const index = position >> 1;
  const level = holdingLevel(tie, position);
  if (level) {
    if (found.amps > tie.amounts[index + 1]! + tolerance.amps) return 1;
    return !level.absorbs && found.amps < tie.amounts[index]! - tolerance.amps ? -1 : 0;
  }
  const inside = tie.ohms * tie.amounts[index]!;
  const below = tie.levels[index];
  if (position < tie.lastPosition && found.volts < below!.volts - inside - tolerance.volts) return 1;
  const above = tie.levels[index - 1];
  return position > tie.firstPosition && found.volts > above!.volts - inside + tolerance.volts ? -1 : 0;
}

/** Every level of the tie is at its limit: it can give no more. */
export const isExhausted = (tie: Tie, position: number): boolean =>
  position === tie.lastPosition && position % 2 === 0;

/** By source: its state, and its current; NaN where that is undetermined. */
export interface Shares {
  readonly states: SourceState[];
  readonly amps: Float64Array;
}

/**
 * Shares what a tie gives, `amps`, out to its sources. Sources of one voltage that hold it together leave open which
 * gives what.
 *
 * @returns what is left open
 */
export function share(tie: Tie, position: number, amps: number, { states, amps: given }: Shares): number {
  const index = position >> 1;
  const holding = holdingLevel(tie, position);
  for (let level = 0; level < index; level++) {
    for (const source of tie.levels[level]!.sources) {
      states[source.index] = "at-limit";
      given[source.index] = source.mostAmps;
    }
  }
  if (!holding) return 0;
  const rest = amps - tie.amounts[index]!;
  const isAlone = holding.sources.length === 1;
  for (const source of holding.sources) {
    states[source.index] = "holding";
    given[source.index] = isAlone ? rest : Number.NaN;
  }
  return isAlone ? 0 : rest;
}
