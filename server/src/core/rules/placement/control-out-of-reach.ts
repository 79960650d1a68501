import { type Assessment, holds } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { formatApart, type UnitSymbol } from "../../quantities";
import { reachParagraphs } from "../../tables/cockpit-paragraphs";
import { defineRule } from "../rule";
import { placementExample } from "./placement-example";
import { reachExample } from "./reach-example";

export const controlOutOfReach = defineRule<{
  control: string;
  seat: string;
  distance: number;
  most: number;
  unit: UnitSymbol;
}>({
  id: "control-out-of-reach",
  severity: "error",
  area: "placement",
  title: "A control or breaker is farther from a seat than its occupant can reach",
  why:
    "What has to be worked in flight must be within reach of whoever has to work it, belted. How far that is depends on " +
    "the cockpit: the seat's reach comes from the aircraft's data.",
  sources: reachParagraphs,
  say: ({ control, seat, distance, most, unit }) => {
    const [is, reach] = formatApart(distance, most);
    return {
      what: `${control} is ${is} ${unit} from the shoulder at ${seat}, which reaches ${reach} ${unit}.`,
      todo: "Move the control nearer, or give it to a seat that reaches it.",
    };
  },
  *check(project): Iterable<Assessment> {
    for (const { reach, id, seat, distance, most } of placementsOf(project).reaches) {
      if (!most || !reach.control) continue;
      yield {
        rule: "control-out-of-reach",
        subject: distance.subject,
        place: reach.control.place,
        value: distance,
        limit: most,
        sense: "at-most",
        holds: holds(distance.value, "at-most", most.value),
        facts: {
          control: id,
          seat: seat.id?.value,
          distance: distance.value,
          most: most.value,
          unit: distance.unit as UnitSymbol,
        },
        related: [{ place: seat.place, words: "the seat" }],
      };
    }
  },
  examples: () => [
    {
      title: "On the panel of the other side",
      text: reachExample("reach: 28 in, data: B9-25", "24 in"),
      finds: ["^RACK is 40.01 in from the shoulder at PILOT, which reaches 28 in"],
    },
    { title: "Within reach", text: reachExample("reach: 28 in, data: B9-25", "0 in"), finds: [] },
    { title: "Nothing to reach", text: placementExample(), finds: [] },
  ],
});
