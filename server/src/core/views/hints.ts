/** A few words behind a line of a record: what it comes to. Everything is a value of the graph; none computes. */
import type { Judgement } from "../check";
import { type Assessment, byMargin, marginOf } from "../findings/finding";
import { electricalOf, weightsOf, wiringOf } from "../graph/derivations";
import { showMeasure, type Value } from "../graph/value";
import type { Entry, MapNode, Node } from "../reading";
import type { IdKind } from "../records/schema";
import { nameOf } from "./calculation";

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
export function hintsOf({ record, project, assessments }: Judgement): Hint[] {
  if (!project) return [];
  const electrical = electricalOf(project);
  const { change, units } = weightsOf(project);
  const hints: Hint[] = [];
  const add = (node: Node | undefined, parts: readonly (string | undefined)[], isTotal: boolean) => {
    const text = parts.filter((part) => part !== undefined && part !== "").join(", ");
    if (node && text !== "") hints.push({ node, text, isTotal });
  };
  const things = new Map(record.typing.declarations.map((one) => [`${one.kind} ${one.id.value}`, one.node]));
  const thing = (kind: IdKind, id: string) => things.get(`${kind} ${id}`);

  for (const { id, states } of electrical.wires) {
    const current = largest(states.map((state) => state.current));
    const drop = largest(states.map((state) => state.drop));
    add(thing("wire", id), [short(current), drop && `drop ${short(drop)}`], false);
  }
  for (const { id, inline, rating, currents } of electrical.devices) {
    const current = largest(currents.map((one) => one.current));
    const margin = marginWords(
      assessments.filter(({ subject, rule }) => subject.id === id && rule !== "protection-above-chart"),
    );
    add(
      thing(inline.kind, id),
      [current && rating && `${short(current)} of ${short(rating)}`, margin],
      false,
    );
  }
  for (const { place, moment } of change.items) {
    if (place.file === record.file)
      add(entryAround(place.node, record.reading.root), [short(moment, 4)], false);
  }
  for (const condition of project.install.conditions ?? []) {
    const id = condition.id?.value;
    const values = electrical.values.filter((value) => value.condition === id);
    const demand = values.find(({ quantity }) => quantity === "source-demand");
    const capacity = values.find(({ quantity }) => quantity === "source-capacity");
    add(
      condition.place.node,
      [demand && capacity && `${short(demand)} of ${short(capacity)} from the sources`],
      true,
    );
  }
  const root = record.reading.root;
  const heads = ["placement", "added", "removed"].map((key) => section(root, key));
  const weight = change.emptyWeight && `empty ${short(change.emptyWeight, 5)}`;
  const cg = change.emptyCg && `at ${showMeasure(change.emptyCg.value, units.arm, 4)}`;
  add(
    heads.find((head) => head !== undefined),
    [weight && cg ? `${weight} ${cg}` : weight],
    true,
  );
  const { harnessWeight } = wiringOf(project);
  add(section(root, "wires"), [harnessWeight && `harness ${short(harnessWeight)}`], true);
  return hints;
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
  const share = Math.floor(marginOf(worst)! * 100 + 1e-9);
  return worst.holds ? `margin ${share} %` : `${nameOf(worst.value)} ${share} %`;
}

function section({ entries }: MapNode, key: string): Node | undefined {
  const found: Entry | undefined = entries.find((entry) => entry.key.text === key);
  return found?.value.kind === "list" && found.value.entries.length > 0 ? found.key : undefined;
}

/** The entry of a top-level list that a node is in, or the node itself. */
function entryAround(node: Node, root: MapNode): Node {
  for (const { value } of root.entries) {
    if (value.kind !== "list") continue;
    const found = value.entries.find(
      (entry) => entry === node || (entry.kind === "map" && entry.entries.some((one) => one.value === node)),
    );
    if (found) return found;
  }
  return node;
}
