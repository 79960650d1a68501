import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { UncomparedFault } from "../../graph/electrical/protection/faults";
import { defineRule } from "../rule";
import { breakerPointsToFaults, protectionExample, twoFeeds } from "./protection-example";

const reasons: Readonly<Record<UncomparedFault["reason"], string>> = {
  returns: "several wires lead its current to it",
  network: "its network has no definite solution",
};

export const faultCurrentNotCompared = defineRule<{
  wire: string;
  protection: string;
  reason: UncomparedFault["reason"];
}>({
  id: "fault-current-not-compared",
  severity: "information",
  area: "protection",
  title: "A short at the end of a wire is not compared with what its device does",
  why:
    "Where the current of a fault divides, each device sees a part of it, and the wire the whole. Where that can't " +
    "be had from the record, the check is not made, and silence says nothing.",
  sources: [],
  say: ({ wire, protection, reason }) => ({
    what: `Not compared: whether ${protection} opens in time at a short of wire ${wire}; ${reasons[reason]}.`,
    todo: `Show by hand or by test that ${protection} opens before the wire is harmed.`,
  }),
  *check(project): Iterable<Problem> {
    for (const { wire, guard, reason } of electricalOf(project).protection.uncomparedFaults) {
      if (!wire.id) continue;
      yield {
        rule: "fault-current-not-compared",
        subject: { kind: "wire", id: wire.id.value },
        place: wire.id.place,
        facts: { wire: wire.id.value, protection: guard, reason },
      };
    }
  },
  examples: () => [
    {
      title: "Two return wires that lead to one",
      text: protectionExample({
        devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPointsToFaults} }`],
        wires: [
          "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
          "{ id: P2N, from: RACK, to: TB-1, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
          "{ id: P3N, from: RACK, to: TB-1, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
          "{ id: P4N, from: TB-1, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
        ],
        sections: ["junctions: [{ id: TB-1 }]"],
      }),
      finds: [
        "^Not compared: whether CB-RACK opens in time at a short of wire P4N; several wires lead its current to it\\.$",
      ],
    },
    {
      title: "Two breakers that feed one wire: compared by the network's solution (points made up)",
      text: protectionExample({
        ...twoFeeds,
        devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPointsToFaults} }`],
        wires: [
          ...twoFeeds.wires,
          "{ id: P3, from: TB-1, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
        ],
      }),
      finds: [],
    },
  ],
});
