import { defineRule } from "../rule";
import { quote } from "../wording";
import { deviationExample } from "./deviation-example";

export const deviationDateFaulty = defineRule<{ until: string }>({
  id: "deviation-date-faulty",
  severity: "error",
  area: "deviations",
  title: "The day until which a deviation is accepted can't be read",
  why: "To one reader 03/04 is a day in March, to another a day in April. A deviation without a day covers nothing.",
  sources: [],
  say: ({ until }) => ({
    what: `${quote(until)} is no day until which a deviation can be accepted.`,
    todo: "Write year, month and day: 2027-03-31.",
  }),
  examples: () => [
    {
      title: "Another order of year, month and day",
      text: deviationExample({ until: "31.03.2027" }),
      finds: ["^'31.03.2027' is no day"],
    },
    {
      title: "A day that no calendar has",
      text: deviationExample({ until: "2027-02-30" }),
      finds: ["^'2027-02-30' is no day"],
    },
    { title: "Year, month and day", text: deviationExample(), finds: [] },
  ],
});
