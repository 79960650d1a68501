import { electricalOf } from "../../graph/derivations";
import { openingMethods } from "../../methods/opening-time";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { largerThanJudged } from "../wires/governing";
import { judgeOpening } from "./early-opening";
import { breakerPoints, protectionExample } from "./protection-example";

export const protectionOpensAtInrush = defineRule<{
  protection: string;
  component: string;
  current: number;
  time: number;
  earliest: number;
  condition: string;
}>({
  id: "protection-opens-at-inrush",
  severity: "error",
  area: "protection",
  title: "A breaker or fuse may open while a load switches on",
  why:
    "At switching on a load may draw many times its running current for a moment. If that moment outlasts the " +
    "earliest time at which the device may open, the load drops off in normal use.",
  sources: [openingMethods.openingTime.source],
  say: ({ protection, component, current, time, earliest, condition }) => ({
    what:
      `${protection} may open after ${formatMeasure(earliest, "s")} at ${formatMeasure(current, "A")}; ` +
      `${component} draws its inrush for ${formatMeasure(time, "s")} (${condition}).`,
    todo: "Take a slower or larger device, with wires to match, or limit the inrush.",
  }),
  *check(project) {
    for (const { component, device, states } of electricalOf(project).protection.inrushes) {
      const judged = judgeOpening("protection-opens-at-inrush", device, states, { component });
      if (judged) yield judged;
    }
  },
  remedies: largerThanJudged,
  examples: () => [
    {
      title: "120 A for 3 s through a 20 A breaker, beside another 10 A",
      text: protectionExample({
        components: [
          "{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: 5 A, inrush: 110 A, inrush-time: 3 s }] }",
          "{ id: FANS, weight: 5.2 lb, draws: [{ mode: run, current: 10 A }] }",
        ],
        devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPoints} }`],
        loads: "{ RACK: run, FANS: run }",
        wires: [
          "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
          "{ id: P2N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
          "{ id: P3, from: CB-RACK, to: FANS, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
        ],
      }),
      finds: ["^CB-RACK may open after 0\\.\\d+ s at 120 A; RACK draws its inrush for 3 s \\(cruise\\)"],
    },
    {
      title: "The same inrush for 50 ms",
      text: protectionExample({
        components: [
          "{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: 5 A, inrush: 110 A, inrush-time: 50 ms }] }",
        ],
        devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPoints} }`],
      }),
      finds: [],
    },
  ],
});
