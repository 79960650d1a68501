import { balanceSources } from "../../methods/balance";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";
import { type CgFacts, cgRemedies, judgeCg, sayCg } from "./cg-limit";
import { adverseLoading } from "./sources";

export const cgForwardOfLimit = defineRule<CgFacts>({
  id: "cg-forward-of-limit",
  severity: "error",
  area: "weights",
  title: "A loading puts the centre of gravity forward of the envelope",
  why:
    "With the centre of gravity too far forward the elevator may not be able to raise the nose for take-off or to " +
    "flare for landing, and the nose gear carries more than it was built for. Every loading that was legal before the " +
    "modification has to be looked at again, the adverse ones first.",
  sources: [adverseLoading, balanceSources.centreOfGravity],
  say: (facts) => sayCg("forward", facts),
  check: (project) => judgeCg("cg-forward-of-limit", "forward", project),
  remedies: (assessment, project) => cgRemedies("forward", assessment, project),
  examples: () => [
    {
      title: "The bench comes out of the cabin and a heavy rack goes into the nose",
      text: balanceExample({ rack: "96 lb", arm: "30.0 in", removed: ["aft-bench"] }),
      finds: ["^Loading pilot-alone: CG 85.82 in is 0.45 in forward of the limit of 86.27 in at 2760 lb"],
    },
    { title: "The rack in the cabin", text: balanceExample({ removed: ["aft-bench"] }), finds: [] },
  ],
});
