import type { Problem } from "../../findings/finding";
import { structureOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { doublerExample } from "./doubler-example";

export const cutoutCoreOpen = defineRule<{ cutout: string; missing: readonly string[] }>({
  id: "cutout-core-open",
  severity: "error",
  area: "structure",
  title: "An opening in a sandwich panel leaves its core, edge or faces untreated",
  why:
    "An open core takes in water and crushes under fasteners, and faces without support buckle. The circular asks for all " +
    "edges of cut-outs in laminates to be sealed; that core and faces be treated is common practice without a figure.",
  sources: [
    { document: "FAA AC 43.13-1B", edition: "9/8/98", at: "par. 3-2, p. 3-2", standing: "published" },
  ],
  say: ({ cutout, missing }) => ({
    what: `Cutout ${cutout} goes through a sandwich panel, and its record lacks: ${listWords(missing, "and")}.`,
    todo: "Record under 'core' what closes the core, what seals the edge and what reinforces the faces.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening } of structureOf(project).openings) {
      const { cutout, id, panel } = opening;
      if (panel.construction?.value !== "sandwich") continue;
      const { core } = cutout;
      const missing = [
        ...(core?.treatment ? [] : ["treatment of the core"]),
        ...(core?.edgeSeal ? [] : ["seal of the edge"]),
        ...(core?.faceReinforcement ? [] : ["reinforcement of the faces"]),
      ];
      if (missing.length === 0) continue;
      yield {
        rule: "cutout-core-open",
        subject: { kind: "cutout", id },
        place: (core ?? cutout.opening ?? cutout).place,
        facts: { cutout: id, missing },
        related: [{ place: panel.construction.place, words: "the panel" }],
      };
    }
  },
  examples: () => [
    {
      title: "Only the core is potted",
      text: doublerExample({
        panel: ["construction: sandwich"],
        doubler: "",
        keys: ["core: { treatment: potted }"],
      }),
      finds: ["lacks: seal of the edge and reinforcement of the faces"],
    },
    {
      title: "All three are recorded",
      text: doublerExample({
        panel: ["construction: sandwich"],
        doubler: "",
        keys: [
          "core: { treatment: potted, edge-seal: Sealant HM-0412-31, face-reinforcement: Two added plies }",
        ],
      }),
      finds: [],
    },
  ],
});
