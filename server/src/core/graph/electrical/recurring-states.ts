import { isSame } from "../../is-same";
import { Recurring } from "../remember";
import { type Keep, type Kept, keeping, Whole } from "../value";

/** What is derived of things such as wires, each with a state in every condition; `T` is what it is derived from. */
export interface StatesOf<T, S, R> {
  /**
   * By the position of the condition, all that a state in it may rest on, whatever thing it is of: while that is
   * the same, the states are taken over and nothing of them is looked at.
   */
  readonly grounds: readonly object[];
  /** What all states of a thing rest on, besides the thing and the grounds. */
  rests(of: T): readonly unknown[];
  /** What a state rests on of its own, besides all that. */
  own(of: T, index: number): unknown;
  /** What it rests on besides its own where the grounds are others; the condition too, unless its own tells that. */
  restsIn(of: T, index: number): readonly unknown[];
  stateIn(of: T, index: number, keep: Keep): S;
  /** What only `whole` looks at, besides the states. */
  held(of: T): readonly unknown[];
  whole(of: T, states: readonly S[]): R;
}

/** A thing as it was derived the last time; lists by the position of the condition. */
interface Row<S, R> {
  readonly grounds: readonly object[];
  readonly own: readonly unknown[];
  readonly rests: readonly (readonly unknown[])[];
  readonly states: readonly S[];
  readonly held: readonly unknown[];
  readonly result: R;
}

/**
 * What `Recurring` is for a thing, by condition: an edit of one condition derives again what is in it, an edit of
 * one thing what rests on it. A result is the same object while its states are, and what it holds besides.
 */
export class RecurringStates<S, R> {
  /** @param thing what it is known by from one time to the next */
  recall<T>(thing: object, of: T, how: StatesOf<T, S, R>, keep: Keep): R {
    const { grounds } = how;
    const basis = how.rests(of);
    const found = keep.last(this, thing);
    const last = found && isSame(found.basis, basis) ? found : undefined;
    const before = last?.result as Row<S, R> | undefined;
    const held = how.held(of);
    const own = grounds.map((_, index) => how.own(of, index));
    if (before && isSame(before.grounds, grounds) && isSame(before.own, own) && isSame(before.held, held)) {
      keep.whole(last!);
      return before.result;
    }
    const rests: (readonly unknown[])[] = [];
    const states: S[] = [];
    const kept: Kept[] = [];
    for (let index = 0; index < grounds.length; index++) {
      const isSameOwn = before?.own[index] === own[index];
      const known = isSameOwn ? before?.rests[index] : undefined;
      const now = known && before!.grounds[index] === grounds[index] ? known : how.restsIn(of, index);
      rests.push(now);
      if (known && isSame(known, now)) {
        states.push(before!.states[index]!);
        kept.push(last!.kept[index] as Kept);
      } else {
        const made = keeping((ofState) => how.stateIn(of, index, ofState));
        states.push(made.result);
        kept.push(made.kept);
      }
    }
    const isTheSame = before && isSame(before.states, states) && isSame(before.held, held);
    const result = isTheSame ? before.result : how.whole(of, states);
    const row: Row<S, R> = { grounds, own, rests, states, held, result };
    keep.whole(new Whole(this, thing, basis, kept, row));
    return result;
  }
}

/** What all states in a condition may rest on: the same list while each thing in it is, and the condition. */
export class Grounds {
  private readonly lists = new Recurring<object, readonly unknown[]>();

  recall(condition: object, rests: readonly unknown[], keep: Keep): readonly unknown[] {
    return this.lists.recall(condition, rests, keep, () => rests);
  }
}

export const nothing: readonly never[] = [];
