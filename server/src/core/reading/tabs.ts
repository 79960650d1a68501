/**
 * Lines that are indented with tabs, laid out with spaces where they most likely belong. YAML gives a tab no
 * width, so what the writer saw is not in the text; what stands around the line tells it: the columns at which
 * maps and lists are open, what the line before leaves open, and where the next line stands.
 */
import { limits } from "../limits";
import type { Span } from "./tree";

/** A text whose lines are indented with spaces only, and how it lies on the text as it was written. */
export interface LaidOut {
  readonly text: string;
  readonly tabs: readonly TabLine[];
  /** Where an offset of the laid-out text is in the text as written. Keeps the order. */
  writtenAt(offset: number): number;
}

/** A line that is indented with tabs. Its span in the written text is from the first tab to the content. */
export interface TabLine extends Span {
  /** How many tabs. */
  readonly tabs: number;
  /** The column at which the line is read. */
  readonly column: number;
}

/**
 * Undefined where no line with content is indented with tabs. Left as they are: tabs inside a block scalar
 * that stand right of its indentation, which are content, and those on blank lines and before comments, which
 * do no harm.
 */
export function withoutTabs(text: string): LaidOut | undefined {
  if (!text.includes("\t") || !/(?:^|[\r\n\uFEFF]) *\t/.test(text)) return undefined;
  const lines = linesOf(text);
  const layout = new Layout();
  const tabs: TabLine[] = [];
  const starts: ContentStart[] = [];
  const parts: string[] = [];
  let at = 0;
  let grown = 0;
  for (const [index, line] of lines.entries()) {
    const spaces = line.lead.indexOf("\t");
    const column = spaces === -1 ? line.lead.length : layout.columnOf(line, lines[index + 1]);
    if (column === undefined) continue;
    layout.take(line, column);
    if (spaces === -1 || text.length + grown > limits.recordLength) continue;
    grown += column - line.lead.length;
    const end = line.start + line.lead.length;
    parts.push(text.slice(at, line.start), " ".repeat(column));
    at = end;
    starts.push({ laidOut: end + grown, written: end });
    tabs.push({ start: line.start + spaces, end, tabs: line.lead.split("\t").length - 1, column });
  }
  if (tabs.length === 0) return undefined;
  parts.push(text.slice(at));
  return { text: parts.join(""), tabs, writtenAt: (offset) => writtenAt(offset, starts) };
}

/** Where the content of a line begins that was indented with tabs. */
interface ContentStart {
  readonly laidOut: number;
  readonly written: number;
}

function writtenAt(offset: number, starts: readonly ContentStart[]): number {
  let low = -1;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle]!.laidOut <= offset) low = middle;
    else high = middle - 1;
  }
  const before = starts[low] ?? { laidOut: 0, written: 0 };
  const at = before.written + offset - before.laidOut;
  // A place in the laid-out indentation is one in the written indentation, or the end of it.
  const next = starts[low + 1];
  return next ? Math.min(at, next.written) : at;
}

/** A line with content, taken apart as far as its place depends on it. */
interface Line {
  readonly start: number;
  /** Spaces and tabs before the content. */
  readonly lead: string;
  readonly content: string;
  readonly isEntry: boolean;
  /** How far right of the content's start its first key stands, behind dashes; undefined without a key. */
  readonly key: number | undefined;
  /** Nothing stands behind its last key or dash: the lines below may be its value. */
  readonly isOpen: boolean;
}

/** Lines with content, without remarks. */
function linesOf(text: string): Line[] {
  const lines: Line[] = [];
  for (const { 1: mark = "", 2: lead = "", 3: content = "", index } of text.matchAll(
    /(?<=^|[\r\n])(\uFEFF?)([ \t]*)([^ \t\r\n#][^\r\n]*)/g,
  )) {
    const dashes = /^(?:-(?: +|$))*/.exec(content)?.[0].length ?? 0;
    const said = content.slice(dashes).replace(/(?:^|\s)#.*$/, "");
    const isKey = /^["'\w][^:#[\]{}]*:(?=\s|$)/.test(said);
    lines.push({
      start: index + mark.length,
      lead,
      content,
      isEntry: dashes > 0,
      key: isKey ? dashes : undefined,
      isOpen: /^[^:]*:\s*$/.test(said) || (dashes > 0 && said === ""),
    });
  }
  return lines;
}

/** A map or list that is open: its keys or dashes stand at `column`. */
interface Level {
  readonly column: number;
  readonly isList: boolean;
  /** How a line of it that is indented with tabs was written. */
  lead?: string;
}

/** What is open at a line, and where a line with tabs would stand there. */
class Layout {
  readonly #levels: Level[] = [];
  /** The line before is open. */
  #isOpen = false;
  /** Set inside a block scalar; its lines stand right of `parent`, at `column` as soon as one was seen. */
  #block: { readonly parent: number; column?: number } | undefined;
  /** Set inside brackets that go on over lines: the column that their lines stand right of. */
  #brackets: { readonly parent: number; depth: number } | undefined;

  /** Goes on to a line that stands at `column`. */
  take(line: Line, column: number): void {
    if (this.#block && column > this.#block.parent) {
      this.#block.column ??= column;
      return;
    }
    this.#block = undefined;
    if (this.#brackets && column > this.#brackets.parent) {
      this.#brackets.depth += bracketsLeftOpen(line.content);
      if (this.#brackets.depth <= 0) this.#brackets = undefined;
      return;
    }
    this.#brackets = undefined;
    this.#open(line, column);
    this.#isOpen = line.isOpen;
    const parent = this.#levels.at(-1)?.column ?? 0;
    if (/(?:^|[:-]\s+)[|>][-+\d]*\s*(?:#.*)?$/.test(line.content)) this.#block = { parent };
    const depth = bracketsLeftOpen(line.content);
    if (depth > 0) this.#brackets = { parent, depth };
  }

  /** The column of a line that is indented with tabs; undefined where the tabs are content. */
  columnOf(line: Line, next: Line | undefined): number | undefined {
    if (this.#block) return this.#columnInBlock(line, this.#block);
    if (this.#brackets) return this.#brackets.parent + 2;
    const { column: innermost } = this.#levels.at(-1) ?? { column: 0 };
    if (!line.isEntry && line.key === undefined) return innermost + 2;

    const siblings = this.#levels
      .filter(({ isList, lead }) => isList === line.isEntry && !isLeftOf(line.lead, lead))
      .toReversed();
    const written = siblings.find(({ lead }) => lead === line.lead);
    if (written) return written.column;
    const child = this.#isOpen ? childColumn(line, next, innermost) : undefined;
    if (line.isEntry) {
      const joined = [child, ...siblings.map(({ column }) => column)].find((column) =>
        isJoined(line, column, next),
      );
      return joined ?? child ?? siblings[0]?.column ?? innermost;
    }
    const seen = widthOf(line.lead);
    if (child !== undefined && (seen > innermost || isBelow(next, innermost))) return child;
    const fitting = siblings.filter(({ column }) => fits(line, column, next));
    const asSeen = line.isOpen ? undefined : fitting.find(({ column }) => column === seen);
    return (asSeen ?? fitting[0] ?? siblings[0])?.column ?? innermost;
  }

  #columnInBlock(
    { lead }: Line,
    { parent, column }: { parent: number; column?: number },
  ): number | undefined {
    const spaces = lead.indexOf("\t");
    if (column === undefined ? spaces > parent : spaces >= column) {
      if (this.#block) this.#block.column ??= spaces;
      return undefined;
    }
    return column ?? parent + 2;
  }

  #open(line: Line, column: number): void {
    const isInside = ({ column: at, isList }: Level) =>
      at < column || (at === column && isList === line.isEntry);
    // A list may stand at the column of its key.
    const isOwner = ({ column: at, isList }: Level) => at === column && !isList && line.isEntry;
    while (this.#levels.length > 0 && !isInside(this.#levels.at(-1)!) && !isOwner(this.#levels.at(-1)!)) {
      this.#levels.pop();
    }
    const lead = line.lead.includes("\t") ? line.lead : undefined;
    if (line.isEntry) this.#enter(column, true, lead);
    if (line.key === undefined) return;
    this.#enter(column + line.key, false, lead && lead + " ".repeat(line.key));
  }

  #enter(column: number, isList: boolean, lead: string | undefined): void {
    let level = this.#levels.at(-1);
    if (level?.column !== column || level.isList !== isList) {
      level = { column, isList };
      this.#levels.push(level);
    }
    if (lead !== undefined) level.lead = lead;
  }
}

/** Where a line stands that is the first one of an open key's or dash's value. */
function childColumn(line: Line, next: Line | undefined, parent: number): number {
  // A list may stand at the column of its key.
  const least = line.isEntry ? parent : parent + 1;
  if (next?.isEntry === line.isEntry && isBelow(next, least - 1)) return next.lead.length;
  return Math.min(parent + 2, 2 * limits.nestingDepth);
}

/** Whether a line is written with spaces right of a column. */
function isBelow(line: Line | undefined, column: number): line is Line {
  return line !== undefined && !line.lead.includes("\t") && line.lead.length > column;
}

/** Whether the next line can stand where it does when this one, a key, stands at a column. */
function fits({ isOpen }: Line, column: number, next: Line | undefined): boolean {
  if (!next || next.lead.includes("\t")) return true;
  return isOpen ? next.lead.length >= column : next.lead.length <= column;
}

/** Whether the next line is another key of the map that an entry with a key would begin. */
function isJoined(entry: Line, column: number | undefined, next: Line | undefined): boolean {
  if (column === undefined || entry.key === undefined || !next || next.isEntry || next.key === undefined)
    return false;
  return !next.lead.includes("\t") && next.lead.length === column + entry.key;
}

/** Where editors show the end of an indentation, most of them. */
function widthOf(lead: string): number {
  let width = 0;
  for (const character of lead) width += character === "\t" ? 4 - (width % 4) : 1;
  return width;
}

function isLeftOf(lead: string, other: string | undefined): boolean {
  return other !== undefined && widthOf(lead) < widthOf(other);
}

/** How many more brackets a line opens than it closes, outside of quotes and remarks. */
function bracketsLeftOpen(content: string): number {
  let depth = 0;
  for (const bracket of content.replace(/"(?:[^"\\]|\\.)*"?|'[^']*'?|\s#.*$/g, "")) {
    if (bracket === "[" || bracket === "{") depth++;
    else if (bracket === "]" || bracket === "}") depth--;
  }
  return depth;
}
