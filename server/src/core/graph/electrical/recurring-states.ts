import { isSame } from "../../is-same";
import { type Keep, type KeepOne, type Kept, type Value, Whole } from "../value";

/** What is derived of things such as wires, each with a state in every condition; `T` is what it is derived from. */
export interface StatesOf<T, S, R> {
  readonly things: readonly T[];
  /** The entry of the record that a thing is known by from one time to the next. */
  entryOf(of: T): object;
  readonly conditions: readonly object[];
  /**
   * By the position of the condition, all that anything in it may rest on, the list of things too: while that is
   * the same, its states are taken over and nothing of them is looked at.
   */
  readonly grounds: readonly (readonly unknown[])[];
  /** All that a result rests on besides its entry and the conditions. */
  rests(of: T): readonly unknown[];
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
    const columnsBefore = conditions.map((condition, index) =>
      last?.conditions[index] === condition ? last.columns[index] : undefined,
    );
    const columns = columnsBefore.map((before, index): Column<S> => {
      const ground = grounds[index]!;
      return before && isSame(before.ground, ground) ? before : { ground, cells: [] };
    });
    const changed = columns.flatMap((column, index) => (column === columnsBefore[index] ? [] : [index]));
    const isInTheSame = last !== undefined && isSame(last.conditions, conditions);
    const table = new Table<S, R>(this, things.map(how.entryOf), conditions, columns);
    for (let position = 0; position < things.length; position++) {
      const thing = things[position]!;
      const place = last?.placeOf(table, position);
      const rests = how.rests(thing);
      if (isInTheSame && place !== undefined && isSame(last.rests[place], rests)) {
        for (const index of changed) columns[index]!.cells.push(columnsBefore[index]!.cells[place]!);
        table.rests.push(last.rests[place]!);
        table.results.push(last.results[place]!);
      } else {
        for (const index of changed) {
          const before = place === undefined ? undefined : columnsBefore[index]?.cells[place];
          columns[index]!.cells.push(cellOf(how, thing, index, before));
        }
        table.rests.push(rests);
        table.results.push(how.whole(thing, table.statesAt(position)));
      }
    }
    return table;
  }
}

/** One thing in one condition. */
interface Cell<S> {
  readonly rests: readonly unknown[];
  readonly state: S;
  readonly kept: Kept;
}

/** @param before the same in the same condition */
function cellOf<T, S>(
  how: StatesOf<T, S, unknown>,
  of: T,
  index: number,
  before: Cell<S> | undefined,
): Cell<S> {
  const rests = how.restsIn(of, index);
  if (before && isSame(before.rests, rests)) return before;
  const kept: Value[] = [];
  const keep: KeepOne = (value) => {
    if (value) kept.push(value);
    return value;
  };
  return { rests, state: how.stateIn(of, index, keep), kept };
}

/** All things in one condition, by their position. */
interface Column<S> {
  readonly ground: readonly unknown[];
  readonly cells: Cell<S>[];
}

/** All things in all conditions. */
class Table<S, R> extends Whole {
  /** By the position of the thing. */
  readonly rests: (readonly unknown[])[] = [];
  readonly results: R[] = [];

  constructor(
    kind: object,
    readonly entries: readonly object[],
    readonly conditions: readonly object[],
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
    return this.columns.map(({ cells }) => cells[position]!.state);
  }

  /** Thing by thing. */
  get kept(): Kept {
    return this.entries.flatMap((_, position) => this.columns.map(({ cells }) => cells[position]!.kept));
  }
}
