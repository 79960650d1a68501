// The JSON Schemas, read once for every generator.
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

export const kinds = ["airframe", "kit", "install"];

/** File name -> schema, the shared one first. */
export const schemas = Object.fromEntries(
  ["common", ...kinds].map((name) => {
    const file = `${name}.schema.json`;
    return [file, JSON.parse(readFileSync(join(root, "schemas", file), "utf8"))];
  }),
);

/** Follows one `$ref`, written as `file#/$defs/name` or `#/$defs/name`. */
export function resolve(reference, file) {
  const [target, pointer = ""] = reference.split("#");
  const home = target || file;
  let schema = schemas[home];
  for (const step of pointer.split("/").slice(1)) schema = schema[step];
  return { schema, file: home, name: pointer.split("/").at(-1) };
}
