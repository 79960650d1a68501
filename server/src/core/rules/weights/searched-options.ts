/**
 * Facts whose `options`, what would bring a loading back, are looked for when somebody reads them, as that takes a
 * search.
 *
 * The getter belongs to a class. An object with a getter of its own has a hidden class of its own in the engine, and
 * that keeps what the getter closes over, here a whole version of a project, alive through every small collection.
 */
class SearchedOptions {
  readonly #search: () => readonly string[];

  constructor(facts: object, search: () => readonly string[]) {
    Object.assign(this, facts);
    this.#search = search;
  }

  get options(): readonly string[] {
    return this.#search();
  }
}

/** @param search undefined where the limit is kept, and nothing has to be brought back */
export function withOptions<F extends { readonly options: readonly string[] }>(
  facts: Omit<F, "options">,
  search: (() => readonly string[]) | undefined,
): F {
  return (search ? new SearchedOptions(facts, search) : { ...facts, options: [] }) as unknown as F;
}
