import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import type { Project } from "../../project";
import { convert, formatMeasure, inUnit, type UnitSymbol } from "../../quantities";
import {
  judgeNegligible,
  type NegligibleVerdict,
  negligibleCgChange,
  negligibleChangeSource,
} from "../../tables/negligible-change";
import { keyPlace, linkPlace } from "../link-places";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";

export const weightChangeNegligible = defineRule<{
  change: number;
  unit: UnitSymbol<"mass">;
  /** lb */
  limit: number;
  cgPercent: number;
  cgPercentLimit: number;
}>({
  id: "weight-change-negligible",
  severity: "information",
  area: "weights",
  title: "The change of weight and CG is small enough to be called negligible",
  why:
    "The circular calls a change negligible up to a weight that depends on the empty weight, together with a shift of " +
    "the CG below 0.05 % of the mean aerodynamic chord (aeroplanes). That is about the need for a weight-and-balance " +
    "check of this one change. Small changes add up, and each still belongs in the equipment list. Other rules than " +
    "the circular's may count every change.",
  sources: [negligibleChangeSource],
  say: ({ change, unit, limit, cgPercent, cgPercentLimit }) => ({
    what:
      `The change is negligible by AC 43.13-1B par. 10-2c: ${formatMeasure(change, unit)} (up to ` +
      `${formatMeasure(limit, "lb")}), CG shift ${formatMeasure(cgPercent, "%", 2)} of the chord ` +
      `(below ${formatMeasure(cgPercentLimit, "%")}).`,
    todo: "Nothing to correct. Keep the equipment list current, and look at earlier small changes together with this one.",
  }),
  *check(project): Iterable<Problem> {
    const { change, units } = weightsOf(project);
    const verdict = verdictOf(project);
    if (!verdict?.negligible || !verdict.weightLimit.covered || !change.weightChange || !change.cgChangeMac)
      return;
    const { install } = project;
    yield {
      rule: "weight-change-negligible",
      subject: change.weightChange.subject,
      place:
        keyPlace(install, "placement") ??
        keyPlace(install, "added") ??
        keyPlace(install, "removed") ??
        linkPlace(project, "kit"),
      facts: {
        change: change.weightChange.value,
        unit: units.weight,
        limit: verdict.weightLimit.value,
        cgPercent: change.cgChangeMac.value,
        cgPercentLimit: negligibleCgChange["fixed-wing"].percent,
      },
    };
  },
  examples: () => [
    {
      title: "A switch and its bracket near the empty CG",
      text: balanceExample({
        rack: "0.8 lb",
        arm: "90.0 in",
        mac: "{ leading-edge: 72.5 in, length: 63.0 in }",
      }),
      finds: [
        "is negligible by AC 43.13-1B par. 10-2c: 0.8 lb \\(up to 1 lb\\), CG shift 0.00084 % of the chord",
      ],
    },
    {
      title: "The same weight in the tail moves the CG too far",
      text: balanceExample({
        rack: "0.8 lb",
        arm: "290.0 in",
        mac: "{ leading-edge: 72.5 in, length: 63.0 in }",
      }),
      finds: [],
    },
    {
      title: "Without the chord there is nothing to measure the CG shift by",
      text: balanceExample({ rack: "0.8 lb", arm: "90.0 in" }),
      finds: [],
    },
  ],
});

/** Only for aeroplanes with a chord: the circular measures a rotorcraft's shift by another length. */
function verdictOf(project: Project): NegligibleVerdict | undefined {
  const { change, units } = weightsOf(project);
  const { aircraft, empty, mac } = project.airframe ?? {};
  if (aircraft?.kind?.value !== "aeroplane" || change.items.length === 0) return undefined;
  if (!empty?.weight || !mac?.length || !change.weightChange || !change.cgChange) return undefined;
  return judgeNegligible({
    aircraft: "fixed-wing",
    emptyWeight: inUnit(empty.weight.value, "lb"),
    weightChange: convert(change.weightChange.value, units.weight, "lb", "mass"),
    cgChange: change.cgChange.value,
    reference: inUnit(mac.length.value, units.arm),
  });
}
