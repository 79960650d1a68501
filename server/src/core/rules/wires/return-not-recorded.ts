import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { edgesOf } from "../../graph/electrical/layout";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { circuitExample } from "./circuit-example";

/** Named in the message; more say nothing more. */
const mostNamed = 3;

export const returnNotRecorded = defineRule<{ load: string; others: readonly string[]; more: number }>({
  id: "return-not-recorded",
  severity: "information",
  area: "wires",
  title: "A load has no wire to ground, where others of the record have one",
  why:
    "A load without a return wire counts as grounded where it is mounted: its current returns through the structure, " +
    "and no voltage is lost there, which holds for a bond of 0.005 ohm or less. Where the other loads of the same " +
    "installation have return wires, the one that lacks it may only have been forgotten.",
  sources: [
    advisoryCircular("par. 11-66", "published"),
    { document: "Loads of one installation are grounded in one way", standing: "common-practice" },
  ],
  say: ({ load, others, more }) => ({
    what:
      `No wire leads from ${load} to ground, so its current is taken to return through the structure; that of ` +
      `${listWords(more > 0 ? [...others, `${more} more`] : others, "and")} returns through wires.`,
    todo: `Add the return wire of ${load}; leave it out only where ${load} is grounded by its mounting.`,
  }),
  *check(project): Iterable<Problem> {
    const { paths } = electricalOf(project).trace;
    const wired = paths.filter(({ returns }) => returns.length > 0).map(({ id }) => id);
    if (wired.length === 0) return;
    for (const { id, feed, returns } of paths) {
      const last = feed.at(-1);
      if (returns.length > 0 || last === undefined) continue;
      yield {
        rule: "return-not-recorded",
        subject: { kind: "component", id },
        place: edgesOf(project)[last]!.place,
        facts: { load: id, others: wired.slice(0, mostNamed), more: Math.max(0, wired.length - mostNamed) },
      };
    }
  },
  examples: () => [
    {
      title: "Of two loads one has a return",
      text: twoLoads(["{ id: P2N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }"]),
      finds: ["No wire leads from FANS to ground.*that of RACK returns through wires"],
    },
    {
      title: "Each has one",
      text: twoLoads([
        "{ id: P2N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
        "{ id: P4N, from: FANS, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
      ]),
      finds: [],
    },
    { title: "All are grounded where they are mounted", text: twoLoads([]), finds: [] },
  ],
});

function twoLoads(returns: readonly string[]): string {
  return circuitExample({
    components: [
      "{ id: RACK, weight: 31.2 lb, draws: [{ mode: survey, current: 8 A }] }",
      "{ id: FANS, weight: 2.4 lb, draws: [{ mode: run, current: 4 A }] }",
    ],
    loads: "{ RACK: survey, FANS: run }",
    wires: [
      "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC }",
      "{ id: P3, from: CB-RACK, to: FANS, gauge: 10 AWG, length: 12 ft, rating: 150 degC }",
      ...returns,
    ],
  });
}
