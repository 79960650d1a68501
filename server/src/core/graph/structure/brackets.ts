/** Bent sheet parts: what each bend takes up, and how long the flat blank is. */
import { bendAllowance, bendSource, setback } from "../../methods/sheet-bends";
import type { Project } from "../../project";
import { inUnit } from "../../quantities";
import type { Bracket, BracketBend } from "../../records/types";
import { blankTolerance } from "../../tables/blank-tolerance";
import { covered } from "../../tables/lookup";
import { isWholeList } from "../entries";
import { Memory } from "../remember";
import {
  derive,
  derived,
  type Keep,
  type Subject,
  sumOf,
  tabled,
  toleranceOf,
  type Value,
  written,
} from "../value";

export interface Brackets {
  readonly brackets: readonly BracketResult[];
}

export interface BracketResult {
  readonly bracket: Bracket;
  readonly id: string;
  /** Why it is no bracket that could be bent; nothing is derived then. */
  readonly fault: BracketFault | undefined;
  readonly bends: readonly BendResult[];
  readonly legs: readonly LegResult[];
  readonly flat: Value | undefined;
  /** How far the blank that is drawn is off it, and may be. */
  readonly off: { readonly value: Value; readonly limit: Value } | undefined;
}

export type BracketFault =
  | { readonly kind: "angle"; readonly bend: BracketBend; readonly degrees: number }
  | { readonly kind: "count"; readonly legs: number; readonly bends: number };

export interface BendResult {
  readonly bend: BracketBend;
  readonly setback: Value | undefined;
  readonly allowance: Value | undefined;
}

export interface LegResult {
  readonly length: Value;
  /** What its bends take of it. */
  readonly least: Value | undefined;
}

type Unit = "in" | "mm";

/** Pure; what is missing in the record is left out of the result. */
export function deriveBrackets({ install }: Project, keep: Keep): Brackets {
  const brackets = (install.brackets ?? []).flatMap((bracket): BracketResult[] => {
    if (!bracket.id) return [];
    const id = bracket.id.value;
    return [known.recall(bracket, bracket, [], keep, (keepOwn) => bracketOf(bracket, id, keepOwn))];
  });
  return { brackets };
}

const known = new Memory<Bracket, Bracket, BracketResult>();

function bracketOf(bracket: Bracket, id: string, keep: Keep): BracketResult {
  const { thickness, legs = [], bends = [] } = bracket;
  const isWhole = isWholeList(bracket, "legs", legs) && isWholeList(bracket, "bends", bends);
  const fault = isWhole ? faultOf(bracket) : undefined;
  const empty = { bracket, id, fault, bends: [], legs: [], flat: undefined, off: undefined };
  if (!isWhole || fault || !thickness || legs.length === 0 || bends.length === 0) return empty;
  const unit: Unit = ["in", "ft", "mil"].includes(thickness.value.unit) ? "in" : "mm";
  const subject: Subject = { kind: "bracket", id };
  const part = (what: string): Subject => ({ kind: "bracket", id: `${id} ${what}` });
  const measured = bends.map((bend, index) => bendOf(bend, bracket, part(`bend ${index + 1}`), unit, keep));
  const setbacks = measured.map((one) => derived("setback", one.setback));
  const flat = keep(
    derive({
      subject,
      quantity: "flat-length",
      unit,
      formula: "sum(l) - 2 * sum(s) + sum(a)",
      operands: {
        l: legs.map((leg, index) => written(`leg ${index + 1}`, leg, unit)),
        s: setbacks,
        a: measured.map((one) => derived("bend allowance", one.allowance)),
      },
      compute: ({ l, s, a }) => sumOf(l) - 2 * sumOf(s) + sumOf(a),
      sources: [bendSource],
    }),
  );
  const results = legs.flatMap((leg, index): LegResult[] => {
    const ofLeg = { subject: part(`leg ${index + 1}`), unit } as const;
    const length = derive({
      ...ofLeg,
      quantity: "bracket-leg",
      formula: "l",
      operands: { l: written(`leg ${index + 1}`, leg, unit) },
      compute: ({ l }) => l,
    });
    const own = setbacks.slice(Math.max(0, index - 1), index + 1);
    const least = keep(
      derive({
        ...ofLeg,
        quantity: "least-bracket-leg",
        formula: "sum(s)",
        operands: { s: own },
        compute: ({ s }) => sumOf(s),
        sources: [bendSource],
      }),
    );
    return length ? [{ length, least }] : [];
  });
  return { ...empty, bends: measured, legs: results, flat, off: offOf(bracket, flat, unit, keep) };
}

function offOf(
  { flat: drawn }: Bracket,
  flat: Value | undefined,
  unit: Unit,
  keep: Keep,
): BracketResult["off"] {
  if (!flat || !drawn) return undefined;
  const { subject } = flat;
  const value = keep(
    derive({
      subject,
      quantity: "flat-length-difference",
      unit,
      formula: "abs(b - L)",
      operands: { b: written("blank as drawn", drawn, unit), L: derived("flat length", flat) },
      compute: ({ b, L }) => Math.abs(b - L),
    }),
  );
  const own = toleranceOf("tolerance of the blank", drawn, unit);
  const habit = covered(blankTolerance.value * (unit === "in" ? 1 : 25.4), blankTolerance.source);
  const limit = keep(
    derive({
      subject,
      quantity: "flat-length-tolerance",
      unit,
      formula: "t",
      operands: { t: own ?? tabled("usual tolerance", habit, unit, []) },
      compute: ({ t }) => t,
      sources: own ? [] : [habit.source],
    }),
  );
  return value && limit && { value, limit };
}

function faultOf({ legs = [], bends = [] }: Bracket): BracketFault | undefined {
  for (const bend of bends) {
    const degrees = bend.angle && inUnit(bend.angle.value, "deg");
    if (degrees !== undefined && !(degrees > 0 && degrees < 180)) return { kind: "angle", bend, degrees };
  }
  if (legs.length > 0 && legs.length !== bends.length + 1) {
    return { kind: "count", legs: legs.length, bends: bends.length };
  }
  return undefined;
}

function bendOf(
  bend: BracketBend,
  { thickness }: Bracket,
  subject: Subject,
  unit: Unit,
  keep: Keep,
): BendResult {
  const R = written("inside radius", bend.radius, unit);
  const T = written("thickness", thickness, unit);
  return {
    bend,
    setback: keep(
      derive({
        subject,
        quantity: "bend-setback",
        unit,
        formula: "tan(N / 2) * (R + T)",
        operands: { N: written("angle", bend.angle, "rad"), R, T },
        compute: (n) => setback(n.N, n.R, n.T),
        sources: [bendSource],
      }),
    ),
    allowance: keep(
      derive({
        subject,
        quantity: "bend-allowance",
        unit,
        formula: "(0.01743 * R + 0.0078 * T) * N",
        operands: { R, T, N: written("angle", bend.angle, "deg") },
        compute: (n) => bendAllowance(n.N, n.R, n.T),
        sources: [bendSource],
      }),
    ),
  };
}
