import { CST, Lexer, Parser } from "yaml";
import { limits } from "../limits";
import type { ReadingFeature, Span } from "./tree";

/** What the concrete syntax shows. All offsets are in the source that was scanned. */
export interface Scan {
  readonly stream: readonly CST.Token[];
  readonly comments: readonly Span[];
  /** Has anchors, aliases or explicit keys: what it means can depend on text outside, or change it. */
  readonly linked: boolean;
  /** The lexer was inside brackets at the end, even if the parser was not. */
  readonly isOpen: boolean;
}

/** Where the scan puts its problems. */
export interface ScanReport {
  /** `missing`: the character that should stand somewhere behind. */
  syntax(start: number, end: number, code: string, detail: string, missing?: string): void;
  feature(start: number, end: number, feature: ReadingFeature): void;
  tooDeep(start: number): void;
}

/**
 * Parses to concrete syntax with a bounded depth, so that composing the result is safe.
 *
 * The parser itself is iterative, but whatever comes after it recurses, and deep nesting there can abort the
 * process where no handler can catch it. So the nesting is watched token by token. As soon as it exceeds
 * `limits.nestingDepth`, the rest of the item at fault is fed to the parser as white space, and its value is
 * taken out at the end. A closing bracket without an opening one is fed as a space too, because the parser
 * would end the document there and drop everything after it; and so is a dash that begins a list inside of
 * brackets, because the parser would take what follows it for something else.
 */
export function scan(source: string, report: ScanReport): Scan {
  const lexer = new Lexer();
  const scanner = new Scanner(lexer, report);
  for (const lexeme of lexer.lex(source)) scanner.take(lexeme);
  return scanner.finish();
}

/** The part of the tree that is left out as a whole when it nests too deep. */
interface DeepPart {
  /** It ends before the first line that is not indented more than this. */
  readonly indent: number;
  remove(): void;
}

type Pair = CST.BlockMap["items"][number];

class Scanner {
  readonly #lexer: Lexer;
  readonly #report: ScanReport;
  readonly #parser = new Parser();
  readonly #stream: CST.Token[] = [];
  readonly #comments: Span[] = [];
  readonly #deep: DeepPart[] = [];

  #offset = 0;
  /** The next lexeme is the text of a plain scalar or the body of a block scalar, whatever it looks like. */
  #textNext = false;
  #bodyNext = false;
  #linked = false;

  /** Mirrors the lexer's own count, which decides how it reads brackets and commas. */
  #flowLevel = 0;
  /** Offsets of brackets still open, and what they are. */
  #open: { readonly at: number; readonly bracket: string }[] = [];

  /** Set while the rest of a too deep part is skipped. */
  #skipping: DeepPart | undefined;
  #atLineStart = true;
  #lineIndent = 0;
  /** The next lexeme has been passed already. */
  #isRepeated = false;

  constructor(lexer: Lexer, report: ScanReport) {
    this.#lexer = lexer;
    this.#report = report;
  }

  take(lexeme: string): void {
    if (this.#isRepeated) this.#isRepeated = false;
    else if (this.#textNext) this.#text(lexeme);
    else if (lexeme === CST.SCALAR) this.#beginText(lexeme);
    else if (lexeme === CST.DOCUMENT) this.#feed(lexeme);
    else if (lexeme === CST.FLOW_END) this.#flowEnd();
    else if (lexeme === "\n" || lexeme === "\r\n") {
      this.#pass(lexeme);
      this.#beginLine();
    } else if (lexeme[0] === " " || lexeme[0] === "\t") {
      if (this.#atLineStart) this.#lineIndent += lexeme.length;
      this.#pass(lexeme);
    } else if (lexeme[0] === "#") {
      this.#comments.push({ start: this.#offset, end: this.#offset + lexeme.length });
      this.#pass(lexeme);
    } else {
      this.#beginContent();
      this.#content(lexeme);
    }
  }

  finish(): Scan {
    this.#reportOpen();
    for (const token of this.#parser.end()) this.#stream.push(token);
    for (const part of this.#deep) part.remove();
    return {
      stream: this.#stream,
      comments: this.#comments,
      linked: this.#linked,
      isOpen: this.#flowLevel > 0,
    };
  }

  #content(lexeme: string): void {
    const isStray = this.#flowLevel === 0 ? lexeme === "]" || lexeme === "}" : lexeme === "-";
    if (!this.#skipping) this.#inspect(lexeme, isStray);
    this.#countFlow(lexeme);
    this.#bodyNext = lexeme[0] === "|" || lexeme[0] === ">";
    if (this.#skipping || isStray) {
      this.#passBlank(lexeme);
    } else {
      this.#pass(lexeme);
      this.#checkDepth(this.#offset - lexeme.length);
    }
  }

  #inspect(lexeme: string, isStray: boolean): void {
    const start = this.#offset;
    const end = start + lexeme.length;
    switch (lexeme[0]) {
      case "&":
      case "*":
        this.#linked = true;
        break;
      case "!":
        this.#report.feature(start, end, "tag");
        break;
      case "%":
        this.#report.feature(start, end, "directive");
        break;
      case "?":
        this.#linked = true;
        this.#report.feature(start, end, "explicit-key");
        break;
      case "[":
      case "{":
        this.#open.push({ at: start, bracket: lexeme });
        break;
      case "-":
        if (isStray) this.#report.syntax(start, end, "LONE_DASH", "a dash where no list can begin");
        break;
      case "]":
      case "}":
        if (isStray)
          this.#report.syntax(start, end, "UNEXPECTED_TOKEN", `${lexeme} without an opening bracket`);
        else this.#close(lexeme);
        break;
      case '"':
      case "'":
        if (!isClosedQuote(lexeme)) {
          const quote = lexeme.charAt(0);
          this.#report.syntax(
            start,
            end,
            "QUOTE_NOT_CLOSED",
            `the ${quote} that opens here is not closed`,
            quote,
          );
          // It holds the brackets that would close those around it.
          this.#open = [];
        }
        break;
    }
  }

  #beginText(lexeme: string): void {
    this.#textNext = true;
    if (!this.#bodyNext) this.#beginContent();
    if (!this.#skipping) this.#feed(lexeme);
  }

  /** A plain scalar, or the body of a block scalar with its line breaks. */
  #text(lexeme: string): void {
    const start = this.#offset;
    const isBody = this.#bodyNext;
    this.#textNext = false;
    this.#bodyNext = false;
    if (this.#skipping) {
      this.#passBlank(lexeme);
    } else {
      this.#pass(lexeme);
      this.#checkDepth(start);
    }
    if (isBody && lexeme) this.#beginLine();
  }

  /**
   * The lexer gave up on an open flow collection, because a line is not indented enough to be inside. It has
   * consumed that line's indentation by then and takes the line to begin at column 0. So it is set back to
   * the beginning of the line, or else it would take the lines after it for parts of this one's value.
   */
  #flowEnd(): void {
    this.#reportOpen();
    this.#flowLevel = 0;
    this.#closeFlow();
    if (this.#lineIndent > 0) {
      const lexer = this.#lexer as unknown as { pos: number };
      lexer.pos -= this.#lineIndent;
      this.#isRepeated = true;
    }
  }

  #countFlow(lexeme: string): void {
    if (lexeme === "[" || lexeme === "{") this.#flowLevel++;
    else if ((lexeme === "]" || lexeme === "}") && this.#flowLevel > 0) this.#flowLevel--;
  }

  #close(lexeme: string): void {
    const opener = this.#open.pop();
    if (!opener) return;
    const expected = opener.bracket === "[" ? "]" : "}";
    if (lexeme !== expected) {
      this.#report.syntax(
        this.#offset,
        this.#offset + 1,
        "UNEXPECTED_TOKEN",
        `${lexeme} where ${expected} is expected`,
      );
    }
  }

  #reportOpen(): void {
    for (const { at, bracket } of this.#open) {
      const missing = bracket === "[" ? "]" : "}";
      this.#report.syntax(at, at + 1, "BRACKET_NOT_CLOSED", `${bracket} is not closed`, missing);
    }
    this.#open = [];
  }

  #beginLine(): void {
    this.#atLineStart = true;
    this.#lineIndent = 0;
  }

  /** Called before the first lexeme of a line that is neither white space nor a comment. */
  #beginContent(): void {
    if (!this.#atLineStart) return;
    this.#atLineStart = false;
    if (!this.#skipping || this.#flowLevel > 0 || this.#lineIndent > this.#skipping.indent) return;
    this.#skipping = undefined;
    // The brackets that closed them were skipped.
    this.#closeFlow();
  }

  /** Ends all flow collections that are open in the parser. */
  #closeFlow(): void {
    if (this.#parser.stack.some(({ type }) => type === "flow-collection")) this.#feed(CST.FLOW_END);
  }

  #checkDepth(at: number): void {
    const { stack } = this.#parser;
    if (stack.length <= limits.nestingDepth + 1) return;
    const collections = stack.length - 1 - (CST.isCollection(stack.at(-1)) ? 0 : 1);
    if (collections <= limits.nestingDepth) return;
    this.#report.tooDeep(at);
    this.#skipping = deepPartOf(stack);
    this.#deep.push(this.#skipping);
    this.#open = [];
  }

  #pass(lexeme: string): void {
    this.#feed(lexeme);
    this.#offset += lexeme.length;
  }

  #passBlank(lexeme: string): void {
    if (lexeme.endsWith("\n")) {
      if (lexeme.length > 1) this.#feed(" ".repeat(lexeme.length - 1));
      this.#feed("\n");
    } else if (lexeme) {
      this.#feed(" ".repeat(lexeme.length));
    }
    this.#offset += lexeme.length;
  }

  #feed(lexeme: string): void {
    for (const token of this.#parser.next(lexeme)) this.#stream.push(token);
  }
}

/** A top-level entry, or one entry of a top-level list; the whole document if it is neither. */
function deepPartOf(stack: readonly CST.Token[]): DeepPart {
  const [document, root, below] = stack;
  if (root?.type !== "block-map") {
    return {
      indent: -1,
      remove: () => {
        if (document?.type === "document") delete document.value;
      },
    };
  }
  const pair = root.items.at(-1);
  const entry = below?.type === "block-seq" ? below.items.at(-1) : undefined;
  if (below?.type === "block-seq" && entry && pair?.key && CST.isScalar(pair.key)) {
    return { indent: below.indent, remove: () => delete entry.value };
  }
  return {
    indent: root.indent,
    remove: () => {
      const at = pair ? root.items.indexOf(pair) : -1;
      if (at === -1) return;
      if (CST.isScalar(pair?.key)) delete (pair as Mutable<Pair>).value;
      else root.items.splice(at, 1);
    },
  };
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** Whether the last character of a quoted scalar closes the quote that the first one opened. */
export function isClosedQuote(lexeme: string): boolean {
  const quote = lexeme[0];
  const last = lexeme.length - 1;
  if (last < 1 || lexeme[last] !== quote) return false;
  const mark = quote === '"' ? "\\" : "'";
  let escapes = 0;
  while (last - 1 - escapes > 0 && lexeme[last - 1 - escapes] === mark) escapes++;
  return escapes % 2 === 0;
}
