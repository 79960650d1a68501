import type { Reading, ReadingProblem, Span } from "../reading/tree";

/**
 * Tells what is only a consequence of a tab: a line that is indented with one is read as if it stood further
 * out, and from there to the next top-level key the text is torn. The tab is told; what follows from it goes
 * when the tab does.
 */
export function followsFromTab({ text, problems }: Reading): (at: Span) => boolean {
  const torn = problems
    .filter(({ rule }) => rule === "text-tab-indent")
    .map(({ span }) => ({ start: span.start, end: nextSection(text, span.start) }));
  return ({ start }) => torn.some((span) => span.start <= start && start < span.end);
}

/** What reading tells of a text, without what only follows from a tab. */
export function withoutFollowUps(reading: Reading): readonly ReadingProblem[] {
  const follows = followsFromTab(reading);
  return reading.problems.filter(({ rule, span }) => rule !== "text-not-yaml" || !follows(span));
}

/** Where the next line starts that is not indented, a comment or an entry. */
function nextSection(text: string, from: number): number {
  const pattern = /\n(?=[^\s#\-\]}])/g;
  pattern.lastIndex = from;
  return (pattern.exec(text)?.index ?? text.length) + 1;
}
