import { type FoldingRange, FoldingRangeKind, type SelectionRange } from "vscode-languageserver";
import { foldsOf, rangesAround } from "../../core/views/structure";
import { outlineOf } from "../../core/views/symbols";
import { converterOf, toDocumentSymbol } from "../convert";
import { idOf } from "../documents";
import { openedAt, type Room } from "../room";

/** The outline of a record, folding, and selections that grow. */
export function answerStructure(room: Room): void {
  room.connection.onDocumentSymbol(({ textDocument }) => {
    const record = room.desk.shelf.load(idOf(textDocument.uri));
    if (!record) return [];
    const converter = converterOf(record);
    return outlineOf(record.reading).map((symbol) => toDocumentSymbol(symbol, converter));
  });

  room.connection.onFoldingRanges(({ textDocument }) => {
    const opened = openedAt(room, textDocument.uri);
    if (!opened) return [];
    const { reading } = opened.judgement.record;
    const ranges = new Map<number, FoldingRange>();
    for (const { start, end } of foldsOf(reading)) {
      const startLine = opened.converter.lines.positionAt(start).line;
      const last = opened.converter.lines.positionAt(end);
      const endLine = last.character === 0 ? last.line - 1 : last.line;
      // An entry folds with what is around it when both begin on one line.
      if (endLine > startLine && !ranges.has(startLine))
        ranges.set(startLine, { startLine, endLine, kind: FoldingRangeKind.Region });
    }
    return [...ranges.values()];
  });

  room.connection.onSelectionRanges(({ textDocument, positions }) => {
    const opened = openedAt(room, textDocument.uri);
    if (!opened) return [];
    const { converter, judgement } = opened;
    return positions.map((position) => {
      const offset = converter.lines.offsetAt(position);
      const spans = rangesAround(judgement.record.reading, offset).filter(
        ({ start, end }) => start <= offset && offset <= end,
      );
      const outer = spans.reduceRight<SelectionRange | undefined>(
        (parent, span) => ({ range: converter.range(span), ...(parent && { parent }) }),
        undefined,
      );
      return outer ?? { range: { start: position, end: position } };
    });
  });
}
