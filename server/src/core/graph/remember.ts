import { type Keep, type Kept, keeper } from "./value";

/** What a derivation gave, and what it rested on. */
interface Remembered<R> {
  readonly basis: readonly unknown[];
  readonly values: Kept;
  readonly result: R;
}

/**
 * Derivations by the two things that they are about, such as a wire and a condition. Typed things keep their
 * identity while their text does, so that an edit derives again only what it touches: the same thing resting on
 * the same basis gives the same values. What is no longer used goes with its things.
 */
export class Memory<A extends object, B extends object, R> {
  private readonly known = new WeakMap<A, WeakMap<B, Remembered<R>>>();

  /** `basis` is everything else that the derivation looks at, compared by identity. */
  recall(a: A, b: B, basis: readonly unknown[], keep: Keep, derive: (keep: Keep) => R): R {
    const ofA = this.known.get(a) ?? new WeakMap<B, Remembered<R>>();
    this.known.set(a, ofA);
    const before = ofA.get(b);
    if (before && isSame(before.basis, basis)) {
      keep.all(before.values);
      return before.result;
    }
    const own = keeper();
    const result = derive(own.keep);
    keep.all(own.kept);
    ofA.set(b, { basis, values: own.kept, result });
    return result;
  }
}

function isSame(before: readonly unknown[], now: readonly unknown[]): boolean {
  if (before.length !== now.length) return false;
  for (let index = 0; index < now.length; index++) if (!Object.is(before[index], now[index])) return false;
  return true;
}
