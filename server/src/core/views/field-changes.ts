/**
 * What was changed between two revisions of one record, field by field. Entries of lists are matched by their
 * names, so that a block may move; quantities by what they measure, so that 12 in is 1 ft.
 */
import { parseQuantity, quantityOf } from "../quantities";
import type { ListNode, MapNode, Node, ScalarNode } from "../reading/tree";
import { entryLabels, fieldIn } from "../records/field-names";
import type { LoadedRecord } from "../records/record";
import type { Schema } from "../records/schema";
import type { Typing } from "../records/typing";
import { sameWithinRounding } from "../rounding";

export interface FieldChange {
  /** Named as in records/field-names: `wires[P102A8].gauge`. */
  readonly field: string;
  /** As written; null where the field was not there, a map or list in one line. */
  readonly before: string | null;
  readonly after: string | null;
}

/** A record that is in one revision only has no fields to compare. */
export function fieldChanges(
  base: Pick<LoadedRecord, "reading" | "typing">,
  head: Pick<LoadedRecord, "reading" | "typing">,
): FieldChange[] {
  const comparer = new Comparer(base.typing, head.typing);
  comparer.maps("", base.reading.root, head.reading.root);
  return comparer.changes;
}

class Comparer {
  readonly changes: FieldChange[] = [];

  constructor(
    private readonly base: Typing,
    private readonly head: Typing,
  ) {}

  maps(field: string, before: MapNode, after: MapNode): void {
    const [old, now] = [valuesByKey(before), valuesByKey(after)];
    for (const [key, value] of now) this.nodes(fieldIn(field, key), old.get(key), value);
    for (const [key, value] of old) if (!now.has(key)) this.nodes(fieldIn(field, key), value, undefined);
  }

  private nodes(field: string, before: Node | undefined, after: Node | undefined): void {
    if (before?.kind === "map" && after?.kind === "map") this.maps(field, before, after);
    else if (before?.kind === "list" && after?.kind === "list") this.lists(field, before, after);
    else if (!this.isSame(before, after)) {
      this.changes.push({ field, before: before ? flow(before) : null, after: after ? flow(after) : null });
    }
  }

  private lists(field: string, before: ListNode, after: ListNode): void {
    if (this.head.schemaOf(after)?.["x-ordered"]) {
      this.inOrder(field, before.entries, after.entries);
      return;
    }
    const [old, now] = [this.entries(before, this.base), this.entries(after, this.head)];
    for (const [label, entry] of now.named) this.nodes(`${field}[${label}]`, old.named.get(label), entry);
    for (const [label, entry] of old.named) {
      if (!now.named.has(label)) this.nodes(`${field}[${label}]`, entry, undefined);
    }
    this.unnamed(field, old.unnamed, now.unnamed);
  }

  private entries(list: ListNode, typing: Typing): Entries {
    const labels = entryLabels(list, typing);
    const named = new Map<string, Node>();
    const unnamed: Numbered[] = [];
    for (const [index, node] of list.entries.entries()) {
      const label = labels[index];
      if (label === undefined) unnamed.push({ node, number: index + 1 });
      else named.set(label, node);
    }
    return { named, unnamed };
  }

  /** Entries without names are the same where they say the same; the rest is taken one after the other. */
  private unnamed(field: string, before: readonly Numbered[], after: readonly Numbered[]): void {
    const left = new Map<string, Numbered[]>();
    for (const one of before) {
      const said = this.canonicalBefore(one.node);
      left.set(said, [...(left.get(said) ?? []), one]);
    }
    const fresh = after.filter(({ node }) => left.get(this.canonicalAfter(node))?.shift() === undefined);
    const gone = [...left.values()].flat().toSorted((a, b) => a.number - b.number);
    this.pairs(field, gone, fresh);
  }

  /** Where order has a meaning, only what stands before and behind the change is the same. */
  private inOrder(field: string, before: readonly Node[], after: readonly Node[]): void {
    let start = 0;
    while (start < before.length && start < after.length && this.isSame(before[start]!, after[start]!))
      start++;
    let end = 0;
    while (
      end < before.length - start &&
      end < after.length - start &&
      this.isSame(before.at(-1 - end)!, after.at(-1 - end)!)
    )
      end++;
    const middle = (nodes: readonly Node[]) =>
      nodes
        .slice(start, nodes.length - end)
        .map((node, index): Numbered => ({ node, number: start + index + 1 }));
    this.pairs(field, middle(before), middle(after));
  }

  private pairs(field: string, before: readonly Numbered[], after: readonly Numbered[]): void {
    for (let index = 0; index < Math.max(before.length, after.length); index++) {
      const [old, now] = [before[index], after[index]];
      this.nodes(`${field}[#${(now ?? old)!.number}]`, old?.node, now?.node);
    }
  }

  private isSame(before: Node | undefined, after: Node | undefined): boolean {
    if (!before || !after) return before === after;
    return (
      this.canonicalBefore(before) === this.canonicalAfter(after) ||
      isSameQuantity(before, this.base, after, this.head)
    );
  }

  private canonicalBefore(node: Node): string {
    return canonical(node, this.base);
  }

  private canonicalAfter(node: Node): string {
    return canonical(node, this.head);
  }
}

interface Entries {
  readonly named: ReadonlyMap<string, Node>;
  readonly unnamed: readonly Numbered[];
}

interface Numbered {
  readonly node: Node;
  /** From 1. */
  readonly number: number;
}

/** Of a key that stands twice the first one counts, as everywhere. */
function valuesByKey({ entries }: MapNode): Map<string, Node> {
  const values = new Map<string, Node>();
  for (const { key, value } of entries) if (!values.has(key.text)) values.set(key.text, value);
  return values;
}

/** Quantities that differ by binary noise only, which the digits of their canonical text may not show. */
function isSameQuantity(before: Node, base: Typing, after: Node, head: Typing): boolean {
  if (before.kind !== "scalar" || after.kind !== "scalar") return false;
  const [old, now] = [siOf(before, base.schemaOf(before)), siOf(after, head.schemaOf(after))];
  return old !== undefined && now?.every((number, at) => sameWithinRounding(number, old[at]!)) === true;
}

/** A quantity and how far it may be off either way, in SI; undefined where none is written. */
function siOf(node: ScalarNode, schema: Schema | undefined): readonly [number, number] | undefined {
  const dimension = schema?.["x-quantity"];
  if (!dimension || node.style === "empty") return undefined;
  const result = parseQuantity(node.text, {
    dimension,
    sign: schema["x-sign"] ?? "any",
    tolerance: schema["x-tolerance"] ?? false,
  });
  if (!("quantity" in result)) return undefined;
  const { si, tolerance, unit } = result.quantity;
  return [si, tolerance === undefined ? 0 : quantityOf(tolerance, unit, dimension).si];
}

/** More digits than anybody measures, fewer than binary noise reaches. */
const digits = 11;

/** One text for all ways of writing the same: units, the order of keys, the order of lists without a meaning. */
function canonical(node: Node, typing: Typing): string {
  switch (node.kind) {
    case "map":
      return JSON.stringify([...valuesByKey(node)].map(([key, one]) => [key, canonical(one, typing)]).sort());
    case "list": {
      const entries = node.entries.map((entry) => canonical(entry, typing));
      return JSON.stringify(typing.schemaOf(node)?.["x-ordered"] ? entries : entries.sort());
    }
    case "scalar": {
      const schema = typing.schemaOf(node);
      const si = siOf(node, schema);
      if (si !== undefined) return `=${si.map((number) => number.toPrecision(digits)).join(" ± ")}`;
      if (node.style === "empty") return "";
      const number = schema?.type === "number" || schema?.type === "integer" ? Number(node.text) : Number.NaN;
      return Number.isNaN(number) ? `'${node.text}` : `=${number}`;
    }
  }
}

/** A node in one line, as flow YAML has it. */
function flow(node: Node): string {
  switch (node.kind) {
    case "map":
      return node.entries.length === 0
        ? "{}"
        : `{ ${node.entries.map(({ key, value }) => `${key.text}: ${flow(value)}`).join(", ")} }`;
    case "list":
      return `[${node.entries.map(flow).join(", ")}]`;
    case "scalar":
      return node.text;
  }
}
