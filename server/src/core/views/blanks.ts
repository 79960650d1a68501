/**
 * Blanks of a record that was just begun: a key with nothing after it but a comment that says what belongs
 * there. The checker finds each as a value that is missing, and nothing else.
 */
import { recordSchemas, type Schema } from "../records/schema";

/** First line of a record that was just begun. */
export const blanksNote = "# Fill in every key with nothing after it; the Problems view lists them.";

/** A key without its value, and what belongs there. */
export function blank(key: string, schema: Schema | undefined, indent = 0): string {
  const words = schema?.enum ? schema.enum.join(" or ") : schema?.examples?.[0];
  const start = schema?.enum ? "" : "such as ";
  return comment(`${" ".repeat(indent)}${key}:`, [words && `${start}${words}`, schema?.description]);
}

/** What stands in a line, and a comment behind it made of the parts that there are. */
export function comment(start: string, parts: readonly (string | undefined)[]): string {
  const words = parts
    .filter((part) => part !== undefined)
    .join(": ")
    .replace(/\.$/, "");
  // Two spaces behind a colon: what is typed after the first of them leaves the comment a comment.
  const between = start.endsWith(":") ? "  " : " ";
  return words === "" ? start : `${start}${between}# ${words}`;
}

/** Schema of a section of a record, or of its entries. */
export function schemaIn(kind: keyof typeof recordSchemas, section: string): Schema | undefined {
  const schema = recordSchemas[kind].properties?.[section];
  return schema?.items ?? schema;
}
