import { type Assessment, holds } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { serviceDistance } from "../../graph/placement/servicing";
import type { Project } from "../../project";
import { formatApart, inUnit, type UnitSymbol } from "../../quantities";
import { accessParagraph } from "../../tables/cockpit-paragraphs";
import { defineRule, type Remedy, rewrite } from "../rule";
import { serviced, serviceExample } from "./service-example";

export const serviceOutOfReach = defineRule<{
  component: string;
  job: string;
  panel: string;
  distance: number;
  most: number;
  unit: UnitSymbol;
}>({
  id: "service-out-of-reach",
  severity: "error",
  area: "placement",
  title: "What has to be serviced is farther from its panel than hands reach in",
  why:
    "What can't be reached is not serviced. The distance is straight, from the middle of the panel's clear opening; what " +
    "stands in the way makes it longer. How far hands reach in comes from the aircraft's data: no published figure was " +
    "found.",
  sources: [accessParagraph],
  say: ({ component, job, panel, distance, most, unit }) => {
    const [is, reach] = formatApart(distance, most);
    return {
      what: `To ${job} at ${component}, one has to reach ${is} ${unit} from ${panel}, which lets one reach ${reach} ${unit}.`,
      todo: "Name a panel that is nearer, or move the component.",
    };
  },
  *check(project): Iterable<Assessment> {
    for (const { placed, job, best } of placementsOf(project).services) {
      if (!best) continue;
      const { through, distance, reach } = best;
      yield {
        rule: "service-out-of-reach",
        subject: distance.subject,
        place: through.place,
        value: distance,
        limit: reach,
        sense: "at-most",
        holds: holds(distance.value, "at-most", reach.value),
        facts: {
          component: placed.id,
          job: job.what?.value,
          panel: through.value,
          distance: distance.value,
          most: reach.value,
          unit: distance.unit as UnitSymbol,
        },
        related: [{ place: best.panel.place, words: "the panel" }],
      };
    }
  },
  remedies: nearerPanels,
  examples: () => [
    {
      title: "A filter at the far side",
      text: serviceExample({
        component: serviced("at: { from-front: 0 in, from-left: 12 in, from-bottom: 5 in }"),
      }),
      finds: [
        "^To change the filter at RACK, one has to reach 27.86 in from BAY-DOOR, which lets one reach 18 in",
      ],
    },
    { title: "At the side of the door", text: serviceExample(), finds: [] },
    {
      title: "Somewhere on a rack whose nearest point is 14 in away",
      text: serviceExample({ component: serviced("data: QSR-60-2") }),
      finds: [],
    },
  ],
});

/** Every panel that this job can be done through, the one with the most to spare first. */
function* nearerPanels(assessment: Assessment, project: Project): Iterable<Remedy> {
  const { services, unit } = placementsOf(project);
  const found = services.find(({ best }) => best?.distance === assessment.value);
  if (!found?.best) return;
  const { placed, job, best } = found;
  const near = (project.airframe?.panels ?? []).flatMap((panel) => {
    const distance = serviceDistance(placed, job, panel, unit);
    const reach = panel.access?.reach && inUnit(panel.access.reach.value, unit);
    if (!panel.id || distance === undefined || reach === undefined) return [];
    return holds(distance, "at-most", reach) ? [{ id: panel.id.value, left: reach - distance }] : [];
  });
  for (const { id } of near.sort((a, b) => b.left - a.left)) {
    yield rewrite(`Service ${placed.id} through ${id}`, best.through.place, id, id);
  }
}
