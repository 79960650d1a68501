import type { Problem } from "../findings/finding";
import { sameProblems } from "../findings/same-problems";
import { read } from "../reading";
import type { Reading } from "../reading/tree";
import { brokenParts } from "./broken-parts";
import { type RecordFacts, raise } from "./problem-facts";
import { Recollection } from "./recollection";
import type { IdKind, RecordKind } from "./schema";
import { type Declaration, type Reference, type Typing, typeRecord } from "./typing";
import { validate } from "./validation";
import { type Locator, locatorOf, subjectOf, type Whereabouts } from "./whereabouts";

/** One record's text with everything that can be known from it alone. */
export interface LoadedRecord {
  readonly file: string;
  readonly kind: RecordKind;
  readonly text: string;
  readonly reading: Reading;
  readonly typing: Typing;
  readonly declared: Declared;
  /** Where a node of it stands, in words. */
  readonly locate: Locator;
  /** What is wrong with the text, its shape and its quantities. */
  readonly problems: readonly Problem[];
  /** What was derived and judged of it, handed on from version to version. */
  readonly recollection: Recollection;
}

/** Reads, types and validates one text. Pure; never throws. `previous` only makes it quicker. */
export function loadRecord(
  file: string,
  kind: RecordKind,
  text: string,
  previous?: LoadedRecord,
): LoadedRecord {
  if (previous?.text === text && previous.file === file) return previous;
  const reading = read(text, previous?.reading);
  const typing = typeRecord(file, reading, kind);
  const locate = locatorOf(reading, typing.declarations);
  const isBroken = brokenParts(reading);
  const before = previous?.file === file ? previous : undefined;
  return {
    file,
    kind,
    text,
    reading,
    typing,
    declared: declaredBy(typing.declarations),
    locate,
    recollection: new Recollection(before?.recollection),
    problems: sameProblems(before?.problems, [
      ...reading.problems.map((problem) => readingProblem(file, problem, locate)),
      ...validate({ file, root: reading.root, typing, locate, isBroken }, kind),
      ...typing.quantityProblems.map((one) => quantityProblem(one, typing, locate)),
    ]),
  };
}

function readingProblem(file: string, problem: Reading["problems"][number], locate: Locator): Problem {
  const { rule, node, span } = problem;
  const where: Whereabouts = node ? locate(node) : { path: [] };
  const subject = subjectOf(where);
  const place = node ? { file, node } : { file, span };
  return { rule, place, facts: { ...where, ...problem.facts }, ...(subject && { subject }) };
}

function quantityProblem(
  { place, problem }: Typing["quantityProblems"][number],
  typing: Typing,
  locate: Locator,
): Problem {
  const { node } = place;
  const { kind, at, ...said } = problem;
  const text = node.kind === "scalar" ? node.text : "";
  const facts = {
    ...locate(node),
    ...said,
    example: typing.schemaOf(node)?.examples?.[0] ?? problem.example,
    text,
    wrong: text.slice(at.start, at.end),
  };
  return raise(`quantity-${kind}`, place, facts as RecordFacts[`quantity-${typeof kind}`]);
}

/** Things by id. */
type ById = ReadonlyMap<string, Declaration>;

/** An id that was declared before, and by what. */
interface Duplicate {
  readonly first: Declaration;
  readonly second: Declaration;
}

/** What one record declares: the first thing of each kind and id, and the others. */
interface Declared {
  readonly byKind: ReadonlyMap<IdKind, ById>;
  readonly duplicates: readonly Duplicate[];
}

function declaredBy(declarations: readonly Declaration[]): Declared {
  const byKind = new Map<IdKind, Map<string, Declaration>>();
  const duplicates: Duplicate[] = [];
  for (const declaration of declarations) {
    let ofKind = byKind.get(declaration.kind);
    if (!ofKind) {
      ofKind = new Map();
      byKind.set(declaration.kind, ofKind);
    }
    const first = ofKind.get(declaration.id.value);
    if (first) duplicates.push({ first, second: declaration });
    else ofKind.set(declaration.id.value, declaration);
  }
  return { byKind, duplicates };
}

/** Ids that can be referred to, by kind. No kind is declared by records of two kinds (`declaredIn`). */
export class Names {
  private readonly byKind = new Map<IdKind, ById>();
  private readonly byKinds = new Map<readonly IdKind[], readonly ById[]>();
  private readonly lists = new Map<IdKind, readonly Declaration[]>();
  private readonly ids = new Map<string, readonly string[]>();
  readonly duplicates: readonly Duplicate[];

  /** @param records an install record with its airframe and kit, or some of these */
  constructor(records: readonly LoadedRecord[]) {
    for (const { declared } of records) {
      for (const [kind, ofKind] of declared.byKind) this.byKind.set(kind, ofKind);
    }
    this.duplicates = records.flatMap(({ declared }) => declared.duplicates);
  }

  find(kinds: readonly IdKind[], id: string): Declaration[] {
    return kinds.map((kind) => this.byKind.get(kind)?.get(id)).filter((found) => found !== undefined);
  }

  /** How many things of these kinds have the id. */
  count(kinds: readonly IdKind[], id: string): number {
    let count = 0;
    for (const ofKind of this.ofKinds(kinds)) if (ofKind.has(id)) count += 1;
    return count;
  }

  /** Found once for each list of kinds, of which the schemas have few: a record may hold thousands of references. */
  private ofKinds(kinds: readonly IdKind[]): readonly ById[] {
    let maps = this.byKinds.get(kinds);
    if (!maps) {
      maps = kinds.map((kind) => this.byKind.get(kind)).filter((found) => found !== undefined);
      this.byKinds.set(kinds, maps);
    }
    return maps;
  }

  /** Everything of a kind. The same list each time: much of what is recalled rests on it. */
  ofKind(kind: IdKind): readonly Declaration[] {
    const list = this.lists.get(kind) ?? [...(this.byKind.get(kind)?.values() ?? [])];
    this.lists.set(kind, list);
    return list;
  }

  /** Every id of these kinds. The same list each time: a record may hold thousands of references. */
  all(kinds: readonly IdKind[]): readonly string[] {
    const key = kinds.join(" ");
    const list = this.ids.get(key) ?? kinds.flatMap((kind) => [...(this.byKind.get(kind)?.keys() ?? [])]);
    this.ids.set(key, list);
    return list;
  }
}

/** Kinds of ids that each kind of record declares. */
const declaredIn: Readonly<Record<RecordKind, readonly IdKind[]>> = {
  airframe: [
    "bus",
    "envelope",
    "equipment",
    "existing-load",
    "feeder",
    "ground",
    "keep-out",
    "loading",
    "panel",
    "seat",
    "shelf",
    "source",
    "station",
    "glazing",
    "space",
    "scale",
    "weighing-item",
  ],
  kit: ["component", "device", "fan"],
  install: [
    "added-item",
    "air-path",
    "ballast",
    "bond",
    "bracket",
    "bundle",
    "condition",
    "contact",
    "cutout",
    "duct",
    "duct-outlet",
    "duct-segment",
    "junction",
    "placard",
    "protection",
    "wire",
    "drain",
    "fitting",
    "line",
    "pass-through",
  ],
};

/**
 * Ids that name nothing, or more than one thing. Where a whole record is missing (`absent`), the ids that it
 * would declare are not held against anybody.
 */
export function judgeNames(
  names: Names,
  references: Iterable<Reference>,
  locate: Locator,
  absent: readonly RecordKind[] = [],
): Problem[] {
  const unknowable = new Set(absent.flatMap((kind) => declaredIn[kind]));
  const problems: Problem[] = names.duplicates.map(({ first, second }) =>
    raise("id-duplicate", second.id.place, { ownerKind: second.kind, ownerId: second.id.value }, [
      { place: first.id.place, words: "the first one" },
    ]),
  );
  for (const { kinds, id } of references) {
    const count = names.count(kinds, id.value);
    if (count === 0 && !kinds.some((kind) => unknowable.has(kind))) {
      const facts = { ...locate(id.place.node), id: id.value, kinds, known: names.all(kinds) };
      problems.push(raise("reference-unknown", id.place, facts));
    }
    if (count > 1) {
      const found = names.find(kinds, id.value);
      const facts = { ...locate(id.place.node), id: id.value, kinds: found.map((one) => one.kind) };
      const related = found.map((one) => ({ place: one.id.place, words: `${one.kind} ${one.id.value}` }));
      problems.push(raise("reference-ambiguous", id.place, facts, related));
    }
  }
  return problems;
}
