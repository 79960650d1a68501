import type { Span } from "../reading/tree";
import { applyEdits, type TextEdit } from "./text-edit";

/** A text that is edited again and again, and knows what became of its first version in all. */
export class Draft {
  text: string;
  /** What stands there now, in order: stretches of the original, and texts that were put in. */
  private pieces: readonly Piece[];

  constructor(readonly original: string) {
    this.text = original;
    this.pieces = [{ start: 0, end: original.length }];
  }

  /** Edits of the text as it is now, in its order. */
  apply(edits: readonly TextEdit[]): void {
    const pieces: Piece[] = [];
    let done = 0;
    for (const { start, end, newText } of edits) {
      pieces.push(...this.slice(done, start), newText);
      done = end;
    }
    pieces.push(...this.slice(done, this.text.length));
    this.pieces = pieces;
    this.text = applyEdits(this.text, edits);
  }

  /** The edits of the original that give the text of now: as few and as short as what was kept allows. */
  edits(): TextEdit[] {
    const edits: TextEdit[] = [];
    let done = 0;
    let put = "";
    const upTo = (start: number) => {
      if (put !== this.original.slice(done, start)) edits.push({ start: done, end: start, newText: put });
      put = "";
    };
    for (const piece of this.pieces) {
      if (typeof piece === "string") put += piece;
      else if (piece.end > piece.start) {
        upTo(piece.start);
        done = piece.end;
      }
    }
    upTo(this.original.length);
    return edits;
  }

  private slice(from: number, to: number): Piece[] {
    const found: Piece[] = [];
    let at = 0;
    for (const piece of this.pieces) {
      const length = typeof piece === "string" ? piece.length : piece.end - piece.start;
      const [start, end] = [Math.max(from - at, 0), Math.min(to - at, length)];
      if (start < end) {
        found.push(
          typeof piece === "string"
            ? piece.slice(start, end)
            : { start: piece.start + start, end: piece.start + end },
        );
      }
      at += length;
    }
    return found;
  }
}

type Piece = string | Span;
