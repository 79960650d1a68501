import { electricalOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import { openingMethods } from "../../methods/opening-time";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { guardsOf, largerDevices, smallerDevices } from "../wires/governing";
import {
  breakerPoints,
  breakerPointsToFaults,
  inSeries,
  protectionExample,
  slowPoints,
} from "./protection-example";

export const protectionOrder = defineRule<{
  upstream: string;
  downstream: string;
  from: number;
  to: number;
  at: number;
  earliest: number;
  latest: number;
  more: number;
}>({
  id: "protection-order",
  severity: "error",
  area: "protection",
  title: "Of two devices in series the one nearer the source may open first",
  why:
    "A fault in one circuit must take away that circuit only. The device next to the fault must have opened before " +
    "the one ahead of it can, at every current that the fault may draw.",
  sources: [openingMethods.coordination.source],
  say: ({ upstream, downstream, from, to, at, earliest, latest, more }) => {
    const [first, last, here] = [from, to, at].map((amps) => formatMeasure(amps, "A", 3));
    const [soonest, longest] = [earliest, latest].map((seconds) => formatMeasure(seconds, "s", 3));
    const range = first === last ? `at ${first}` : `from ${first} to ${last}`;
    const times =
      soonest === longest ? `both may take ${soonest}` : `at ${here} after ${soonest}, not ${longest}`;
    return {
      what:
        `${upstream} may open before ${downstream} ${range}: ${times}` +
        `${more > 0 ? `; ${more} more bands` : ""}.`,
      todo: `Take a slower or larger device for ${upstream}, with wires to match, or a faster or smaller one for ${downstream}.`,
    };
  },
  check: ofEach(
    (project) => electricalOf(project).protection.orders,
    function* ({ upstream, downstream, compared }) {
      const [first, ...more] = compared?.coordination.clashes ?? [];
      const { worst } = compared ?? {};
      if (!worst || upstream.inline.kind !== "protection" || downstream.inline.kind !== "protection") return;
      const [above, below] = [upstream.inline.record.device, downstream.inline.record.device];
      if (!above || !below) return;
      yield {
        rule: "protection-order",
        subject: { kind: "protection", id: downstream.id },
        place: above.place,
        value: worst.latest,
        limit: worst.earliest,
        sense: "at-most",
        // Not the comparison of the two numbers: at the same time the upstream device may be first.
        holds: first === undefined,
        facts: {
          upstream: upstream.id,
          downstream: downstream.id,
          from: first?.fromAmps,
          to: first?.toAmps,
          at: worst.amps,
          earliest: worst.earliest.value,
          latest: worst.latest.value,
          more: more.length,
        },
        related: [{ place: below.place, words: `${downstream.id} is the one nearer the load` }],
      };
    },
  ),
  *remedies(assessment, project) {
    const { upstream, downstream } = assessment.facts;
    const guards = guardsOf(project);
    const above = guards.find(({ id }) => id === upstream);
    if (above) yield* largerDevices(above, project);
    const below = guards.find(({ id }) => id === downstream);
    if (below) yield* smallerDevices(below, project);
  },
  examples: () => [
    {
      title: "A quick fuse of 30 A ahead of a breaker of 20 A (points made up)",
      text: protectionExample({
        devices: [
          "{ id: F-UP, kind: fuse, rating: 30 A, opening: [{ at: 100 %, earliest: 5 h, latest: 50 h }, { at: 200 %, earliest: 1 s, latest: 5 s }, { at: 1000 %, earliest: 5 ms, latest: 20 ms }] }",
          `{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPoints} }`,
        ],
        ...inSeries,
      }),
      finds: ["^F-MAIN may open before CB-RACK from \\d.* A to \\d.* A: at .* A after .* s, not .* s"],
    },
    {
      title: "At one current both may take the same time (points made up)",
      text: protectionExample({
        devices: [
          "{ id: F-UP, kind: fuse, rating: 40 A, opening: [{ at: 120 %, earliest: 1000 s, latest: 5000 s }, { at: 500 %, earliest: 1 s, latest: 5 s }, { at: 2000 %, earliest: 0.9 s, latest: 4 s }] }",
          `{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPointsToFaults} }`,
        ],
        ...inSeries,
      }),
      finds: ["^F-MAIN may open before CB-RACK at 200 A: both may take 1 s\\."],
    },
    {
      title: "A slow fuse of 30 A ahead of the same breaker (points made up)",
      text: protectionExample({
        devices: [
          `{ id: F-UP, kind: fuse, rating: 30 A, ${slowPoints} }`,
          `{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPoints} }`,
        ],
        ...inSeries,
      }),
      finds: [],
    },
  ],
});
