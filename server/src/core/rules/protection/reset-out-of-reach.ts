import type { Problem } from "../../findings/finding";
import { paragraphFor } from "../../graph/electrical/protection/basis";
import { citeSource, isStandIn } from "../../source";
import { protectionParagraph } from "../../tables/protection-paragraphs";
import { defineRule } from "../rule";
import { isMeasuredWithin, measuredReach } from "./measured-reach";
import { protectionExample } from "./protection-example";

export const resetOutOfReach = defineRule<{ protection: string; said: boolean; paragraph: string }>({
  id: "reset-out-of-reach",
  severity: "error",
  area: "protection",
  title: "A device that must be reset in flight is not within the crew's reach",
  why:
    "Where safety depends on resetting a breaker or replacing a fuse in flight, the crew has to find it and reach it " +
    "from their seats. Judged where the text that demands it was read for the aircraft's certification basis.",
  sources: [protectionParagraph({ certificationBasis: "14 CFR 23 before Amdt 23-64" }, "d")],
  say: ({ protection, said, paragraph }) => ({
    what: said
      ? `${protection} must be reset in flight, but is out of the crew's reach.`
      : `${protection} must be reset in flight, and nothing says that the crew can reach it.`,
    todo:
      "Mount and mark it where the crew can reach it, and write 'within-reach: true', or its place under 'reach': " +
      `${paragraph}.`,
  }),
  *check(project): Iterable<Problem> {
    const source = paragraphFor(project, "d");
    if (isStandIn(source)) return;
    for (const { id, resetInFlight, withinReach } of project.install.protection ?? []) {
      if (!id || resetInFlight?.value !== true || withinReach?.value === true) continue;
      if (!withinReach && isMeasuredWithin(id.value, project)) continue;
      yield {
        rule: "reset-out-of-reach",
        subject: { kind: "protection", id: id.value },
        place: (withinReach ?? resetInFlight).place,
        facts: {
          protection: id.value,
          said: withinReach !== undefined,
          paragraph: citeSource(source),
        },
      };
    }
  },
  examples: () => [
    {
      title: "A breaker in the aft bay that is reset in flight",
      text: protectionExample({
        protection: [
          "{ id: CB-RACK, device: CB-20, mounted-on: MAIN, reset-in-flight: true, within-reach: false }",
        ],
      }),
      finds: ["CB-RACK must be reset in flight, but is out of"],
    },
    {
      title: "The same breaker on the panel",
      text: protectionExample({
        protection: [
          "{ id: CB-RACK, device: CB-20, mounted-on: MAIN, reset-in-flight: true, within-reach: true }",
        ],
      }),
      finds: [],
    },
    {
      title: "The same breaker, its distance from the seat measured",
      text: protectionExample({
        ...measuredReach,
        protection: ["{ id: CB-RACK, device: CB-20, mounted-on: MAIN, reset-in-flight: true }"],
      }),
      finds: [],
    },
  ],
});
