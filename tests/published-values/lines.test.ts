/** Published figures of hoses, tubes, flare nuts and refrigerant, with document, edition and table beside each. */
import { describe, expect, test } from "vitest";
import {
  flareNutTorque,
  type TorqueColumn,
  type TorqueTable,
} from "../../server/src/core/tables/flare-nut-torque";
import {
  handbookSupportSource,
  hoseBySize,
  hoseShortening,
  hoseSlack,
  hoseSupportSpacing,
  inchesPerDash,
  leastFlattenedShare,
  spacingShareWithFittings,
  steelSupportSource,
  tubeBendRadius,
  tubeBendSource,
  tubeSupportSpacing,
} from "../../server/src/core/tables/fluid-lines";
import { drainSlope, passThroughFill } from "../../server/src/core/tables/line-installation-limits";
import type { Lookup } from "../../server/src/core/tables/lookup";
import { saturationPoints, saturationPressure } from "../../server/src/core/tables/refrigerant";

function given<T>(lookup: Lookup<T>): T {
  if (!lookup.covered) throw new Error("not covered");
  return lookup.value;
}

describe("AC 43.13-1B Table 9-3 (9/8/98, p. 9-22), MIL-H-8794 hose", () => {
  // dash, tube OD in, hose OD in, operating psi, burst psi, proof psi, least bend radius in
  const printed: [number, number, number, number, number, number, number][] = [
    [3, 3 / 16, 0.45, 3000, 12000, 6000, 3],
    [4, 1 / 4, 0.52, 3000, 12000, 6000, 3],
    [5, 5 / 16, 0.58, 3000, 10000, 5000, 3.38],
    [6, 3 / 8, 0.67, 2000, 9000, 4500, 4],
    [8, 1 / 2, 0.77, 2000, 8000, 4000, 4.63],
    [10, 5 / 8, 0.92, 1750, 7000, 3500, 5.5],
    [12, 3 / 4, 1.08, 1750, 6000, 3000, 6.5],
    [16, 1, 1.23, 800, 3200, 1600, 7.38],
    [20, 1.25, 1.5, 600, 2500, 1250, 9],
    [24, 1.5, 1.75, 500, 2000, 1000, 11],
    [32, 2, 2.22, 350, 1400, 700, 13.25],
    [40, 2.5, 2.88, 200, 1000, 300, 24],
    [48, 3, 3.56, 200, 800, 300, 33],
  ];

  test.each(printed)("-%d", (dash, size, outsideDiameter, operating, burst, proof, bendRadius) => {
    expect(given(hoseBySize(size))).toMatchObject({
      dash,
      outsideDiameter,
      operating,
      burst,
      proof,
      bendRadius,
      // As printed below the table: -3 to -12 up to +250 degF, -16 to -48 up to +275 degF.
      hottest: dash <= 12 ? 250 : 275,
    });
  });

  // D24, same table: a -6 hose bent round 3.5 in is too tight, round 4.0 in it is as it may be.
  test("a -6 hose round 3.5 in and round 4.0 in", () => {
    const { bendRadius } = given(hoseBySize(3 / 8));
    expect(3.5).toBeLessThan(bendRadius);
    expect(4).toBe(bendRadius);
  });

  test("no size between two dashes", () => {
    expect(hoseBySize(7 / 16).covered).toBe(false);
    expect(hoseBySize(3.5).covered).toBe(false);
  });
});

describe("hoses, AC 43.13-1B ch. 9", () => {
  // D25: a hose with 40 in between its fittings takes 2.0 to 3.2 in of slack.
  test("slack is 5 to 8 %", () => {
    expect(40 * hoseSlack.least).toBeCloseTo(2, 12);
    expect(40 * hoseSlack.most).toBeCloseTo(3.2, 12);
  });

  test("shortens by up to 4 % (Figure 9-9), is clamped every 24 in", () => {
    expect(hoseShortening.value).toBe(0.04);
    expect(hoseSupportSpacing.value).toBe(24);
  });
});

describe("MIL-H-8891A Table II, steel tubes", () => {
  const printed: [number, number][] = [
    [1 / 4, 16],
    [5 / 16, 18],
    [3 / 8, 20],
    [1 / 2, 23],
    [5 / 8, 25.5],
    [3 / 4, 27.5],
    [1, 30],
    [1.25, 31.5],
    [1.5, 32.5],
  ];
  test.each(printed)("%d in: %d in", (size, spacing) => {
    const lookup = tubeSupportSpacing("steel", size);
    expect(given(lookup)).toBe(spacing);
    expect(lookup.source).toBe(steelSupportSource);
  });
});

// MIL-H-8891A Table II, its note: about 20 % nearer where the tube carries fittings between its supports.
test("supports a fifth nearer where a tube carries fittings", () => {
  expect(spacingShareWithFittings).toEqual({ value: 0.8, source: steelSupportSource });
});

// NAVEDTRA 14018: a tube's dash number counts sixteenths of an inch of its outside diameter.
test("a -6 tube is 3/8 in", () => {
  expect(6 * inchesPerDash.value).toBe(3 / 8);
});

describe("FAA-H-8083-30, support spacing (from memory; its steel column equals MIL-H-8891A's)", () => {
  // OD, aluminium, steel
  const remembered: [number, number, number][] = [
    [1 / 8, 9.5, 11.5],
    [3 / 16, 12, 14],
    [1 / 4, 13.5, 16],
    [5 / 16, 15, 18],
    [3 / 8, 16.5, 20],
    [1 / 2, 19, 23],
    [5 / 8, 22, 25.5],
    [3 / 4, 24, 27.5],
    [1, 26.5, 30],
  ];
  test.each(remembered)("%d in: %d in aluminium, %d in steel", (size, aluminium, steel) => {
    expect(given(tubeSupportSpacing("aluminium", size))).toBe(aluminium);
    expect(given(tubeSupportSpacing("steel", size))).toBe(steel);
    expect(tubeSupportSpacing("aluminium", size).source).toBe(handbookSupportSource);
    expect(handbookSupportSource.standing).toBe("memory");
  });
  test("nothing for copper, nor for aluminium above 1 in", () => {
    expect(tubeSupportSpacing("copper", 0.25).covered).toBe(false);
    expect(tubeSupportSpacing("aluminium", 1.25).covered).toBe(false);
  });
});

describe("AC 43.13-1B Table 9-2 (from memory: its page was not found)", () => {
  const remembered: [number, number, number | undefined][] = [
    [1 / 8, 0.375, undefined],
    [3 / 16, 0.4375, 0.65625],
    [1 / 4, 0.5625, 0.875],
    [5 / 16, 0.75, 1.125],
    [3 / 8, 0.9375, 1.3125],
    [1 / 2, 1.25, 1.75],
    [5 / 8, 1.5, 2.1875],
    [3 / 4, 1.75, 2.625],
    [1, 3, 3.5],
    [1.25, 3.75, 4.375],
    [1.5, 5, 5.25],
  ];
  test.each(remembered)("%d in: %d in aluminium, %d in steel", (size, aluminium, steel) => {
    expect(given(tubeBendRadius("aluminium", size))).toBe(aluminium);
    const ofSteel = tubeBendRadius("steel", size);
    expect(ofSteel.covered ? ofSteel.value : undefined).toBe(steel);
    expect(tubeBendSource.standing).toBe("memory");
  });

  // AC 43.13-1B ch. 9, tube bending.
  test("three quarters of the diameter are left across a bend", () => {
    expect(leastFlattenedShare.value).toBe(0.75);
  });
});

describe("flare nut torque, in lb", () => {
  type Rows = [TorqueTable, TorqueColumn, [number, number, number][]];
  const printed: Rows[] = [
    [
      "NAVEDTRA 14018 Table 5-9",
      "steel-tube",
      [
        [1 / 8, 75, 85],
        [3 / 16, 95, 105],
        [1 / 4, 135, 145],
        [5 / 16, 170, 190],
        [3 / 8, 215, 245],
        [1 / 2, 430, 470],
        [5 / 8, 620, 680],
        [3 / 4, 855, 945],
        [1, 1140, 1260],
      ],
    ],
    [
      "NAVEDTRA 14018 Table 5-9",
      "aluminium-tube",
      [
        [1 / 8, 20, 30],
        [3 / 16, 25, 35],
        [1 / 4, 50, 65],
        [5 / 16, 70, 90],
        [3 / 8, 110, 130],
        [1 / 2, 230, 260],
        [5 / 8, 330, 360],
        [3 / 4, 460, 500],
        [1, 640, 700],
      ],
    ],
    // TM 55-1520-240, columns C, D and E.
    [
      "TM 55-1520-240",
      "aluminium-tube",
      [
        [1 / 4, 50, 65],
        [3 / 8, 100, 125],
        [1 / 2, 210, 250],
        [5 / 8, 300, 350],
        [3 / 4, 425, 500],
        [1, 600, 700],
      ],
    ],
    [
      "TM 55-1520-240",
      "steel-tube",
      [
        [1 / 4, 135, 150],
        [3 / 8, 270, 300],
        [1 / 2, 450, 500],
        [5 / 8, 650, 700],
        [3 / 4, 900, 1000],
        [1, 1200, 1400],
      ],
    ],
    [
      "TM 55-1520-240",
      "hose",
      [
        [1 / 4, 100, 120],
        [3 / 8, 210, 250],
        [1 / 2, 340, 420],
        [5 / 8, 400, 480],
        [3 / 4, 725, 850],
        [1, 900, 1150],
      ],
    ],
  ];
  const cells = printed.flatMap(([table, column, rows]) =>
    rows.map(([size, least, most]) => ({ table, column, size, least, most })),
  );
  test.each(cells)("$table, $column, $size in: $least to $most", ({ table, column, size, least, most }) => {
    expect(given(flareNutTorque(table, column, size))).toEqual([least, most]);
  });

  test("what a print leaves out is not covered", () => {
    expect(flareNutTorque("TM 55-1520-240", "steel-tube", 5 / 16).covered).toBe(false);
    expect(flareNutTorque("NAVEDTRA 14018 Table 5-9", "hose", 1 / 4).covered).toBe(false);
  });
});

// D26 is the point at 100 degF; its tolerance of 1 psi covers what other prints round otherwise.
describe("R-134a saturation (NIST-based table), psig", () => {
  const printed: [number, number][] = [
    [-10, 1.9],
    [0, 6.5],
    [10, 11.9],
    [20, 18.4],
    [30, 26.1],
    [50, 45.4],
    [60, 57.4],
    [70, 71.1],
    [80, 86.7],
    [90, 104.3],
    [100, 124.2],
    [110, 146.4],
    [120, 171.2],
    [140, 229.2],
    [150, 262.9],
  ];
  test.each(printed)("%d degF: %d psi", (fahrenheit, psi) => {
    expect(given(saturationPressure(fahrenheit))).toBe(psi);
  });

  test("the points are convex, so that a straight line between two of them lies above the curve", () => {
    const slopes = saturationPoints.slice(1).map(([x, y], index) => {
      const [x0, y0] = saturationPoints[index]!;
      return (y - y0) / (x - x0);
    });
    expect(slopes).toEqual(slopes.toSorted((a, b) => a - b));
    expect(given(saturationPressure(130))).toBeCloseTo((171.2 + 229.2) / 2, 9);
  });

  test("nothing above 150 degF, nor below -10 degF", () => {
    expect(saturationPressure(150.1).covered).toBe(false);
    expect(saturationPressure(-10.1).covered).toBe(false);
  });
});

// FAA-H-8083-31 (memory): inside, a conduit is about 25 % larger than its bundle, which leaves it 1 / 1.25² of the area.
test("what goes through a hole fills at most 64 % of it", () => {
  expect(passThroughFill.value).toBeCloseTo(1 / 1.25 ** 2, 12);
  expect(passThroughFill.source.standing).toBe("memory");
});

// Common practice, no source: a quarter of an inch for each foot, from the plumbing of buildings.
test("a drain's slope is a habit, not a published limit", () => {
  expect(drainSlope.value * 12).toBeCloseTo(0.25, 12);
  expect(drainSlope.source.standing).toBe("common-practice");
});
