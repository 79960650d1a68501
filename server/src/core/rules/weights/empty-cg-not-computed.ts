import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { balanceExample } from "./balance-example";
import { changePlace } from "./permitted-limit";

export const emptyCgNotComputed = defineRule<{ unknown: readonly string[] }>({
  id: "empty-cg-not-computed",
  severity: "information",
  area: "weights",
  title: "The new empty centre of gravity is not known, and neither is any loading",
  why:
    "A total without one of its items would look like the whole, so none is computed. Until then nothing here is held " +
    "against an envelope, and a record without errors of balance is not shown to be right.",
  sources: [],
  say: ({ unknown }) => ({
    what: `The new empty CG and the loadings were not computed: not known is the weight or arm of ${listWords(unknown, "and")}.`,
    todo: "Complete what is not known; the findings beside this one say where.",
  }),
  *check(project): Iterable<Problem> {
    const { before, items, emptyCg } = weightsOf(project).change;
    if (!project.airframe || items.length === 0 || emptyCg) return;
    const unknown = [
      ...(before.weight && before.arm ? [] : ["the empty aircraft before"]),
      ...items.flatMap(({ subject, moment }) => (moment ? [] : [subject.id])),
    ];
    yield {
      rule: "empty-cg-not-computed",
      place: changePlace(project),
      facts: { unknown: unknown.length > 0 ? unknown : ["an entry that can't be read"] },
    };
  },
  examples: () => [
    {
      title: "Removed equipment that the airframe record does not have",
      text: balanceExample({ removed: ["aft-bunk"] }),
      finds: ["loadings were not computed: not known is the weight or arm of aft-bunk\\.$"],
    },
    {
      title: "A rack that is placed nowhere",
      text: balanceExample({ placement: [] }),
      finds: ["not known is the weight or arm of RACK\\.$"],
    },
    { title: "Equipment that it has", text: balanceExample({ removed: ["aft-bench"] }), finds: [] },
  ],
});
