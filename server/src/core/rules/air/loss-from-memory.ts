import type { Problem } from "../../findings/finding";
import { airOf } from "../../graph/derivations";
import { screenSources } from "../../methods/air/screens";
import { lossSource } from "../../tables/air-losses";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { airExample } from "./air-example";

export const lossFromMemory = defineRule<{ owner: string; parts: readonly string[] }>({
  id: "loss-from-memory",
  severity: "warning",
  area: "air",
  title: "An air flow rests on loss coefficients from memory",
  why:
    "For screens, bare inlets and duct fittings the coefficients at hand rest on memory, not on a text that was read. The flow " +
    "is computed with them and can be off by a tenth or more.",
  sources: [lossSource, screenSources.mesh, screenSources.plate],
  say: ({ owner, parts }) => {
    const shown = parts.length > 3 ? [...parts.slice(0, 2), `${parts.length - 2} more`] : parts;
    return {
      what: `The air of ${owner} rests on loss coefficients from memory: ${listWords(shown, "and")}.`,
      todo: "Record the coefficients from test or maker's data where they are known.",
    };
  },
  *check(project): Iterable<Problem> {
    const { paths, ducts } = airOf(project);
    for (const { path, id, fromMemory } of paths) {
      if (fromMemory.length === 0) continue;
      yield {
        rule: "loss-from-memory",
        subject: { kind: "air-path", id },
        place: (path.id ?? path).place,
        facts: { owner: id, parts: fromMemory },
      };
    }
    for (const { duct, id, fromMemory } of ducts) {
      if (fromMemory.length === 0) continue;
      yield {
        rule: "loss-from-memory",
        subject: { kind: "duct", id },
        place: (duct.id ?? duct).place,
        facts: { owner: id, parts: fromMemory },
      };
    }
  },
  examples: () => [
    {
      title: "A mesh and a bare inlet without data",
      text: airExample({
        path: "apart: 40 in, outlet-blows: away",
        screen: "{ kind: square-mesh, opening: 0.097 in, wire: 0.028 in }",
      }),
      finds: ["BAY-AIR rests on loss coefficients from memory: bare inlet C-IN and screen of C-IN"],
    },
    {
      title: "Bends of a duct",
      text: airExample({
        hasPath: false,
        ducts:
          "[{ id: SUPPLY, flow: 60 cfm, segments: [{ id: D1, length: 6 ft, diameter: 3 in, roughness: 0.15 mm, fittings: [{ kind: bend-r1.5 }] }], outlets: [{ id: O1, on: D1 }] }]",
      }),
      finds: ["SUPPLY rests on loss coefficients from memory: bend-r1.5 in D1"],
    },
    { title: "Coefficients from a test", text: airExample(), finds: [] },
  ],
});
