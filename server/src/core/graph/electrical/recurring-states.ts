import { isSame } from "../../is-same";
import { type Keep, type Kept, keeping, Whole } from "../value";

/** What is derived of things such as wires, each with a state in every condition; `T` is what it is derived from. */
export interface StatesOf<T, S, R> {
  /** All that the result of a thing rests on, whatever the condition: while it is the same, so is the result. */
  rests(of: T): readonly unknown[];
  /**
   * By the position of the condition, all that a state in it may rest on, whatever thing it is of, but for its own:
   * while the two are the same, the state is taken over and nothing more of it is looked at.
   */
  readonly grounds: readonly object[];
  /** What a state rests on of its own: the one thing that the grounds do not tell. */
  own(of: T, index: number): unknown;
  /** What it rests on besides its own where the grounds are others; the condition too, unless its own tells that. */
  restsIn(of: T, index: number): readonly unknown[];
  stateIn(of: T, index: number, keep: Keep): S;
  whole(of: T, states: readonly S[]): R;
}

/** A thing as it was derived the last time; lists by the position of the condition. */
interface Row<S, R> {
  readonly grounds: readonly object[];
  readonly own: readonly unknown[];
  readonly rests: readonly (readonly unknown[])[];
  readonly states: readonly S[];
  readonly result: R;
}

/**
 * What `Recurring` is for a thing, by condition: an edit of one condition derives again what is in it, an edit of
 * one thing what rests on it.
 */
export class RecurringStates<S, R> {
  /** @param thing what it is known by from one time to the next */
  recall<T>(thing: object, of: T, how: StatesOf<T, S, R>, keep: Keep): R {
    const basis = how.rests(of);
    const last = keep.last(this, thing);
    const before = last?.result as Row<S, R> | undefined;
    if (before && isSame(last!.basis, basis)) {
      keep.whole(last!);
      return before.result;
    }
    const { grounds } = how;
    const owns: unknown[] = [];
    const rests: (readonly unknown[])[] = [];
    const states: S[] = [];
    const kept: Kept[] = [];
    for (let index = 0; index < grounds.length; index++) {
      const own = how.own(of, index);
      const known = before?.own[index] === own ? before?.rests[index] : undefined;
      const now = known && before!.grounds[index] === grounds[index] ? known : how.restsIn(of, index);
      owns.push(own);
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
    const result = how.whole(of, states);
    const row: Row<S, R> = { grounds, own: owns, rests, states, result };
    keep.whole(new Whole(this, thing, basis, kept, row));
    return result;
  }
}

export const nothing: readonly never[] = [];
