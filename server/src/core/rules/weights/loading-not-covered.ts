import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { groupBy } from "../../graph/group-by";
import type { LimitGap, LimitSide } from "../../methods/envelope";
import { formatApart, type UnitSymbol } from "../../quantities";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { balanceExample } from "./balance-example";

type GapFacts = {
  loading: string;
  envelope: string;
  sides: readonly LimitSide[];
  reason: LimitGap["reason"];
  boundary?: number | undefined;
  weight: number;
  unit: UnitSymbol<"mass">;
};

export const loadingNotCovered = defineRule<GapFacts>({
  id: "loading-not-covered",
  severity: "warning",
  area: "weights",
  title: "The envelope says nothing at the weight of a loading",
  why:
    "A limit outside the weights that the aircraft's data give would be a guess. The CG of the loading is not held " +
    "against it: the loading is not shown to be wrong here, and not shown to be right.",
  sources: [],
  say: (facts) => ({
    what: `Loading ${facts.loading} is not covered: ${gapWords(facts)}.`,
    todo: todos[facts.reason],
  }),
  *check(project): Iterable<Problem> {
    const { loadings, units } = weightsOf(project);
    for (const { id, envelope, after } of loadings) {
      if (!envelope?.id || !after.weight) continue;
      for (const [first, ...more] of groupBy(after.gaps, ({ gap }) => JSON.stringify(gap)).values()) {
        yield {
          rule: "loading-not-covered",
          subject: { kind: "loading", id },
          ...placeInAirframe(project, envelope.id.place, `envelope ${envelope.id.value}`),
          facts: {
            loading: id,
            envelope: envelope.id.value,
            sides: [first, ...more].map(({ side }) => side),
            reason: first.gap.reason,
            boundary: "boundary" in first.gap ? first.gap.boundary : undefined,
            weight: after.weight.value,
            unit: units.weight,
          } satisfies GapFacts,
        };
      }
    }
  },
  examples: () => [
    {
      title: "The forward limit begins above the lightest loading",
      text: balanceExample({
        forward: "{ weight: 2800 lb, arm: 86.0 in }, { weight: 3800 lb, arm: 88.0 in }",
      }),
      finds: [
        "^Loading pilot-alone is not covered: the forward limit of envelope normal begins at 2800 lb, above its 2733 lb",
      ],
    },
    { title: "The same limit 'or less'", text: balanceExample(), finds: [] },
  ],
});

/** What the envelope lacks, as the end of a sentence. */
function gapWords({ envelope, sides, reason, boundary = 0, weight, unit }: GapFacts): string {
  const [asked, given] = formatApart(weight, boundary).map((number) => `${number} ${unit}`);
  const isOne = sides.length === 1;
  const limit = `the ${listWords(sides, "and")} limit${isOne ? "" : "s"} of envelope ${envelope}`;
  switch (reason) {
    case "no-points":
      return `${limit} ${isOne ? "has" : "have"} no points`;
    case "above-highest":
      return `${limit} ${isOne ? "ends" : "end"} at ${given}, below its ${asked}`;
    case "below-lowest":
      return `${limit} ${isOne ? "begins" : "begin"} at ${given}, above its ${asked}`;
    case "unclear-step":
      return `${limit} ${isOne ? "has" : "have"} two arms at ${given}, and nothing says which is on the side of its ${asked}`;
    case "misplaced-or-less":
      return `${limit} ${isOne ? "says" : "say"} 'or less' at ${given}, and give other arms below it`;
  }
}

const todos: Readonly<Record<LimitGap["reason"], string>> = {
  "no-points": "Add the limit's points from the aircraft's data.",
  "above-highest":
    "Make the loading lighter, or add the envelope's points up to its weight from the aircraft's data.",
  "below-lowest":
    "If the aircraft's data say 'at this weight or less', write 'or-less: true' at the lowest point; if not, add the points below it.",
  "unclear-step":
    "List the points from light to heavy: of two arms at one weight the first then belongs to the lighter side.",
  "misplaced-or-less": "Leave 'or-less' to the lowest point.",
};
