import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { listWords, meaningWords, nameOf, quote, sentence } from "../wording";

export const keyMissing = defineRule<RecordFacts["key-missing"]>({
  id: "key-missing",
  severity: "error",
  area: "record",
  title: "A key that every record of this kind needs is not there",
  why:
    "What is not written can't be computed with, so every check that needs it stays silent, and nothing else on the " +
    "page shows that it was left out.",
  sources: [],
  say: ({ key, meaning, example, parts, shape, ...where }) => ({
    what: `${sentence(nameOf(where))} has no ${quote(key)}${shape ? `, which a ${shape} needs` : ""}.`,
    todo: addition(key, example, parts) + meaningWords(meaning),
  }),
  examples: () => [
    {
      title: "A wire without a gauge",
      text: wireExample({ gauge: undefined }),
      finds: ["Wire P101A8 has no 'gauge'"],
    },
    {
      title: "A hole without its diameter",
      text: wireExample().concat("cutouts: [{ id: C1, panel: AFT-FLOOR, opening: { shape: circle } }]\n"),
      finds: ["'opening' of cutout C1 has no 'diameter', which a circle needs"],
    },
    {
      title: "A doubler without its outline",
      text: wireExample().concat(
        "cutouts: [{ id: C1, panel: AFT-FLOOR, opening: { shape: circle, diameter: 3 in }, reinforcement: { kind: doubler, material: 2024-T3, thickness: 0.04 in, fasteners: { kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14 } } }]\n",
      ),
      finds: ["'reinforcement' of cutout C1 has no 'outline', which a doubler needs"],
    },
    {
      title: "A misspelt key is told as what it is",
      text: wireExample({ gauge: undefined, guage: "8 AWG" }),
      finds: [],
    },
    { title: "All the keys of a wire", text: wireExample(), finds: [] },
  ],
});

function addition(key: string, example: string | undefined, parts: readonly string[]): string {
  if (example !== undefined) return `Add it, such as ${key}: ${example}.`;
  return parts.length > 0 ? `Add ${key}, with ${listWords(parts, "and")} in it.` : `Add ${key}.`;
}
