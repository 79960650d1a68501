import { defineRule } from "../rule";
import { listWords } from "../wording";
import { deviationExample } from "./deviation-example";

export const deviationUnused = defineRule<{
  rule: string;
  subject: string;
  /** What the rule does find, as the report names it. */
  found: readonly string[];
}>({
  id: "deviation-unused",
  severity: "warning",
  area: "deviations",
  title: "A deviation accepts what is not found",
  why:
    "A deviation that covers nothing today would cover, unseen, a fault that comes back tomorrow. It is mended, or " +
    "its name has a slip in it. While something of the record can't be read or computed, this is not told: what the " +
    "deviation accepts may only be out of sight.",
  sources: [],
  say: ({ rule, subject, found }) => ({
    what: `The deviation of ${rule} for ${subject} covers no finding.`,
    todo:
      found.length > 0
        ? `Take it out, or correct it: ${rule} finds ${listWords(found, "and")}.`
        : "Take it out; the rule finds nothing that is not covered already.",
  }),
  examples: () => [
    {
      title: "The wire has been made thicker since",
      text: deviationExample({}, "8 AWG"),
      finds: ["^The deviation of wire-voltage-drop for component RACK covers no finding"],
    },
    {
      title: "A slip in the name",
      text: deviationExample({ subject: "component RAK" }),
      finds: ["for component RAK covers no finding"],
    },
    {
      title: "A slip elsewhere: what the rack loses is not computed, which is not the same as mended",
      text: deviationExample().replace("from: CB-RACK", "from: CB-RAK"),
      finds: [],
    },
    { title: "It covers its finding", text: deviationExample(), finds: [] },
  ],
});
