import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { everyLoadingExample } from "./every-loading-example";
import { onBoardWords } from "./loading-words";
import {
  type ExtremeFacts,
  extremeWords,
  factsOf,
  isBeyond,
  loadWords,
  pointAt,
  sidesOf,
  widthOf,
} from "./permitted-limit";
import { adverseLoading } from "./sources";

export const loadingScheduleNeeded = defineRule<ExtremeFacts>({
  id: "loading-schedule-needed",
  severity: "warning",
  area: "weights",
  title: "The stations permit a loading outside the envelope, and did so before the change",
  why:
    "Where full seats, tanks and compartments can leave the envelope, a loading schedule keeps the crew from it " +
    "(AC 43.13-1B par. 10-18). The schedule was made for the old empty weight and CG, and has to be made again.",
  sources: [adverseLoading],
  say: (facts) => ({
    what: `Outside as before, ${loadWords(facts.loads)}: ${extremeWords(facts)}.`,
    todo:
      `Revise the loading schedule: the worst was ${formatMeasure(facts.beforeBeyond ?? 0, facts.unit, 3)} past the ` +
      `limit before the change. ${onBoardWords(facts.loads)} Envelope ${facts.envelope}.`,
  }),
  *check(project) {
    for (const { permitted, result, after } of sidesOf(project, "fuselage")) {
      if (!isBeyond(after) || !isBeyond(result.before)) continue;
      const { item, ...where } = pointAt(project, result.side, after, permitted);
      yield {
        rule: "loading-schedule-needed",
        subject: { kind: "envelope", id: permitted.id },
        ...where,
        value: after.cg,
        limit: after.limit,
        sense: result.side === "aft" ? "at-most" : "at-least",
        holds: false,
        scale: widthOf(permitted, result.side, after),
        facts: factsOf(project, { permitted, result, after }, item),
      };
    }
  },
  examples: () => [
    {
      title: "A compartment that could always take too much",
      text: everyLoadingExample({ baggage: "limit: 400 lb" }),
      finds: ["^Outside as before, crew alone, no fuel, 400 lb in the aft baggage: CG"],
    },
    { title: "A compartment with a limit that fits", text: everyLoadingExample(), finds: [] },
  ],
});
