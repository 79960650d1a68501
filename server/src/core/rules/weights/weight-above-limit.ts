import { holds } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import type { LoadingResult } from "../../graph/weights/loadings";
import { balanceSources } from "../../methods/balance";
import { formatApart, formatMeasure, roundUp, type UnitSymbol } from "../../quantities";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";
import { type Before, beforeWords, loadsOf, onBoardWords } from "./loading-words";
import { heaviestAdded } from "./pull";
import { adverseLoading } from "./sources";

type WeightFacts = Before & {
  loading: string;
  loads: readonly string[];
  weight: number;
  limit: number;
  unit: UnitSymbol<"mass">;
};

/** What has to come off is told to this step, upward. */
const offloadStep = 0.1;

export const weightAboveLimit = defineRule<WeightFacts>({
  id: "weight-above-limit",
  severity: "error",
  area: "weights",
  title: "A loading weighs more than the maximum take-off weight",
  why:
    "What the modification adds to the empty weight comes off the useful load. A loading that was legal with the old " +
    "empty weight may no longer be.",
  sources: [balanceSources.usefulLoad, adverseLoading],
  say: ({ loading, loads, weight, limit, unit, ...before }) => {
    const [there, allowed] = formatApart(weight, limit);
    return {
      what:
        `Loading ${loading} weighs ${there} ${unit}, above the maximum take-off weight of ` +
        `${allowed} ${unit}${beforeWords(before, unit)}.`,
      todo:
        `Carry at least ${formatMeasure(roundUp(weight - limit, offloadStep), unit)} less in this loading, or add ` +
        `less weight. ${onBoardWords(loads)}`,
    };
  },
  *check(project) {
    const { loadings, change, takeoffLimit: limit, units } = weightsOf(project);
    const heaviest = heaviestAdded(change.items);
    for (const result of loadings) {
      const { weight } = result.after;
      const before = change.items.length > 0 ? result.before.weight : undefined;
      if (!weight || !limit) continue;
      yield {
        rule: "weight-above-limit",
        subject: { kind: "loading", id: result.id },
        ...(heaviest
          ? { place: heaviest.place, related: [{ place: placeOf(result), words: `loading ${result.id}` }] }
          : placeInAirframe(project, placeOf(result), `loading ${result.id}`)),
        value: weight,
        limit,
        sense: "at-most",
        holds: holds(weight.value, "at-most", limit.value),
        facts: {
          loading: result.id,
          loads: loadsOf(result),
          weight: weight.value,
          limit: limit.value,
          unit: units.weight,
          wasKept: before && holds(before.value, "at-most", limit.value),
          beforeValue: before?.value,
          beforeBeyond: before && before.value - limit.value,
        } satisfies WeightFacts,
      };
    }
  },
  examples: () => [
    {
      title: "A rack that takes more than the useful load that was left",
      text: balanceExample({ takeoff: "3180 lb" }),
      finds: [
        "^Loading full-aft weighs 3193 lb, above .* 3180 lb; before the change it kept the limit \\(3162 lb\\)",
      ],
    },
    { title: "Exactly the maximum", text: balanceExample({ takeoff: "3193.2 lb" }), finds: [] },
  ],
});

function placeOf({ loading }: LoadingResult) {
  return loading.id?.place ?? loading.place;
}
