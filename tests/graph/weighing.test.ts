/** Published weighings as records: scales in, empty weight out. The methods' own tests have the same examples. */
import { describe, test } from "vitest";
import { weightsOf } from "../../server/src/core/graph/derivations";
import { convert, type UnitSymbol } from "../../server/src/core/quantities";
import { everyLoadingExample } from "../../server/src/core/rules/weights/every-loading-example";
import { expectPrinted } from "../published-values/printed";
import { judge } from "../remedies/support";

interface Sheet {
  readonly weight: number;
  readonly arm: number;
}

/** The empty weight and its arm in the units of the example. */
function weigh(
  scales: readonly string[],
  items: readonly string[] = [],
  weightUnit: UnitSymbol<"mass"> = "lb",
): Sheet {
  const airframe = [
    "  weighing:",
    "    dated: 2026-03-12",
    "    reference: 0 in",
    "    scales:",
    ...scales.map((scale, index) => `      - { id: S${index + 1}, ${scale} }`),
    ...(items.length > 0 ? ["    items:", ...items.map((item) => `      - ${item}`)] : []),
  ].join("\n");
  const { emptyWeight, emptyCg } = weightsOf(judge(everyLoadingExample({ airframe })).project!).change.before
    .weighing!;
  return {
    weight: convert(emptyWeight!.value, emptyWeight!.unit as UnitSymbol<"mass">, weightUnit, "mass"),
    arm: convert(emptyCg!.value, emptyCg!.unit as UnitSymbol<"length">, "in", "length"),
  };
}

// FAA-H-8083-1B (2016), ch. 10; D2 to D5 from FAA-H-8083-1, from memory.
describe("main wheels ahead of and behind the datum", () => {
  const nosewheel = (main: number) =>
    weigh([`reading: 340 lb, arm: ${main - 78} in`, `reading: 1666 lb, arm: ${main} in`]).arm;
  const tailwheel = (main: number) =>
    weigh([`reading: 67 lb, arm: ${main + 222} in`, `reading: 1151 lb, arm: ${main} in`]).arm;

  test("D1 to D3: nosewheel", () => {
    expectPrinted(nosewheel(0), "-13.2");
    expectPrinted(nosewheel(128), "114.8");
    expectPrinted(nosewheel(-75), "-88.2");
  });
  test("D4 and D5: tailwheel", () => {
    expectPrinted(tailwheel(7.5), "19.7");
    expectPrinted(tailwheel(-80), "-67.8");
  });
});

// FAA mechanic test item; printed 96.11, cut off from 96.115. The fluid is in the system and stays.
test("D6: hydraulic fluid on board belongs to the empty weight", () => {
  const fluid =
    "{ id: hydraulic, what: hydraulic-fluid, on-board: true, volume: 1 gal, density: 7 lb/gal, arm: -21 in }";
  const mains = "reading: 753 lb, arm: 97.375 in";
  const { weight, arm } = weigh([mains, mains, "reading: 22 lb, arm: 9.875 in"], [fluid]);
  expectPrinted(weight, "1,528");
  expectPrinted(arm, "96.12");
});

// EASA ATPL items. D8 prints 8.33 where the exact distance is 8.337; the answer of D9 was computed here.
describe("three scales", () => {
  test("D7: on jacks, kilograms and inches", () => {
    const mains = "reading: 17783 kg, arm: 775 in";
    const { weight, arm } = weigh(["reading: 6488 kg, arm: 161 in", mains, mains], [], "kg");
    expectPrinted(weight, "42,054");
    expectPrinted(arm, "680.3");
  });
  test("D8: from the main wheels, and from the nosewheel", () => {
    const from = (main: number) =>
      weigh(
        [
          `reading: 285 kg, arm: ${main - 92} in`,
          `reading: 1465 kg, offset: ${main} in`,
          `reading: 1395 kg, offset: ${main} in`,
        ],
        [],
        "kg",
      );
    expectPrinted(from(0).weight, "3,145");
    expectPrinted(from(0).arm, "-8.34");
    expectPrinted(from(92).arm, "83.7");
  });
  test("D9: nosewheel, datum ahead of everything; with tare on each scale", () => {
    const at = (tare: number) =>
      weigh([
        `reading: ${475 + tare} lb, tare: ${tare} lb, arm: 55 in`,
        `reading: ${1046 + 2 * tare} lb, tare: ${2 * tare} lb, arm: 121 in`,
        `reading: ${1040 + 3 * tare} lb, tare: ${3 * tare} lb, arm: 121 in`,
      ]);
    for (const tare of [0, 4]) {
      expectPrinted(at(tare).weight, "2,561");
      expectPrinted(at(tare).arm, "108.76");
    }
  });
});
