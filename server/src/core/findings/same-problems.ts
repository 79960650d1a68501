import { isSame } from "../is-same";
import type { Node } from "../reading/tree";
import type { Problem, Related } from "./finding";
import { nodeOf } from "./finding";

/**
 * Problems of which each that was told before, of the same place and in the same words, is the one of before:
 * what was made of it need not be made again.
 *
 * @param before the problems of an earlier version
 */
export function sameProblems(before: readonly Problem[] = [], now: readonly Problem[]): readonly Problem[] {
  if (before.length === 0 || now.length === 0) return now;
  const byNode = new Map<Node | undefined, Problem[]>();
  for (const problem of before) {
    const node = nodeOf(problem.place);
    const others = byNode.get(node);
    if (others) others.push(problem);
    else byNode.set(node, [problem]);
  }
  return now.map((one) => byNode.get(nodeOf(one.place))?.find((other) => saysTheSame(one, other)) ?? one);
}

function saysTheSame(one: Problem, other: Problem): boolean {
  return (
    one.rule === other.rule &&
    one.place.file === other.place.file &&
    // Where no node is, a place is a stretch of one version's text.
    nodeOf(one.place) !== undefined &&
    one.subject?.kind === other.subject?.kind &&
    one.subject?.id === other.subject?.id &&
    haveSameFacts(one.facts, other.facts) &&
    areSameRelated(one.related ?? [], other.related ?? [])
  );
}

function haveSameFacts(one: Problem["facts"], other: Problem["facts"]): boolean {
  const names = Object.keys(one);
  return (
    names.length === Object.keys(other).length &&
    names.every((name) => name in other && isSame(one[name], other[name]))
  );
}

function areSameRelated(one: readonly Related[], other: readonly Related[]): boolean {
  return (
    one.length === other.length &&
    one.every(({ place, words }, index) => {
      const there = other[index]!;
      return words === there.words && place.file === there.place.file && place.node === there.place.node;
    })
  );
}
