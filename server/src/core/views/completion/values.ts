import { parseQuantity, unitsOf } from "../../quantities";
import type { MapNode, Node } from "../../reading";
import type { Names } from "../../records/record";
import type { Declaration } from "../../records/typing";
import { standardSizes } from "../../tables/standard-sizes";
import { explained } from "../key-meaning";
import { summaryOf } from "../symbols";
import type { Completion } from "./completion";
import { SnippetWriter } from "./snippets";
import type { ValueSpot } from "./spot";

/** What a value may be chosen from, besides the record itself. */
export interface Choices {
  readonly names: Names;
  /** Paths of the workspace's records of a kind, relative to this one. */
  paths(kind: "airframe" | "kit"): readonly string[];
}

/** Values that may stand at the cursor: words, names, standard sizes, units after a number, paths, maps. */
export function valueCompletions(spot: ValueSpot, choices: Choices): Completion[] {
  const { schema } = spot;
  if (schema.enum) return words(spot, schema.enum);
  if (schema.type === "boolean") return words(spot, ["true", "false"]);
  if (schema["x-reference"]) return names(spot, choices.names);
  if (schema["x-record"]) return paths(spot, choices.paths(schema["x-record"]));
  if (schema["x-sizes"]) return sizes(spot, schema["x-sizes"]);
  if (schema["x-choice-of"]) return words(spot, choicesOfKey(spot, schema["x-choice-of"], choices.names));
  if (schema["x-quantity"]) return units(spot);
  return compound(spot, choices.names);
}

function base(spot: ValueSpot, text: string) {
  const isComplete = spot.written !== "" && spot.typed === spot.written;
  return {
    insert: `${spot.needsSpace ? " " : ""}${text}`,
    span: spot,
    // A value that stands there whole is there to be exchanged: it is nothing to filter by.
    ...(isComplete && { filter: spot.typed }),
  };
}

function words(spot: ValueSpot, all: readonly string[]): Completion[] {
  const documentation = explained(spot.schema);
  const isWhole = all.includes(spot.written);
  return all.map((word) => ({
    label: word,
    kind: "word",
    documentation,
    ...withoutFilterUnless(isWhole, base(spot, word)),
    rank: 0,
  }));
}

function withoutFilterUnless<T extends { filter?: string }>(isWhole: boolean, item: T): Omit<T, "filter"> {
  if (isWhole) return item;
  const { filter: _, ...rest } = item;
  return rest;
}

function names(spot: ValueSpot, all: Names): Completion[] {
  const kinds = spot.schema["x-reference"] ?? [];
  const found = kinds.flatMap((kind) => all.all([kind]).flatMap((id) => all.find([kind], id)));
  const isWhole = found.some(({ id }) => id.value === spot.written);
  const rated = found.map((one) => ({ one, size: sizeOf(one, spot) }));
  const isRated =
    spot.map !== undefined && kinds.length === 1 && rated.some(({ size }) => size !== undefined);
  const ordered = isRated ? rated.toSorted((a, b) => (a.size ?? Infinity) - (b.size ?? Infinity)) : rated;
  return ordered.map(({ one }) => ({
    label: one.id.value,
    kind: "name",
    detail: [one.kind, summary(one)].filter((part) => part !== "").join(", "),
    documentation: explained(spot.schema),
    ...withoutFilterUnless(isWhole, base(spot, one.id.value)),
    rank: 0,
    isTriable: isRated,
  }));
}

function summary({ node, id }: Declaration): string {
  return summaryOf(node, id.place.node);
}

/** What things are ordered by: their rating. */
function sizeOf({ node }: Declaration, { typing }: ValueSpot): number | undefined {
  const rating = scalarOf(node, "rating");
  const dimension = rating && typing.schemaOf(rating)?.["x-quantity"];
  const parsed =
    rating?.kind === "scalar" && dimension && parseQuantity(rating.text, { dimension, sign: "any" });
  return parsed && "quantity" in parsed ? parsed.quantity.si : undefined;
}

function scalarOf(map: MapNode, key: string): Node | undefined {
  return map.entries.find((entry) => entry.key.text === key)?.value;
}

/** Of the thing that the key names: the words that its list `list` has under `word`. */
function choicesOfKey({ key }: ValueSpot, [kind, list, word]: readonly string[], all: Names): string[] {
  const [found] = key === undefined ? [] : all.find([kind as Declaration["kind"]], key);
  const entries = found && scalarOf(found.node, list ?? "");
  if (entries?.kind !== "list") return [];
  return entries.entries.flatMap((entry) => {
    const value = entry.kind === "map" ? scalarOf(entry, word ?? "") : undefined;
    return value?.kind === "scalar" && value.text !== "" ? [value.text] : [];
  });
}

function paths(spot: ValueSpot, all: readonly string[]): Completion[] {
  const isWhole = all.includes(spot.written);
  return all.map((path) => ({
    label: path,
    kind: "file",
    documentation: explained(spot.schema),
    ...withoutFilterUnless(isWhole, base(spot, path)),
    rank: 0,
  }));
}

function sizes(spot: ValueSpot, name: string): Completion[] {
  const standard = standardSizes[name];
  if (!standard) return [];
  const isWhole = standard.texts.includes(spot.written);
  return standard.texts.map((text) => ({
    label: text,
    kind: "size",
    ...withoutFilterUnless(isWhole, base(spot, text)),
    rank: 0,
    isTriable: true,
  }));
}

/** The number as it is typed, with each unit that it may have; those of the schema's own examples first. */
function units(spot: ValueSpot): Completion[] {
  const dimension = spot.schema["x-quantity"]!;
  const used = (spot.schema.examples ?? []).map((example) => example.replace(/^[-+\d./\s]+/, ""));
  const known: string[] = unitsOf(dimension);
  const ordered = [...new Set([...used.filter((unit) => known.includes(unit)), ...known])];
  const number = /^[-+]?\d[\d./]*(?: \d+\/\d+)?/.exec(spot.typed)?.[0];
  const documentation = explained(spot.schema);
  const space = spot.needsSpace ? " " : "";
  return ordered.map((unit) => {
    const shared = { kind: "unit", documentation, span: spot, rank: used.includes(unit) ? 0 : 1 } as const;
    if (number !== undefined)
      return { ...shared, label: `${number} ${unit}`, insert: `${space}${number} ${unit}` };
    return {
      ...shared,
      label: `… ${unit}`,
      insert: `${space}`,
      snippet: `${space}\${1} ${unit}`,
      ...(spot.written !== "" && { filter: spot.typed }),
    };
  });
}

/** A map or a list where one belongs. */
function compound(spot: ValueSpot, all: Names): Completion[] {
  const { schema } = spot;
  const writer = new SnippetWriter((kinds) => all.all(kinds));
  const space = spot.needsSpace ? " " : "";
  const isList = schema.items !== undefined;
  const isMap = schema.properties !== undefined || schema["x-key-reference"] !== undefined;
  if ((!isList && !isMap) || spot.written !== "") return [];
  const body = isList
    ? `[${writer.entry({ ...schema.items, ...(schema.items?.properties && { examples: ["{"] }) }, 0)}]`
    : writer.value(schema);
  return [
    {
      label: isList ? "[ ]" : "{ }",
      kind: "entry",
      documentation: explained(schema),
      insert: space,
      snippet: space + body,
      span: spot,
      rank: 0,
    },
  ];
}
