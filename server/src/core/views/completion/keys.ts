import type { Schema } from "../../records/schema";
import { explained } from "../key-meaning";
import type { Completion } from "./completion";
import { escaped, type IdsOf, isBlock, SnippetWriter } from "./snippets";
import type { KeySpot } from "./spot";

/** Keys that the map at the cursor still lacks, those that it must have first, and whole entries of lists. */
export function keyCompletions(spot: KeySpot, idsOf: IdsOf): Completion[] {
  if (spot.isEntry) return [entryCompletion(spot, spot.schema, idsOf)].filter((one) => one !== undefined);
  const idKind = spot.schema["x-key-reference"];
  if (idKind) return thingCompletions(spot, idsOf([idKind]));
  const present = spot.present.map(({ key }) => key.text);
  const required = spot.schema.required ?? [];
  const open = openKeys(spot, present);
  const keys = open.map((key) => keyCompletion(key, spot, required.includes(key), idsOf));
  return [...allMissing(spot, present, idsOf), ...keys];
}

/** Keys of the schema that are not there yet; of a figure only those that its shape has. */
function openKeys({ schema, present: entries }: KeySpot, present: readonly string[]): string[] {
  const shape = entries.find(({ key }) => key.text === "shape")?.value;
  const text = shape?.kind === "scalar" ? shape.text : undefined;
  const branch = schema.allOf?.find((one) => one.if?.properties?.shape?.const === text && text !== undefined);
  const closed = Object.entries(branch?.then?.properties ?? {}).flatMap(([key, value]) =>
    value === false ? key : [],
  );
  return Object.keys(schema.properties ?? {}).filter(
    (key) => !present.includes(key) && !closed.includes(key),
  );
}

function keyCompletion(key: string, spot: KeySpot, isRequired: boolean, idsOf: IdsOf): Completion {
  const schema = spot.schema.properties?.[key] ?? {};
  const base = {
    label: key,
    kind: "key",
    detail: isRequired ? "required" : "may be left out",
    span: spot,
    rank: isRequired ? 1 : 2,
  } as const;
  const documentation = explained(schema);
  if (spot.hasColon) return { ...base, documentation, insert: key };
  const opensBlock = !spot.isFlow && (schema.items?.properties !== undefined || isBlock(schema));
  const finite = hasChoices(schema);
  const column = spot.indent + (spot.isAfterDash ? 2 : 0);
  const snippet = opensBlock
    ? new SnippetWriter(idsOf).line(key, schema, column)
    : `${key}: ${finite || hasUnits(schema) ? "$0" : `\${0:${escaped(schema.examples?.[0] ?? "")}}`}`;
  return {
    ...base,
    documentation,
    insert: opensBlock ? `${key}:` : `${key}: `,
    snippet,
    goesOn: !opensBlock && finite,
  };
}

/** All keys at once that a map must have, where it has few of them. */
function allMissing(spot: KeySpot, present: readonly string[], idsOf: IdsOf): Completion[] {
  const missing = (spot.schema.required ?? []).filter((key) => !present.includes(key));
  if (missing.length < 2 || spot.hasColon) return [];
  const column = spot.indent + (spot.isAfterDash ? 2 : 0);
  const writer = new SnippetWriter(idsOf);
  const snippet = spot.isFlow
    ? missing.map((key) => `${key}: ${writer.value(spot.schema.properties?.[key] ?? {})}`).join(", ")
    : spot.isFresh
      ? writer.entry(spot.schema, column - 2)
      : writer.block(spot.schema, column, present);
  return [
    {
      label: missing.join(", "),
      kind: "entry",
      detail: "all that is required",
      documentation: explained(spot.schema),
      insert: `${missing[0]}: `,
      snippet,
      span: spot,
      rank: 0,
    },
  ];
}

function entryCompletion(spot: KeySpot, { items }: Schema, idsOf: IdsOf): Completion | undefined {
  if (!items) return undefined;
  const name = (items.title ?? "entry").toLowerCase();
  return {
    label: `- ${name}`,
    kind: "entry",
    detail: "new entry",
    documentation: explained(items),
    insert: "- ",
    snippet: `- ${new SnippetWriter(idsOf).entry(items, spot.indent)}`,
    span: spot,
    rank: 0,
  };
}

/** Ids as keys. */
function thingCompletions(spot: KeySpot, ids: readonly string[]): Completion[] {
  const values = spot.schema.additionalProperties;
  const meaning = typeof values === "object" ? values.description : undefined;
  return ids
    .filter((id) => !spot.present.some(({ key }) => key.text === id))
    .map((id) => ({
      label: id,
      kind: "name",
      ...(meaning !== undefined && { documentation: meaning }),
      insert: spot.hasColon ? id : `${id}: `,
      span: spot,
      rank: 0,
      goesOn: true,
    }));
}

/** Whether there is a list to choose a value from. */
function hasChoices(schema: Schema): boolean {
  return (
    schema.enum !== undefined ||
    schema["x-reference"] !== undefined ||
    schema["x-sizes"] !== undefined ||
    schema["x-record"] !== undefined ||
    schema.type === "boolean"
  );
}

function hasUnits(schema: Schema): boolean {
  return schema["x-quantity"] !== undefined;
}
