import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { entryOf } from "../../graph/entries";
import { crossedLimits } from "../../graph/weights/limit-points";
import { formatApart, formatMeasure, type UnitSymbol } from "../../quantities";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";

export const envelopeLimitsCrossed = defineRule<{
  envelope: string;
  weight: number;
  weightUnit: UnitSymbol<"mass">;
  forward: number;
  aft: number;
  unit: UnitSymbol<"length">;
  isEverywhere: boolean;
}>({
  id: "envelope-limits-crossed",
  severity: "error",
  area: "weights",
  title: "The forward limit of an envelope lies aft of its aft limit",
  why:
    "Then no centre of gravity keeps both, and one of them is not the aircraft's. Nothing is held against the " +
    "envelope until it is put right.",
  sources: [],
  say: ({ envelope, weight, weightUnit, forward, aft, unit, isEverywhere }) => {
    const [ahead, behind] = formatApart(forward, aft);
    return {
      what:
        `Envelope ${envelope}: the forward limit of ${ahead} ${unit} lies aft of the aft limit of ${behind} ${unit} at ` +
        `${formatMeasure(weight, weightUnit)}.`,
      todo: isEverywhere
        ? "If 'forward' and 'aft' were taken for each other, change their names; else correct them by the aircraft's data."
        : "Correct the points by the aircraft's data.",
    };
  },
  *check(project): Iterable<Problem> {
    const { units } = weightsOf(project);
    for (const envelope of project.airframe?.envelopes ?? []) {
      const crossing = envelope.id && crossedLimits(envelope, units);
      if (!crossing) continue;
      const id = envelope.id!.value;
      yield {
        rule: "envelope-limits-crossed",
        subject: { kind: "envelope", id },
        ...placeInAirframe(project, envelope.id!.place, `envelope ${id}`),
        facts: { envelope: id, ...crossing, weightUnit: units.weight, unit: units.arm },
      };
    }
  },
  *corrections({ subject, facts: { isEverywhere } }, project) {
    const envelope = project?.airframe?.envelopes?.find(({ id }) => id?.value === subject?.id);
    if (!envelope || !isEverywhere) return;
    const { file } = envelope.place;
    const [forward, aft] = ["forward", "aft"].map((key) => entryOf(envelope, key)?.key);
    if (!forward || !aft) return;
    yield {
      title: "Change the names of 'forward' and 'aft'",
      changes: [
        { place: { file, node: forward }, text: "aft" },
        { place: { file, node: aft }, text: "forward" },
      ],
    };
  },
  examples: () => [
    {
      title: "A forward limit that ends aft of 95 in",
      text: balanceExample({
        forward: "{ weight: 2600 lb, arm: 86.0 in, or-less: true }, { weight: 3800 lb, arm: 98.0 in }",
      }),
      finds: [
        "^Envelope normal: the forward limit of 98 in lies aft of the aft limit of 95 in at 3800 lb\\.$",
      ],
    },
    { title: "One that stays ahead of it", text: balanceExample(), finds: [] },
  ],
});
