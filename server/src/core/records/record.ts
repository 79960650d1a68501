import type { Problem } from "../findings/finding";
import { sameProblems } from "../findings/same-problems";
import { isSame } from "../is-same";
import { onceEach } from "../once-each";
import { read } from "../reading";
import type { Reading } from "../reading/tree";
import { brokenParts } from "./broken-parts";
import { type RecordFacts, raise } from "./problem-facts";
import { Recollection } from "./recollection";
import type { IdKind, RecordKind } from "./schema";
import { type Declaration, type Found, type Reference, type Typing, typeRecord } from "./typing";
import { validate } from "./validation";
import { type Locator, locatorOf, subjectOf, type Whereabouts } from "./whereabouts";

/** One record's text with everything that can be known from it alone. */
export interface LoadedRecord {
  readonly file: string;
  readonly kind: RecordKind;
  readonly text: string;
  readonly reading: Reading;
  readonly typing: Typing;
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
  const locate = locatorOf(reading, typing);
  const isBroken = brokenParts(reading);
  const before = previous?.file === file ? previous : undefined;
  return {
    file,
    kind,
    text,
    reading,
    typing,
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

/** What a section of a record declares: the first thing of each kind and id, and the others. */
interface Declared {
  readonly byKind: ReadonlyMap<IdKind, ById>;
  readonly duplicates: readonly Duplicate[];
}

const declaredIn = onceEach(({ declarations }: Found): Declared => {
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
});

const listOf = onceEach((ofKind: ById): readonly Declaration[] => [...ofKind.values()]);

/** Ids that can be referred to, by kind. */
export class Names {
  private readonly byKind = new Map<IdKind, ById>();
  private readonly byKinds = new Map<readonly IdKind[], readonly ById[]>();
  private readonly ids = new Map<string, readonly string[]>();
  readonly duplicates: Duplicate[] = [];

  /** @param records an install record with its airframe and kit, or some of these */
  constructor(records: readonly LoadedRecord[]) {
    for (const { typing } of records) {
      for (const section of typing.sections) this.add(declaredIn(section));
    }
  }

  private add({ byKind, duplicates }: Declared): void {
    for (const duplicate of duplicates) this.duplicates.push(duplicate);
    for (const [kind, ofKind] of byKind) {
      const known = this.byKind.get(kind);
      this.byKind.set(kind, known ? this.joined(known, ofKind) : ofKind);
    }
  }

  /** Things of one kind from two sections. */
  private joined(known: ById, more: ById): ById {
    const all = new Map(known);
    for (const [id, second] of more) {
      const first = all.get(id);
      if (first) this.duplicates.push({ first, second });
      else all.set(id, second);
    }
    return all;
  }

  /** The things of a kind; the same map while the sections that declare them are the same. */
  byId(kind: IdKind): ById | undefined {
    return this.byKind.get(kind);
  }

  find(kinds: readonly IdKind[], id: string): Declaration[] {
    return kinds.map((kind) => this.byKind.get(kind)?.get(id)).filter((found) => found !== undefined);
  }

  /** All kinds of which something has the id. */
  kindsOf(id: string): IdKind[] {
    return [...this.byKind].filter(([, ofKind]) => ofKind.has(id)).map(([kind]) => kind);
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

  /** Everything of a kind; the same list while the sections that declare it are the same. */
  ofKind(kind: IdKind): readonly Declaration[] {
    const ofKind = this.byKind.get(kind);
    return ofKind ? listOf(ofKind) : [];
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
const kindsOf: Readonly<Record<RecordKind, readonly IdKind[]>> = {
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

/** References of a section that are in doubt, and the ids that they were looked up among. */
interface Doubts {
  readonly among: readonly (ById | undefined)[];
  readonly references: readonly Reference[];
}

const doubts = new WeakMap<Found, Doubts>();

/** The schemas have few lists of kinds, and a section may have thousands of references. */
const kindsAskedIn = onceEach(({ references }: Found): readonly IdKind[] => {
  const lists = new Set(references.map(({ kinds }) => kinds));
  return [...new Set([...lists].flat())];
});

/** The references of a section that do not name exactly one thing. Most edits touch neither them nor the ids. */
function doubtful(section: Found, names: Names): readonly Reference[] {
  const among = kindsAskedIn(section).map((kind) => names.byId(kind));
  const before = doubts.get(section);
  if (before && isSame(before.among, among)) return before.references;
  const references = section.references.filter(({ kinds, id }) => names.count(kinds, id.value) !== 1);
  doubts.set(section, { among, references });
  return references;
}

/**
 * Ids that name nothing, or more than one thing. Where a whole record is missing (`absent`), the ids that it
 * would declare are not held against anybody.
 */
export function judgeNames(
  names: Names,
  { typing, locate }: LoadedRecord,
  absent: readonly RecordKind[] = [],
): Problem[] {
  const unknowable = new Set(absent.flatMap((kind) => kindsOf[kind]));
  const problems: Problem[] = names.duplicates.map(({ first, second }) =>
    raise("id-duplicate", second.id.place, { ownerKind: second.kind, ownerId: second.id.value }, [
      { place: first.id.place, words: "the first one" },
    ]),
  );
  for (const { kinds, id } of typing.sections.flatMap((section) => doubtful(section, names))) {
    const found = names.find(kinds, id.value);
    if (found.length > 1) {
      const facts = { ...locate(id.place.node), id: id.value, kinds: found.map((one) => one.kind) };
      const related = found.map((one) => ({ place: one.id.place, words: `${one.kind} ${one.id.value}` }));
      problems.push(raise("reference-ambiguous", id.place, facts, related));
    } else if (!kinds.some((kind) => unknowable.has(kind))) {
      const facts = {
        ...locate(id.place.node),
        id: id.value,
        kinds,
        known: names.all(kinds),
        others: names.kindsOf(id.value),
      };
      problems.push(raise("reference-unknown", id.place, facts));
    }
  }
  return problems;
}
