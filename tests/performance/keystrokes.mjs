/**
 * A person's typing in an install record: one keystroke at a time, each at another place, each giving a text
 * that was never there before.
 */
import { randomNumbers } from "./statistics.mjs";

/** How often each kind of keystroke comes, of 25: the dear ones often enough to be seen by the p95. */
const shares = { length: 6, key: 6, comment: 4, gauge: 3, weight: 2, cutout: 2, condition: 2 };

const lastDigit = /^.*\d(?=\D*$)/;

/** Where a kind of keystroke can be made, and how far it moves the digit that it changes. */
const digits = {
  length: { line: /\blength: [\d.]+ ft/, digit: /^.*\blength: [\d.]*\d(?= ft)/, step: 1 },
  gauge: { line: /\bgauge: \d+ AWG/, digit: /^.*\bgauge: \d*\d(?= AWG)/, step: 2 },
  weight: { line: /^ {2}- \{.*\barm: [\d.]+ in \}/, digit: lastDigit, step: 1 },
  cutout: { line: /^ {4}opening: /, digit: /^.*\bx: -?[\d.]*\d(?= in)/, step: 1 },
  condition: { line: /^ {4}altitude: \d{3,} ft/, digit: /^.*\d(?=\d\d ft)/, step: 1 },
};

const newLine = "\n    material: copper";
const remark = "seen and measured by two people ";

/** Types in a copy of a text. */
export class Typist {
  #lines;
  #random = randomNumbers(7);
  /** Line numbers still to be used, by kind. */
  #places = new Map();
  /** The line that is being typed letter by letter. */
  #begun = { line: 0, letters: 0 };
  #kinds;
  #strokes = 0;

  constructor(text) {
    this.#lines = text.split("\n");
    this.#kinds = Object.entries(shares).flatMap(([kind, share]) => Array(share).fill(kind));
    this.#shuffle(this.#kinds);
  }

  get text() {
    return this.#lines.join("\n");
  }

  /** The next keystroke, as a change of the language server protocol; the text has it already. */
  next() {
    const kind = this.#kinds[this.#strokes++ % this.#kinds.length];
    if (kind === "key") return { kind, ...this.#typeKey() };
    if (kind === "comment") return { kind, ...this.#typeComment() };
    return { kind, ...this.#changeDigit(kind) };
  }

  #changeDigit(kind) {
    const { line: pattern, digit, step } = digits[kind];
    const line = this.#place(kind, (text) => pattern.test(text));
    const character = digit.exec(this.#lines[line])[0].length - 1;
    const next = (Number(this.#lines[line][character]) + step) % 10;
    return this.#replace(line, character, 1, String(next));
  }

  /** Letters at the end of a comment. */
  #typeComment() {
    const line = this.#place("comment", (text) => text.includes("#"));
    const at = this.#lines[line].length;
    return this.#replace(line, at, 0, remark[at % remark.length]);
  }

  /** A new line at the end of a wire, from Enter to its last letter. */
  #typeKey() {
    const { line, letters } = this.#begun;
    if (letters > 0 && letters < newLine.length) {
      this.#begun = { line, letters: letters + 1 };
      return this.#replace(line, this.#lines[line].length, 0, newLine[letters]);
    }
    const above = this.#place("key", (text) => text.startsWith("    bundle: "));
    // Enter brings the indentation with it, as editors do.
    const indentation = /^\n */.exec(newLine)[0];
    const change = this.#replace(above, this.#lines[above].length, 0, indentation);
    this.#begun = { line: above + 1, letters: indentation.length };
    return change;
  }

  #replace(line, character, length, text) {
    const before = this.#lines[line];
    const after = before.slice(0, character) + text + before.slice(character + length);
    const added = after.split("\n");
    this.#lines.splice(line, 1, ...added);
    if (added.length > 1) this.#moveDown(line, added.length - 1);
    return { range: { start: { line, character }, end: { line, character: character + length } }, text };
  }

  #moveDown(below, by) {
    for (const places of this.#places.values()) {
      for (const [index, line] of places.entries()) if (line > below) places[index] = line + by;
    }
    if (this.#begun.line > below) this.#begun = { ...this.#begun, line: this.#begun.line + by };
  }

  /** A line for this kind of keystroke, each once before any comes again. */
  #place(kind, fits) {
    let places = this.#places.get(kind);
    if (!places || places.length === 0) {
      places = [...this.#lines.keys()].filter((line) => fits(this.#lines[line]));
      if (places.length === 0) throw new Error(`The record has no place for a '${kind}' keystroke.`);
      this.#shuffle(places);
      this.#places.set(kind, places);
    }
    return places.pop();
  }

  #shuffle(things) {
    for (let last = things.length - 1; last > 0; last--) {
      const other = Math.floor(this.#random() * (last + 1));
      [things[last], things[other]] = [things[other], things[last]];
    }
  }
}
