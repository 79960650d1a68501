import type { Problem } from "../../findings/finding";
import { readWireIdentification, unusedSegmentLetters } from "../../tables/wire-identification";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { ofEachWire } from "./recorded";

const unused: readonly string[] = unusedSegmentLetters.letters;

export const wireSegmentLetter = defineRule<{ wire: string; letter: string }>({
  id: "wire-segment-letter",
  severity: "information",
  area: "wires",
  title: "The segment letter of a wire's identification looks like a digit",
  why: "I and O are read as 1 and 0, and the wire is then looked for under another number. From memory.",
  sources: [unusedSegmentLetters.source],
  say: ({ wire, letter }) => ({
    what: `Wire ${wire} has the segment letter ${letter}, which is read as ${letter === "I" ? "1" : "0"}.`,
    todo: "Take another letter for this segment.",
  }),
  check: ofEachWire(function* (wire, subject): Iterable<Problem> {
    const reading = readWireIdentification(subject.id);
    if (!reading.isRead || !unused.includes(reading.identification.segmentLetter)) return;
    yield {
      rule: "wire-segment-letter",
      subject,
      place: wire.id!.place,
      facts: { wire: subject.id, letter: reading.identification.segmentLetter },
    };
  }),
  examples: () => [
    {
      title: "Segment O",
      text: circuitExample({
        wires: ["{ id: P101O10, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC }"],
      }),
      finds: ["P101O10 has the segment letter O, which is read as 0"],
    },
    {
      title: "Segment A",
      text: circuitExample({
        wires: ["{ id: P101A10, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC }"],
      }),
      finds: [],
    },
  ],
});
