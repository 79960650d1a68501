import { commonPrefix, commonSuffix } from "./common-ends";
import { graft } from "./graft";
import { retype } from "./retype";
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
    const slice = text.slice(start, end);
    const own = isFresh ? slice : detached(slice);
    const stoodHere = isSameCount ? before.attempts[index] : undefined;
    const attempt = readAfter(isLeft(stoodHere, left) ? stoodHere : undefined, own, kind, indent);
    attempts[index] = attempt;
    if (attempt === "not-alone") break;
  }
  return read;
}

/** Reads a piece, from what stood there before where that tells all of it. */
function readAfter(
  before: Unit | undefined,
  text: string,
  kind: Piece["kind"],
  indent: number,
): Unit | "not-alone" {
  const isOfKind = before?.kind === kind && before.indent === indent;
  const retyped = isOfKind ? retype(text, before) : undefined;
  if (retyped) return retyped;
  const unit = readPiece(text, kind, indent);
  return unit ? ((before && graft(unit, before)) ?? unit) : "not-alone";
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

/** Whether a unit was not taken for any piece: what stands at two places has two items. */
function isLeft(attempt: Attempt, left: ReadonlyMap<string, readonly Unit[]>): attempt is Unit {
  return (
    typeof attempt === "object" && left.get(keyOf(attempt, attempt.item.text))?.includes(attempt) === true
  );
}

function keyOf({ kind, indent }: { kind: string; indent: number }, text: string): string {
  return `${kind} ${indent} ${text}`;
}

/** A copy that does not keep alive the whole text that it was cut from, as a plain slice does. */
function detached(slice: string): string {
  return ` ${slice}`.slice(1);
}
