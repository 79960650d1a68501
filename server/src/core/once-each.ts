/** What is made of one thing alone: made once for each, and gone with it. */
export function onceEach<T extends object, R>(make: (thing: T) => R): (thing: T) => R {
  const made = new WeakMap<T, { readonly result: R }>();
  return (thing) => {
    const known = made.get(thing);
    if (known) return known.result;
    const result = make(thing);
    made.set(thing, { result });
    return result;
  };
}

/** Answers each question once, for as long as the one who is asked lives. Undefined is an answer that is found anew. */
export function remembered<Q, A>(answer: (question: Q) => A): (question: Q) => A {
  const known = new Map<Q, A>();
  return (question) => {
    const before = known.get(question);
    if (before !== undefined) return before;
    const found = answer(question);
    known.set(question, found);
    return found;
  };
}
