import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { edgesOf, layoutOf } from "../../graph/electrical/layout";
import type { TracedPath } from "../../graph/electrical/trace";
import { groupBy } from "../../graph/group-by";
import type { Project } from "../../project";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { circuitExample } from "./circuit-example";

export const returnShared = defineRule<{ wire: string; circuits: readonly string[] }>({
  id: "return-shared",
  severity: "warning",
  area: "wires",
  title: "Several circuits return to ground through one wire",
  why:
    "When the shared wire breaks, all of its circuits fail at once, and the current of one may find its way back " +
    "through the others. Shared grounds are to be avoided unless such a failure is shown not to be hazardous.",
  sources: [advisoryCircular("chapter 11, bonding and grounding", "published")],
  say: ({ wire, circuits }) => ({
    what: `Wire ${wire} is the return of ${circuits.length} circuits: ${listWords(circuits, "and")}.`,
    todo: "Give each circuit its own way to ground, or show that losing them together is no hazard.",
  }),
  *check(project): Iterable<Problem> {
    const { paths } = electricalOf(project).trace;
    const returning = groupBy(
      paths.flatMap((path) => path.returns.map((edge) => ({ path, edge }))),
      ({ edge }) => edge,
    );
    const circuitOf = circuitsOf(project);
    for (const [edge, users] of returning) {
      const circuits = groupBy(
        users.map(({ path }) => path),
        circuitOf,
      );
      if (circuits.size < 2) continue;
      const wire = edgesOf(project)[edge]!.wire!;
      if (!wire.id) continue;
      yield {
        rule: "return-shared",
        subject: { kind: "wire", id: wire.id.value },
        place: (wire.from ?? wire.id).place,
        facts: {
          wire: wire.id.value,
          circuits: [...circuits].map(([circuit, loads]) => {
            const ids = listWords(
              loads.map(({ id }) => id),
              "and",
            );
            return circuit === ids ? ids : `${ids} (${circuit})`;
          }),
        },
      };
    }
  },
  examples: () => [
    {
      title: "Two loads behind two breakers, one wire to ground",
      text: sharing(["CB-RACK", "CB-FANS"]),
      finds: ["P9 is the return of 2 circuits: RACK \\(CB-RACK\\) and FANS \\(CB-FANS\\)"],
    },
    { title: "Two loads of one circuit", text: sharing(["CB-RACK", "CB-RACK"]), finds: [] },
    { title: "A return of its own", text: circuitExample(), finds: [] },
  ],
});

/** The breaker or fuse nearest to a load stands for its circuit; without one the load is its own. */
function circuitsOf(project: Project): (path: TracedPath) => string {
  const { inlines } = layoutOf(project);
  return ({ through, id }) => through.findLast((one) => inlines.get(one) === "protection") ?? id;
}

/** Two loads, each fed from one of the protections, that return together over a terminal strip. */
function sharing([rack, fans]: readonly [string, string]): string {
  const wire = (id: string, from: string, to: string) =>
    `{ id: ${id}, from: ${from}, to: ${to}, gauge: 10 AWG, length: 4 ft, rating: 150 degC }`;
  return circuitExample({
    components: [
      "{ id: RACK, weight: 31.2 lb, draws: [{ mode: survey, current: 8 A }] }",
      "{ id: FANS, weight: 2.4 lb, draws: [{ mode: run, current: 4 A }] }",
    ],
    loads: "{ RACK: survey, FANS: run }",
    protection: [
      "{ id: CB-RACK, device: CB-20, mounted-on: MAIN }",
      "{ id: CB-FANS, device: CB-20, mounted-on: MAIN }",
    ],
    wires: [
      wire("P1", rack, "RACK"),
      wire("P2", fans, "FANS"),
      wire("P7", "RACK", "TB1"),
      wire("P8", "FANS", "TB1"),
      wire("P9", "TB1", "GND-AFT"),
    ],
    sections: ["junctions: [{ id: TB1 }]"],
  });
}
