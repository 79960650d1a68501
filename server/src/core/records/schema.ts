import airframe from "../../../../schemas/airframe.schema.json";
import common from "../../../../schemas/common.schema.json";
import install from "../../../../schemas/install.schema.json";
import kit from "../../../../schemas/kit.schema.json";
import type { Dimension, Sign } from "../quantities";

export type RecordKind = "airframe" | "kit" | "install";

/** Kinds of things that have ids and can be referred to. */
export type IdKind =
  | "added-item"
  | "air-path"
  | "ballast"
  | "bond"
  | "bracket"
  | "bundle"
  | "bus"
  | "component"
  | "condition"
  | "contact"
  | "cutout"
  | "device"
  | "duct"
  | "duct-outlet"
  | "duct-segment"
  | "envelope"
  | "equipment"
  | "existing-load"
  | "fan"
  | "feeder"
  | "ground"
  | "junction"
  | "keep-out"
  | "loading"
  | "panel"
  | "placard"
  | "protection"
  | "scale"
  | "seat"
  | "shelf"
  | "source"
  | "station"
  | "weighing-item"
  | "wire"
  | ThermalId;

/** Of lines, drains and the climate of spaces. */
type ThermalId = "drain" | "fitting" | "glazing" | "line" | "pass-through" | "space";

/** The part of JSON Schema that the records use, with `$ref` followed. */
export interface Schema {
  readonly title?: string;
  readonly description?: string;
  readonly examples?: readonly string[];
  readonly type?: string | readonly string[];
  readonly enum?: readonly string[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Schema | boolean;
  /** What a figure's shape asks for and rules out. */
  readonly allOf?: readonly Conditional[];
  readonly items?: Schema;
  readonly "x-quantity"?: Dimension;
  readonly "x-sign"?: Sign;
  /** A tolerance may be written behind the quantity: it is carried through to what is computed from it. */
  readonly "x-tolerance"?: boolean;
  readonly "x-id"?: IdKind;
  readonly "x-reference"?: readonly IdKind[];
  readonly "x-key-reference"?: IdKind;
  /** Name of the standard sizes that a value is chosen from. */
  readonly "x-sizes"?: string;
  /** The key names a thing of this kind; the value is a word that its list, the second, has under the third. */
  readonly "x-choice-of"?: readonly string[];
  readonly "x-record"?: "airframe" | "kit";
  /** The order of a list's entries has a meaning. */
  readonly "x-ordered"?: boolean;
  /** The record written inline, where a path may stand instead. */
  readonly inline?: Schema;
}

/** A part of a schema that holds for one word of a map's own. */
export interface Conditional {
  readonly if?: { readonly properties?: Readonly<Record<string, { readonly const?: string }>> };
  readonly then?: {
    readonly required?: readonly string[];
    readonly properties?: Readonly<Record<string, Schema | boolean>>;
  };
}

const files: Record<string, RawSchema> = {
  "common.schema.json": common as RawSchema,
  "airframe.schema.json": airframe as RawSchema,
  "kit.schema.json": kit as RawSchema,
  "install.schema.json": install as RawSchema,
};

interface RawSchema {
  readonly $ref?: string;
  readonly [key: string]: unknown;
}

/** What `follow` has made. The same types are named in hundreds of places, and whole records in an install. */
const followed = new Map<RawSchema, Schema>();

/** The whole schema of one kind of record. */
export const recordSchemas: Readonly<Record<RecordKind, Schema>> = {
  airframe: follow(files["airframe.schema.json"]!, "airframe.schema.json"),
  kit: follow(files["kit.schema.json"]!, "kit.schema.json"),
  install: follow(files["install.schema.json"]!, "install.schema.json"),
};

/** Keys that a map, or each entry of a list, may have. */
export function keysWithin(schema: Schema | undefined): Readonly<Record<string, Schema>> {
  return schema?.properties ?? schema?.items?.properties ?? {};
}

/** What the name of a record's file says it is, or undefined for any other file. */
export function recordKindOf(fileName: string): RecordKind | undefined {
  return /\.(airframe|kit|install)\.ya?ml$/.exec(fileName)?.[1] as RecordKind | undefined;
}

/**
 * Puts the target of each `$ref` in its place; what stands beside the `$ref` wins over the target, as the
 * description of a property is nearer to its use than that of its type. The schemas are not recursive.
 */
function follow(raw: RawSchema, file: string): Schema {
  const schema = followed.get(raw) ?? followAnew(raw, file);
  followed.set(raw, schema);
  return schema;
}

function followAnew(raw: RawSchema, file: string): Schema {
  if (raw.$ref) {
    const [home, pointer = ""] = raw.$ref.split("#");
    const target = home || file;
    let found: unknown = files[target];
    for (const step of pointer.split("/").slice(1)) found = (found as Record<string, unknown>)[step];
    const { $ref: _, ...beside } = raw;
    return { ...follow(found as RawSchema, target), ...(beside as Schema) };
  }
  const result: Record<string, unknown> = { ...raw };
  if (raw.properties) {
    result.properties = Object.fromEntries(
      Object.entries(raw.properties).map(([key, value]) => [key, follow(value, file)]),
    );
  }
  if (raw.items) result.items = follow(raw.items as RawSchema, file);
  if (typeof raw.additionalProperties === "object") {
    result.additionalProperties = follow(raw.additionalProperties as RawSchema, file);
  }
  if (raw["x-record"]) result.inline = follow(raw.then as RawSchema, file);
  return result as Schema;
}
