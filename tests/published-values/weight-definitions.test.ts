/** What the empty weight includes, and how far it may drift before it is established anew. */
import { describe, expect, it, test } from "vitest";
import { cumulativeChange } from "../../server/src/core/tables/cumulative-change";
import {
  type CertificationBasis,
  emptyWeightDefinitions,
  type WeighedThing,
} from "../../server/src/core/tables/empty-weight-definitions";

describe("empty weight", () => {
  const included = (basis: CertificationBasis, ...things: WeighedThing[]) =>
    things.map((thing) => emptyWeightDefinitions[basis].includes.includes(thing));
  const bases = Object.keys(emptyWeightDefinitions) as CertificationBasis[];

  // AC 43.13-1B (9/8/98, Change 1 of 9/27/01) par. 10-2b.
  it.each(bases)(
    "%s: equipment and ballast that are fixed, coolant, hydraulic fluid, residual fuel and oil",
    (basis) => {
      expect(
        included(
          basis,
          "installed-equipment",
          "fixed-ballast",
          "coolant",
          "hydraulic-fluid",
          "unusable-fuel",
          "undrainable-oil",
        ),
      ).toEqual([true, true, true, true, true, true]);
    },
  );

  // CAR 3.73 (secondary): undrainable oil only. 14 CFR 23.29 (before Amdt 23-64), 25.29: full oil. AC par. 10-15g
  // says the same of the two.
  it("has full oil, but for CAR 3", () => {
    const withOil = bases.filter((basis) => included(basis, "drainable-oil")[0]);
    expect(withOil).toEqual([
      "14 CFR 23 before Amdt 23-64",
      "14 CFR 23 from Amdt 23-64",
      "14 CFR 25",
      "14 CFR 29",
    ]);
    expect(emptyWeightDefinitions["CAR 3"].source.standing).toBe("secondary");
    expect(emptyWeightDefinitions["14 CFR 23 before Amdt 23-64"].source.standing).toBe("published");
  });

  // 14 CFR 23.29 and 25.29: potable water and engine injection fluid are excepted. A set of study cards has "full
  // oil and fuel" since 1 March 1978: it is full oil, and unusable fuel.
  it.each(bases)("%s: no usable fuel, potable water or injection fluid, and nothing foreign", (basis) => {
    expect(included(basis, "usable-fuel", "potable-water", "injection-fluid", "foreign")).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });
});

// AMC1 CAT.POL.MAB.100(b), AMC1 SPO.POL.105(b), GM1 NCO.POL.105: 0.5 % of the maximum landing mass, 0.5 % of the chord.
test("cumulative change: half a per cent of the landing weight, or of the chord", () => {
  expect(cumulativeChange).toMatchObject({ weightPercent: 0.5, cgPercent: 0.5 });
  expect(cumulativeChange.source.standing).toBe("published");
});
