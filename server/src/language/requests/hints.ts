import { type InlayHint, InlayHintKind } from "vscode-languageserver";
import type { Judgement } from "../../core/check";
import { onceEach } from "../../core/once-each";
import { type Hint, hintsOf } from "../../core/views/hints";
import type { Converter } from "../convert";
import { openedAt, type Room } from "../room";

export function answerHints(room: Room): void {
  room.connection.languages.inlayHint.on(({ textDocument, range }) => {
    const opened = room.settings.hints === "off" ? undefined : openedAt(room, textDocument.uri);
    if (!opened) return [];
    const shown =
      room.settings.hints === "totals"
        ? hintsIn(opened.judgement).filter((one) => one.isTotal)
        : hintsIn(opened.judgement);
    return placed(shown, opened.converter, range.start.line, range.end.line);
  });
}

/** An editor asks anew for each stretch that it scrolls to. */
const hintsIn: (judgement: Judgement) => Hint[] = onceEach(hintsOf);

/** Each at the end of its line, one for a line. */
function placed(hints: readonly Hint[], { lines, record }: Converter, from: number, to: number): InlayHint[] {
  const taken = new Map<number, InlayHint>();
  for (const { node, text } of hints) {
    const { start, end } = record.reading.spanOf(node);
    const isInBraces = record.text[start] === "{";
    const { line } = lines.positionAt(isInBraces ? end : start);
    if (line < from || line > to || taken.has(line)) continue;
    const lineEnd = lines.offsetAt({ line, character: Number.MAX_SAFE_INTEGER });
    taken.set(line, {
      position: lines.positionAt(lineEnd),
      label: text,
      kind: InlayHintKind.Type,
      paddingLeft: true,
    });
  }
  return [...taken.values()];
}
