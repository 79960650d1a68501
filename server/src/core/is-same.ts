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
