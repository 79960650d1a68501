import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { balanceSources } from "../../methods/balance";
import { convert, formatMeasure, type UnitSymbol } from "../../quantities";
import { emptyWeightSource } from "../../tables/empty-weight-definitions";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { weighingExample } from "./weighing-example";

/** Half of the last digit that weight-and-balance papers are written to: 1 lb and 0.1 in (common practice). */
const rounding = { lb: 0.5, in: 0.05 } as const;

export const weighingDisagrees = defineRule<{
  weight: number;
  stated: number;
  weightUnit: UnitSymbol<"mass">;
  arm: number;
  statedArm: number;
  armUnit: UnitSymbol<"length">;
  taken: readonly string[];
}>({
  id: "weighing-disagrees",
  severity: "warning",
  area: "weights",
  title: "The weighing, with the changes since, does not come to the empty weight statement",
  why:
    "The statement should be the weighing, less what was on board and does not belong to the empty weight, plus what " +
    "belongs to it and was missing. What belongs to it the certification basis says: oil is the usual difference.",
  sources: [balanceSources.weighing, emptyWeightSource],
  say: ({ weight, stated, weightUnit, arm, statedArm, armUnit, taken }) => ({
    what:
      `The weighing comes to ${formatMeasure(weight, weightUnit, 6)} at ${formatMeasure(arm, armUnit)}, the statement says ` +
      `${formatMeasure(stated, weightUnit, 6)} at ${formatMeasure(statedArm, armUnit)}.`,
    todo: `Look through scales, tare, arms and items${taken.length > 0 ? ` (${listWords(taken, "and")})` : ""}; changes since the weighing belong in 'history'.`,
  }),
  *check(project): Iterable<Problem> {
    const { change, units, statementDue } = weightsOf(project);
    const { weighing, weight, arm } = change.before;
    const { weight: dueWeight, cg: dueCg } = statementDue ?? {};
    if (!weighing || !weight || !arm || !dueWeight || !dueCg) return;
    const weightRoom = convert(rounding.lb, "lb", units.weight, "mass");
    const armRoom = convert(rounding.in, "in", units.arm, "length");
    if (
      Math.abs(dueWeight.value - weight.value) <= weightRoom &&
      Math.abs(dueCg.value - arm.value) <= armRoom
    )
      return;
    yield {
      rule: "weighing-disagrees",
      subject: dueWeight.subject,
      ...placeInAirframe(project, weighing.weighing.place, "the weighing"),
      facts: {
        weight: dueWeight.value,
        stated: weight.value,
        weightUnit: units.weight,
        arm: dueCg.value,
        statedArm: arm.value,
        armUnit: units.arm,
        taken: weighing.items.flatMap(({ id, treatment }) => (treatment ? [`${id}: ${treatment}`] : [])),
      },
    };
  },
  examples: () => [
    {
      title: "Drainable oil was aboard, and this basis leaves it out",
      text: weighingExample({ oil: "on-board: true" }),
      finds: ["^The weighing comes to 2397 lb at 87.67 in, the statement says 2412 lb at 87 in"],
    },
    { title: "Drained, as this basis has it", text: weighingExample(), finds: [] },
  ],
});
