import { weightsOf } from "../../graph/derivations";
import type { LimitSide } from "../../methods/envelope";
import { formatApart, formatMeasure, type UnitSymbol } from "../../quantities";
import { isBelow } from "../../rounding";
import { defineRule } from "../rule";
import { cgRemedies, whereToPoint } from "./cg-limit";
import { everyLoadingExample } from "./every-loading-example";
import { loadsOf, onBoardWords } from "./loading-words";
import { pullsTo } from "./pull";
import { adverseLoading } from "./sources";

export const cgOutAsFuelBurns = defineRule<{
  loading: string;
  loads: readonly string[];
  side: LimitSide;
  cg: number;
  limit: number;
  beyond: number;
  unit: UnitSymbol<"length">;
  weight: number;
  weightUnit: UnitSymbol<"mass">;
}>({
  id: "cg-out-as-fuel-burns",
  severity: "error",
  area: "weights",
  title: "A loading is inside the envelope at take-off and leaves it as fuel burns",
  why:
    "Fuel is a load that goes away. The CG is followed exactly from take-off to empty tanks, in the order in which the " +
    "tanks are used: to look at the two ends is enough only where the path and the envelope are simple.",
  sources: [adverseLoading],
  say: ({ loading, loads, side, cg, limit, beyond, unit, weight, weightUnit }) => {
    const [there, allowed] = formatApart(cg, limit);
    return {
      what:
        `Loading ${loading} leaves the envelope as fuel burns: at ${formatMeasure(weight, weightUnit)} the CG is ` +
        `${there} ${unit}, ${formatMeasure(beyond, unit, 3)} ${side} of ${allowed} ${unit}.`,
      todo: `Restrict the loading or the fuel that may be used, or move what the change adds. ${onBoardWords(loads)}`,
    };
  },
  *check(project) {
    const { phases, change, units } = weightsOf(project);
    for (const { loading, burn } of phases) {
      for (const { side, cg, limit, excess, weight } of burn) {
        const { cg: start, [side]: startLimit } = loading.after;
        if (!start || !startLimit) continue;
        const past = side === "aft" ? start.value - startLimit.value : startLimit.value - start.value;
        if (isBelow(0, past, startLimit.value)) continue; // a finding of its own
        yield {
          rule: "cg-out-as-fuel-burns",
          subject: { kind: "loading", id: loading.id },
          ...whereToPoint(loading, pullsTo(change.items, limit.value, side)[0], project),
          value: cg,
          limit,
          sense: side === "aft" ? "at-most" : "at-least",
          holds: !isBelow(0, excess, Math.abs(limit.value)),
          scale: { of: undefined },
          facts: {
            loading: loading.id,
            loads: loadsOf(loading),
            side,
            cg: cg.value,
            limit: limit.value,
            beyond: excess,
            unit: units.arm,
            weight,
            weightUnit: units.weight,
          },
        };
      }
    }
  },
  remedies: (assessment, project) => cgRemedies(assessment.facts.side as LimitSide, assessment, project),
  examples: () => [
    {
      title: "Baggage that only the fuel ahead of it held in balance",
      text: everyLoadingExample({
        load: "{ station: front-seats, weight: 170 lb }, { station: aft-baggage, weight: 120 lb }, { station: main-tanks, volume: 84 gal }",
        arm: "175.0 in",
      }).replace("arm: 90.0 in, capacity", "arm: 70.0 in, capacity"),
      finds: ["^Loading two-up leaves the envelope as fuel burns: at 2733 lb the CG is 9"],
    },
    { title: "Fuel near the CG", text: everyLoadingExample(), finds: [] },
  ],
});
