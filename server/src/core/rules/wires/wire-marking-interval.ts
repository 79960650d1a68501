import { wireMarking } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { documentName, markingDocument, markingOf } from "./marking";
import { apart, holdRecorded, lengthThatKeeps, ofEachWire, wireOf } from "./recorded";

export const wireMarkingInterval = defineRule<{
  wire: string;
  interval: number;
  most: number;
  document: string;
}>({
  id: "wire-marking-interval",
  severity: "error",
  area: "wires",
  title: "The identification marks of a wire are too far apart",
  why:
    "Whoever opens a panel later has to tell the wire by the piece of it that can be seen. The documents differ in the " +
    "interval, so 'wire-marking' in the document head names the one that is followed. Short wires need one mark or none.",
  sources: [
    wireMarking("AC 43.13-1B", "direct", Number.MAX_VALUE).source,
    wireMarking("MIL-W-5088L", "sleeve", Number.MAX_VALUE).source,
  ],
  say: ({ wire, interval, most, document }) => {
    const [is, allowed] = apart(interval, most, "in");
    return {
      what: `Wire ${wire} is marked every ${is}; ${document} asks for a mark at least every ${allowed}.`,
      todo: "Mark it at each end and at shorter intervals between.",
    };
  },
  check: ofEachWire(function* (wire, subject, named) {
    const marking = markingOf(wire, named);
    if (!marking?.covered || marking.value.marks !== "ends-and-intervals") return;
    const held = holdRecorded(
      {
        subject,
        quantity: "marking-interval",
        name: "distance between marks",
        written: wire.markingInterval,
      },
      { value: marking.value.intervalInches, unit: "in", bound: "most", source: marking.source },
      "widest-marking-interval",
      [named?.place, wire.marking?.place],
    );
    if (!held) return;
    yield {
      ...held,
      rule: "wire-marking-interval",
      facts: {
        wire: subject.id,
        interval: held.value.value,
        most: held.limit.value,
        document: documentName(named),
      },
    };
  }, markingDocument),
  *remedies(assessment, project) {
    const recorded = wireOf(assessment, project)?.markingInterval;
    yield* lengthThatKeeps(
      assessment,
      recorded,
      (length) => `Mark wire ${assessment.subject.id} every ${length}`,
    );
  },
  examples: () => [
    {
      title: "Printed on the wire every 18 in",
      text: circuitExample({ keys: "marking-interval: 18 in" }),
      finds: ["P1 is marked every 18 in; AC 43.13-1B asks for a mark at least every 15 in"],
    },
    {
      title: "On sleeves, by the other document",
      text: circuitExample({ keys: "marking-interval: 4 ft" }).replace(
        "status: draft",
        "status: draft, wire-marking: MIL-W-5088L",
      ),
      finds: ["P1 is marked every 48 in; MIL-W-5088L asks for a mark at least every 36 in"],
    },
    {
      title: "On sleeves every 4 ft",
      text: circuitExample({ keys: "marking-interval: 4 ft, marking: sleeve" }),
      finds: [],
    },
    {
      title: "A wire of 6 in has one mark about its centre",
      text: circuitExample({ length: "6 in", keys: "marking-interval: 18 in" }),
      finds: [],
    },
  ],
});
