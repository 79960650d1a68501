import { defineRule, rewrite } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, reinforcementOf, reinforcementsOf } from "./held";

export const doublerTotalTooFew = defineRule<HeldFacts>({
  id: "doubler-total-too-few",
  severity: "error",
  area: "structure",
  title: "A reinforcement has fewer fasteners in all than its two sides together",
  why:
    "The load goes into the reinforcement on one side of the opening and back on the other: each side needs its own. A " +
    "total below twice the count of a side says that one of the two numbers is not what will be drilled.",
  sources: [],
  say: (facts) => {
    const [is, asked] = both(facts);
    return {
      what: `Cutout ${facts.cutout} has ${is} fasteners in all; its two sides have ${asked}.`,
      todo: "Correct the total, or the count of a side.",
    };
  },
  *check(project) {
    for (const { opening, reinforcement, room } of reinforcementsOf(project)) {
      const { total, countPerSide } = reinforcement.fasteners ?? {};
      yield* hold(
        "doubler-total-too-few",
        opening.id,
        (total ?? reinforcement).place,
        room.total.value,
        room.total.least,
        "at-least",
        {},
        countPerSide ? [{ place: countPerSide.place, words: "count of a side" }] : [],
      );
    }
  },
  *remedies(assessment, project) {
    const recorded = reinforcementOf(assessment, project)?.fasteners?.total;
    const total = String(assessment.limit.value);
    if (recorded) yield rewrite(`Set ${total} fasteners in all`, recorded.place, total);
  },
  examples: () => [
    {
      title: "Twenty in all, fourteen on each side",
      text: totalExample(20),
      finds: ["has 20 fasteners in all; its two sides have 28"],
    },
    { title: "Twice fourteen", text: totalExample(28), finds: [] },
    { title: "More, which stand beside the opening", text: totalExample(40), finds: [] },
  ],
});

function totalExample(total: number): string {
  return doublerExample({
    fasteners: `{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 0.3 in, total: ${total} }`,
  });
}
