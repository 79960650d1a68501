import { isSame } from "../../is-same";
import { type Keep, type KeepOne, type Kept, type Value, Whole } from "../value";

/** What is derived of things such as wires, each with a state in every condition; `T` is what it is derived from. */
export interface StatesOf<T, S, R> {
  readonly things: readonly T[];
  /** The entry of the record that a thing is known by from one time to the next. */
  entryOf(of: T): object;
  /** While a condition is another than the last time, nothing in it is taken over. */
  readonly conditions: readonly object[];
  /**
   * By the position of the condition, all that anything in it may rest on, the list of things too: while that is
   * the same, its states are taken over and nothing of them is looked at.
   */
  readonly grounds: readonly (readonly unknown[])[];
  /** Adds to `rests` all that the result rests on besides its entry, whatever the condition. */
  rests(of: T, rests: unknown[]): void;
  /** What a state rests on besides its entry and its condition. */
  restsIn(of: T, index: number): readonly unknown[];
  stateIn(of: T, index: number, keep: KeepOne): S;
  /** @param states by the position of the condition */
  whole(of: T, states: readonly S[]): R;
}

/**
 * What `Recurring` is for one thing, for a list of them and by condition: an edit of one condition derives again
 * what is in it, an edit of one thing what rests on it.
 */
export class RecurringStates<S, R> {
  /** @returns by the position of the thing */
  recall<T>(how: StatesOf<T, S, R>, keep: Keep): readonly R[] {
    const last = keep.last(this, this) as Table<S, R> | undefined; // all of this kind are made below
    const table = last?.standsOn(how.grounds) ? last : this.derive(how, last);
    keep.whole(table);
    return table.results;
  }

  private derive<T>(how: StatesOf<T, S, R>, last: Table<S, R> | undefined): Table<S, R> {
    const { things, conditions, grounds } = how;
    const columns = conditions.map((condition, index): Column<S> => {
      const before = last?.columns[index];
      const ground = grounds[index]!;
      return before && isSame(before.ground, ground) ? before : { condition, ground, states: [], made: [] };
    });
    const changed = columns.flatMap((column, index) => (column === last?.columns[index] ? [] : [index]));
    const table = new Table<S, R>(this, things.map(how.entryOf), columns);
    for (let position = 0; position < things.length; position++) {
      const thing = things[position]!;
      how.rests(thing, table.rests.all);
      table.rests.end();
      const place = last?.placeOf(table, position);
      if (place !== undefined && table.rests.isSame(position, last!.rests, place)) {
        for (const index of changed) takeOver(columns[index]!, last!.columns[index]!, place);
        table.results.push(last!.results[place]!);
        continue;
      }
      for (const index of changed) {
        const column = columns[index]!;
        const before = last?.columns[index];
        const rests = how.restsIn(thing, index);
        if (
          place !== undefined &&
          before?.condition === column.condition &&
          isSame(before.made[place]!.rests, rests)
        ) {
          takeOver(column, before, place);
        } else {
          add(column, how, thing, index, rests);
        }
      }
      table.results.push(how.whole(thing, table.statesAt(position)));
    }
    return table;
  }
}

/** All things in one condition; lists by their position. */
interface Column<S> {
  readonly condition: object;
  readonly ground: readonly unknown[];
  readonly states: S[];
  /** How each state came about. */
  readonly made: { readonly rests: readonly unknown[]; readonly kept: Kept }[];
}

function takeOver<S>(column: Column<S>, before: Column<S>, place: number): void {
  column.states.push(before.states[place]!);
  column.made.push(before.made[place]!);
}

function add<T, S>(
  column: Column<S>,
  how: StatesOf<T, S, unknown>,
  of: T,
  index: number,
  rests: readonly unknown[],
): void {
  const kept: Value[] = [];
  const keep: KeepOne = (value) => {
    if (value) kept.push(value);
    return value;
  };
  column.states.push(how.stateIn(of, index, keep));
  column.made.push({ rests, kept });
}

/** All things in all conditions. */
class Table<S, R> extends Whole {
  /** By the position of the thing. */
  readonly rests = new Rests();
  readonly results: R[] = [];

  constructor(
    kind: object,
    readonly entries: readonly object[],
    readonly columns: readonly Column<S>[],
  ) {
    super(kind, kind);
  }

  standsOn(grounds: readonly (readonly unknown[])[]): boolean {
    return (
      grounds.length === this.columns.length &&
      this.columns.every(({ ground }, index) => isSame(ground, grounds[index]))
    );
  }

  /**
   * Where the thing of a later table stands in this one, if it does: what an edit leaves stands as far from the
   * beginning as before, or as far from the end.
   */
  placeOf({ entries }: Table<S, R>, position: number): number | undefined {
    const entry = entries[position];
    if (this.entries[position] === entry) return position;
    const fromEnd = position + this.entries.length - entries.length;
    return this.entries[fromEnd] === entry ? fromEnd : undefined;
  }

  statesAt(position: number): S[] {
    return this.columns.map(({ states }) => states[position]!);
  }

  /** Thing by thing. */
  get kept(): Kept {
    return this.entries.flatMap((_, position) => this.columns.map(({ made }) => made[position]!.kept));
  }
}

/** What each of several things rests on, one after the other in one list. */
class Rests {
  readonly all: unknown[] = [];
  private readonly ends: number[] = [];

  /** All that was added since the last time belongs to one thing. */
  end(): void {
    this.ends.push(this.all.length);
  }

  isSame(position: number, other: Rests, place: number): boolean {
    const from = this.ends[position - 1] ?? 0;
    const otherFrom = other.ends[place - 1] ?? 0;
    const count = this.ends[position]! - from;
    if (other.ends[place]! - otherFrom !== count) return false;
    for (let at = 0; at < count; at++) {
      if (!Object.is(this.all[from + at], other.all[otherFrom + at])) return false;
    }
    return true;
  }
}
