/** What the rules of installed wires have in common: a number of the record beside what a document allows. */
import { type Assessment, holds, type Problem } from "../../findings/finding";
import type { QuantityName } from "../../graph/quantity-names";
import { ofEach } from "../../graph/recall";
import {
  derive,
  type Operand,
  type Subject,
  tabled,
  type Value,
  type ValueUnit,
  written,
} from "../../graph/value";
import { none } from "../../none";
import type { Project } from "../../project";
import { convert, formatApart, type Quantity, roundDown, roundUp, type UnitSymbol } from "../../quantities";
import type { Wire } from "../../records/types";
import type { Place, Written } from "../../records/written";
import { covered } from "../../tables/lookup";
import type { InstallationLimit } from "../../tables/wire-installation-limits";
import { type Remedy, rewrite } from "../rule";

/** An assessment before a rule gives it its name and its facts. */
export type Held = Omit<Assessment, "rule" | "facts">;

/** A limit that the recorded number is held against as it is. */
export type PlainLimit = InstallationLimit & { readonly unit: "in" | "ft" | "AWG" | "" };

/** A number that a record gives of something. */
export interface Recorded {
  readonly subject: Subject;
  readonly quantity: QuantityName;
  /** What it is, in words. */
  readonly name: string;
  /** A quantity, or a count. */
  readonly written: Written<Quantity> | Written<number> | undefined;
}

/** Holds a recorded number against a document's limit; undefined where the record does not give it. */
export function holdRecorded(
  recorded: Recorded,
  limit: PlainLimit,
  limitQuantity: QuantityName,
  keys: readonly (Place | undefined)[] = [],
): Held | undefined {
  if (!recorded.written) return undefined;
  const unit: ValueUnit = limit.unit === "" ? "1" : limit.unit;
  const allowed = derive({
    subject: recorded.subject,
    quantity: limitQuantity,
    unit,
    ...asItIs("limit", unit),
    operands: {
      limit: tabled("limit of the document", covered(limit.value, limit.source, notesOf(limit)), unit, keys),
    },
    compute: (numbers) => numbers.limit,
    sources: [limit.source],
  });
  return allowed && holdAgainst(recorded, unit, limit.bound, allowed);
}

/** Holds a wire's gauge against the thinnest that a document allows. */
export function* holdGauge(
  rule: string,
  { gauge }: Wire,
  subject: Subject,
  limit: PlainLimit,
): Iterable<Assessment> {
  const recorded = { subject, quantity: "wire-gauge", name: "gauge", written: gauge } as const;
  const held = holdRecorded(recorded, limit, "thinnest-gauge");
  if (!held) return;
  const facts = { wire: subject.id, gauge: held.value.value, thinnest: held.limit.value };
  yield { ...held, rule, facts };
}

/** Holds a recorded number against a limit that is itself derived. */
export function holdAgainst(
  { subject, quantity, name, written: recorded }: Recorded,
  unit: ValueUnit,
  bound: InstallationLimit["bound"],
  limit: Value,
): Held | undefined {
  if (!recorded) return undefined;
  const value = derive({
    subject,
    quantity,
    unit,
    ...asItIs("recorded", unit),
    operands: { recorded: operandOf(name, recorded, unit) },
    compute: (numbers) => numbers.recorded,
  });
  if (!value) return undefined;
  const sense = bound === "least" ? "at-least" : "at-most";
  return {
    subject,
    place: recorded.place,
    value,
    limit,
    sense,
    holds: holds(value.value, sense, limit.value),
    // A gauge is a name: a share of its number says nothing.
    ...(unit === "AWG" && { scale: { of: undefined } }),
    related: [],
  };
}

/** What copies its one operand. A gauge is a name with a number: "4/0" is no expression. */
function asItIs(symbol: string, unit: ValueUnit) {
  return unit === "AWG" ? { method: symbol } : { formula: symbol };
}

function operandOf(
  name: string,
  { value, place }: NonNullable<Recorded["written"]>,
  unit: ValueUnit,
): Operand {
  if (typeof value === "number") return { name, value, unit, places: [place], notes: [] };
  return unit === "1" ? undefined : written(name, { value, place }, unit);
}

function notesOf({ note }: InstallationLimit): string[] {
  return note === undefined ? [] : [note];
}

/** Judges each wire that has an id by nothing but what the record says of it, and what all of them share. */
export function ofEachWire<R extends Assessment | Problem, S = undefined>(
  judge: (wire: Wire, subject: Subject, shared: S) => Iterable<R>,
  sharedOf?: (project: Project) => S,
): (project: Project) => readonly R[] {
  return ofEach(
    ({ install }) => install.wires ?? none,
    (wire, shared: S) => (wire.id ? judge(wire, { kind: "wire", id: wire.id.value }, shared) : []),
    sharedOf,
  );
}

/** The wire that an assessment is about. */
export function wireOf({ subject }: Assessment, { install }: Project): Wire | undefined {
  return install.wires?.find(({ id }) => id?.value === subject.id);
}

/** A number and its limit with so many digits that they differ, each with its unit. */
export function apart(value: number, limit: number, unit: UnitSymbol<"length">): readonly [string, string] {
  const [a, b] = formatApart(value, limit);
  return [`${a} ${unit}`, `${b} ${unit}`];
}

/** Steps to which a length is rounded when one is proposed; other units turn into inches. */
const steps: Readonly<Partial<Record<UnitSymbol<"length">, number>>> = {
  in: 0.01,
  ft: 0.01,
  mm: 1,
  cm: 0.1,
  m: 0.001,
};

/** The length that just keeps the limit, in the unit that the record has, rounded the safe way. */
export function* lengthThatKeeps(
  { limit, sense, place }: Assessment,
  recorded: Written<Quantity<"length">> | undefined,
  title: (length: string) => string,
): Iterable<Remedy> {
  if (!recorded) return;
  const unit = steps[recorded.value.unit] === undefined ? "in" : recorded.value.unit;
  const wanted = convert(limit.value, limit.unit as UnitSymbol<"length">, unit, "length");
  const text = `${(sense === "at-most" ? roundDown : roundUp)(wanted, steps[unit]!)} ${unit}`;
  yield rewrite(title(text), place, text);
}

/** Copper in place of aluminium. */
export function* copperInstead(wire: Wire | undefined): Iterable<Remedy> {
  if (!wire?.material || !wire.id) return;
  yield rewrite(`Make wire ${wire.id.value} copper`, wire.material.place, "copper", "material");
}
