import { holds, type Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { balanceSources } from "../../methods/balance";
import { formatMeasure, inUnit, type UnitSymbol } from "../../quantities";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { weighingExample } from "./weighing-example";

export const tareAboveReading = defineRule<{
  scale: string;
  reading: number;
  tare: number;
  unit: UnitSymbol<"mass">;
}>({
  id: "tare-above-reading",
  severity: "error",
  area: "weights",
  title: "More tare stood on a scale than it read",
  why: "Net weight is reading less tare. What comes out below nothing is a slip of the pen, and the empty weight of it too.",
  sources: [balanceSources.weighing],
  say: ({ scale, reading, tare, unit }) => ({
    what: `Scale ${scale} reads ${formatMeasure(reading, unit)} with a tare of ${formatMeasure(tare, unit)} on it.`,
    todo: "Correct the reading or the tare: chocks, blocks and jacks that stood on this scale alone.",
  }),
  *check(project): Iterable<Problem> {
    const { change, units } = weightsOf(project);
    for (const { id, scale } of change.before.weighing?.scales ?? []) {
      if (!scale.reading || !scale.tare) continue;
      const [reading, tare] = [scale.reading, scale.tare].map(({ value }) => inUnit(value, units.weight));
      if (holds(tare!, "at-most", reading!)) continue;
      yield {
        rule: "tare-above-reading",
        subject: { kind: "scale", id },
        ...placeInAirframe(project, scale.tare.place, `the tare on ${id}`),
        facts: { scale: id, reading: reading!, tare: tare!, unit: units.weight },
      };
    }
  },
  examples: () => [
    {
      title: "Reading and tare in each other's place",
      text: weighingExample({ nose: "reading: 4 lb, tare: 482 lb" }),
      finds: ["^Scale NOSE reads 4 lb with a tare of 482 lb on it"],
    },
    { title: "A scale as it was read", text: weighingExample(), finds: [] },
  ],
});
