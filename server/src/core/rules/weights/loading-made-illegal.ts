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
import { adverseLoading } from "./sources";

export const loadingMadeIllegal = defineRule<ExtremeFacts>({
  id: "loading-made-illegal",
  severity: "error",
  area: "weights",
  title: "The change makes a loading illegal that the stations permit and that was legal before",
  why:
    "A crew loads what seats, compartments and tanks permit, not only what somebody thought of. All of these loadings " +
    "are looked at here: the most forward and the most aft CG at each weight is a linear programme, solved exactly, and " +
    "each state that burning fuel leads to is among them. Before the change none of them left the envelope.",
  sources: [adverseLoading, balanceSources.centreOfGravity],
  say: (facts) => ({
    what: `Made illegal, ${loadWords(facts.loads)}: ${extremeWords(facts)}.`,
    todo:
      `${optionWords(facts.options)} ${onBoardWords(facts.loads)} Envelope ${facts.envelope}; before the change ` +
      "every permitted loading kept this limit.",
  }),
  *check(project) {
    for (const { permitted, result, after } of sidesOf(project, "fuselage")) {
      const { side } = result;
      if (side !== "forward" && side !== "aft") continue;
      const holds = !isBeyond(after);
      if (!holds && isBeyond(result.before)) continue;
      const search = () => titlesOf(balanceRemedies(project, pastOf(permitted, side, after)));
      const { item, ...where } = pointAt(project, side, after, permitted);
      yield {
        rule: "loading-made-illegal",
        subject: { kind: "envelope", id: permitted.id },
        ...where,
        value: after.cg,
        limit: after.limit,
        sense: side === "aft" ? "at-most" : "at-least",
        holds,
        scale: widthOf(permitted, side, after),
        facts: factsOf(project, { permitted, result, after }, item, holds ? undefined : search),
      };
    }
  },
  *remedies({ facts }, project) {
    for (const { permitted, result, after } of sidesOf(project, "fuselage")) {
      const { side } = result;
      if (permitted.id !== facts.envelope || side !== facts.side || (side !== "forward" && side !== "aft"))
        continue;
      yield* balanceRemedies(project, pastOf(permitted, side, after));
    }
  },
  examples: () => [
    {
      title: "A rack far aft, and full baggage behind a pilot alone",
      text: everyLoadingExample({ arm: "160.0 in" }),
      finds: [
        "^Made illegal, crew alone, no fuel, 120 lb in the aft baggage: CG 90.12 in is 0.124 in aft of the limit of 90 in at 2733 lb",
      ],
    },
    {
      title: "The same rack at the empty CG",
      text: everyLoadingExample({ arm: "90.0 in" }),
      finds: [],
    },
    {
      title: "A placard keeps the baggage behind it lighter",
      text: everyLoadingExample({
        arm: "160.0 in",
        sections: "placards: [{ id: PLACARD-1, station: aft-baggage, limit: 60 lb }]",
      }),
      finds: [],
    },
    {
      title: "Ballast in the nose",
      text: everyLoadingExample({
        arm: "160.0 in",
        sections: "ballast: [{ id: BALLAST-1, station: nose-ballast, weight: 20 lb }]",
      }),
      finds: [],
    },
  ],
});
