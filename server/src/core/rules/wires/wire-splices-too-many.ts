import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { holdRecorded, ofEachWire } from "./recorded";

const limit = wireInstallationLimits.splicesPerSegment;

export const wireSplicesTooMany = defineRule<{ wire: string; splices: number; most: number }>({
  id: "wire-splices-too-many",
  severity: "error",
  area: "wires",
  title: "A wire has more than one splice between its ends",
  why:
    "Each splice adds resistance, stiffness and a place where water enters. One in a segment, from one point of " +
    "disconnection to the next, is said to be the most; not within 12 in of a termination, and none where it " +
    "vibrates strongly. These limits are from memory and only warn.",
  sources: [limit.source],
  say: ({ wire, splices, most }) => ({
    what: `Wire ${wire} has ${splices} splices; ${most} in a segment is the most.`,
    todo: "Replace the wire by one that runs through.",
  }),
  check: ofEachWire(function* (wire, subject) {
    const held = holdRecorded(
      { subject, quantity: "splice-count", name: "number of splices", written: wire.splices },
      limit,
      "most-splices",
    );
    if (!held) return;
    yield {
      ...held,
      rule: "wire-splices-too-many",
      facts: { wire: subject.id, splices: held.value.value, most: held.limit.value },
    };
  }),
  examples: () => [
    {
      title: "Two splices in one run",
      text: circuitExample({ keys: "splices: 2" }),
      finds: ["P1 has 2 splices; 1 in a segment is the most"],
    },
    { title: "One splice", text: circuitExample({ keys: "splices: 1" }), finds: [] },
  ],
});
