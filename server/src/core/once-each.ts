/** What is made of one thing alone: made once for each, and gone with it. */
export function onceEach<T extends object, R>(make: (thing: T) => R): (thing: T) => R {
  const made = new WeakMap<T, { readonly result: R }>();
  return (thing) => {
    const known = made.get(thing) ?? { result: make(thing) };
    made.set(thing, known);
    return known.result;
  };
}
