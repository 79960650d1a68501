import { balanceSources } from "../../methods/balance";
import { defineRule } from "../rule";
import { balanceRemedies, titlesOf } from "./balance-remedies";
import { everyLoadingExample } from "./every-loading-example";
import { onBoardWords, optionWords } from "./loading-words";
import {
  type ExtremeFacts,
  extremeWords,
  factsOf,
  isBeyond,
  loadWords,
  pastOf,
  pointAt,
  sidesOf,
  widthOf,
} from "./permitted-limit";

export const lateralCgBeyondLimit = defineRule<ExtremeFacts>({
  id: "lateral-cg-beyond-limit",
  severity: "error",
  area: "weights",
  title: "A permitted loading puts the centre of gravity past a limit to the side",
  why:
    "A centre of gravity to one side takes roll control to hold, and a rotorcraft may have none left. One pilot alone, " +
    "or one full tank, can be the worst case: every loading that the stations permit is looked at.",
  sources: [balanceSources.centreOfGravity],
  say: (facts) => ({
    what: `Envelope ${facts.envelope}, ${loadWords(facts.loads, 40)}: ${extremeWords(facts)}.`,
    todo:
      `${facts.options.length > 0 ? optionWords(facts.options) : "Move what the change adds to the other side, or balance it there."} ` +
      `${onBoardWords(facts.loads)} ${facts.beforeBeyond !== undefined && facts.beforeBeyond > 0 ? "It was past the limit before the change too." : "Before the change every permitted loading kept this limit."}`,
  }),
  *check(project) {
    for (const { permitted, result, after } of sidesOf(project, "side")) {
      const { item, ...where } = pointAt(project, result.side, after, permitted);
      const holds = !isBeyond(after);
      const search = () => titlesOf(balanceRemedies(project, pastOf(permitted, result.side, after)));
      yield {
        rule: "lateral-cg-beyond-limit",
        subject: { kind: "envelope", id: permitted.id },
        ...where,
        value: after.cg,
        limit: after.limit,
        sense: result.side === "right" ? "at-most" : "at-least",
        holds,
        scale: widthOf(permitted, result.side, after),
        facts: factsOf(project, { permitted, result, after }, item, holds ? undefined : search),
      };
    }
  },
  *remedies({ facts }, project) {
    for (const { permitted, result, after } of sidesOf(project, "side")) {
      if (permitted.id !== facts.envelope || result.side !== facts.side) continue;
      yield* balanceRemedies(project, pastOf(permitted, result.side, after));
    }
  },
  examples: () => [
    {
      title: "A heavy pod on the right-hand wing",
      text: everyLoadingExample({ rack: "60 lb", butt: "110 in" }),
      finds: ["is 0.[0-9]+ in right of the limit of 2 in at"],
    },
    { title: "A rack near the centreline", text: everyLoadingExample({ butt: "6 in" }), finds: [] },
  ],
});
