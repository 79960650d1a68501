// Compiles the schemas into plain validator functions, so that nothing is compiled or evaluated at run time.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import Ajv from "ajv/dist/2020.js";
import standalone from "ajv/dist/standalone/index.js";
import { kinds, root, schemas } from "./schemas.mjs";

/**
 * A record is judged in parts, so that those which an edit did not touch need not be judged again: by kind, the
 * record without the entries of its top-level lists, and one entry of each of these lists.
 */
export function writeValidators() {
  const parts = kinds.map(partsOf);
  const ajv = new Ajv.default({
    allErrors: true,
    messages: false,
    allowUnionTypes: true,
    strictRequired: false,
    code: { source: true, esm: true },
    schemas: [
      ...Object.entries(schemas).flatMap(([file, schema]) => definitionsOf(file, schema)),
      ...parts.flatMap(({ frame, entries }) => [frame, ...Object.values(entries)]),
    ],
  });
  const ids = parts.flatMap(({ frame, entries }) => [frame, ...Object.values(entries)]).map(({ $id }) => $id);
  const nameOf = ({ $id }) => `part${ids.indexOf($id)}`;
  const table = parts.map(({ kind, frame, entries }) => {
    const lists = Object.entries(entries).map(([key, entry]) => `"${key}": ${nameOf(entry)}`);
    return `  ${kind}: { frame: ${nameOf(frame)}, entries: { ${lists.join(", ")} } },\n`;
  });
  const exported = Object.fromEntries(ids.map(($id) => [nameOf({ $id }), $id]));
  writeFileSync(
    join(root, "server/src/core/records/validators.mjs"),
    `${inLinearTime(standalone.default(ajv, exported))}export const validators = {\n${table.join("")}};\n`,
  );
}

/** Each definition as a schema of its own, so that what many parts name is compiled once; the file itself last. */
function definitionsOf(file, { $defs = {}, ...schema }) {
  const definitions = Object.entries($defs).map(([name, one]) => ({
    ...apart(bare(one), file),
    $id: idOf(`#/$defs/${name}`, file),
  }));
  return [...definitions, { ...apart(bare(schema), file), $id: file }];
}

/** The parts of a record's schema, each a schema of its own. */
function partsOf(kind) {
  const file = `${kind}.schema.json`;
  const { $defs: _, ...schema } = schemas[file];
  const { properties, ...record } = apart(bare(schema), file);
  const lists = Object.entries(properties).filter(([, property]) => property.items);
  const withoutEntries = lists.map(([key, { items: _items, ...list }]) => [key, list]);
  return {
    kind,
    frame: {
      ...record,
      properties: { ...properties, ...Object.fromEntries(withoutEntries) },
      $id: `${kind}.frame`,
    },
    entries: Object.fromEntries(
      lists.map(([key, { items }]) => [key, { ...items, $id: `${kind}.entry.${key}` }]),
    ),
  };
}

/** A part of a file's schema that names definitions by their own ids. */
function apart(schema, file) {
  if (typeof schema !== "object" || schema === null) return schema;
  if (Array.isArray(schema)) return schema.map((one) => apart(one, file));
  return Object.fromEntries(
    Object.entries(schema).map(([key, value]) => [
      key,
      key === "$ref" ? idOf(value, file) : apart(value, file),
    ]),
  );
}

/** `file#/$defs/name` as `file.name`; a file alone keeps its name. */
function idOf(reference, file) {
  const [target, name] = reference.split("#/$defs/");
  return name === undefined ? target : `${target || file}.${name}`;
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
