import { isSame } from "../is-same";

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

function isPlain(thing: unknown): thing is Readonly<Record<string, unknown>> {
  return typeof thing === "object" && thing !== null && Object.getPrototypeOf(thing) === Object.prototype;
}
