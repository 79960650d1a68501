import type { Schema } from "./schema";

/** A longer sample is no help to whoever types it. */
const longest = 160;

/** Something that may stand behind a key, on one line: its example, or one put together of what it must have. */
export function sampleOf(schema: Schema | undefined): string | undefined {
  const sample = schema && madeOf(schema);
  return sample === undefined || sample.length > longest ? undefined : sample;
}

function madeOf({ examples, items, properties, required = [], enum: words }: Schema): string | undefined {
  const [example] = examples ?? words ?? [];
  if (example !== undefined) return example;
  if (items) {
    const entry = madeOf(items);
    return entry === undefined ? undefined : `[${entry}]`;
  }
  if (!properties || required.length === 0) return undefined;
  const parts = required.map((key) => {
    const part = properties[key] && madeOf(properties[key]);
    return part === undefined ? undefined : `${key}: ${part}`;
  });
  return parts.includes(undefined) ? undefined : `{ ${parts.join(", ")} }`;
}
