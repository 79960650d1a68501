// Writes the TypeScript types of the typed records from the schemas, so that the two cannot drift apart.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { kinds, resolve, root, schemas } from "./schemas.mjs";

const target = join(root, "server/src/core/records/types.ts");

/** Writes the types, or with `check` tells whether the written ones are current. */
export function writeRecordTypes({ check = false } = {}) {
  const text = recordTypes();
  if (check) return readFileSync(target, "utf8") === text;
  writeFileSync(target, text);
  return true;
}

function recordTypes() {
  const interfaces = new Map();
  for (const kind of kinds) {
    declare(`${pascal(kind)}Record`, schemas[`${kind}.schema.json`], `${kind}.schema.json`, interfaces);
  }
  return [
    "// Written from schemas/*.schema.json by `npm run generate`. Change the schema, not this file.",
    'import type { Quantity } from "../quantities";',
    'import type { Link, Pair, Place, Written } from "./written";',
    "",
    ...[...interfaces.values()],
  ].join("\n");
}

function declare(name, schema, file, interfaces) {
  if (interfaces.has(name)) return name;
  interfaces.set(name, ""); // keeps the place in order, and stops recursion
  const lines = [`/** ${schema.description ?? schema.title}. */`.replace("..", ".")];
  lines.push(`export interface ${name} {`, "  readonly place: Place;");
  for (const [key, property] of Object.entries(schema.properties)) {
    if (property.description) lines.push(`  /** ${property.description} */`);
    lines.push(`  readonly ${camel(key)}?: ${typeOf(property, file, interfaces, key)};`);
  }
  lines.push("}", "");
  interfaces.set(name, lines.join("\n"));
  return name;
}

function typeOf(schema, file, interfaces, key) {
  if (schema["x-record"]) {
    const inline = resolve(schema.then.$ref, file);
    return `Link<${declare(`${pascal(schema["x-record"])}Record`, inline.schema, inline.file, interfaces)}>`;
  }
  if (schema.$ref) {
    const target = resolve(schema.$ref, file);
    if (target.schema.type === "object") {
      return declare(pascal(target.name), target.schema, target.file, interfaces);
    }
    return typeOf(target.schema, target.file, interfaces, key);
  }
  if (schema["x-quantity"]) return `Written<Quantity<"${schema["x-quantity"]}">>`;
  if (schema.enum) return `Written<${schema.enum.map((word) => JSON.stringify(word)).join(" | ")}>`;
  switch (schema.type) {
    case "string":
      return "Written<string>";
    case "integer":
    case "number":
      return "Written<number>";
    case "boolean":
      return "Written<boolean>";
    case "array":
      return `readonly ${typeOf(schema.items, file, interfaces, key)}[]`;
    case "object":
      if (schema["x-key-reference"]) return "readonly Pair[]";
  }
  throw new Error(`No type for '${key}': give its object a name under $defs.`);
}

function camel(key) {
  return key.replace(/-(.)/g, (_, letter) => letter.toUpperCase());
}

function pascal(key) {
  const name = camel(key);
  return name[0].toUpperCase() + name.slice(1);
}
