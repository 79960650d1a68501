import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import type { Lack } from "../../graph/weights/permitted-loadings";
import { formatMeasure } from "../../quantities";
import { linkPlace } from "../link-places";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { everyLoadingExample } from "./every-loading-example";
import { adverseLoading } from "./sources";

export const everyLoadingNotChecked = defineRule<{ envelope: string; lacks: readonly string[] }>({
  id: "every-loading-not-checked",
  severity: "information",
  area: "weights",
  title: "Part of what the stations permit was not held against an envelope",
  why:
    "The recorded loadings are checked as they are. That no other loading leaves the envelope is shown only where the " +
    "airframe record says what the crew weighs and where it sits, and what each station may carry.",
  sources: [adverseLoading],
  say: ({ envelope, lacks }) => ({
    what: `Envelope ${envelope}: not every permitted loading was checked; ${lacks[0]}${lacks.length > 1 ? ", and more" : ""}.`,
    todo:
      `Complete the airframe record from the aircraft's data: ${listWords(lacks, "and")}.` +
      (lacks.some((lack) => lack.startsWith(noLimit))
        ? " A limit that also holds at every weight below its own says 'or-less: true'."
        : ""),
  }),
  *check(project): Iterable<Problem> {
    const { permitted, change, units } = weightsOf(project);
    if (change.items.length === 0) return;
    for (const { id, lacks } of permitted) {
      if (lacks.length === 0) continue;
      yield {
        rule: "every-loading-not-checked",
        subject: { kind: "envelope", id },
        place: linkPlace(project, "airframe"),
        facts: {
          envelope: id,
          // Seats and sides may lack the same.
          lacks: [...new Set(lacks.map((lack) => lackWords(lack, (w) => formatMeasure(w, units.weight))))],
        },
      };
    }
  },
  examples: () => [
    {
      title: "A compartment without a limit",
      text: everyLoadingExample({ baggage: "floor-area: 6 ft2" }),
      finds: ["^Envelope normal: not every permitted loading was checked; station aft-baggage has no limit"],
    },
    { title: "All that it takes", text: everyLoadingExample(), finds: [] },
  ],
});

const noLimit = "no limit is given";

function lackWords(lack: Lack, weight: (value: number) => string): string {
  switch (lack.what) {
    case "crew":
      return "no crew is given";
    case "weight-limit":
      return "no maximum take-off weight is given";
    case "station-limit":
      return `station ${lack.station} has no limit`;
    case "station-butt-line":
      return `station ${lack.station} has no butt line`;
    case "limit-not-given":
      return `${noLimit} from ${weight(lack.from)} to ${weight(lack.to)}`;
    case "lightest-above-maximum":
      return "the lightest loading is above the maximum weight";
    case "least-above-most":
      return "the crew weighs more than its station may carry";
    case "least-above-group":
      return "the crew alone is above the maximum zero-fuel weight";
    default:
      return "a number of the airframe record can't be computed with";
  }
}
