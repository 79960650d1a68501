import type { Problem } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { groupBy } from "../../graph/group-by";
import { isServiced, type ServiceResult } from "../../graph/placement/servicing";
import { defineRule } from "../rule";
import { listWords, sentence } from "../wording";
import { cableExample, placementExample } from "./placement-example";
import { serviceExample } from "./service-example";

export const placementDataMissing = defineRule<{
  subject: string;
  missing: readonly string[];
  checks: readonly string[];
}>({
  id: "placement-data-missing",
  severity: "information",
  area: "placement",
  title: "Clearances, access or servicing can't be checked, because data of a place is missing",
  why:
    "A component is checked as a box: that needs its size, its centre of gravity in it, and where this is in all three " +
    "directions. Servicing needs a panel's reach, of which no published figure was found. What was not checked must not " +
    "look like what is clear.",
  sources: [],
  say: ({ subject, missing, checks }) => ({
    what: `${sentence(listWords(checks, "and"))} of ${subject} not checked for want of ${listWords(missing, "and")}.`,
    todo: "Record it from the maker's data or by measuring.",
  }),
  *check(project): Iterable<Problem> {
    const { install } = project;
    const { unplaced, shapeless, passages, services } = placementsOf(project);
    for (const one of unplaced) {
      const { placement, id, missing } = one;
      const checks = isServiced(one) ? ["clearances", "servicing"] : ["clearances"];
      yield {
        rule: "placement-data-missing",
        subject: { kind: "component", id },
        place: (placement.component ?? placement).place,
        facts: { subject: id, missing, checks },
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
        facts: { subject: id, missing, checks: ["access"] },
      };
    }
    for (const [component, open] of groupBy(services, ({ placed }) => placed.id)) {
      const missing = [...new Set(open.flatMap(missingFor))];
      const [first] = open[0].placed.placement.servedThrough ?? [];
      if (missing.length === 0 || !first) continue;
      yield {
        rule: "placement-data-missing",
        subject: { kind: "component", id: component },
        place: first.place,
        facts: { subject: component, missing, checks: ["servicing"] },
      };
    }
    for (const { id, place } of shapeless) {
      const name = id?.value ?? "";
      yield {
        rule: "placement-data-missing",
        subject: { kind: "keep-out", id: name },
        place: install.airframe && "path" in install.airframe ? install.airframe.path.place : place,
        facts: { subject: name, missing: ["a box, or a line with its radius"], checks: ["clearances"] },
        related: [{ place, words: name }],
      };
    }
  },
  examples: () => [
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
    {
      title: "A panel that does not say how far hands reach in by it",
      text: serviceExample({ access: "at: { arm: 140 in, butt-line: -20 in, water-line: 20 in }" }),
      finds: ["^Servicing of RACK not checked for want of reach in the access of BAY-DOOR"],
    },
    {
      title: "A rack that is serviced, and has no size",
      text: serviceExample({ component: "servicing: [{ what: change the filter }]" }),
      finds: ["^Clearances and servicing of RACK not checked for want of size in the kit and cg in the kit"],
    },
    { title: "Everything recorded", text: placementExample({ airframe: [cableExample("9 in")] }), finds: [] },
  ],
});

/** What would have to be recorded before a job can be held against the panels that it is done through. */
function missingFor({ job, ways, best }: ServiceResult): string[] {
  if (best) return [];
  return ways.flatMap(({ through, panel: { access }, distance }) => {
    if (!access?.at) return [`access of ${through.value}`];
    if (!access.reach) return [`reach in the access of ${through.value}`];
    return distance
      ? []
      : [`all of the place in the kit where one has to ${job.what?.value ?? "service it"}`];
  });
}
