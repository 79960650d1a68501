import type { Problem } from "../../findings/finding";
import { eligibilityOf } from "../../graph/derivations";
import { placeOfAircraft } from "../../graph/eligibility";
import { defineRule } from "../rule";
import { shorten } from "../wording";
import { eligibilityExample } from "./eligibility-example";

export const serialNotComparable = defineRule<{ serial: string; from: string }>({
  id: "serial-not-comparable",
  severity: "warning",
  area: "eligibility",
  title: "The serial number is of another series than the kit's ranges",
  why:
    "Serial numbers are compared by their last run of digits, and only where all around it is the same: B9-0417 lies in " +
    "B9-0300 to B9-0499; whether 417 or B9A-0417 does, nobody can tell from the numbers alone.",
  sources: [],
  say: ({ serial, from }) => ({
    what: `Serial number ${shorten(serial)} can't be held against a range from ${shorten(from)}.`,
    todo: "Write both in the same way, or ask the kit's maker whether the range means this aircraft.",
  }),
  *check(project): Iterable<Problem> {
    const eligibility = eligibilityOf(project);
    if (!eligibility || eligibility.nearest) return;
    for (const { group, isType, isBasis, serial } of eligibility.groups) {
      const from = group.serials?.[0]?.from;
      if (!isType || !isBasis || serial !== "unknown" || !from) continue;
      yield {
        rule: "serial-not-comparable",
        place: placeOfAircraft(project),
        facts: { serial: project.airframe?.aircraft?.serial?.value, from: from.value },
        related: [{ place: from.place, words: "the range" }],
      };
    }
  },
  examples: () => [
    {
      title: "Digits alone against a series",
      text: eligibilityExample({
        serial: "4170",
        groups: ["{ type: Type 9, serials: [{ from: B9-0300, to: B9-0499 }] }"],
      }),
      finds: ["Serial number 4170 can't be held against a range from B9-0300"],
    },
    {
      title: "The same series",
      text: eligibilityExample({ groups: ["{ type: Type 9, serials: [{ from: B9-0300, to: B9-0499 }] }"] }),
      finds: [],
    },
  ],
});
