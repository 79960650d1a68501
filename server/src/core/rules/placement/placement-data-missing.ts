import type { Problem } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { cableExample, placementExample } from "./placement-example";

export const placementDataMissing = defineRule<{
  subject: string;
  missing: readonly string[];
  check: "clearances" | "access";
}>({
  id: "placement-data-missing",
  severity: "information",
  area: "placement",
  title: "Clearances or access can't be checked, because data of a place is missing",
  why:
    "A component is checked as a box: that needs its size, its centre of gravity in it, and where this is in all three " +
    "directions. What was not checked must not look like what is clear.",
  sources: [],
  say: ({ subject, missing, check }) => ({
    what: `${check === "access" ? "Access" : "Clearances"} of ${subject} not checked for want of ${listWords(missing, "and")}.`,
    todo: "Record it from the maker's data or by measuring.",
  }),
  *check(project): Iterable<Problem> {
    const { install } = project;
    const { unplaced, shapeless, passages } = placementsOf(project);
    for (const { placement, id, missing } of unplaced) {
      yield {
        rule: "placement-data-missing",
        subject: { kind: "component", id },
        place: (placement.component ?? placement).place,
        facts: { subject: id, missing, check: "clearances" },
      };
    }
    for (const { placement, component, id, panel, fits } of passages) {
      if (fits !== "unknown" || !placement.through) continue;
      const missing = [
        ...(component.size ? [] : ["size in the kit"]),
        ...(panel.clearOpening ? [] : [`clear-opening of ${placement.through.value}`]),
      ];
      if (missing.length === 0) continue;
      yield {
        rule: "placement-data-missing",
        subject: { kind: "component", id },
        place: placement.through.place,
        facts: { subject: id, missing, check: "access" },
      };
    }
    for (const { id, place } of shapeless) {
      const name = id?.value ?? "";
      yield {
        rule: "placement-data-missing",
        subject: { kind: "keep-out", id: name },
        place: install.airframe && "path" in install.airframe ? install.airframe.path.place : place,
        facts: { subject: name, missing: ["a box, or a line with its radius"], check: "clearances" },
        related: [{ place, words: name }],
      };
    }
  },
  examples: [
    {
      title: "A rack without water line",
      text: placementExample({ rack: "arm: 140 in, butt-line: 0 in", airframe: [cableExample("9 in")] }),
      finds: ["^Clearances of RACK not checked for want of water-line"],
    },
    {
      title: "A panel without its clear opening, and a cable without radius",
      text: placementExample({
        rack: "arm: 140 in, butt-line: 0 in, water-line: 20 in, through: BAY-DOOR",
        airframe: [
          "panels: [{ id: BAY-DOOR, outline: { shape: circle, diameter: 30 in } }]",
          "keep-outs: [{ id: ELEVATOR, kind: control-run, along: [{ arm: 60 in, butt-line: 9 in, water-line: 20 in }] }]",
        ],
      }),
      finds: [
        "^Clearances of ELEVATOR not checked",
        "^Access of RACK not checked for want of clear-opening of BAY-DOOR",
      ],
    },
    { title: "Everything recorded", text: placementExample({ airframe: [cableExample("9 in")] }), finds: [] },
  ],
});
