import type { Problem } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { reachParagraphs } from "../../tables/cockpit-paragraphs";
import { defineRule } from "../rule";
import { reachExample } from "./reach-example";

export const reachNotRecorded = defineRule<{
  control: string;
  seat: string;
  distance: number;
  unit: UnitSymbol;
}>({
  id: "reach-not-recorded",
  severity: "warning",
  area: "placement",
  title: "Nobody says how far a seat's occupant can reach",
  why:
    "The rules ask that controls and breakers are within reach; none that was read gives a radius, and none is " +
    "invented here. The aircraft's data give it, or a person of the least size who is to fly it, belted, shows it.",
  sources: reachParagraphs,
  say: ({ control, seat, distance, unit }) => ({
    what: `${control} is ${formatMeasure(distance, unit)} from the shoulder at ${seat}, whose reach is not recorded.`,
    todo: `Add it to seat ${seat}: reach: ..., data: the document that gives it.`,
  }),
  *check(project): Iterable<Problem> {
    for (const { reach, id, seat, distance, most } of placementsOf(project).reaches) {
      if (most || !reach.from) continue;
      yield {
        rule: "reach-not-recorded",
        subject: distance.subject,
        place: reach.from.place,
        facts: {
          control: id,
          seat: seat.id?.value,
          distance: distance.value,
          unit: distance.unit as UnitSymbol,
        },
        related: [{ place: seat.place, words: "the seat" }],
      };
    }
  },
  examples: () => [
    {
      title: "A seat without reach",
      text: reachExample("", "0 in"),
      finds: ["^RACK is 23.35 in from the shoulder at PILOT, whose reach is not recorded"],
    },
    { title: "A seat with its reach", text: reachExample("reach: 28 in, data: B9-25", "0 in"), finds: [] },
  ],
});
