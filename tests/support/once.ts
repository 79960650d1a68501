/** The same answer for everyone who asks, worked out for the first of them. */
export function once<T>(make: () => T): () => T {
  let made: { readonly answer: T } | undefined;
  return () => {
    made ??= { answer: make() };
    return made.answer;
  };
}
