import type { Problem } from "../../findings/finding";
import { airOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { airExample } from "./air-example";

export const outletDirectionMissing = defineRule<{ path: string; missing: readonly string[] }>({
  id: "outlet-direction-missing",
  severity: "information",
  area: "air",
  title: "The record does not say where outlet air goes",
  why: "Whether outlet air can be drawn in again depends on where it blows and how far away the inlet is.",
  sources: [],
  say: ({ path, missing }) => ({
    what: `Air path ${path} does not say whether its outlet air can reach the inlet: no ${listWords(missing, "and")}.`,
    todo: "Add 'apart' and 'outlet-blows'.",
  }),
  *check(project): Iterable<Problem> {
    for (const { path, id } of airOf(project).paths) {
      const missing = [...(path.apart ? [] : ["distance"]), ...(path.outletBlows ? [] : ["direction"])];
      if (missing.length === 0) continue;
      yield {
        rule: "outlet-direction-missing",
        subject: { kind: "air-path", id },
        place: (path.id ?? path).place,
        facts: { path: id, missing },
      };
    }
  },
  examples: () => [
    {
      title: "Neither is recorded",
      text: airExample({ path: "inlet-loss: 0.5, outlet-loss: 1, data: Duct test HM-0412-T3" }),
      finds: ["no distance and direction"],
    },
    { title: "Both are", text: airExample(), finds: [] },
  ],
});
