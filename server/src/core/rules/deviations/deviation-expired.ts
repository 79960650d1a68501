import { defineRule } from "../rule";
import { deviationExample } from "./deviation-example";

export const deviationExpired = defineRule<{ rule: string; subject: string; until: string; today: string }>({
  id: "deviation-expired",
  severity: "warning",
  area: "deviations",
  title: "The day until which a deviation is accepted has passed",
  why:
    "Whoever accepted the deviation did so for a time. After it the finding counts again as it would without the " +
    "deviation.",
  sources: [],
  say: ({ rule, subject, until }) => ({
    what: `The deviation of ${rule} for ${subject} was accepted until ${until}; it no longer covers anything.`,
    todo: "Mend the finding, or have the deviation accepted anew and write the new day and reference.",
  }),
  examples: () => [
    {
      title: "A day in the past",
      text: deviationExample({ until: "2024-03-31" }),
      finds: ["^The deviation of wire-voltage-drop for component RACK was accepted until 2024-03-31"],
    },
    { title: "A day that is still to come", text: deviationExample(), finds: [] },
  ],
});
