/** Snippets made from the schema: what has to be filled in, each place with its example or its choices. */
import type { IdKind, Schema } from "../../records/schema";

/** Ids that there are of some kinds. */
export type IdsOf = (kinds: readonly IdKind[]) => readonly string[];

/** More choices than this are no longer a choice; they are completed instead. */
const mostChoices = 12;

/** Writes snippets; places to fill in are numbered through. */
export class SnippetWriter {
  private places = 0;

  constructor(private readonly idsOf: IdsOf) {}

  /** The keys that a map must have, those in `present` left out, as lines of a block after `indent` columns. */
  block(schema: Schema, indent: number, present: readonly string[] = []): string {
    const keys = (schema.required ?? []).filter((key) => !present.includes(key));
    return keys
      .map((key) => this.line(key, schema.properties?.[key] ?? {}, indent))
      .join(`\n${" ".repeat(indent)}`);
  }

  /** One entry of a list, the dash left out: in one line where the schema's own example is, else as a block. */
  entry(items: Schema, indent: number): string {
    if (!items.properties) return this.value(items);
    return isFlowExample(items) ? this.flow(items) : this.block(items, indent + 2);
  }

  /** A key with its value. */
  line(key: string, schema: Schema, indent: number): string {
    const deeper = indent + 2;
    const start = `\n${" ".repeat(deeper)}`;
    if (schema.items?.properties) return `${key}:${start}- ${this.entry(schema.items, deeper)}`;
    if (isBlock(schema)) return `${key}:${start}${this.block(schema, deeper)}`;
    return `${key}: ${this.value(schema)}`;
  }

  /** A map in braces. */
  flow(schema: Schema): string {
    const parts = (schema.required ?? []).map(
      (key) => `${key}: ${this.value(schema.properties?.[key] ?? {})}`,
    );
    return `{ ${parts.join(", ")} \\}`;
  }

  /** A value on the line of its key. */
  value(schema: Schema): string {
    const choices = schema.enum ?? (schema["x-reference"] ? this.idsOf(schema["x-reference"]) : []);
    if (choices.length > 1 && choices.length <= mostChoices)
      return `\${${++this.places}|${choices.map((one) => escaped(one).replace(/[,|]/g, "\\$&")).join(",")}|}`;
    if (choices.length === 1) return this.place(choices[0]!);
    if (schema.properties && !schema.examples?.[0]) return this.flow(schema);
    return this.place(schema.examples?.[0] ?? "");
  }

  private place(text: string): string {
    return `\${${++this.places}:${escaped(text)}}`;
  }
}

/** Whether a map is written as a block: one that has keys it must have, and no example in one line. */
export function isBlock(schema: Schema): boolean {
  return (schema.required ?? []).length > 0 && !isFlowExample(schema);
}

function isFlowExample({ examples }: Schema): boolean {
  return examples?.[0]?.startsWith("{") === true;
}

/** Text that stands for itself in a snippet. */
export function escaped(text: string): string {
  return text.replace(/[\\$}]/g, "\\$&");
}
