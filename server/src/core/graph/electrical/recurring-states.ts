import { isSame } from "../../is-same";
import { type Keep, type Kept, keeping, Whole } from "../value";

/** What is derived of things such as wires, each with a state in every condition; `T` is what it is derived from. */
export interface StatesOf<T, S, R> {
  /** All that the result of a thing rests on, whatever the condition: while it is the same, so is the result. */
  rests(of: T): readonly unknown[];
  readonly conditions: readonly object[];
  /**
   * By the position of the condition, all that a state in it may rest on besides its thing: while that is the same,
   * the states are taken over and nothing of them is looked at. Left out where nobody tells it.
   */
  readonly grounds?: readonly object[];
  /** What a state rests on where the grounds are others, the condition with it. */
  restsIn(of: T, index: number): readonly unknown[];
  stateIn(of: T, index: number, keep: Keep): S;
  whole(of: T, states: readonly S[]): R;
}

/** A thing as it was derived the last time; lists by the position of the condition. */
interface Row<S, R> {
  readonly grounds: readonly object[] | undefined;
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
    const { conditions, grounds } = how;
    const rests: (readonly unknown[])[] = [];
    const states: S[] = [];
    const kept: Kept[] = [];
    for (let index = 0; index < conditions.length; index++) {
      const known = before?.rests[index];
      const isOnSameGround = grounds !== undefined && before?.grounds?.[index] === grounds[index];
      const now = known && isOnSameGround ? known : how.restsIn(of, index);
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
    const row: Row<S, R> = { grounds, rests, states, result };
    keep.whole(new Whole(this, thing, basis, kept, row));
    return result;
  }
}
