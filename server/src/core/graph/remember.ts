import { isSame } from "../is-same";
import { type Keep, type Keeping, type Kept, keeping, Whole } from "./value";

/**
 * What is derived of one thing after another, such as of each wire: taken over from the last time where the thing
 * and all that its result rests on are the same. Typed things keep their identity while their text does, so that
 * an edit derives again only what it touches. Nothing is kept here: what was derived stands in the list of values
 * that its derivation kept, and goes with it. What is derived of a thing may have such parts of its own.
 */
export class Recurring<A extends object, R> {
  /** `basis` is everything that the derivation looks at besides the thing, compared by identity. */
  recall(of: A, basis: readonly unknown[], keep: Keep, derive: (keep: Keep) => R): R {
    const last = keep.last(this, of) as Recalled<R> | undefined; // all of this kind are made below
    if (last && isSame(last.basis, basis)) {
      keep.whole(last);
      return last.result;
    }
    const { result, kept } = keeping(derive, last?.kept);
    keep.whole(new Recalled(this, of, basis, kept, result));
    return result;
  }
}

class Recalled<R> extends Whole {
  constructor(
    kind: object,
    of: object,
    readonly basis: readonly unknown[],
    readonly kept: Kept,
    readonly result: R,
  ) {
    super(kind, of);
  }
}

/** What a derivation gave, and what it rested on. */
interface Remembered<R> extends Keeping<R> {
  readonly basis: readonly unknown[];
}

/**
 * Derivations by the two things that they are about, where several parts ask for the same: the same things resting
 * on the same basis give the same values, whoever asks. What is no longer used goes with its things.
 */
export class Memory<A extends object, B extends object, R> {
  private readonly known = new WeakMap<A, WeakMap<B, Remembered<R>>>();

  /** `basis` is everything else that the derivation looks at, compared by identity. */
  recall(a: A, b: B, basis: readonly unknown[], keep: Keep, derive: (keep: Keep) => R): R {
    let ofA = this.known.get(a);
    if (!ofA) {
      ofA = new WeakMap();
      this.known.set(a, ofA);
    }
    const before = ofA.get(b);
    if (before && isSame(before.basis, basis)) {
      keep.all(before.kept);
      return before.result;
    }
    const made = keeping(derive);
    keep.all(made.kept);
    ofA.set(b, { basis, ...made });
    return made.result;
  }
}
