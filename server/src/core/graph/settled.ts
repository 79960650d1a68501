/**
 * What was made anew out of the same things as before is what it was before: whoever goes on from it has then
 * nothing to do again. Lists, maps and plain objects are made of what is in them; all else is its own thing.
 *
 * @returns `before` where the two are made of the same, else `now`, with what it holds in common with `before`
 */
export function settled<T>(before: unknown, now: T): T {
  if (isSame(before, now)) return before as T;
  if (!isPlain(before) || !isPlain(now)) return now;
  const names = Object.keys(now);
  const parts = names.map((name) => (isSame(before[name], now[name]) ? before[name] : now[name]));
  const isWhole = names.length === Object.keys(before).length;
  if (isWhole && names.every((name, index) => Object.is(before[name], parts[index]) && name in before)) {
    return before as T;
  }
  return Object.fromEntries(names.map((name, index) => [name, parts[index]])) as T;
}

/** Whether two things are one, or are lists or maps of the same things in the same order. */
export function isSame(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (Array.isArray(one)) return Array.isArray(other) && isSameList(one, other);
  if (one instanceof Map) return other instanceof Map && isSameMap(one, other);
  return false;
}

function isSameList(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let index = 0; index < one.length; index++) if (!Object.is(one[index], other[index])) return false;
  return true;
}

function isSameMap(one: ReadonlyMap<unknown, unknown>, other: ReadonlyMap<unknown, unknown>): boolean {
  if (one.size !== other.size) return false;
  const others = other.entries();
  for (const [key, value] of one) {
    const [otherKey, otherValue] = others.next().value!;
    if (!Object.is(key, otherKey) || !Object.is(value, otherValue)) return false;
  }
  return true;
}

function isPlain(thing: unknown): thing is Readonly<Record<string, unknown>> {
  return typeof thing === "object" && thing !== null && Object.getPrototypeOf(thing) === Object.prototype;
}
