import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { linkPlace } from "../link-places";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";
import { adverseLoading } from "./sources";

export const cgNotChecked = defineRule<{ missing: "loading" | "envelope" }>({
  id: "cg-not-checked",
  severity: "warning",
  area: "weights",
  title: "The change moves weight, and no loading is held against an envelope",
  why:
    "An empty centre of gravity says little by itself: what has to stay inside the envelope is the loaded aircraft. " +
    "Without loadings to compute, the record is not shown to be wrong here, and not shown to be right.",
  sources: [adverseLoading],
  say: ({ missing }) => ({
    what: `The change moves weight, but the airframe record gives no ${missing}, so no CG is held against a limit.`,
    todo:
      missing === "envelope"
        ? "Add the envelope of each category to the airframe record, from the aircraft's data."
        : "Add the most forward and the most aft loading to the airframe record, and others that must stay legal.",
  }),
  *check(project): Iterable<Problem> {
    const { airframe } = project;
    const isLight = weightsOf(project).change.items.length === 0;
    if (!airframe || isLight) return;
    const missing = !airframe.envelopes?.length
      ? "envelope"
      : !airframe.loadings?.length
        ? "loading"
        : undefined;
    if (missing) yield { rule: "cg-not-checked", place: linkPlace(project, "airframe"), facts: { missing } };
  },
  examples: () => [
    {
      title: "An airframe record without loadings",
      text: balanceExample({ loadings: [] }),
      finds: ["gives no loading, so no CG is held against a limit"],
    },
    { title: "Two loadings", text: balanceExample(), finds: [] },
  ],
});
