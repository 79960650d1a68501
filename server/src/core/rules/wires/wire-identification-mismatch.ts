import type { Problem } from "../../findings/finding";
import { type WaysToGround, waysToGroundOf } from "../../graph/electrical/layout";
import { formatMeasure } from "../../quantities";
import type { Wire } from "../../records/types";
import type { Place } from "../../records/written";
import {
  readWireIdentification,
  type WireIdentification,
  wireIdentificationSource,
} from "../../tables/wire-identification";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { ofEachWire } from "./recorded";

type Mismatch = "size" | "to ground" | "not to ground" | "aluminium" | "copper";

export const wireIdentificationMismatch = defineRule<{
  wire: string;
  mismatch: Mismatch;
  /** What the record says of the wire. */
  recorded: string;
  coded?: string | undefined;
}>({
  id: "wire-identification-mismatch",
  severity: "information",
  area: "wires",
  title: "A wire's identification says something else than its record",
  why:
    "Read as a code, an identification holds the size, N where the wire completes the circuit to ground, and the " +
    "material where it is aluminium. Whoever mends the wire takes the size from its mark. Identifications that are " +
    "no such code are left alone.",
  sources: [wireIdentificationSource],
  say: ({ wire, mismatch, recorded, coded }) => ({
    what: `Wire ${wire}: ${words[mismatch](recorded, coded ?? "")}.`,
    todo: "Correct the identification, everywhere that it is named, or the record of the wire.",
  }),
  check: ofEachWire(function* (wire, subject, ground): Iterable<Problem> {
    const reading = readWireIdentification(subject.id);
    if (!reading.isRead) return;
    for (const { mismatch, recorded, coded, place } of mismatches(wire, reading.identification, ground)) {
      yield {
        rule: "wire-identification-mismatch",
        subject,
        place: wire.id!.place,
        facts: { wire: subject.id, mismatch, recorded, coded },
        related: place ? [{ place, words: "what the record says" }] : [],
      };
    }
  }, waysToGroundOf),
  *corrections({ subject }, project) {
    const wire = project?.install.wires?.find(({ id }) => id?.value === subject?.id);
    const code = wire && project && codeFor(wire, waysToGroundOf(project));
    if (!code || !wire.id || project.names.find(["wire"], code).length > 0) return;
    const old = wire.id.value;
    const uses = project.file.typing.references.filter(
      ({ kinds, id }) => kinds.includes("wire") && id.value === old,
    );
    yield {
      title: `Mark wire ${old} ${code}`,
      changes: [wire.id, ...uses.map(({ id }) => id)].map(({ place }) => ({ place, text: code })),
      renames: { [`wire ${code}`]: `wire ${old}` },
    };
  },
  examples: () => [
    {
      title: "Size, ground and material, each said wrongly",
      text: circuitExample({
        wires: [
          wireText("P101A12", "CB-RACK", "RACK"),
          wireText("P102A10N", "CB-RACK", "RACK"),
          wireText("P103B10", "RACK", "GND-AFT"),
          wireText("P104A8", "CB-RACK", "RACK", "8 AWG, material: aluminium"),
          wireText("P105A10-ALUM", "CB-RACK", "RACK"),
        ],
      }),
      finds: [
        "P101A12: it is 10 AWG, and its identification says size 12",
        "P102A10N: its identification ends in N, for ground, and it leads to RACK",
        "P103B10: it leads to ground at GND-AFT, and its identification has no N",
        "P104A8: it is aluminium, and its identification does not say so",
        "P105A10-ALUM: its identification says aluminium, and it is copper",
      ],
    },
    {
      title: "Codes that fit, also for a return by way of a terminal strip",
      text: circuitExample({
        wires: [
          wireText("P101A10", "CB-RACK", "RACK"),
          wireText("P101B10N", "RACK", "TB1"),
          wireText("P101C10N", "TB1", "GND-AFT"),
        ],
        sections: ["junctions: [{ id: TB1 }]"],
      }),
      finds: [],
    },
    { title: "Names that are no code", text: circuitExample(), finds: [] },
  ],
});

const words: Readonly<Record<Mismatch, (recorded: string, coded: string) => string>> = {
  size: (recorded, coded) => `it is ${recorded}, and its identification says size ${coded}`,
  "to ground": (recorded) => `it leads to ground at ${recorded}, and its identification has no N`,
  "not to ground": (recorded) => `its identification ends in N, for ground, and it leads to ${recorded}`,
  aluminium: () => "it is aluminium, and its identification does not say so",
  copper: () => "its identification says aluminium, and it is copper",
};

interface Found {
  readonly mismatch: Mismatch;
  readonly recorded: string;
  readonly coded?: string;
  readonly place: Place | undefined;
}

function* mismatches(wire: Wire, code: WireIdentification, ground: WaysToGround): Iterable<Found> {
  const { gauge, from, to, material } = wire;
  const isReversed = from !== undefined && ground.points.has(from.value); // told as what it is
  if (gauge && gauge.value.si !== code.gauge) {
    const [recorded, coded] = [gauge.value.si, code.gauge].map((size) => formatMeasure(size, "AWG"));
    yield { mismatch: "size", recorded: recorded!, coded: coded!.replace(" AWG", ""), place: gauge.place };
  }
  if (to && !isReversed && code.end === "N" && !ground.leading.has(to.value)) {
    yield { mismatch: "not to ground", recorded: to.value, place: to.place };
  }
  if (to && code.end !== "N" && ground.points.has(to.value)) {
    yield { mismatch: "to ground", recorded: to.value, place: to.place };
  }
  const isAluminium = material?.value === "aluminium";
  if (isAluminium !== code.isAluminium) {
    yield { mismatch: isAluminium ? "aluminium" : "copper", recorded: "", place: material?.place };
  }
}

/** The identification of a wire with size, N and material as its record has them. */
function codeFor(wire: Wire, ground: WaysToGround): string | undefined {
  const parts = /^(\d{0,4}[A-Z]\d+[A-Z])([\d/]+)([NABC]?)([ -]?ALUM(?:INUM)?)?$/.exec(wire.id!.value);
  if (!parts || !wire.gauge || !wire.to) return undefined;
  const [, head, , letter = "", material = "-ALUM"] = parts;
  const gauge = wire.gauge.value.si;
  const size = gauge > 0 ? String(gauge) : "0".repeat(1 - gauge);
  const end = ground.points.has(wire.to.value)
    ? "N"
    : ground.leading.has(wire.to.value) || letter !== "N"
      ? letter
      : "";
  return `${head}${size}${end}${wire.material?.value === "aluminium" ? material : ""}`;
}

function wireText(id: string, from: string, to: string, gauge = "10 AWG"): string {
  return `{ id: ${id}, from: ${from}, to: ${to}, length: 12 ft, rating: 150 degC, gauge: ${gauge} }`;
}
