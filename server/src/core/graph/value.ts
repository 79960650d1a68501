/**
 * The value graph: every derived number with the formula that made it, the inputs it used, where each was
 * written and which published source it rests on. Diagnostics, hover, worksheet and papers are views of these
 * nodes; none of them computes.
 */
import { none } from "../none";
import { convert, formatMeasure, formatNumber, inUnit, type Quantity, type UnitSymbol } from "../quantities";
import type { IdKind } from "../records/schema";
import type { Place, Written } from "../records/written";
import type { Source } from "../source";
import type { Lookup } from "../tables/lookup";
import type { QuantityName } from "./quantity-names";

/** Unit of a value; "1" for a plain number such as a factor. */
export type ValueUnit = UnitSymbol | "1";

/** A value's number for people, with its unit unless it is a plain number. */
export function showMeasure(value: number, unit: ValueUnit, significantDigits?: number): string {
  return unit === "1"
    ? formatNumber(value, significantDigits)
    : formatMeasure(value, unit, significantDigits);
}

/** The thing that a value belongs to: the whole aircraft, all of its new wires together, or what has an id. */
export interface Subject {
  readonly kind: IdKind | "aircraft" | "harness";
  readonly id: string;
}

/** Kind and name, such as "wire P101A8"; a kind of which there is only one has no other name. */
export function subjectWords({ kind, id }: { readonly kind: string; readonly id: string }): string {
  return kind === id ? kind : `${kind} ${id}`;
}

export interface Value {
  readonly subject: Subject;
  readonly quantity: QuantityName;
  /** Id of the condition that it holds in; undefined when it holds in all. */
  readonly condition: string | undefined;
  /** The number, in `unit`, never rounded. */
  readonly value: number;
  readonly unit: ValueUnit;
  /**
   * How it was computed: an expression in the names of the inputs, valid for the units that each input states,
   * or, when `isMethod`, the name of a procedure that no single line can hold.
   */
  readonly formula: string;
  readonly isMethod: boolean;
  readonly inputs: readonly Input[];
  readonly sources: readonly Source[];
  readonly notes: readonly string[];
}

/** One number that a value was computed from. */
export interface Input {
  readonly symbol: string;
  readonly name: string;
  /** In `unit`: the unit in which the formula takes it. */
  readonly value: number;
  readonly unit: ValueUnit;
  /** Where it was written, or, for a table, where the keys of the look-up were written. */
  readonly places: readonly Place[];
  /** Set when it is itself derived. */
  readonly derivedFrom?: Value;
  readonly source?: Source;
  readonly notes: readonly string[];
}

/** An input before its place in a formula gives it a symbol; undefined while it is not known. */
export type Operand = Omit<Input, "symbol"> | undefined;

/** A quantity as written in a record, taken in `unit`. */
export function written(name: string, quantity: Written<Quantity> | undefined, unit: UnitSymbol): Operand {
  return (
    quantity && { name, value: inUnit(quantity.value, unit), unit, places: [quantity.place], notes: none }
  );
}

/** The tolerance of a quantity as written in a record, taken in `unit`; undefined where it has none. */
export function toleranceOf(
  name: string,
  quantity: Written<Quantity> | undefined,
  unit: UnitSymbol,
): Operand {
  const { tolerance, unit: own, dimension } = quantity?.value ?? {};
  if (!quantity || tolerance === undefined || own === undefined || dimension === undefined) return undefined;
  const value = convert(tolerance, own, unit, dimension);
  return { name, value, unit, places: [quantity.place], notes: none };
}

/** Another value of the graph. */
export function derived(name: string, value: Value | undefined): Operand {
  return (
    value && { name, value: value.value, unit: value.unit, places: none, derivedFrom: value, notes: none }
  );
}

/** A number out of a published table; `keys` are the places that decided which. */
export function tabled(
  name: string,
  lookup: Lookup<number> | undefined,
  unit: ValueUnit,
  keys: readonly (Place | undefined)[],
): Operand {
  if (!lookup?.covered) return undefined;
  return {
    name,
    value: lookup.value,
    unit,
    places: keys.filter((place) => place !== undefined),
    source: lookup.source,
    notes: lookup.notes,
  };
}

/** A number that a formula takes for a reason of its own, such as an assumed default. */
export function assumed(name: string, value: number, unit: ValueUnit, note: string): Operand {
  return { name, value, unit, places: [], notes: [note] };
}

type Operands = Readonly<Record<string, Operand | readonly Operand[]>>;

/** What a formula is computed from: a number for one operand, a list for a list. */
type Numbers<O extends Operands> = {
  readonly [K in keyof O]: O[K] extends readonly Operand[] ? readonly number[] : number;
};

interface Derivation<O extends Operands> {
  readonly subject: Subject;
  readonly quantity: QuantityName;
  readonly condition?: string | undefined;
  readonly unit: ValueUnit;
  /** Written in the names of the operands; a list is used as `sum(name)` or the like. */
  readonly formula?: string | undefined;
  /** In place of a formula: the name of the procedure. */
  readonly method?: string | undefined;
  readonly operands: O;
  readonly compute: (numbers: Numbers<O>) => number;
  readonly sources?: readonly Source[] | undefined;
  readonly notes?: readonly string[] | undefined;
}

/** Computes one value; undefined while any operand is not known, or when the result is no number. */
export function derive<const O extends Operands>(derivation: Derivation<O>): Value | undefined {
  const operands: Operands = derivation.operands;
  const numbers: Record<string, number | readonly number[]> = {};
  for (const symbol in operands) {
    const operand = operands[symbol];
    if (operand === undefined) return undefined;
    if (isList(operand)) {
      const list: number[] = [];
      for (const one of operand) {
        if (one === undefined) return undefined;
        list.push(one.value);
      }
      numbers[symbol] = list;
    } else {
      numbers[symbol] = operand.value;
    }
  }
  const value = derivation.compute(numbers as Numbers<O>);
  return Number.isFinite(value) ? new DerivedValue(value, derivation.unit, toldOf(derivation)) : undefined;
}

/** All but `compute`: what that closes over must not live as long as the value. */
function toldOf({ subject, quantity, condition, formula, method, operands, sources, notes }: Told): Told {
  return { subject, quantity, condition, formula, method, operands, sources, notes };
}

/** What is told of a value when somebody looks at more than its number. */
interface Told extends Omit<Derivation<Operands>, "compute" | "unit"> {}

/**
 * A value whose number was computed already, for what is derived by the thousand: what it is and what it was made
 * of is told when somebody looks. That formula and operands give the number is for a test to show.
 *
 * @param value undefined, or no number, where it could not be had
 */
export function known(value: number | undefined, unit: ValueUnit, tell: () => Told): Value | undefined {
  return value !== undefined && Number.isFinite(value) ? new DerivedValue(value, unit, tell) : undefined;
}

/** Far more values are judged than shown, so the list of inputs is made when somebody looks at it. */
class DerivedValue implements Value {
  private listed: readonly Input[] | undefined = undefined;

  constructor(
    readonly value: number,
    readonly unit: ValueUnit,
    private told: Told | (() => Told),
  ) {}

  get subject(): Subject {
    return this.all.subject;
  }

  get quantity(): QuantityName {
    return this.all.quantity;
  }

  get condition(): string | undefined {
    return this.all.condition;
  }

  get formula(): string {
    return this.all.formula ?? this.all.method ?? "";
  }

  get isMethod(): boolean {
    return this.all.formula === undefined;
  }

  get sources(): readonly Source[] {
    return this.all.sources ?? none;
  }

  get notes(): readonly string[] {
    return this.all.notes ?? none;
  }

  get inputs(): readonly Input[] {
    this.listed ??= Object.entries(this.all.operands).flatMap(([symbol, operand]) =>
      (isList(operand) ? operand : [operand]).flatMap((one) => (one ? [{ symbol, ...one }] : [])),
    );
    return this.listed;
  }

  private get all(): Told {
    if (typeof this.told === "function") this.told = this.told();
    return this.told;
  }
}

function isList(operand: Operand | readonly Operand[]): operand is readonly Operand[] {
  return Array.isArray(operand);
}

/** Values as they were kept, those of what was derived as a whole together. */
export type Kept = readonly (Value | Whole | Kept)[];

/** What was derived with all values that it made on the way; found again by its kind and by what it is of. */
export abstract class Whole {
  /** @param kind tells apart what is derived of the same thing */
  constructor(
    readonly kind: object,
    readonly of: object,
  ) {}

  abstract readonly kept: Kept;
}

/** Puts a value on a list, and hands it back. */
export type KeepOne = (value: Value | undefined) => Value | undefined;

/** Puts a value on the list of all values, and hands it back. */
export interface Keep extends KeepOne {
  /** Puts those on the list that were derived before. */
  all(values: Kept): void;
  whole(one: Whole): void;
  /** What was derived of a thing when the same list was made the last time. */
  last(kind: object, of: object): Whole | undefined;
}

/** What a derivation gave, and the values that it kept. */
export interface Keeping<R> {
  readonly result: R;
  readonly kept: Kept;
}

/**
 * Derives something together with the list of its values. Far more often are values kept than listed, so that
 * nothing is done for the list until somebody asks.
 *
 * @param last what the same derivation kept the last time: it is looked through while this one runs, and let go
 */
export function keeping<R>(derive: (keep: Keep) => R, last: Kept = none): Keeping<R> {
  const kept: (Value | Whole | Kept)[] = [];
  let before = last;
  let next = 0;
  const keep: Keep = (value) => {
    if (value) kept.push(value);
    return value;
  };
  keep.all = (values) => {
    if (values.length > 0) kept.push(values);
  };
  keep.whole = (one) => {
    kept.push(one);
  };
  // Things are derived in their order, so that what is looked for nearly always comes next.
  keep.last = (kind, of) => {
    for (let step = 0; step < before.length; step++) {
      const index = (next + step) % before.length;
      const one = before[index];
      if (one instanceof Whole && one.of === of && one.kind === kind) {
        next = index + 1;
        return one;
      }
    }
    return undefined;
  };
  const result = derive(keep);
  before = none;
  return { result, kept };
}

/** Where nobody asks for a list of the values. */
export const noValues: Keep = Object.assign((value: Value | undefined) => value, {
  all: () => {},
  whole: () => {},
  last: () => undefined,
});

/** In the order in which they were kept, each once, however many things keep it. */
export function listOf(kept: Kept): Value[] {
  const values = new Set<Value>();
  const add = (one: Value | Whole | Kept): void => {
    if (isKept(one)) one.forEach(add);
    else if (one instanceof Whole) one.kept.forEach(add);
    else values.add(one);
  };
  add(kept);
  return [...values];
}

function isKept(one: Value | Whole | Kept): one is Kept {
  return Array.isArray(one);
}

/** Every place that a value rests on, however far back. */
export function placesBehind(value: Value, seen = new Set<Value>(), places = new Set<Place>()): Set<Place> {
  if (seen.has(value)) return places;
  seen.add(value);
  for (const input of value.inputs) {
    for (const place of input.places) places.add(place);
    if (input.derivedFrom) placesBehind(input.derivedFrom, seen, places);
  }
  return places;
}

export function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}
