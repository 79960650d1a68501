import { limits } from "../limits";
import { hasConflictMarker } from "./prepare";

/** A stretch of text that is worth trying to read alone. Pieces follow each other without gaps. */
export interface Piece {
  readonly start: number;
  readonly end: number;
  /**
   * - `entries`: top-level entries, usually one; also what stands before the first of them
   * - `header`: the line of a top-level key whose value is a block list, up to its first entry
   * - `entry`: one entry of the list whose header came before
   */
  readonly kind: "entries" | "header" | "entry";
  /** Column of the dashes of an `entry`; else 0. */
  readonly indent: number;
}

const tab = 0x09;
const lineFeed = 0x0a;
const carriageReturn = 0x0d;
const space = 0x20;
const hash = 0x23;
const dash = 0x2d;
const dot = 0x2e;
const colon = 0x3a;

/**
 * Cuts a text at its top-level keys and at the entries of top-level lists.
 *
 * Comments and blank lines belong to the piece before them. This only looks at how lines begin: it proposes
 * pieces, and reading each one in its frame shows whether it can stand alone. Undefined when the text as a
 * whole needs a different reading (document markers, conflict markers), when a cut would not be safe, and when
 * there are more pieces than it pays to read one by one.
 */
export function split(text: string): Piece[] | undefined {
  if (readsBare(text) || hasConflictMarker(text)) return undefined;
  const cutter = new Cutter(text);
  // A lone carriage return ends a line too; it is rare enough for a copy.
  const lines = text.includes("\r") ? text.replace(/\r(?!\n)/g, "\n") : text;
  let lineStart = text.startsWith("\uFEFF") ? 1 : 0;
  while (lineStart < lines.length) {
    if (!cutter.line(lines, lineStart) || cutter.count > limits.separateItems) return undefined;
    const next = lines.indexOf("\n", lineStart);
    if (next === -1) break;
    lineStart = next + 1;
  }
  return cutter.finish();
}

/** True when the text does not begin like a block map, so that no frame can be put around it. */
export function readsBare(text: string): boolean {
  let at = text.startsWith("\uFEFF") ? 1 : 0;
  let lineStart = at;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === lineFeed || code === carriageReturn) lineStart = at + 1;
    else if (code === hash) {
      const end = text.slice(at).search(/[\r\n]/);
      if (end === -1) return false;
      at += end - 1;
    } else if (code !== space && code !== tab) {
      return at > lineStart || "{[%&*!|>".includes(text[at]!) || isDash(text, at) || isMarker(text, at);
    }
  }
  return false;
}

class Cutter {
  readonly #text: string;
  readonly #pieces: Piece[] = [];
  /** Start of the section being cut: a top-level key with all that follows it. */
  #start = 0;
  /** The section's first line is a key without a value, so that a list may follow. */
  #isHeader = false;
  /** Column of the section's list entries, -1 before the first. */
  #indent = -1;
  #entryStarts: number[] = [];
  /**
   * The section began with a line of one letter. How the lexer reads a following line then depends on what
   * came before the section, so none may follow.
   */
  #isLoneLetter = false;

  constructor(text: string) {
    this.#text = text;
  }

  get count(): number {
    return this.#pieces.length + this.#entryStarts.length;
  }

  /** False when the text can't be cut safely. */
  line(lines: string, lineStart: number): boolean {
    let at = lineStart;
    let code = lines.charCodeAt(at);
    while (code === space || code === tab) code = lines.charCodeAt(++at);
    if (Number.isNaN(code) || code === lineFeed || code === carriageReturn || code === hash) return true;
    const indent = at - lineStart;

    if (indent === 0) {
      if (isWordCode(code)) return this.#beginSection(lines, at);
      if ((code === dash || code === dot) && isMarker(lines, at)) return false;
    }
    if (this.#isLoneLetter) return false;
    if (this.#isHeader) {
      const isEntry = code === dash && isDash(lines, at);
      if (isEntry && (this.#indent === -1 || indent === this.#indent)) {
        this.#indent = indent;
        this.#entryStarts.push(lineStart);
      } else if (indent <= this.#indent || this.#indent === -1) {
        this.#isHeader = false;
      }
    }
    return true;
  }

  finish(): Piece[] {
    this.#endSection(this.#text.length);
    return this.#pieces;
  }

  #beginSection(lines: string, at: number): boolean {
    // The byte order mark before the first key stays in its piece.
    const start = at === 1 && this.#text.startsWith("\uFEFF") ? 0 : at;
    this.#endSection(start);
    this.#start = start;
    this.#isHeader = isBareKey(lines, at);
    this.#isLoneLetter = isWhite(lines.charCodeAt(at + 1));
    return !this.#isLoneLetter || isBlankFrom(lines, at + 1);
  }

  #endSection(end: number): void {
    const { length } = this.#entryStarts;
    if (this.#isHeader && length > 0) {
      this.#push("header", this.#start, this.#entryStarts[0]!, 0);
      for (let index = 0; index < length; index++) {
        this.#push("entry", this.#entryStarts[index]!, this.#entryStarts[index + 1] ?? end, this.#indent);
      }
    } else if (end > this.#start) {
      this.#push("entries", this.#start, end, 0);
    }
    this.#indent = -1;
    if (length > 0) this.#entryStarts = [];
  }

  #push(kind: Piece["kind"], start: number, end: number, indent: number): void {
    this.#pieces.push({ kind, start, end, indent });
  }
}

/** A key of letters, digits, `_` and `-`, a colon, and nothing more than a comment. */
function isBareKey(lines: string, start: number): boolean {
  let at = start;
  let code = lines.charCodeAt(at);
  while (isWordCode(code) || code === dash) code = lines.charCodeAt(++at);
  if (code !== colon) return false;
  return isBlankFrom(lines, at + 1);
}

/** Nothing, or spaces, and then at most a comment, up to the end of the line. */
function isBlankFrom(lines: string, start: number): boolean {
  let at = start;
  while (lines.charCodeAt(at) === space) at++;
  const code = lines.charCodeAt(at);
  return Number.isNaN(code) || code === lineFeed || code === carriageReturn || (code === hash && at > start);
}

function isDash(text: string, at: number): boolean {
  return text.charCodeAt(at) === dash && isWhite(text.charCodeAt(at + 1));
}

/** `---` or `...` as a word of its own. */
function isMarker(text: string, at: number): boolean {
  return (text.startsWith("---", at) || text.startsWith("...", at)) && isWhite(text.charCodeAt(at + 3));
}

/** White space, or the end of the text. */
function isWhite(code: number): boolean {
  return code === space || code === lineFeed || code === carriageReturn || code === tab || Number.isNaN(code);
}

function isWordCode(code: number): boolean {
  return (
    (code >= 0x61 && code <= 0x7a) ||
    (code >= 0x41 && code <= 0x5a) ||
    (code >= 0x30 && code <= 0x39) ||
    code === 0x5f
  );
}
