/** Fasteners of a reinforcement: their distances to each other and to edges, and their size. */
import { roundUp } from "../../quantities";
import { fastenerEdgeDistance } from "../../tables/fastener-edge-distance";
import { diameterRange, leastPitch, leastRowPitch, widestPitch } from "../../tables/rivet-spacing";
import type { Distance } from "../openings";
import { asRecorded } from "../recorded";
import { derive, type Operand, tabled, written } from "../value";
import { doublerLines, type Fastener } from "./fasteners";
import { figureOperands, type Unit } from "./figures";
import { nearestEdge } from "./near-fasteners";
import { pitchesOf } from "./pitch";
import type { ReinforcementParts, ReinforcementResult } from "./reinforcement";

/** Pitch, distance between rows and diameter, each with its limits. */
export function fastenerSpacing(
  parts: ReinforcementParts,
): Pick<ReinforcementResult, "pitch" | "rowPitch" | "diameter"> {
  const { fasteners, keep, subject, unit, opening, reinforcement } = parts;
  const { diameter, rows, head } = fasteners ?? {};
  const D = written("fastener diameter", diameter, unit);
  const times = (
    quantity: "least-pitch" | "widest-pitch" | "least-row-pitch",
    factor: ReturnType<typeof leastPitch>,
  ) =>
    keep(
      derive({
        subject,
        quantity,
        unit,
        formula: "k * D",
        operands: { k: tabled("diameters", factor, "1", [rows?.place, head?.place]), D },
        compute: (n) => n.k * n.D,
        sources: [factor.source],
      }),
    );
  const sheets = [
    written("thickness of the panel", opening.panel.thickness, unit),
    written("thickness of the reinforcement", reinforcement.thickness, unit),
  ] as const;
  const leastDiameter = () =>
    keep(
      derive({
        subject,
        quantity: "least-fastener-diameter",
        unit,
        formula: "k * max(s, t)",
        operands: {
          k: tabled("sheet thicknesses", diameterRange.least, "1", []),
          s: sheets[0],
          t: sheets[1],
        },
        compute: (n) => n.k * Math.max(n.s, n.t),
        sources: [diameterRange.least.source],
      }),
    );
  const perUnit = unit === "in" ? "32" : "32 / 25.4";
  const inches = unit === "in" ? 1 : 25.4;
  const largestDiameter = () =>
    keep(
      derive({
        subject,
        quantity: "largest-fastener-diameter",
        unit,
        formula: `ceil(k * max(s, t) * ${perUnit}) / (${perUnit})`,
        operands: {
          k: tabled("sheet thicknesses", diameterRange.largest, "1", []),
          s: sheets[0],
          t: sheets[1],
        },
        compute: (n) => roundUp((n.k * Math.max(n.s, n.t)) / inches, 1 / 32) * inches,
        sources: [diameterRange.largest.source],
        notes: ["Rounded up to the next 1/32 in."],
      }),
    );
  const isRivet = fasteners?.kind?.value === "2117-rivet";
  return {
    pitch: {
      ...pitchesOf(parts),
      least: times("least-pitch", leastPitch(rows?.value ?? 1, head?.value ?? "protruding")),
      most: times("widest-pitch", widestPitch),
    },
    rowPitch: {
      value: keep(asRecorded(subject, "row-pitch", "distance between rows", fasteners?.rowPitch, unit)),
      least: times("least-row-pitch", leastRowPitch),
    },
    diameter: {
      value: keep(asRecorded(subject, "fastener-diameter", "fastener diameter", diameter, unit)),
      least: isRivet ? leastDiameter() : undefined,
      largest: isRivet ? largestDiameter() : undefined,
    },
  };
}

/** Measured where the places of the fasteners are recorded, as recorded otherwise. */
export function fastenerEdge({
  fasteners,
  keep,
  subject,
  unit,
  opening,
  reinforcement,
  outline,
}: ReinforcementParts): Distance {
  if (!fasteners?.diameter) return { value: undefined, least: undefined };
  const factor = fastenerEdgeDistance(fasteners.head?.value ?? "protruding");
  const least = keep(
    derive({
      subject,
      quantity: "least-fastener-edge-distance",
      unit,
      formula: "k * D",
      operands: {
        k: tabled(`diameters for a ${fasteners.head?.value ?? "protruding"} head`, factor, "1", [
          fasteners.head?.place,
        ]),
        D: written("fastener diameter", fasteners.diameter, unit),
      },
      compute: (n) => n.k * n.D,
      sources: [factor.source],
    }),
  );
  const all = doublerLines(fasteners, unit).flat();
  const edges = [opening.placed, outline, opening.within].filter((one) => one !== undefined);
  const measured = nearestEdge(all, edges);
  if (measured === undefined) {
    return {
      value: keep(
        asRecorded(subject, "doubler-edge-distance", "edge distance", fasteners.edgeDistance, unit),
      ),
      least,
    };
  }
  return {
    value: keep(
      derive({
        subject,
        quantity: "doubler-edge-distance",
        unit,
        method:
          "least distance from the fasteners' centres to the outlines of opening, reinforcement and panel",
        operands: {
          ...figureOperands(opening.cutout.opening!, unit),
          ...(reinforcement.outline && figureOperands(reinforcement.outline, unit, "doubler ")),
          ...linesOperand(all, unit),
        },
        compute: () => measured,
      }),
    ),
    least,
  };
}

function linesOperand(fasteners: readonly Fastener[], unit: Unit): Readonly<Record<string, Operand>> {
  const places = [...new Set(fasteners.map(({ place }) => place))];
  return {
    lines: {
      name: "places of the fasteners",
      value: fasteners.length,
      unit: "1",
      places,
      notes: [`Measured in ${unit}.`],
    },
  };
}
