// Compiles the schemas into plain validator functions, so that nothing is compiled or evaluated at run time.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import Ajv from "ajv/dist/2020.js";
import standalone from "ajv/dist/standalone/index.js";
import { kinds, root, schemas } from "./schemas.mjs";

export function writeValidators() {
  const ajv = new Ajv.default({
    allErrors: true,
    messages: false,
    allowUnionTypes: true,
    strictRequired: false,
    code: { source: true, esm: true },
    schemas: Object.entries(schemas).map(([file, schema]) => ({ ...bare(schema), $id: file })),
  });
  const exported = Object.fromEntries(kinds.map((kind) => [kind, `${kind}.schema.json`]));
  writeFileSync(
    join(root, "server/src/core/records/validators.mjs"),
    inLinearTime(standalone.default(ajv, exported)),
  );
}

/**
 * The generated code copies all errors so far for each part that has some, which takes minutes for a long list
 * of faulty entries. The list of a part is its own and is not used again, so the errors may be moved over.
 */
function inLinearTime(code) {
  const copying = /vErrors === null \? (\w+)\.errors : vErrors\.concat\(\1\.errors\)/g;
  if (!copying.test(code))
    throw new Error("The generated validators join errors in another way than before.");
  return `${code.replace(copying, "joined(vErrors, $1.errors)")}
function joined(all, more) {
  if (all === null) return more;
  for (const error of more) all.push(error);
  return all;
}
`;
}

const annotations = [
  "title",
  "description",
  "examples",
  "x-sign",
  "x-tolerance",
  "x-id",
  "x-reference",
  "x-key-reference",
  "x-ordered",
  "x-sizes",
  "x-choice-of",
];

/**
 * The schema as far as the validators need it. Annotations go; quantities are any text here, because
 * reading the quantity itself says far better what is wrong with it than a pattern could.
 */
function bare(schema, named = false) {
  if (typeof schema !== "object" || schema === null) return schema;
  if (Array.isArray(schema)) return schema.map((one) => bare(one));
  if (!named && schema["x-quantity"]) return { type: "string" };
  return Object.fromEntries(
    Object.entries(schema)
      .filter(([key]) => named || !(annotations.includes(key) || key === "x-record"))
      .map(([key, value]) => [key, bare(value, !named && (key === "properties" || key === "$defs"))]),
  );
}
