import type { Assessment } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import type { Value } from "../../graph/value";
import { formatApart } from "../../quantities";
import { isAtMost } from "../../rounding";
import { cumulativeChange } from "../../tables/cumulative-change";
import { defineRule } from "../rule";
import { everyLoadingExample } from "./every-loading-example";
import { changePlace } from "./permitted-limit";

export const cumulativeChangeLarge = defineRule<{
  kind: "weight" | "CG";
  value: number;
  limit: number;
  unit: string;
  changes: number;
  weighed: string;
}>({
  id: "cumulative-change-large",
  severity: "warning",
  area: "weights",
  title: "With this change, those since the last weighing come to more than the threshold",
  why:
    "Changes that are each small add up. From a cumulative change of 0.5 % of the maximum landing weight, or 0.5 % of the " +
    "mean aerodynamic chord, weight and CG are to be established anew, by weighing or by calculation; by weighing where the " +
    "effect is not accurately known. That is written for operators under these rules; a lower threshold of the aircraft's " +
    "own data wins. A change that is larger by itself is computed anew by its own record, and is not told.",
  sources: [cumulativeChange.source],
  say: ({ kind, value, limit, unit, changes, weighed }) => {
    const [there, allowed] = formatApart(value, limit);
    return {
      what: `Since ${weighed} the ${kind} changed by ${there} ${unit}${kind === "CG" ? " of the chord" : ""}, above the threshold of ${allowed} ${unit}.`,
      todo:
        `Weigh the aircraft, or establish its weight and CG anew by calculation from the ${changes} earlier ` +
        `change${changes === 1 ? "" : "s"} and this one.`,
    };
  },
  *check(project): Iterable<Assessment> {
    const { history, units, change } = weightsOf(project);
    if (!history) return;
    const { weight, weightLimit, cg, cgLimit, hasOwn, weighed = "the last weighing", changes } = history;
    const judge = function* (
      kind: "weight" | "CG",
      value: Value | undefined,
      limit: Value | undefined,
      isOwn: boolean,
      alone: Value | undefined,
    ) {
      if (!value || !limit) return;
      // A change that is large by itself is computed anew by this very record; an own threshold asks for scales.
      if (!isOwn && alone && !isAtMost(Math.abs(alone.value), limit.value)) return;
      yield {
        rule: "cumulative-change-large",
        subject: value.subject,
        place: changePlace(project),
        value,
        limit,
        sense: "at-most",
        holds: isAtMost(value.value, limit.value),
        facts: {
          kind,
          value: value.value,
          limit: limit.value,
          unit: kind === "CG" ? "%" : units.weight,
          changes: changes.length,
          weighed,
        },
        related: [],
      } satisfies Assessment;
    };
    yield* judge("weight", weight, weightLimit, hasOwn.weight, change.weightChange);
    yield* judge("CG", cg, cgLimit, hasOwn.cg, change.cgChangeMac);
  },
  examples: () => [
    {
      title: "Two small changes before this one, and a lower threshold of the aircraft's own",
      text: everyLoadingExample({
        airframe:
          "  history: { weighed: 2024-05-11, weight-threshold: 15 lb, changes: [{ weight: 2.4 lb, arm: 60 in }, { weight: 3.1 lb, arm: 118 in }] }",
      }),
      finds: ["^Since 2024-05-11 the weight changed by 36.7 lb, above the threshold of 15 lb"],
    },
    {
      title: "A change far from the CG",
      text: everyLoadingExample({
        rack: "8 lb",
        arm: "118.0 in",
        airframe:
          "  history: { weighed: 2024-05-11, cg-threshold: 0.1 %, changes: [{ weight: 2.4 lb, arm: 118 in }] }",
      }),
      finds: ["^Since 2024-05-11 the CG changed by 0.[0-9]+ % of the chord, above the threshold of 0.1 %"],
    },
    {
      title: "No history, and no threshold passed",
      text: everyLoadingExample({
        airframe: "  history: { weighed: 2024-05-11, cg-threshold: 0.5 %, changes: [] }",
        rack: "8 lb",
      }),
      finds: [],
    },
  ],
});
