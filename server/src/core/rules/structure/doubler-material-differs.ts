import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { quote } from "../wording";
import { doublerExample } from "./doubler-example";
import { reinforcementsOf } from "./held";

export const doublerMaterialDiffers = defineRule<{ cutout: string; material: string; panel: string }>({
  id: "doubler-material-differs",
  severity: "warning",
  area: "structure",
  title: "A reinforcement is of another material than its panel",
  why:
    "Its thickness is compared by section, which holds for the same material. A weaker one needs more section, and a " +
    "stiffer one draws load; how much is for an analysis to say.",
  sources: [],
  say: ({ cutout, material, panel }) => ({
    what: `The reinforcement of cutout ${cutout} is ${quote(material)}, its panel ${quote(panel)}.`,
    todo: "Take the panel's material, or have the reinforcement's section analysed.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening, reinforcement } of reinforcementsOf(project)) {
      const { material } = reinforcement;
      const panel = opening.panel.material;
      if (!material || !panel || sameMaterial(material.value, panel.value)) continue;
      yield {
        rule: "doubler-material-differs",
        subject: { kind: "cutout", id: opening.id },
        place: material.place,
        facts: { cutout: opening.id, material: material.value, panel: panel.value },
        related: [{ place: panel.place, words: "material of the panel" }],
      };
    }
  },
  examples: () => [
    {
      title: "A 5052 doubler on clad 2024-T3",
      text: doublerExample({
        doubler:
          "kind: doubler, material: 5052-H32, thickness: 0.050 in, joint: single-lap, outline: { shape: rectangle, width: 7 in, height: 7 in, corner-radius: 0.5 in }",
      }),
      finds: ["is '5052-H32', its panel '2024-T3 clad'"],
    },
    { title: "The same material", text: doublerExample(), finds: [] },
  ],
});

function sameMaterial(a: string, b: string): boolean {
  const bare = (text: string) =>
    text
      .toLowerCase()
      .replaceAll("alclad", "clad")
      .replaceAll(/[\s-]+/g, " ")
      .trim();
  return bare(a) === bare(b);
}
