/**
 * Limits of bonding and of wire installation, wire identification and conductor weight. "AC" is FAA AC 43.13-1B of
 * 9/8/98 with Change 1 of 9/27/01, chapter 11. Values not read in the text are named "memory" or "derived".
 */
import { describe, expect, it } from "vitest";
import { copperWeightPer1000Feet } from "../../server/src/core/methods/conductor-weight";
import { bondingLimits, refinishHours, staticBondSize } from "../../server/src/core/tables/bonding-limits";
import { copperConductor } from "../../server/src/core/tables/copper-wire";
import { strandDamage } from "../../server/src/core/tables/strand-damage";
import {
  readWireIdentification,
  unusedSegmentLetters,
} from "../../server/src/core/tables/wire-identification";
import {
  type MarkingDocument,
  type MarkingMethod,
  wireInstallationLimits,
  wireMarking,
  zonesWithoutAluminium,
} from "../../server/src/core/tables/wire-installation-limits";

describe("1.15 bonding", () => {
  it.each([
    ["jumper-connection", 0.003, true, "par. 11-189", "published"],
    ["equipment-frame", 0.0025, false, "par. 11-188f", "published"],
    ["ground-return", 0.005, true, "par. 11-66", "published"],
    ["static-bond", 1e6, false, "par. 11-187c", "memory"],
  ] as const)("%s: %d ohm, itself allowed: %s (AC %s, %s)", (bond, ohms, isInclusive, at, standing) => {
    expect(bondingLimits[bond]).toMatchObject({ ohms, isInclusive, source: { at, standing } });
  });

  it("static bonds from 3 in² and 3 in (AC 11-187c); refinish within 24 h (AC 11-189a, b)", () => {
    expect(staticBondSize).toMatchObject({ areaSquareInches: 3, lengthInches: 3 });
    expect(staticBondSize.source.standing).toBe("published");
    expect(refinishHours).toMatchObject({ value: 24, source: { standing: "published" } });
  });
});

describe("1.16 and 1.17 wire installation", () => {
  it.each([
    ["supportSpacing", 24, "in", "AC 43.13-1B", "par. 11-96a"],
    ["supportSpacingWithoutTies", 12, "in", "AC 43.13-1B", "par. 11-158b"],
    ["slackBetweenSupports", 0.5, "in", "AC 43.13-1B", "par. 11-118"],
    ["penetrationClearance", 3 / 8, "in", "AC 43.13-1B", "par. 11-115"],
    ["fluidLineSeparation", 6, "in", "AC 43.13-1B", "par. 11-96w"],
    ["fluidLineSeparationClamped", 2, "in", "AC 43.13-1B", "par. 11-96w"],
    ["fluidLineCloseSupport", 6, "in", "TM 1-1500-204-23-4", "item 23"],
    ["bendRadius", 10, "x OD", "TM 1-1500-204-23-4", "item 27"],
    ["terminalsPerStud", 4, "", "AC 43.13-1B", "par. 11-174b"],
    ["bundleWires", 75, "", "AMT Handbook, Airframe", "electrical wiring"],
    ["bundleDiameter", 2, "in", "AMT Handbook, Airframe", "electrical wiring"],
    ["strands", 19, "", "AMT handbooks", "electrical wiring"],
    ["thinnestAluminiumGauge", 8, "AWG", "AC 43.13-1B", "p. 11-23"],
    ["aluminiumRun", 3, "ft", "AMT handbooks", "electrical wiring"],
  ] as const)("%s: %d %s (%s, %s)", (name, value, unit, document, at) => {
    const limit = wireInstallationLimits[name];
    expect(limit).toMatchObject({ value, unit, source: { at, standing: "published" } });
    expect(limit.source.document).toContain(document);
  });

  it.each([
    ["controlCableSeparation", 3],
    ["movableControlClearance", 0.5],
    ["bendRadiusAtTerminals", 3],
    ["splicesPerSegment", 1],
    ["spliceToTermination", 12],
    ["thinnestGauge", 22],
  ] as const)("%s: %d is from memory, and says so", (name, value) => {
    expect(wireInstallationLimits[name]).toMatchObject({ value, source: { standing: "memory" } });
  });

  it("aluminium not in four zones (AMT handbooks)", () => {
    expect(zonesWithoutAluminium.zones).toHaveLength(4);
  });
});

describe("1.17 marking", () => {
  const marking = (document: MarkingDocument, method: MarkingMethod, lengthInches: number) => {
    const lookup = wireMarking(document, method, lengthInches);
    if (!lookup.covered) throw new Error(`not covered: ${JSON.stringify(lookup.reason)}`);
    return lookup.value;
  };
  const interval = (intervalInches: number) => ({ marks: "ends-and-intervals", intervalInches });

  it("AC par. 11-208: none below 3 in, about the centre to 7 in, then each end and every 15 in (6 ft on sleeves)", () => {
    for (const method of ["direct", "sleeve"] as const) {
      expect(marking("AC 43.13-1B", method, 2.99)).toEqual({ marks: "none" });
      expect(marking("AC 43.13-1B", method, 3)).toEqual({ marks: "centre" });
      expect(marking("AC 43.13-1B", method, 7)).toEqual({ marks: "centre" });
    }
    expect(marking("AC 43.13-1B", "direct", 7.01)).toEqual(interval(15));
    expect(marking("AC 43.13-1B", "sleeve", 7.01)).toEqual(interval(6 * 12));
  });

  it("MIL-W-5088L par. 3.9: none below 6 in, printed markers at each end and every 3 ft", () => {
    expect(marking("MIL-W-5088L", "sleeve", 5.99)).toEqual({ marks: "none" });
    expect(marking("MIL-W-5088L", "sleeve", 6)).toEqual(interval(3 * 12));
  });

  it("does not cover the interval of direct marks in MIL-W-5088L, nor a length of zero", () => {
    expect(wireMarking("MIL-W-5088L", "direct", 20)).toMatchObject({
      covered: false,
      reason: { asked: "direct", covers: { kind: "list", values: ["sleeve"] } },
    });
    for (const length of [0, -1, Number.NaN]) {
      expect(wireMarking("AC 43.13-1B", "direct", length).covered).toBe(false);
    }
  });
});

describe("1.16 nicked and broken strands: AC Table 11-13, p. 11-62", () => {
  // Gauges and strands of each row, nicked, broken; the two open ends stand for "1665-" and "2109-".
  it.each([
    [[24, 22, 20, 18, 16, 14], [19], 2, 0],
    [[12, 10], [37], 4, 0],
    [[8, 6, 4], [133], 6, 6],
    [[2, 1], [665, 817], 6, 6],
    [[0, -1], [1045, 1330], 6, 6],
    [[-2], [1665, 5000], 6, 6],
    [[-3], [2109, 5000], 6, 6],
  ])("copper %j of %j strands: %i nicked, %i broken", (gauges, strands, damaged, broken) => {
    for (const gauge of gauges) {
      for (const count of [...strands, undefined]) {
        expect(strandDamage("copper", gauge, count)).toMatchObject({
          covered: true,
          value: { damaged, broken },
          source: { standing: "published" },
        });
      }
      const fewer = strandDamage("copper", gauge, strands[0]! - 1);
      expect(fewer).toMatchObject({ covered: false, reason: { quantity: "number of strands" } });
    }
  });

  it("aluminium 8 to 000, of any number of strands: none", () => {
    for (const gauge of [8, 6, 4, 2, 1, 0, -1, -2]) {
      expect(strandDamage("aluminium", gauge, 37)).toMatchObject({ value: { damaged: 0, broken: 0 } });
    }
  });

  it("covers no other gauge, and says where it took the table's number of strands", () => {
    expect(strandDamage("copper", 26, 19).covered).toBe(false);
    expect(strandDamage("copper", 3, undefined).covered).toBe(false);
    for (const gauge of [10, -3]) expect(strandDamage("aluminium", gauge, undefined).covered).toBe(false);
    const taken = strandDamage("copper", 10, undefined);
    expect(taken.covered && taken.notes).toHaveLength(1);
  });
});

describe("2 wire identification code: MIL-W-5088L appendix B", () => {
  const read = (code: string) => {
    const reading = readWireIdentification(code);
    if (!reading.isRead) throw new Error(`expected ${reading.expected} at ${reading.offset}`);
    return reading.identification;
  };

  it("P215A4N is DC power, wire 215, segment A, size 4, to ground (NAVEDTRA 14176, p. 3-4)", () => {
    expect(read("P215A4N")).toEqual({
      unitNumber: undefined,
      functionLetter: "P",
      wireNumber: 215,
      segmentLetter: "A",
      gauge: 4,
      end: "N",
      isAluminium: false,
    });
  });

  it.each([
    // Unit number: appendix B 30.3; codes constructed.
    ["2P215A4N", { unitNumber: 2, wireNumber: 215, end: "N" }],
    ["X7B22A", { functionLetter: "X", segmentLetter: "B", gauge: 22, end: "A" }],
    ["P1A00", { gauge: -1, end: undefined }],
    ["P1A0000N", { gauge: -3, end: "N" }],
    ["P1A4/0", { gauge: -3 }],
    ["P1A0ALUM", { gauge: 0, end: undefined, isAluminium: true }],
    ["P1A4N-ALUMINUM", { gauge: 4, end: "N", isAluminium: true }],
    ["P1A4C ALUM", { end: "C", isAluminium: true }],
  ])("reads %s", (code, expected) => {
    expect(read(code)).toMatchObject(expected);
  });

  it.each([
    ["", 0, "function letter"],
    // Without its function letter the code still begins well: unit 215, function A, wire 4, segment N.
    ["215A4N", 6, "size"],
    ["p215A4N", 0, "function letter"],
    ["P", 1, "wire number"],
    ["P215", 4, "segment letter"],
    ["P2154", 5, "segment letter"],
    ["P215A", 5, "size"],
    ["P215A100", 5, "size"],
    ["P215A04", 5, "size"],
    ["P215A4Q", 6, "ground or phase letter, or material"],
    ["P215A4NN", 6, "ground or phase letter, or material"],
    ["P215A4N ", 6, "ground or phase letter, or material"],
  ])("stops in %o at character %i: %s expected", (code, offset, expected) => {
    expect(readWireIdentification(code)).toEqual({ isRead: false, offset, expected });
  });

  it("calls no segment I or O (memory)", () => {
    expect(unusedSegmentLetters).toMatchObject({ letters: ["I", "O"], source: { standing: "memory" } });
  });
});

describe("5 conductor weight", () => {
  // A public table of 19-strand soft conductors, 19/36 to 19/29: circular mils and lb per 1000 ft.
  it.each([
    [475, 1.43],
    [754.1, 2.28],
    [1216, 3.68],
    [1900, 5.75],
    [2426, 7.35],
  ])("%d circular mils weigh %d lb per 1000 ft, to a hundredth of it", (circularMils, printed) => {
    expect(Math.abs(copperWeightPer1000Feet(circularMils) / printed - 1)).toBeLessThan(0.01);
  });

  it("follows from copper of 8.89 g/cm³ (derived)", () => {
    const squareInchesPerCircularMil = (Math.PI / 4) * 1e-6;
    const poundsPerCubicInch = (8.89 * 2.54 ** 3) / 453.59237;
    const expected = squareInchesPerCircularMil * 12_000 * poundsPerCubicInch;
    expect(Math.abs(copperWeightPer1000Feet(1) / expected - 1)).toBeLessThan(1e-4);
  });

  it("of the sizes of AC Table 11-9 is 11.6 lb (14) to 638 lb (0000) per 1000 ft (derived)", () => {
    const printed: [gauge: number, pounds: number][] = [
      [14, 11.6],
      [12, 17.8],
      [10, 28.3],
      [8, 51.4],
      [6, 81.2],
      [4, 129],
      [2, 201],
      [1, 247],
      [0, 316],
      [-1, 403],
      [-2, 504],
      [-3, 638],
    ];
    for (const [gauge, pounds] of printed) {
      const lookup = copperConductor(gauge);
      const weight = lookup.covered ? copperWeightPer1000Feet(lookup.value.circularMils) : Number.NaN;
      expect(Number(weight.toPrecision(3)), `size ${gauge}`).toBe(pounds);
    }
  });
});
