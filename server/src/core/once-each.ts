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
