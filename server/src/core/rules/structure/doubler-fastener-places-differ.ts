import type { Problem } from "../../findings/finding";
import type { Project } from "../../project";
import { defineRule, rewrite } from "../rule";
import { doublerExample } from "./doubler-example";
import { reinforcementsOf } from "./held";

interface PlacesFacts {
  readonly [key: string]: string | number | undefined;
  readonly cutout: string;
  readonly stated: number;
  readonly placed: number;
  readonly of: "all" | "side";
}

export const doublerFastenerPlacesDiffer = defineRule<PlacesFacts>({
  id: "doubler-fastener-places-differ",
  severity: "warning",
  area: "structure",
  title: "A count of fasteners is not what the places of the same record come to",
  why:
    "The count is held against the rivet tables, the places against edges and neighbours. Where the two disagree, one of " +
    "them is not what will be drilled. Places on a side are counted before and behind the middle of the opening, along " +
    "the panel's load; without a total, twice the count of a side has to be there at least.",
  sources: [],
  say: ({ cutout, stated, placed, of }) => ({
    what:
      of === "all"
        ? `Cutout ${cutout}: the record counts ${stated} fasteners in all; its lines place ${placed}.`
        : `Cutout ${cutout}: the record counts ${stated} fasteners on each side; its lines place ${placed} on one of them.`,
    todo: "Correct the count, or the lines that say where the fasteners stand.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening, reinforcement, places } of reinforcementsOf(project)) {
      const { total, countPerSide, lines } = reinforcement.fasteners ?? {};
      if (!places || !countPerSide) continue;
      const { placed, stated, fewerSide } = places;
      const differs = stated !== undefined && (total ? placed !== stated : placed < stated);
      const isSideShort = fewerSide !== undefined && fewerSide < countPerSide.value;
      if (!differs && !isSideShort) continue;
      const facts: PlacesFacts = differs
        ? { cutout: opening.id, stated, placed, of: "all" }
        : { cutout: opening.id, stated: countPerSide.value, placed: fewerSide ?? 0, of: "side" };
      yield {
        rule: "doubler-fastener-places-differ",
        subject: { kind: "cutout", id: opening.id },
        place: ((differs && total) || countPerSide).place,
        facts,
        related: lines?.[0] ? [{ place: lines[0].place, words: "the first of its lines" }] : [],
      };
    }
  },
  *corrections({ place, facts: { placed, of, cutout } }, project) {
    const count = of === "all" ? totalOf(project, cutout) : undefined;
    if (count?.place === place) yield rewrite(`Count the ${placed} that are placed`, place, String(placed));
    if (of === "side" && placed > 0) {
      yield rewrite(`Count the ${placed} that are placed on one side`, place, String(placed));
    }
  },
  examples: () => [
    {
      title: "Two lines of seven where two sides have fourteen each",
      text: placesExample("14", 7),
      finds: ["^Cutout C1: the record counts 28 fasteners in all; its lines place 14"],
    },
    {
      title: "A total that the lines do not come to",
      text: placesExample("7, total: 16", 7),
      finds: ["counts 16 fasteners in all; its lines place 14"],
    },
    {
      title: "All of them on one side of the load",
      text: placesExample("7", 7, "3 in"),
      finds: ["counts 7 fasteners on each side; its lines place 0 on one of them"],
    },
    { title: "Seven on each side", text: placesExample("7", 7), finds: [] },
  ],
});

function totalOf(project: Project | undefined, cutout: string) {
  const found = project?.install.cutouts?.find(({ id }) => id?.value === cutout);
  return found?.reinforcement?.fasteners?.total;
}

/** Two lines across a load along x: one behind the opening, the other at this x. */
function placesExample(counts: string, each: number, x = "-2.5 in"): string {
  const line = (at: string) =>
    `{ from: { x: ${at}, y: -2.4 in }, to: { x: ${at}, y: 2.4 in }, count: ${each} }`;
  return doublerExample({
    panel: ["load: { direction: 0 deg }"],
    fasteners:
      `{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: ${counts}, pitch: 0.8 in, ` +
      `lines: [${line("2.5 in")}, ${line(x)}] }`,
  });
}
