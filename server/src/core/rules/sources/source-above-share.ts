import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { formatMeasure } from "../../quantities";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { conditionName } from "../wording";
import { dropCauses } from "./drop-causes";
import { conditionPlace } from "./places";
import { existingLoad, runningIn, sourceExample } from "./source-example";

type LoadCase = "continuous" | "landing-light-on" | "landing-light-off";

const caseWords: Readonly<Record<LoadCase, string>> = {
  continuous: "",
  "landing-light-on": " with pitot heat and landing light on",
  "landing-light-off": " with the landing light off",
};

export const sourceAboveShare = defineRule<{
  demand: number;
  limit: number;
  loadCase: LoadCase;
  isMonitored: boolean;
  condition: string;
}>({
  id: "source-above-share",
  severity: "error",
  area: "sources",
  title: "A continuous load takes more than its share of the alternators' rating",
  why:
    "A source that nobody watches needs room for loads that come and go, and for charging the battery: 80 % of its " +
    "rating is the rule of thumb. All of it may be used where placards or instruments keep the pilot from " +
    "overloading it. In take-off and landing with pitot heat on, the landing light may take it to 95 %.",
  sources: [
    advisoryCircular("par. 11-35a", "published"),
    advisoryCircular("par. 11-35d and 11-36", "memory"),
    {
      document: "Installation manuals 190-01007-A3, 190-00734-17 and 190-01810-10",
      edition: "rev. 4; rev. 1; rev. 1",
      at: "p. 3-40; p. 3-24; p. 16",
      standing: "published",
    },
  ],
  say: ({ demand, limit, loadCase, isMonitored, condition }) => ({
    what:
      `The loads take ${formatMeasure(demand, "A")} in ${condition}${caseWords[loadCase]}, above the ` +
      `${formatMeasure(limit, "A")} that the alternators' rating allows.`,
    todo: isMonitored
      ? "Run fewer loads, or fit a larger alternator."
      : "Run fewer loads, fit a larger alternator, or give the pilot means to watch the load and state 'monitored: true'.",
  }),
  *check(project) {
    for (const { condition, shares } of electricalOf(project).sources.balances) {
      for (const { loadCase, isMonitored, demand, limit } of shares) {
        const isKept = holds(demand.value, "at-most", limit.value);
        yield {
          rule: "source-above-share",
          subject: demand.subject,
          place: conditionPlace(condition),
          value: demand,
          limit,
          sense: "at-most",
          holds: isKept,
          facts: {
            demand: demand.value,
            limit: limit.value,
            loadCase,
            isMonitored,
            condition: conditionName(condition),
          },
          related: isKept ? [] : dropCauses(project, condition),
        };
      }
    }
  },
  examples: () => [
    {
      title: "50 A of a 60 A alternator: 83 %",
      text: sourceExample({ existing: [existingLoad("avionics", 32, 8)] }),
      finds: ["take 50 A in cruise, above the 48 A"],
    },
    {
      title: "47 A of it: 78 %",
      text: sourceExample({ existing: [existingLoad("avionics", 29, 8)] }),
      finds: [],
    },
    {
      title: "50 A of a source whose load is monitored",
      text: sourceExample({ existing: [existingLoad("avionics", 32, 8)], monitored: true }),
      finds: [],
    },
    {
      title: "Take-off with pitot heat and landing light: 56 A of 57 A, and 46 A of 48 A without the light",
      text: sourceExample({
        existing: [
          existingLoad("avionics", 18, 8),
          existingLoad("pitot", 10, 0, ", use: pitot-heat"),
          existingLoad("light", 10, 0, ", use: landing-light"),
        ],
        conditions: [runningIn("take-off")],
      }),
      finds: [],
    },
    {
      title: "Landing with both: 60 A of 57 A, and 49 A of 48 A without the light",
      text: sourceExample({
        existing: [
          existingLoad("avionics", 21, 8),
          existingLoad("pitot", 10, 0, ", use: pitot-heat"),
          existingLoad("light", 11, 0, ", use: landing-light"),
        ],
        conditions: [runningIn("landing")],
      }),
      finds: [
        "60 A in landing with pitot heat and landing light on, above the 57 A",
        "49 A in landing with the landing light off, above the 48 A",
      ],
    },
  ],
});
