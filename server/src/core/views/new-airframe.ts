/**
 * The beginning of an airframe record: every section that one needs, and those that a kit with a high current
 * asks for, each key of them a blank; the other sections by their names and what they are for.
 */
import { recordSchemas, type Schema } from "../records/schema";
import { blank, blanksNote, comment } from "./blanks";

/** Keys that are begun besides the ones that a map can't do without. */
interface Wanted {
  readonly [key: string]: Wanted;
}

/** In the order of the record. */
const sections = {
  aircraft: {},
  datum: {},
  empty: { includes: {}, dated: {} },
  limits: {},
  envelopes: {},
  stations: {},
  electrical: {
    sources: { bus: {}, rating: {} },
    buses: {},
    "existing-loads": { currents: { taxi: {}, cruise: {}, landing: {} } },
    grounds: {},
  },
} as const satisfies Wanted;

const record = recordSchemas.airframe.properties ?? {};

/** Text of the record. */
export function newAirframe(): string {
  const begun = Object.entries(sections).map(([key, wanted]) => begin(key, record[key] ?? {}, wanted, 0));
  const further = Object.keys(record)
    .filter((key) => key !== "status" && !Object.hasOwn(sections, key))
    .map((key) => comment(`# - ${key}:`, [record[key]?.description]).replace(":  #", ":"));
  const note = "# Further sections, where the aircraft or the kit needs them:";
  const status = "status: in-work # blanks warn; with the other status, in-use, they are errors";
  return `${[[blanksNote, status], ...begun, [note, ...further]].map((part) => part.join("\n")).join("\n\n")}\n`;
}

/** A key with all that has to stand behind it. */
function begin(key: string, schema: Schema, wanted: Wanted, indent: number): string[] {
  const space = " ".repeat(indent);
  const { properties, items } = schema;
  if (properties) return [`${space}${key}:`, ...keysOf(schema, wanted, indent + 2)];
  if (!items?.properties) return [blank(key, schema, indent)];
  const [first = "", ...others] = keysOf(items, wanted, indent + 4);
  const title = comment(`${space}${key}:`, [schema.description]);
  return [title, first.replace(/^( *) {2}/, "$1- "), ...others];
}

function keysOf({ properties = {}, required = [] }: Schema, wanted: Wanted, indent: number): string[] {
  return Object.entries(properties)
    .filter(([key]) => required.includes(key) || Object.hasOwn(wanted, key))
    .flatMap(([key, schema]) => begin(key, schema, wanted[key] ?? {}, indent));
}
