import type { Problem } from "../../findings/finding";
import { bracketsOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import type { BracketFault, BracketResult } from "../../graph/structure/brackets";
import { formatNumber } from "../../quantities";
import { defineRule } from "../rule";
import { bracketExample } from "./bracket-example";

export const bracketNotFoldable = defineRule<{
  bracket: string;
  kind: BracketFault["kind"];
  degrees: number;
  legs: number;
  bends: number;
}>({
  id: "bracket-not-foldable",
  severity: "error",
  area: "structure",
  title: "A bracket's legs and bends do not make a bent sheet",
  why:
    "A sheet has one leg more than it has bends, and a bend turns it by less than half a turn. What is not so can't be " +
    "laid out, and nothing of it is checked.",
  sources: [],
  say: ({ bracket, kind, degrees, legs, bends }) =>
    kind === "angle"
      ? {
          what: `A bend of ${bracket} turns the sheet by ${formatNumber(degrees)} deg.`,
          todo: "Write how far it is turned out of the flat: more than 0 and less than 180 deg.",
        }
      : {
          what: `${bracket} has ${legs} ${legs === 1 ? "leg" : "legs"} and ${bends} ${bends === 1 ? "bend" : "bends"}; there is one leg more than bends.`,
          todo: "Write the outside length of each leg in turn, and the bends between them.",
        },
  check: ofEach((project) => bracketsOf(project).brackets, fault),
  examples: () => [
    {
      title: "Two bends between two legs",
      text: bracketExample({
        bends: "[{ radius: 0.19 in, angle: 90 deg }, { radius: 0.19 in, angle: 45 deg }]",
      }),
      finds: ["^BK-1 has 2 legs and 2 bends; there is one leg more"],
    },
    {
      title: "Folded flat on itself",
      text: bracketExample({ bends: "[{ radius: 0.19 in, angle: 180 deg }]" }),
      finds: ["^A bend of BK-1 turns the sheet by 180 deg"],
    },
    { title: "An angle", text: bracketExample(), finds: [] },
  ],
});

function* fault({ bracket, id, fault: found }: BracketResult): Iterable<Problem> {
  if (!found) return;
  const angle = found.kind === "angle" ? found.bend.angle : undefined;
  yield {
    rule: "bracket-not-foldable",
    subject: { kind: "bracket", id },
    place: (angle ?? bracket.id ?? bracket).place,
    facts: {
      bracket: id,
      ...(found.kind === "angle" ? { kind: found.kind, degrees: found.degrees } : found),
    },
  };
}
