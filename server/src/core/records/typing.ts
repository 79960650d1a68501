import { parseQuantity, type Quantity, type QuantityProblem } from "../quantities";
import type { MapNode, Node, Reading, ScalarNode } from "../reading/tree";
import { type IdKind, type RecordKind, recordSchemas, type Schema } from "./schema";
import type { AirframeRecord, InstallRecord, KitRecord } from "./types";
import type { Pair, Place, Written } from "./written";

/** A record of known kind, typed as far as its text allows: what is missing or faulty is left out. */
export type TypedRecord =
  | { readonly kind: "airframe"; readonly record: AirframeRecord }
  | { readonly kind: "kit"; readonly record: KitRecord }
  | { readonly kind: "install"; readonly record: InstallRecord };

export interface Typing extends Found {
  readonly typed: TypedRecord;
  /** The same data as plain values, as the schema's validators take them. */
  readonly plain: unknown;
  /** Schema of a node, where the schemas know it. */
  schemaOf(node: Node): Schema | undefined;
  /** What there is in each section: the same for as long as the section's text is. */
  readonly sections: readonly Found[];
}

/** What a walk comes across, in the order of the text. */
export interface Found {
  readonly declarations: readonly Declaration[];
  readonly references: readonly Reference[];
  readonly quantityProblems: readonly { readonly place: Place; readonly problem: QuantityProblem }[];
}

/** A thing with an id. */
export interface Declaration {
  readonly kind: IdKind;
  readonly id: Written<string>;
  /** The map that describes it. */
  readonly node: MapNode;
}

/** The use of an id. */
export interface Reference {
  readonly kinds: readonly IdKind[];
  readonly id: Written<string>;
}

/** Types the tree of one record. Pure; never throws. */
export function typeRecord(file: string, reading: Reading, kind: RecordKind): Typing {
  const { typed, plain, sections } = new Walker(file).record(reading.root, recordSchemas[kind]);
  return {
    typed: { kind, record: typed } as unknown as TypedRecord,
    plain,
    schemaOf: (node) => schemaOfNode.get(node),
    sections,
    // Few ask for those of the whole record.
    get declarations() {
      return sections.flatMap(({ declarations }) => declarations);
    },
    get references() {
      return sections.flatMap(({ references }) => references);
    },
    get quantityProblems() {
      return sections.flatMap(({ quantityProblems }) => quantityProblems);
    },
  };
}

/** Nodes live as long as their text does, and so does what is known of them. */
const schemaOfNode = new WeakMap<Node, Schema>();
const typedWholes = new WeakMap<Node, TypedWhole>();

/** What a walk made of an entry of a list, or of a section of a record: the same for as long as its text is. */
interface TypedWhole extends Found {
  readonly file: string;
  readonly schema: Schema;
  readonly outcome: Outcome;
}

/** What became of a node: `typed` is undefined where the node can't be used. */
interface Outcome {
  readonly typed: unknown;
  readonly plain: unknown;
}

/** One walk over tree and schema together. */
class Walker implements Found {
  readonly declarations: Declaration[] = [];
  readonly references: Reference[] = [];
  readonly quantityProblems: { place: Place; problem: QuantityProblem }[] = [];

  constructor(private readonly file: string) {}

  record(root: MapNode, schema: Schema): Outcome & { sections: readonly Found[] } {
    const sections: TypedWhole[] = [];
    const outcome = this.map(root, schema, (value, property) => {
      const section = this.whole(value, property, root);
      sections.push(section);
      return section.outcome;
    });
    return { ...outcome, sections };
  }

  private map(
    node: MapNode,
    schema: Schema,
    walk = (value: Node, property: Schema) => this.node(value, property, node),
  ): Outcome {
    schemaOfNode.set(node, schema);
    const typed: Record<string, unknown> = { place: this.place(node) };
    const plain: Record<string, unknown> = Object.create(null);
    for (const { key, value } of node.entries) {
      if (key.text in plain) continue; // a duplicate key is a finding of its own; the first one counts
      const property = ownProperty(schema.properties, key.text);
      const outcome = property ? walk(value, property) : { typed: undefined, plain: loose(value) };
      plain[key.text] = outcome.plain;
      if (outcome.typed !== undefined) typed[camel(key.text)] = outcome.typed;
    }
    return { typed, plain };
  }

  private node(node: Node, schema: Schema, parent: MapNode): Outcome {
    schemaOfNode.set(node, schema);
    if (schema["x-record"]) return this.link(node, schema, parent);
    if (node.kind === "scalar") return this.scalar(node, schema, parent);
    if (node.kind === "list") {
      if (!schema.items) return { typed: undefined, plain: loose(node) };
      const outcomes = node.entries.map((entry) =>
        entry.kind === "map"
          ? this.part(entry, schema.items!, parent)
          : this.node(entry, schema.items!, parent),
      );
      return {
        typed: outcomes.map((one) => one.typed).filter((one) => one !== undefined),
        plain: outcomes.map((one) => one.plain),
      };
    }
    if (schema.properties) return this.map(node, schema);
    if (schema["x-key-reference"]) return this.pairs(node, schema, schema["x-key-reference"]);
    return { typed: undefined, plain: loose(node) };
  }

  private part(node: Node, schema: Schema, parent: MapNode): Outcome {
    const { outcome, declarations, references, quantityProblems } = this.whole(node, schema, parent);
    for (const one of declarations) this.declarations.push(one);
    for (const one of references) this.references.push(one);
    for (const one of quantityProblems) this.quantityProblems.push(one);
    return outcome;
  }

  /** What was typed before keeps its typed objects, and so all that rests on them. */
  private whole(node: Node, schema: Schema, parent: MapNode): TypedWhole {
    const before = typedWholes.get(node);
    if (before?.file === this.file && before.schema === schema) return before;
    const walker = new Walker(this.file);
    const outcome = walker.node(node, schema, parent);
    const { declarations, references, quantityProblems } = walker;
    const whole = { file: this.file, schema, outcome, declarations, references, quantityProblems };
    typedWholes.set(node, whole);
    return whole;
  }

  private link(node: Node, schema: Schema, parent: MapNode): Outcome {
    if (node.kind === "map") {
      const { typed, plain } = this.map(node, schema.inline!);
      return { typed: { inline: typed }, plain };
    }
    const { typed, plain } =
      node.kind === "scalar"
        ? this.scalar(node, { ...schema, type: "string" }, parent)
        : this.node(node, {}, parent);
    return { typed: typed === undefined ? undefined : { path: typed }, plain };
  }

  private pairs(node: MapNode, schema: Schema, kind: IdKind): Outcome {
    const typed: Pair[] = [];
    const plain: Record<string, unknown> = Object.create(null);
    for (const entry of node.entries) {
      if (entry.key.text in plain) continue;
      const key = this.written(entry.key.text, entry.key);
      this.references.push({ kinds: [kind], id: key });
      const value = this.node(entry.value, schema.additionalProperties as Schema, node);
      plain[entry.key.text] = value.plain;
      typed.push({ key, value: value.typed as Written<string> | undefined });
    }
    return { typed, plain };
  }

  private scalar(node: ScalarNode, schema: Schema, parent: MapNode): Outcome {
    if (node.style === "empty") return { typed: undefined, plain: null };
    if (schema["x-quantity"]) return this.quantity(node, schema);
    switch (schema.type) {
      case "string":
        return this.string(node, schema, parent);
      case "integer":
      case "number":
      case "boolean": {
        const value = loose(node);
        return { typed: typeof value === "string" ? undefined : this.written(value, node), plain: value };
      }
      default:
        return { typed: undefined, plain: loose(node) };
    }
  }

  private string(node: ScalarNode, schema: Schema, parent: MapNode): Outcome {
    if (schema.enum && !schema.enum.includes(node.text)) return { typed: undefined, plain: node.text };
    const written = this.written(node.text, node);
    if (schema["x-id"]) this.declarations.push({ kind: schema["x-id"], id: written, node: parent });
    if (schema["x-reference"]) this.references.push({ kinds: schema["x-reference"], id: written });
    return { typed: written, plain: node.text };
  }

  private quantity(node: ScalarNode, schema: Schema): Outcome {
    const result = parseQuantity(node.text, {
      dimension: schema["x-quantity"]!,
      sign: schema["x-sign"] ?? "any",
      tolerance: schema["x-tolerance"] ?? false,
    });
    if ("problem" in result) {
      this.quantityProblems.push({ place: this.place(node), problem: result.problem });
      return { typed: undefined, plain: node.text };
    }
    return { typed: this.written<Quantity>(result.quantity, node), plain: node.text };
  }

  private written<T>(value: T, node: Node): Written<T> {
    return { value, place: this.place(node) };
  }

  private place(node: Node): Place {
    return { file: this.file, node };
  }
}

/** Plain value of a node that no schema describes; numbers and truth values as YAML 1.2's core schema has them. */
function loose(node: Node): unknown {
  switch (node.kind) {
    case "list":
      return node.entries.map(loose);
    case "map": {
      const plain: Record<string, unknown> = Object.create(null);
      for (const { key, value } of node.entries) plain[key.text] ??= loose(value);
      return plain;
    }
    case "scalar":
      if (node.style === "empty") return null;
      if (node.style !== "plain") return node.text;
      if (/^(true|false)$/i.test(node.text)) return node.text.toLowerCase() === "true";
      if (/^[-+]?(\d+(\.\d*)?|\.\d+)(e[-+]?\d+)?$/i.test(node.text)) return Number(node.text);
      return node.text;
  }
}

function ownProperty(properties: Schema["properties"], key: string): Schema | undefined {
  return properties && Object.hasOwn(properties, key) ? properties[key] : undefined;
}

function camel(key: string): string {
  return key.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
}
