import { limits } from "../limits";
import { reportDuplicates } from "./build";
import { type LineIndex, lineIndex } from "./lines";
import { allUnits, type PiecesRead, readPieces } from "./pieces";
import { type ItemProblem, none, ProblemCollector } from "./problems";
import { split } from "./split";
import { type LaidOut, type TabLine, withoutTabs } from "./tabs";
import type { Entry, Item, ListNode, MapNode, Node, Reading, ReadingProblem, Span } from "./tree";
import { readWhole, spanIn, type Unit } from "./unit";

/**
 * Reads one record's text. Never throws: what can't be read is in the problems, and the rest is read.
 *
 * @param previous a reading of an earlier version of the text. Items with the same text keep their identity,
 *   and so do their nodes; the result is equal to a reading without it.
 */
export function read(text: string, previous?: Reading): Reading {
  if (previous?.text === text) return previous;
  const unread = unreadable(text);
  if (unread) return unread;
  const before = previous instanceof TabbedReading ? previous.laidOutReading : previous;
  const laidOut = withoutTabs(text);
  if (!laidOut) return readSpaced(text, before);
  return new TabbedReading(text, laidOut, readSpaced(laidOut.text, before));
}

/** Reads a text as one item. The answer differs from that of `read` in nothing but the items. */
export function readAsOneItem(text: string): Reading {
  const unread = unreadable(text);
  if (unread) return unread;
  const asOne = (spaced: string) => new TextReading(spaced, [readWhole(spaced)], undefined, undefined);
  const laidOut = withoutTabs(text);
  return laidOut ? new TabbedReading(text, laidOut, asOne(laidOut.text)) : asOne(text);
}

/** Reads a text in which no line is indented with tabs, but for what `withoutTabs` leaves. */
function readSpaced(text: string, previous: Reading | undefined): Reading {
  if (previous?.text === text) return previous;
  const before = previous instanceof TextReading ? previous : undefined;
  const cuts = split(text);
  const pieces = cuts && readPieces(text, cuts, before?.pieces);
  const units = (pieces && allUnits(pieces)) ?? [readWhole(text)];
  return new TextReading(text, units, pieces, before);
}

/** The reading of a text with its tabs laid out, with all places in the text as it was written. */
class TabbedReading implements Reading {
  readonly text: string;
  readonly laidOutReading: Reading;
  readonly problems: readonly ReadingProblem[];
  readonly #laidOut: LaidOut;

  constructor(text: string, laidOut: LaidOut, reading: Reading) {
    this.text = text;
    this.laidOutReading = reading;
    this.#laidOut = laidOut;
    const others = reading.problems.map((problem) => ({ ...problem, span: this.#written(problem.span) }));
    this.problems = [...tabProblems(laidOut.tabs), ...others].sort((a, b) => a.span.start - b.span.start);
  }

  get root(): MapNode {
    return this.laidOutReading.root;
  }

  get items(): readonly Item[] {
    return this.laidOutReading.items;
  }

  get comments(): readonly Span[] {
    return this.laidOutReading.comments.map((comment) => this.#written(comment));
  }

  spanOf(node: Node): Span {
    return this.#written(this.laidOutReading.spanOf(node));
  }

  #written({ start, end }: Span): Span {
    return { start: this.#laidOut.writtenAt(start), end: this.#laidOut.writtenAt(end) };
  }
}

function tabProblems(lines: readonly TabLine[]): ReadingProblem[] {
  const omitted = lines.length - limits.findingsPerRule;
  return lines.slice(0, limits.findingsPerRule).map(({ start, end, tabs, column }, index) => {
    const isLast = omitted > 0 && index === limits.findingsPerRule - 1;
    const facts = { tabs, column, ...(isLast && { omitted }) };
    return { rule: "text-tab-indent", span: { start, end }, facts };
  });
}

/** Holds the root map and nothing else; at offset 0 in every text. */
const rootItem: Item = { text: "" };

class TextReading implements Reading {
  readonly text: string;
  readonly root: MapNode;
  readonly items: readonly Item[];
  readonly problems: readonly ReadingProblem[];
  /** What is known of the text's pieces, even when the text had to be read as one item. */
  readonly pieces: PiecesRead | undefined;
  /** The entries that were put together from several items, by their header. */
  readonly lists: ReadonlyMap<Item, Entry>;

  readonly #units: readonly Unit[];
  readonly #starts: readonly number[];
  #homes: Map<Item, Home> | undefined;
  #comments: readonly Span[] | undefined;

  constructor(
    text: string,
    units: readonly Unit[],
    pieces: PiecesRead | undefined,
    previous: TextReading | undefined,
  ) {
    this.text = text;
    this.pieces = pieces;
    this.#units = units;
    this.items = units.map(({ item }) => item);
    this.#starts = startsOf(units);
    const { entries, lists, start } = assemble(units, this.#starts, previous?.lists);
    this.lists = lists;
    this.root = { kind: "map", item: rootItem, start, end: start, entries };
    this.problems = this.#collectProblems();
  }

  get comments(): readonly Span[] {
    this.#comments ??= this.#units.flatMap(({ comments }, index) =>
      comments.map((comment) => moved(comment, this.#starts[index]!)),
    );
    return this.#comments;
  }

  spanOf(node: Node): Span {
    if (node.item === rootItem) return moved(node, 0);
    this.#homes ??= new Map(
      this.#units.map((unit, index) => [unit.home, { unit, start: this.#starts[index]! }]),
    );
    const home = this.#homes.get(node.item);
    if (home === undefined) throw new RangeError("The node belongs to another reading");
    return moved(spanIn(home.unit, node), home.start);
  }

  #collectProblems(): ReadingProblem[] {
    const collector = new ProblemCollector();
    for (let index = 0; index < this.#units.length; index++) {
      const { problems } = this.#units[index]!;
      if (problems === none) continue;
      const start = this.#starts[index]!;
      for (const problem of problems.kept) collector.add({ ...problem, ...moved(problem, start) });
      for (const [rule, count] of problems.omitted) collector.addOmitted(rule, count);
    }
    reportDuplicates(this.root.entries, (problem) => {
      collector.add({ ...problem, ...(problem.node && this.spanOf(problem.node)) });
    });

    const { kept, omitted } = collector.result();
    const rest = new Map(omitted);
    const problems: ReadingProblem[] = [];
    let lines: LineIndex | undefined;
    for (const problem of [...kept].reverse()) {
      const facts: Record<string, string | number> = { ...problem.facts };
      if (problem.first) {
        lines ??= lineIndex(this.text);
        facts.line = lines.positionAt(this.spanOf(problem.first).start).line + 1;
      }
      const count = rest.get(problem.rule);
      if (count) facts.omitted = count;
      rest.delete(problem.rule);
      problems.push(finished(problem, facts));
    }
    return problems.reverse();
  }
}

/** A unit, and where it starts. */
interface Home {
  readonly unit: Unit;
  readonly start: number;
}

function finished({ rule, node, start, end }: ItemProblem, facts: ReadingProblem["facts"]): ReadingProblem {
  return { rule, ...(node && { node }), span: { start, end }, facts };
}

function startsOf(units: readonly Unit[]): number[] {
  let at = 0;
  return units.map(({ item }) => {
    const start = at;
    at += item.text.length;
    return start;
  });
}

interface Assembly {
  readonly entries: readonly Entry[];
  readonly lists: ReadonlyMap<Item, Entry>;
  /** Where the first key is, 0 if there is none. */
  readonly start: number;
}

/** Joins the units' entries into those of the record, and list entries into the list of their header. */
function assemble(
  units: readonly Unit[],
  starts: readonly number[],
  previous: ReadonlyMap<Item, Entry> | undefined,
): Assembly {
  const entries: Entry[] = [];
  const lists = new Map<Item, Entry>();
  let start: number | undefined;
  for (let index = 0; index < units.length; index++) {
    const unit = units[index]!;
    if (unit.entries[0]) start ??= starts[index]! + spanIn(unit, unit.entries[0].key).start;
    if (unit.kind !== "header") {
      for (const entry of unit.entries) entries.push(entry);
      continue;
    }
    const header = index;
    while (units[index + 1]?.kind === "entry") index++;
    const list = listEntry(units, starts, header, index, previous?.get(unit.home));
    lists.set(unit.home, list);
    entries.push(list);
  }
  return { entries, lists, start: start ?? 0 };
}

/** The entry of a header with the list of the units up to `last`; the previous one if nothing changed. */
function listEntry(
  units: readonly Unit[],
  starts: readonly number[],
  header: number,
  last: number,
  previous: Entry | undefined,
): Entry {
  const { home, entries } = units[header]!;
  const nodes: Node[] = [];
  for (let index = header + 1; index <= last; index++) nodes.push(units[index]!.value!);
  const start = starts[header + 1]! + units[header + 1]!.indent - starts[header]!;
  const end = starts[last]! + spanIn(units[last]!, nodes.at(-1)!).end - starts[header]!;

  const before = previous?.value;
  const isWhereItStood = before?.start === start && before.end === end;
  if (previous && isWhereItStood && before.kind === "list" && isSameList(before, nodes)) return previous;
  return { key: entries[0]!.key, value: { kind: "list", item: home, start, end, entries: nodes } };
}

function isSameList(list: ListNode, nodes: readonly Node[]): boolean {
  return list.entries.length === nodes.length && nodes.every((node, index) => list.entries[index] === node);
}

/** The reading of a text of which nothing is read: it is too long, or its letters are not what they seem. */
function unreadable(text: string): Reading | undefined {
  if (text.length > limits.recordLength)
    return unread(text, "text-too-large", { length: text.length, limit: limits.recordLength });
  return inTwoBytes.test(text) ? unread(text, "text-encoding-wrong", {}) : undefined;
}

/** How UTF-16 begins when it is taken for UTF-8: by a mark that is no text, or by letters with zeros between. */
const inTwoBytes = /^(?:\ufffd\ufffd|[^\0]\0[^\0]\0|\0[^\0]\0[^\0])/;

function unread(text: string, rule: ReadingProblem["rule"], facts: ReadingProblem["facts"]): Reading {
  return {
    text,
    root: { kind: "map", item: rootItem, start: 0, end: 0, entries: [] },
    items: [{ text }],
    problems: [{ rule, span: { start: 0, end: 0 }, facts }],
    comments: [],
    spanOf: ({ start, end }) => ({ start, end }),
  };
}

function moved({ start, end }: Span, by: number): Span {
  return { start: start + by, end: end + by };
}
