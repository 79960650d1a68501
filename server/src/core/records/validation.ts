import type { Problem } from "../findings/finding";
import { nearest } from "../nearest";
import type { Entry, ListNode, MapNode, Node } from "../reading/tree";
import { type JsonType, raise } from "./problem-facts";
import { sampleOf } from "./sample";
import type { RecordKind, Schema } from "./schema";
import type { TypedRecord, Typing } from "./typing";
import { type SchemaError, type Validator, validators } from "./validators.mjs";
import type { Locator } from "./whereabouts";

/** A record, as far as its shape is judged. */
export interface Shape {
  readonly file: string;
  readonly root: MapNode;
  readonly typing: Typing;
  readonly locate: Locator;
  /** Of a broken part nothing is said: what seems wrong with it may follow from how it was read. */
  readonly isBroken: (node: Node) => boolean;
}

/**
 * What the schema finds wrong with a record's shape, each error turned into the facts of one rule. Errors that
 * only follow from another are left out: the parts of `oneOf`, the list of words for a value that is not there,
 * a missing key that stands there misspelt.
 */
export function validate(shape: Shape, kind: RecordKind): Problem[] {
  const { root, typing, isBroken } = shape;
  const { frame, entries } = validators[kind];
  const plain = typing.plain as Readonly<Record<string, unknown>>;
  const describer = new Describer(shape);
  const problems = describer.problemsOf(frame, plain, [root], isBroken);
  for (const [key, validator] of Object.entries(entries)) {
    const list = plain[key];
    if (!Array.isArray(list)) continue;
    const node = describer.entry(root, key)?.value as ListNode;
    for (let index = 0; index < list.length; index++) {
      const ofEntry = problemsOfEntry(describer, validator, list[index], [root, node], index);
      if (ofEntry.length === 0 || isBroken(node.entries[index]!)) continue;
      for (const problem of ofEntry) problems.push(problem);
    }
  }
  return problems;
}

/** What is wrong with an entry of a top-level list, with all that it rests on beside the entry itself. */
interface Judged {
  readonly file: string;
  readonly validator: Validator;
  readonly index: number;
  readonly isInWork: boolean;
  readonly problems: readonly Problem[];
}

/** Entries live as long as their text does, and so does what is wrong with them. */
const judgedEntries = new WeakMap<Node, Judged>();

function problemsOfEntry(
  describer: Describer,
  validator: Validator,
  plain: unknown,
  [root, list]: readonly [MapNode, ListNode],
  index: number,
): readonly Problem[] {
  const { file, isInWork } = describer;
  const node = list.entries[index]!;
  const before = judgedEntries.get(node);
  if (
    before?.file === file &&
    before.validator === validator &&
    before.index === index &&
    before.isInWork === isInWork
  ) {
    return before.problems;
  }
  const problems = describer.problemsOf(validator, plain, [root, list, node]);
  judgedEntries.set(node, { file, validator, index, isInWork, problems });
  return problems;
}

/** The part of a schema that only a message needs. */
interface Alternatives extends Schema {
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
}

function statusOf({ kind, record }: TypedRecord): string | undefined {
  switch (kind) {
    case "install":
      return record.document?.status?.value;
    case "airframe":
      return record.status?.value;
    case "kit":
      return undefined;
  }
}

class Describer {
  private readonly entries = new Map<MapNode, ReadonlyMap<string, Entry>>();
  private readonly slips = new Map<MapNode, ReadonlySet<string>>();

  readonly file: string;

  /** The record says of itself that it is not finished. */
  readonly isInWork: boolean;

  constructor(private readonly shape: Shape) {
    this.file = shape.file;
    this.isInWork = statusOf(shape.typing.typed) === "in-work";
  }

  /**
   * What is wrong with a part of the record.
   *
   * @param plain the part as plain data
   * @param way the nodes that lead to the part, the root first and its own last
   * @param isLeftOut tells the nodes of which nothing is said
   */
  problemsOf(
    validator: Validator,
    plain: unknown,
    way: readonly Node[],
    isLeftOut = (_node: Node) => false,
  ): Problem[] {
    if (validator(plain)) return [];
    const problems: Problem[] = [];
    const seen = new Set<string>();
    for (const error of validator.errors ?? []) {
      const trail = this.trail(way, error.instancePath);
      const node = trail.at(-1);
      const said = node && !isLeftOut(node) && this.describe(error, node, trail);
      if (!said) continue;
      const key = `${said.rule}:${error.instancePath}:${said.facts.key ?? ""}`;
      if (!seen.has(key)) problems.push(said);
      seen.add(key);
    }
    return problems;
  }

  private describe(error: SchemaError, node: Node, trail: readonly Node[]): Problem | undefined {
    if (node.kind === "map") return this.ofMap(error, node, trail);
    return this.ofValue(error, node, trail);
  }

  private ofMap(error: SchemaError, node: MapNode, trail: readonly Node[]): Problem | undefined {
    switch (error.keyword) {
      case "required":
        return this.missing(error, node);
      case "additionalProperties":
        return this.unknown(String(error.params.additionalProperty), node, trail);
      case "anyOf":
      case "oneOf": {
        const branches = this.schema(node)?.[error.keyword] ?? [];
        const keys = branches.flatMap((branch) => branch.required ?? []);
        const found = keys.filter((key) => this.entry(node, key));
        return raise("key-choice", this.place(node), { ...this.shape.locate(node), keys, found });
      }
      default:
        return this.ofValue(error, node, trail);
    }
  }

  private ofValue(error: SchemaError, node: Node, trail: readonly Node[]): Problem | undefined {
    const { locate } = this.shape;
    const place = this.place(node);
    const schema = this.schema(node);
    const text = node.kind === "scalar" ? node.text : undefined;
    switch (error.keyword) {
      case "false schema":
        return this.outOfPlace(error, trail);
      case "type":
        return this.wrongKind(error, node, trail);
      case "enum":
        if (!text) return undefined; // that no word stands there is an error of its own
        return raise("value-not-in-list", place, {
          ...locate(node),
          found: text,
          allowed: schema?.enum ?? [],
        });
      case "pattern":
        // A reference that is malformed names nothing, which says more.
        if (text === undefined || schema?.["x-reference"]) return undefined;
        return raise("id-malformed", place, { ...locate(node), found: text, ...exampleOf(schema) });
      case "minimum":
      case "maximum":
        return raise("value-out-of-range", place, {
          ...locate(node),
          found: text ?? "",
          ...(schema?.minimum !== undefined && { least: schema.minimum }),
          ...(schema?.maximum !== undefined && { greatest: schema.maximum }),
        });
      case "minItems": {
        const found = node.kind === "list" ? node.entries.length : 0;
        return raise("list-too-short", place, { ...locate(node), found, least: Number(error.params.limit) });
      }
      default:
        return undefined; // `if` and the like only repeat what another error says
    }
  }

  private missing(error: SchemaError, node: MapNode): Problem | undefined {
    const key = String(error.params.missingProperty);
    // Errors inside `anyOf` and `oneOf` are told once, by these themselves.
    if (/\/(any|one)Of\//.test(error.schemaPath) || this.slipsIn(node).has(key)) return undefined;
    const property = this.schema(node)?.properties?.[key];
    const shape = this.shapeBehind(error, node);
    return raise("key-missing", this.place(node), {
      ...this.shape.locate(node),
      key,
      ...meaningOf(property),
      ...exampleOf(property),
      parts: property?.required ?? [],
      ...(shape !== undefined && { shape }),
    });
  }

  private unknown(key: string, node: MapNode, trail: readonly Node[]): Problem | undefined {
    const entry = this.entry(node, key);
    if (!entry) return undefined;
    const outer = trail.slice(0, -1);
    return raise("key-unknown", this.place(entry.key), {
      ...this.shape.locate(node),
      key,
      free: this.freeKeys(node),
      belongsFurtherOut: outer.some((one) => Object.hasOwn(this.schema(one)?.properties ?? {}, key)),
    });
  }

  private outOfPlace(error: SchemaError, trail: readonly Node[]): Problem | undefined {
    const [map, value] = trail.slice(-2);
    if (map?.kind !== "map") return undefined;
    const entry = map.entries.find((one) => one.value === value);
    const shape = this.shapeBehind(error, map);
    if (!entry || shape === undefined) return undefined;
    const facts = { ...this.shape.locate(map), key: entry.key.text, shape };
    return raise("key-out-of-place", this.place(entry.key), facts);
  }

  private wrongKind(error: SchemaError, node: Node, trail: readonly Node[]): Problem | undefined {
    const schema = this.schema(node);
    const where = this.shape.locate(node);
    const style = node.kind === "scalar" ? node.style : node.kind;
    if (style === "empty") {
      if (node.end > node.start) return undefined; // an alias that stands for nothing, which the reading told
      return raise(this.isInWork ? "value-still-blank" : "value-missing", this.place(node), {
        ...where,
        ...meaningOf(schema),
        ...exampleOf(schema),
        isRequired: this.isRequired(trail),
      });
    }
    return raise("value-wrong-kind", this.place(node), {
      ...where,
      expected: [error.params.type as JsonType | readonly JsonType[]].flat(),
      found: style,
      ...(node.kind === "scalar" && { text: node.text }),
      ...exampleOf(schema),
    });
  }

  /** Whether the last node of a trail stands behind a key that its map needs, or that is the only one of a choice. */
  private isRequired(trail: readonly Node[]): boolean {
    const [map, value] = trail.slice(-2);
    if (map?.kind !== "map") return false;
    const key = map.entries.find((one) => one.value === value)?.key.text;
    const schema = this.schema(map);
    if (key === undefined || !schema) return false;
    if (schema.required?.includes(key)) return true;
    const choice = (schema.anyOf ?? schema.oneOf ?? []).flatMap(({ required = [] }) => required);
    return choice.includes(key) && !choice.some((one) => one !== key && this.entry(map, one));
  }

  /** Keys that a map still lacks and that one of its unknown keys is likely a slip of. */
  private slipsIn(node: MapNode): ReadonlySet<string> {
    let slips = this.slips.get(node);
    if (!slips) {
      const free = this.freeKeys(node);
      const known = this.schema(node)?.properties ?? {};
      const unknown = node.entries.map((entry) => entry.key.text).filter((key) => !Object.hasOwn(known, key));
      slips = new Set(unknown.flatMap((key) => nearest(key, free)));
      this.slips.set(node, slips);
    }
    return slips;
  }

  private freeKeys(node: MapNode): string[] {
    return Object.keys(this.schema(node)?.properties ?? {}).filter((key) => !this.entry(node, key));
  }

  /** The shape whose branch of a figure's schema an error comes from. */
  private shapeBehind(error: SchemaError, node: MapNode): string | undefined {
    const branch = /\/allOf\/(\d+)\/then\//.exec(error.schemaPath)?.[1];
    const condition = branch && this.schema(node)?.allOf?.[Number(branch)]?.if;
    // One key, such as `shape` or `kind`, has one word.
    return condition ? Object.values(condition.properties ?? {})[0]?.const : undefined;
  }

  /** The nodes that a JSON pointer leads through, with those on the way to where it begins; none if it leads nowhere. */
  private trail(way: readonly Node[], pointer: string): readonly Node[] {
    const trail = [...way];
    for (const raw of pointer.split("/").slice(1)) {
      const step = raw.replaceAll("~1", "/").replaceAll("~0", "~");
      const at = trail.at(-1)!;
      const next =
        at.kind === "list" ? at.entries[Number(step)] : at.kind === "map" && this.entry(at, step)?.value;
      if (!next) return [];
      trail.push(next);
    }
    return trail;
  }

  /** The first entry of a key: the one that counts. */
  entry(node: MapNode, key: string): Entry | undefined {
    let entries = this.entries.get(node);
    if (!entries) {
      entries = new Map(node.entries.toReversed().map((entry) => [entry.key.text, entry]));
      this.entries.set(node, entries);
    }
    return entries.get(key);
  }

  private schema(node: Node): Alternatives | undefined {
    return this.shape.typing.schemaOf(node);
  }

  private place(node: Node) {
    return { file: this.shape.file, node };
  }
}

function meaningOf(schema: Schema | undefined): { meaning?: string } {
  return schema?.description === undefined ? {} : { meaning: schema.description };
}

function exampleOf(schema: Schema | undefined): { example?: string } {
  const example = sampleOf(schema);
  return example === undefined ? {} : { example };
}
