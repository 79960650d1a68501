import type { JsonType, RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { keyOf, listWords, nameOf, quote, sentence } from "../wording";

type WrongKind = RecordFacts["value-wrong-kind"];

export const valueWrongKind = defineRule<WrongKind>({
  id: "value-wrong-kind",
  severity: "error",
  area: "record",
  title: "A value is of another kind than its key takes",
  why:
    "A list where one value belongs, or words where a count belongs, can't be computed with. Often a dash or the " +
    "indentation slipped, and the lines belong to something else than they seem to.",
  sources: [],
  say: (facts) => ({
    what: `${sentence(nameOf(facts))} is ${foundWords(facts)}, where ${expectedWords(facts.expected)} belongs.`,
    todo: remedy(facts),
  }),
  examples: () => [
    {
      title: "Two lengths for one wire",
      text: wireExample({ length: "[14.5 ft, 2 ft]" }),
      finds: ["'length' of wire P101A8 is a list, where a single value belongs"],
    },
    {
      title: "A count in words",
      text: bundle("four"),
      finds: ["'wires' of bundle B1 is 'four', where a whole number belongs"],
    },
    {
      title: "Entries without dashes",
      text: `${wireExample()}junctions:\n  id: TB1\n`,
      finds: ["'junctions' is a group of keys, where a list belongs"],
    },
    { title: "A count in digits", text: bundle("4"), finds: [] },
  ],
});

const kinds: Readonly<Record<JsonType, string>> = {
  string: "a single value",
  integer: "a whole number",
  number: "a number",
  boolean: "true or false",
  array: "a list",
  object: "a group of keys",
};

function expectedWords(expected: readonly JsonType[]): string {
  return listWords(
    expected.map((type) => kinds[type]),
    "or",
  );
}

function foundWords({ found, text = "" }: WrongKind): string {
  switch (found) {
    case "map":
      return kinds.object;
    case "list":
      return kinds.array;
    case "quoted":
      return `the text ${quote(text)}`;
    default:
      return quote(text);
  }
}

function remedy({ expected, found, example, ...where }: WrongKind): string {
  const key = keyOf(where);
  const sample =
    example === undefined ? "" : `, such as ${key === undefined ? example : `${key}: ${example}`}`;
  if (expected.includes("array")) return "Write each entry on a line of its own that starts with '- '.";
  if (expected.includes("object")) return `Write its keys on lines of their own, indented under it${sample}.`;
  if (found === "quoted") return `Write it without quotes${sample}.`;
  return `Write ${expectedWords(expected)}${sample}.`;
}

function bundle(wires: string): string {
  return `${wireExample({ bundle: "B1" })}bundles:\n  - { id: B1, wires: ${wires}, loading: 40 % }\n`;
}
