import { defineRule } from "../rule";
import { shorten } from "../wording";

/** Raised when a rule itself fails. No record is known that brings it up, so it has no examples. */
export const checkFailed = defineRule<{ rule: string; detail: string }>({
  id: "check-failed",
  severity: "error",
  area: "text",
  title: "The tool failed while it checked a record",
  why:
    "This is a fault of the tool, not of the record. What the failed check would have found is not known; all " +
    "other checks were made.",
  sources: [],
  say: ({ rule, detail }) => ({
    what: `The check ${rule} failed on this record: a fault of the tool, not of the record.`,
    todo: `Report it, with this record and these words: ${shorten(detail)}. Until then make this one check by hand.`,
  }),
  examples: () => [],
});
