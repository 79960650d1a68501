import type { Whereabouts } from "../../records/whereabouts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { nameOf, omittedWords, quote, sentence } from "../wording";

export const keyDuplicate = defineRule<Whereabouts & { key: string; line: number; omitted?: number }>({
  id: "key-duplicate",
  severity: "error",
  area: "text",
  title: "A key is written twice",
  why:
    "Of two values one is wrong, and programs differ in which they take. Here the first one counts; a reader who " +
    "looks at the second sees another aircraft.",
  sources: [],
  say: ({ key, line, omitted, ...where }) => ({
    what: `${sentence(nameOf(where))} has the key ${quote(key)} already, on line ${line}.`,
    todo: `Keep the one that is right, and take the other out.${omittedWords(omitted)}`,
  }),
  examples: () => [
    {
      title: "A gauge twice",
      text: `${wireExample()}    gauge: 10 AWG\n`,
      finds: ["Wire P101A8 has the key 'gauge' already, on line \\d+"],
    },
    { title: "A gauge once", text: wireExample(), finds: [] },
  ],
});
