import type { Source, Standing } from "../source";
import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered, range } from "./lookup";

/** `x OD`: times the outside diameter of the wire, or of the largest wire of a bundle. An empty unit counts. */
export interface InstallationLimit {
  readonly value: number;
  readonly unit: "in" | "ft" | "x OD" | "AWG" | "";
  /** Whether the value is the least or the most that is allowed; of a gauge, its number. */
  readonly bound: "least" | "most";
  readonly source: Source;
  /** Where the limit does not hold, or what goes with it. */
  readonly note?: string;
}

function militarySpecification(at: string, standing: Standing): Source {
  return { document: "MIL-W-5088L", at, standing };
}

const armyManual = (item: number): Source => ({
  document: "TM 1-1500-204-23-4",
  at: `item ${item}`,
  standing: "published",
});
const airframeHandbook: Source = {
  document: "FAA AMT Handbook, Airframe",
  at: "electrical wiring",
  standing: "published",
  note: "read in a mirror of the handbook",
};
/** The copy does not tell the volume. */
const handbooks: Source = {
  ...airframeHandbook,
  document: "FAA AMT handbooks",
  note: "read in a paraphrasing mirror",
};
const routingFromMemory = advisoryCircular("chapter 11, wire routing", "memory");

/** Support, routing, bending and joining of wires. */
export const wireInstallationLimits = {
  supportSpacing: {
    value: 24,
    unit: "in",
    bound: "most",
    source: advisoryCircular("par. 11-96a", "published"),
    note: "Not in troughs, ducts and conduit.",
  },
  supportSpacingWithoutTies: {
    value: 12,
    unit: "in",
    bound: "most",
    source: advisoryCircular("par. 11-158b", "published"),
    note: "A bundle is tied where its supports are farther apart.",
  },
  slackBetweenSupports: {
    value: 0.5,
    unit: "in",
    bound: "most",
    source: advisoryCircular("par. 11-118", "published"),
    note: "Deflection by normal hand force; may be more where the bundle can't reach an abrasive surface.",
  },
  penetrationClearance: {
    value: 0.375,
    unit: "in",
    bound: "least",
    source: advisoryCircular("par. 11-115", "published"),
    note: "Where no clamp holds the wire; with less, a grommet.",
  },
  fluidLineSeparation: {
    value: 6,
    unit: "in",
    bound: "least",
    source: advisoryCircular("par. 11-96w", "published"),
    note: "To lines of flammable fluid, fuel and oxygen, and to walls of fuel tanks.",
  },
  fluidLineSeparationClamped: {
    value: 2,
    unit: "in",
    bound: "least",
    source: advisoryCircular("par. 11-96w", "published"),
    note: "Where 6 in is impracticable: with close clamping or rigid support, a wire broken and a tie missing.",
  },
  fluidLineCloseSupport: {
    value: 6,
    unit: "in",
    bound: "least",
    source: armyManual(23),
    note: "Nearer than this: closely and rigidly supported, above the line, never attached to it.",
  },
  controlCableSeparation: { value: 3, unit: "in", bound: "least", source: routingFromMemory },
  movableControlClearance: { value: 0.5, unit: "in", bound: "least", source: routingFromMemory },
  bendRadius: { value: 10, unit: "x OD", bound: "least", source: armyManual(27) },
  bendRadiusAtTerminals: {
    value: 3,
    unit: "x OD",
    bound: "least",
    source: advisoryCircular(
      "par. 11-96",
      "memory",
      "that there is an exception was read, its value was not",
    ),
    note: "At terminal strips, supported at each end of the bend.",
  },
  bundleWires: { value: 75, unit: "", bound: "most", source: airframeHandbook },
  bundleDiameter: { value: 2, unit: "in", bound: "most", source: airframeHandbook },
  terminalsPerStud: {
    value: 4,
    unit: "",
    bound: "most",
    source: advisoryCircular("par. 11-174b", "published"),
    note: "More are joined by a small bus across two or more studs.",
  },
  splicesPerSegment: {
    value: 1,
    unit: "",
    bound: "most",
    source: advisoryCircular("chapter 11, splices", "memory"),
    note: "Between two connectors or other points of disconnection.",
  },
  spliceToTermination: {
    value: 12,
    unit: "in",
    bound: "least",
    source: advisoryCircular("chapter 11, splices", "memory"),
  },
  thinnestGauge: {
    value: 22,
    unit: "AWG",
    bound: "most",
    source: militarySpecification("least wire size", "memory"),
    note: "24 and 26 by exception, with high-strength alloy.",
  },
  strands: { value: 19, unit: "", bound: "least", source: handbooks },
  thinnestAluminiumGauge: {
    value: 8,
    unit: "AWG",
    bound: "most",
    source: advisoryCircular("p. 11-23", "published"),
  },
  aluminiumRun: {
    value: 3,
    unit: "ft",
    bound: "least",
    source: handbooks,
    note: "Shorter runs of aluminium are discouraged.",
  },
} as const satisfies Record<string, InstallationLimit>;

/** Where aluminium wire is not to be used. */
export const zonesWithoutAluminium = {
  zones: ["engine-mounted-accessory", "corrosive-fumes", "severe-vibration", "frequent-disconnection"],
  source: handbooks,
} as const;

/** The documents differ: a record names the one that it follows. */
export type MarkingDocument = "AC 43.13-1B" | "MIL-W-5088L";

/** On the wire itself, or on a sleeve around it. */
export type MarkingMethod = "direct" | "sleeve";

/** Where a wire carries its identification, and the longest way between two marks in in. */
export type WireMarking =
  | { readonly marks: "none" }
  | { readonly marks: "centre" }
  | { readonly marks: "ends-and-intervals"; readonly intervalInches: number };

interface MarkingRow {
  readonly source: Source;
  /** Shorter wires need no mark. */
  readonly markedFromInches: number;
  /** Up to this length one mark about the centre will do. */
  readonly centreUpToInches?: number;
  readonly intervalInches: Readonly<Partial<Record<MarkingMethod, number>>>;
}

const markingRows: Readonly<Record<MarkingDocument, MarkingRow>> = {
  "AC 43.13-1B": {
    source: advisoryCircular("par. 11-208", "published"),
    markedFromInches: 3,
    centreUpToInches: 7,
    intervalInches: { direct: 15, sleeve: 72 },
  },
  "MIL-W-5088L": {
    source: militarySpecification("par. 3.9", "published"),
    markedFromInches: 6,
    intervalInches: { sleeve: 36 },
  },
};

/**
 * How a wire of this length is marked. Not covered: a length that is not above zero, and the interval of direct
 * marks in MIL-W-5088L, which was not found.
 */
export function wireMarking(
  document: MarkingDocument,
  method: MarkingMethod,
  lengthInches: number,
): Lookup<WireMarking> {
  const { source, markedFromInches, centreUpToInches = 0, intervalInches } = markingRows[document];
  if (!(lengthInches > 0)) {
    const covers = range(0, Number.POSITIVE_INFINITY);
    return notCovered({ quantity: "wire length", asked: lengthInches, unit: "in", covers }, source);
  }
  if (lengthInches < markedFromInches) return covered({ marks: "none" }, source);
  if (lengthInches <= centreUpToInches) return covered({ marks: "centre" }, source);
  const interval = intervalInches[method];
  if (interval === undefined) {
    const covers = list(Object.keys(intervalInches));
    return notCovered({ quantity: "marking method", asked: method, unit: "", covers }, source);
  }
  return covered({ marks: "ends-and-intervals", intervalInches: interval }, source);
}
