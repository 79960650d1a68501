/** A few words behind a line of a record: what it comes to. Everything is a value of the graph; none computes. */
import type { Judgement } from "../check";
import { type Assessment, byMargin, marginOf } from "../findings/finding";
import { electricalOf, weightsOf, wiringOf } from "../graph/derivations";
import type { LoadPath } from "../graph/electrical/circuit";
import { groupBy } from "../graph/group-by";
import { showMeasure, type Value } from "../graph/value";
import type { Project } from "../project";
import type { Entry, MapNode, Node } from "../reading";
import { nameOf, showShare } from "./calculation";

export interface Hint {
  /** The line on which this node starts, or ends where it stands in braces, is the hint's. */
  readonly node: Node;
  readonly text: string;
  /** What the whole record or a condition comes to, not a single thing. */
  readonly isTotal: boolean;
}

/** Digits of a number that is read in passing. */
const digits = 3;

/** All hints of an install record, in no order; several may belong to one line, of which the first counts. */
export function hintsOf(judgement: Judgement): Hint[] {
  if (!judgement.project) return [];
  return [
    ...wireAndDeviceHints(judgement, judgement.project),
    ...itemHints(judgement, judgement.project),
    ...totals(judgement, judgement.project),
  ];
}

/** Behind each wire its largest current and drop; behind each device its current, rating and least margin. */
function* wireAndDeviceHints({ record, assessments }: Judgement, project: Project): Iterable<Hint> {
  const things = new Map(record.typing.declarations.map((one) => [`${one.kind} ${one.id.value}`, one.node]));
  const judged = groupBy(assessments, ({ subject }) => subject.id);
  const { wires, devices, circuit } = electricalOf(project);
  for (const { id, states } of wires) {
    const drop = largest(states.map((state) => state.drop));
    const parts = [short(largest(states.map((state) => state.current))), drop && `drop ${short(drop)}`];
    yield* hint(things.get(`wire ${id}`), parts, false);
  }
  for (const { id, inline, rating, currents } of devices) {
    const current = largest(currents.map((one) => one.current));
    const margin = isKnownThrough(id, circuit.paths)
      ? marginWords((judged.get(id) ?? []).filter(({ subject }) => subject.kind === inline.kind))
      : "margin unknown";
    const parts = [current && rating && `${short(current)} of ${short(rating)}`, margin];
    yield* hint(things.get(`${inline.kind} ${id}`), parts, false);
  }
}

/** A wire without gauge or length leaves judgements out, maybe the one with the least margin. */
function isKnownThrough(id: string, paths: readonly LoadPath[]): boolean {
  return paths
    .filter(({ through }) => through.some((one) => one.id === id))
    .every(({ feed, returns }) => [...feed, ...returns].every(({ gauge, length }) => gauge && length));
}

/** Behind each item that comes or goes its moment. */
function* itemHints({ record }: Judgement, project: Project): Iterable<Hint> {
  const entries = entriesByPart(record.reading.root);
  for (const { place, moment } of weightsOf(project).change.items) {
    if (place.file === record.file)
      yield* hint(entries.get(place.node) ?? place.node, [short(moment, 4)], false);
  }
}

/** What each condition asks of the sources; behind the first section of weights the empty aircraft; the harness. */
function* totals({ record }: Judgement, project: Project): Iterable<Hint> {
  const root = record.reading.root;
  const ofConditions = groupBy(
    electricalOf(project).values.filter(({ quantity }) => quantity.startsWith("source-")),
    ({ condition }) => condition,
  );
  for (const { id, place } of project.install.conditions ?? []) {
    const values = ofConditions.get(id?.value) ?? [];
    const [demand, capacity] = ["source-demand", "source-capacity"].map((name) =>
      values.find(({ quantity }) => quantity === name),
    );
    yield* hint(
      place.node,
      [demand && capacity && `${short(demand)} of ${short(capacity)} from the sources`],
      true,
    );
  }
  const { emptyWeight, emptyCg } = weightsOf(project).change;
  const head = ["placement", "added", "removed"].map((key) => section(root, key)).find((found) => found);
  const empty = emptyWeight && emptyCg && `empty ${short(emptyWeight, 5)} at ${short(emptyCg, 4)}`;
  yield* hint(head, [empty], true);
  const { harnessWeight } = wiringOf(project);
  yield* hint(section(root, "wires"), [harnessWeight && `harness ${short(harnessWeight)}`], true);
}

function* hint(
  node: Node | undefined,
  parts: readonly (string | undefined)[],
  isTotal: boolean,
): Iterable<Hint> {
  const text = parts.filter((part) => part !== undefined && part !== "").join(", ");
  if (node && text !== "") yield { node, text, isTotal };
}

function short(value: Value | undefined, significant = digits): string | undefined {
  return value && showMeasure(value.value, value.unit, significant);
}

function largest(values: readonly (Value | undefined)[]): Value | undefined {
  return values.reduce((found, one) => (one && (!found || one.value > found.value) ? one : found), undefined);
}

/** The least margin of a thing, and of what. */
function marginWords(judged: readonly Assessment[]): string | undefined {
  const worst = judged.filter((one) => marginOf(one) !== undefined).toSorted(byMargin)[0];
  if (!worst) return undefined;
  const share = showShare(marginOf(worst));
  return worst.holds ? `margin ${share} (${nameOf(worst.value)})` : `${nameOf(worst.value)} ${share}`;
}

function section({ entries }: MapNode, key: string): Node | undefined {
  const found: Entry | undefined = entries.find((entry) => entry.key.text === key);
  return found?.value.kind === "list" && found.value.entries.length > 0 ? found.key : undefined;
}

/** The entries of top-level lists, by themselves and by each value in them. */
function entriesByPart(root: MapNode): ReadonlyMap<Node, Node> {
  const entries = new Map<Node, Node>();
  for (const { value } of root.entries) {
    if (value.kind !== "list") continue;
    for (const entry of value.entries) {
      entries.set(entry, entry);
      if (entry.kind === "map") for (const part of entry.entries) entries.set(part.value, entry);
    }
  }
  return entries;
}
