import type { ReadingFeature } from "../../reading/tree";
import { recordExample, wireExample } from "../example-record";
import { defineRule } from "../rule";
import { omittedWords } from "../wording";

export const textFeatureNotUsed = defineRule<{ feature: ReadingFeature; omitted?: number }>({
  id: "text-feature-not-used",
  severity: "error",
  area: "text",
  title: "The text uses a part of YAML that records do not",
  why:
    "YAML has ways to write things that few readers know, and that programs read in different ways. A record must " +
    "mean the same to everybody who signs under it, so it keeps to keys, lists and values.",
  sources: [],
  say: ({ feature, omitted }) => ({
    what: `${features[feature].found} here, which records do not use.`,
    todo: features[feature].todo + omittedWords(omitted),
  }),
  examples: () => [
    { title: "A tag", text: wireExample({ gauge: "!!str 8 AWG" }), finds: ["A tag stands here"] },
    {
      title: "A second document",
      text: `${recordExample()}---\nwires: []\n`,
      finds: ["A second document starts here"],
    },
    { title: "Keys, lists and values", text: wireExample(), finds: [] },
  ],
});

const features: Readonly<Record<ReadingFeature, { found: string; todo: string }>> = {
  tag: {
    found: "A tag stands",
    todo: "Take the word that starts with '!' out; the key says what the value is.",
  },
  directive: { found: "A directive stands", todo: "Take the line that starts with '%' out." },
  "several-documents": {
    found: "A second document starts",
    todo: "Take the line '---' out, or put what follows into a file of its own.",
  },
  "explicit-key": { found: "A key is written with '?'", todo: "Write it as 'key: value'." },
  "collection-key": {
    found: "A list or a group of keys stands in place of a key",
    todo: "Write one word as the key, then ':'.",
  },
  "empty-key": { found: "A value without a key stands", todo: "Write the key before the ':'." },
  "merge-key": { found: "A merge key stands", todo: "Write the keys out in place of '<<'." },
  "top-level-list": {
    found: "The whole record is a list",
    todo: "Start the record with keys at the left margin: document, airframe, kit.",
  },
  "top-level-value": {
    found: "The whole record is a single value",
    todo: "Start the record with keys at the left margin: document, airframe, kit.",
  },
  "self-reference": {
    found: "An alias stands inside of what it repeats",
    todo: "Write out what it should stand for.",
  },
};
