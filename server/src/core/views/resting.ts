/** What a value rests on. */
import type { Value } from "../graph/value";
import type { Node } from "../reading/tree";

/** Whether what is written at the node goes into a value directly. */
export function takes(value: Value, file: string, node: Node): boolean {
  return value.inputs.some((input) =>
    input.places.some((place) => place.node === node && place.file === file),
  );
}

/** Whether a value rests on what is written at the node, however far back; remembered from value to value. */
export function restingOn(file: string, node: Node): (value: Value) => boolean {
  const known = new Map<Value, boolean>();
  const rests = (value: Value): boolean => {
    const found = known.get(value);
    if (found !== undefined) return found;
    const answer =
      takes(value, file, node) || value.inputs.some(({ derivedFrom }) => derivedFrom && rests(derivedFrom));
    known.set(value, answer);
    return answer;
  };
  return rests;
}
