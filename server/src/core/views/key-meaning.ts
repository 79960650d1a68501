import type { Entry } from "../reading/tree";
import type { LoadedRecord } from "../records/record";
import type { Schema } from "../records/schema";
import { escaped, type Hover } from "./hover";

/** What a part of a record means, with an example. */
export function explained({ description, examples }: Schema): string {
  return [description ?? "", examples?.[0] ? `Example: \`${examples[0]}\`` : ""]
    .filter((part) => part !== "")
    .join("\n\n");
}

/** What a key of a record means, for whoever points at it; undefined where the schemas don't know it. */
export function meaningOfKey(record: LoadedRecord, { key, value }: Entry): Hover | undefined {
  const schema = record.typing.schemaOf(value);
  if (!schema?.description) return undefined;
  return { node: key, markdown: `**${escaped(key.text)}**: ${explained(schema)}` };
}

/** The meaning first, as it was the key that was pointed at. */
export function withMeaning(meaning: Hover | undefined, hover: Hover | undefined): Hover | undefined {
  if (!meaning || !hover) return meaning ?? hover;
  return { node: meaning.node, markdown: `${meaning.markdown}\n\n${hover.markdown}` };
}
