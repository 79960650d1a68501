/** Where an entry of a list or a map stands, with what goes when it goes. As in `insert.ts`, only layouts. */
import type { ListNode, MapNode, Node, Reading, Span } from "../reading/tree";
import { endOf, isInBrackets } from "./insert";
import { lineEnd, lineStart, type TextEdit } from "./text-edit";

/**
 * Takes out an entry, or a key with its value; comments beside it go, those above it stay. The only entry of
 * a list without brackets can't be taken out: nothing would be left to say that it is a list.
 */
export function removalEdits(
  reading: Reading,
  parent: ListNode | MapNode,
  removed: Node,
): readonly TextEdit[] | undefined {
  const index = parent.entries.findIndex((one) => ("key" in one ? one.value : one) === removed);
  const spanAt = (at: number): Span | undefined => {
    const element = parent.entries[at];
    if (!element) return undefined;
    const { start } = reading.spanOf("key" in element ? element.key : element);
    return { start, end: endOf(reading, element) };
  };
  const own = spanAt(index);
  if (!own) return undefined;
  const [before, after] = [spanAt(index - 1), spanAt(index + 1)];
  if (isInBrackets(reading, parent)) {
    if (before) return without(reading, { start: before.end, end: own.end });
    return without(reading, { start: own.start, end: after?.start ?? own.end });
  }
  if (!before && !after) return undefined;
  const { text } = reading;
  const start = lineStart(text, own.start);
  const ownLine = parent.kind === "list" ? /^ *- +$/ : /^ *$/;
  if (ownLine.test(text.slice(start, own.start))) return [wholeLines(text, start, lineEnd(text, own.end))];
  return after && without(reading, { start: own.start, end: after.start });
}

/** Undefined where a comment stands in between, which may be about what stays. */
function without({ comments }: Reading, { start, end }: Span): readonly TextEdit[] | undefined {
  const hasComment = comments.some((comment) => comment.start < end && start < comment.end);
  return hasComment ? undefined : [{ start, end, newText: "" }];
}

/** Lines with the line break behind them; at the end of the text with the one before them. */
function wholeLines(text: string, start: number, end: number): TextEdit {
  const [after] = /^\r?\n/.exec(text.slice(end, end + 2)) ?? [];
  if (after) return { start, end: end + after.length, newText: "" };
  const [before = ""] = /\r?\n$/.exec(text.slice(0, start)) ?? [];
  return { start: start - before.length, end, newText: "" };
}
