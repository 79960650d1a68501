import type { Problem } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { geometrySource } from "../../graph/openings";
import { formatNumber } from "../../quantities";
import { defineRule } from "../rule";
import { placementExample } from "./placement-example";

export const componentWiderThanAccess = defineRule<{
  component: string;
  panel: string;
  short: number;
  long: number;
  unit: string;
}>({
  id: "component-wider-than-access",
  severity: "error",
  area: "placement",
  title: "A component does not pass through the panel that it is said to go through",
  why:
    "What can't be brought in by the panel, or taken out for servicing, is found out at the aircraft. The two smaller " +
    "sides of its box are held square into the middle of the clear opening behind the panel; a box that only passes " +
    "aslant counts as one that does not.",
  sources: [geometrySource],
  say: ({ component, panel, short, long, unit }) => ({
    what:
      `${component} does not pass through ${panel}: its smaller sides are ${formatNumber(short)} by ` +
      `${formatNumber(long)} ${unit}.`,
    todo: "Name a panel that it passes, or bring it in in parts.",
  }),
  *check(project): Iterable<Problem> {
    for (const { placement, id, panel, fits, sides } of placementsOf(project).passages) {
      if (fits !== "no" || !sides || !placement.through) continue;
      yield {
        rule: "component-wider-than-access",
        subject: { kind: "component", id },
        place: placement.through.place,
        facts: {
          component: id,
          panel: placement.through.value,
          short: sides[0],
          long: sides[1],
          unit: placementsOf(project).unit,
        },
        related: panel.clearOpening ? [{ place: panel.clearOpening.place, words: "the clear opening" }] : [],
      };
    }
  },
  examples: () => [
    {
      title: "10 by 12 in through 11 in square",
      text: throughExample("11 in", "11 in"),
      finds: ["^RACK does not pass through BAY-DOOR: its smaller sides are 10 by 12 in"],
    },
    { title: "Turned on its side", text: throughExample("14 in", "11 in"), finds: [] },
  ],
});

function throughExample(width: string, height: string): string {
  return placementExample({
    rack: "arm: 140 in, butt-line: 0 in, water-line: 20 in, through: BAY-DOOR",
    airframe: [
      `panels: [{ id: BAY-DOOR, outline: { shape: rectangle, width: 16 in, height: 16 in, corner-radius: 1 in }, clear-opening: { shape: rectangle, width: ${width}, height: ${height}, corner-radius: 0 in } }]`,
    ],
  });
}
