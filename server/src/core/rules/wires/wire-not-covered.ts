import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { ChartResult } from "../../graph/electrical/guards";
import { ofEach, recalled } from "../../graph/recall";
import type { Source } from "../../source";
import { coverageWords } from "../../tables/lookup-words";
import { defineRule } from "../rule";
import { fewerNeighbours } from "./bundle-split";
import { circuitExample } from "./circuit-example";
import { strandDamageOf } from "./damage";
import { markingDocument, markingOf } from "./marking";
import { ofEachWire } from "./recorded";

export const wireNotCovered = defineRule<{ wire: string; wanted: string; gap: string; table: string }>({
  id: "wire-not-covered",
  severity: "warning",
  area: "wires",
  title: "A published table ends before this wire",
  why:
    "A number outside a table's range would be a guess. The value is left out, and the checks that need it are not " +
    "made: the record is not shown to be wrong here, and not shown to be right.",
  sources: [],
  say: ({ wire, wanted, gap, table }) => ({
    what: `Wire ${wire}: ${wanted} not covered: ${gap} (${table}).`,
    todo: "Bring the wire inside the table, or show the value by the maker's data or by test.",
  }),
  *check(project): Iterable<Problem> {
    yield* beyondDerived(project);
    yield* beyondRecorded(project);
  },
  *corrections({ facts: { wire, wanted } }, project) {
    if (wanted === "bundle factor" && project) yield* fewerNeighbours(wire, project);
  },
  examples: () => [
    {
      title: "More wires in the bundle than the figure covers at this loading",
      text: circuitExample({ bundle: "{ id: B1, wires: 40, loading: 40 % }" }),
      finds: ["bundle factor not covered"],
    },
    {
      title: "The document gives no interval of marks on the wire itself",
      text: circuitExample({ keys: "marking-interval: 15 in, marking: direct" }).replace(
        "status: draft",
        "status: draft, wire-marking: MIL-W-5088L",
      ),
      finds: ["P1: marking interval not covered: marking method direct, the table holds sleeve"],
    },
    {
      title: "A conductor of other strands than the table's",
      text: circuitExample({ keys: "strands: 105, nicked-strands: 1" }),
      finds: ["P1: strand damage not covered: number of strands 105, the table holds 37"],
    },
    {
      title: "A bundle inside the figure",
      text: circuitExample({ bundle: "{ id: B1, wires: 6, loading: 40 % }" }),
      finds: [],
    },
  ],
});

/** Charts that end before the wire. */
const chartGapsOf = recalled(
  ofEach(
    (project) => electricalOf(project).charts,
    (chart): ChartResult[] => (chart.gap ? [chart] : []),
  ),
);

const beyondDerived = ofEach(
  (project) => {
    const charted = new Set(chartGapsOf(project).map(({ wire }) => wire));
    return electricalOf(project).wires.filter(
      ({ wire, isUsed, gaps }) => isUsed && (gaps.length > 0 || charted.has(wire)),
    );
  },
  function* ({ wire, id, gaps }, charts): Iterable<Problem> {
    const ofGuards = charts
      .filter((chart) => chart.wire === wire)
      .map(({ gap }) => [gap!.wanted, gap!] as const);
    for (const { wanted, reason, source } of [...gaps, ...new Map(ofGuards).values()]) {
      yield {
        rule: "wire-not-covered",
        subject: { kind: "wire", id },
        place: (reason.quantity === "gauge" ? wire.gauge?.place : undefined) ?? wire.id!.place,
        facts: { wire: id, wanted, gap: coverageWords(reason), table: tableOf(source) },
      };
    }
  },
  chartGapsOf,
);

const beyondRecorded = ofEachWire(function* (wire, subject, document): Iterable<Problem> {
  const written = [
    ["marking interval", markingOf(wire, document), wire.markingInterval],
    ["strand damage", strandDamageOf(wire), wire.nickedStrands ?? wire.brokenStrands],
  ] as const;
  for (const [wanted, found, key] of written) {
    if (!found || found.covered) continue;
    yield {
      rule: "wire-not-covered",
      subject,
      place: key!.place,
      facts: {
        wire: subject.id,
        wanted,
        gap: coverageWords(found.reason),
        table: tableOf(found.source),
      },
    };
  }
}, markingDocument);

function tableOf({ document, at }: Source): string {
  return [document, at].filter((part) => part !== undefined).join(", ");
}
