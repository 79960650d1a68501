import { balanceSources } from "../../methods/balance";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";
import { type CgFacts, cgRemedies, judgeCg, sayCg } from "./cg-limit";
import { adverseLoading } from "./sources";

export const cgAftOfLimit = defineRule<CgFacts>({
  id: "cg-aft-of-limit",
  severity: "error",
  area: "weights",
  title: "A loading puts the centre of gravity aft of the envelope",
  why:
    "With the centre of gravity too far aft the aircraft loses its stability in pitch, and it may not be able to " +
    "recover from a stall or a spin. Every loading that was legal before the modification has to be looked at again, " +
    "the adverse ones first.",
  sources: [adverseLoading, balanceSources.centreOfGravity],
  say: (facts) => sayCg("aft", facts),
  check: (project) => judgeCg("cg-aft-of-limit", "aft", project),
  remedies: (assessment, project) => cgRemedies("aft", assessment, project),
  examples: () => [
    {
      title: "A heavy rack far aft under full rear seats and baggage",
      text: balanceExample({ rack: "96 lb", arm: "150.0 in" }),
      finds: [
        "^Loading full-aft: CG 95.16 in is 0.16 in aft of the limit of 95 in at 3258 lb; before the change it kept the limit",
      ],
    },
    {
      title: "The same rack near the empty CG",
      text: balanceExample({ rack: "96 lb", arm: "92.0 in" }),
      finds: [],
    },
  ],
});
