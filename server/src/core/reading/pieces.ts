import { graft } from "./graft";
import type { Piece } from "./split";
import { readPiece, type Unit } from "./unit";

/** The pieces of a text and what was read of each. */
export interface PiecesRead {
  readonly text: string;
  readonly pieces: readonly Piece[];
  /** In the order of the pieces. */
  readonly attempts: readonly Attempt[];
}

/** `not-alone`: the piece has to be read with the rest of the text. Undefined: it was not tried. */
type Attempt = Unit | "not-alone" | undefined;

/** All units, or undefined when some piece could not be read alone. */
export function allUnits({ attempts }: PiecesRead): readonly Unit[] | undefined {
  const units: Unit[] = [];
  for (const attempt of attempts) {
    if (typeof attempt !== "object") return undefined;
    units.push(attempt);
  }
  return units;
}

/**
 * Reads the pieces that changed and takes the others from before. Stops at the first that can't be read
 * alone, as the whole text is needed then; the others are kept for when it can be.
 */
export function readPieces(
  text: string,
  pieces: readonly Piece[],
  before: PiecesRead = { text: "", pieces: [], attempts: [] },
): PiecesRead {
  const { attempts, head, tail } = reuse(text, pieces, before);
  const read = { text, pieces, attempts };
  if (attempts.includes("not-alone")) return read;

  const left = unitsByText(before, head, tail);
  for (let index = head; index < pieces.length - tail; index++) {
    const piece = pieces[index]!;
    const own = text.slice(piece.start, piece.end);
    // Each unit is taken once: equal texts at two places need two items.
    attempts[index] = left.get(keyOf(piece, own))?.shift();
  }
  const isFresh = before.pieces.length === 0;
  const isSameCount = before.pieces.length === pieces.length;
  for (let index = 0; index < pieces.length; index++) {
    if (attempts[index]) continue;
    const { start, end, kind, indent } = pieces[index]!;
    const own = text.slice(start, end);
    const unit = readPiece(isFresh ? own : detached(own), kind, indent);
    const stoodHere = isSameCount ? before.attempts[index] : undefined;
    attempts[index] = unit ? (typeof stoodHere === "object" && graft(unit, stoodHere)) || unit : "not-alone";
    if (!unit) break;
  }
  return read;
}

/** An edit changes pieces in one place: those before and after it are as they were. */
function reuse(text: string, pieces: readonly Piece[], before: PiecesRead) {
  const attempts = new Array<Attempt>(pieces.length).fill(undefined);
  const shared = Math.min(pieces.length, before.pieces.length);
  const prefix = commonPrefix(text, before.text);
  let head = 0;
  while (head < shared && pieces[head]!.end <= prefix && isSame(pieces[head]!, before.pieces[head]!, 0)) {
    attempts[head] = before.attempts[head];
    head++;
  }
  const suffixStart = text.length - commonSuffix(text, before.text, prefix);
  const shift = text.length - before.text.length;
  let tail = 0;
  while (tail < shared - head) {
    const index = pieces.length - 1 - tail;
    const old = before.pieces.length - 1 - tail;
    if (pieces[index]!.start < suffixStart || !isSame(pieces[index]!, before.pieces[old]!, shift)) break;
    attempts[index] = before.attempts[old];
    tail++;
  }
  return { attempts, head, tail };
}

function isSame(piece: Piece, old: Piece, shift: number): boolean {
  return (
    piece.start === old.start + shift &&
    piece.end === old.end + shift &&
    piece.kind === old.kind &&
    piece.indent === old.indent
  );
}

function unitsByText({ attempts }: PiecesRead, head: number, tail: number): Map<string, Unit[]> {
  const units = new Map<string, Unit[]>();
  for (const unit of attempts.slice(head, attempts.length - tail)) {
    if (typeof unit !== "object") continue;
    const key = keyOf(unit, unit.item.text);
    const same = units.get(key);
    if (same) same.push(unit);
    else units.set(key, [unit]);
  }
  return units;
}

function keyOf({ kind, indent }: { kind: string; indent: number }, text: string): string {
  return `${kind} ${indent} ${text}`;
}

/** Compares halves instead of characters: comparing two slices is far quicker than a loop over them. */
function commonPrefix(a: string, b: string): number {
  let low = 0;
  let high = Math.min(a.length, b.length);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (a.slice(low, middle) === b.slice(low, middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** As far as it does not overlap a common prefix. */
function commonSuffix(a: string, b: string, prefix: number): number {
  let low = 0;
  let high = Math.min(a.length, b.length) - prefix;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (a.slice(a.length - middle, a.length - low) === b.slice(b.length - middle, b.length - low))
      low = middle;
    else high = middle - 1;
  }
  return low;
}

/** A copy that does not keep alive the whole text that it was cut from, as a plain slice does. */
function detached(slice: string): string {
  return ` ${slice}`.slice(1);
}
