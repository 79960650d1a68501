import { describe, expect, test } from "vitest";
import type { ScaleReading } from "../../server/src/core/methods/balance";
import {
  emptyFromWeighing,
  type WeighingItem,
  type WeighingSheet,
} from "../../server/src/core/methods/weighing";
import { standardWeights } from "../../server/src/core/tables/standard-weights";
import { expectPrinted, expectPrintedBalance } from "./printed";

function sheetOf(scales: readonly ScaleReading[], items: readonly WeighingItem[] = []): WeighingSheet {
  const result = emptyFromWeighing(scales, items);
  if (!result.solved) throw new Error(JSON.stringify(result.problems));
  return result.sheet;
}

const mainWheels = 9.875 + 87.5;
const d6: ScaleReading[] = [
  { reading: 753, arm: mainWheels },
  { reading: 753, arm: mainWheels },
  { reading: 22, arm: 9.875 },
];

describe("weighing, published", () => {
  test("D6 FAA mechanic test item: hydraulic fluid stays (printed 96.11, cut off from 96.115)", () => {
    const { empty, items } = sheetOf(d6, [{ id: "hydraulic fluid", weight: 7, arm: -21, treatment: "keep" }]);
    expectPrintedBalance(empty, { weight: "1,528", moment: "146,864", arm: "96.12" }, 1);
    expect(items).toMatchObject([{ id: "hydraulic fluid", weight: 0 }]);
  });
  test("D7 EASA ATPL item: on three jacks, inches and kilograms", () => {
    const { empty } = sheetOf([
      { reading: 6488, arm: 161 },
      { reading: 17783, arm: 775 },
      { reading: 17783, arm: 775 },
    ]);
    expectPrintedBalance(empty, { weight: "42,054", moment: "28,608,218", arm: "680.3" });
  });
  test("D8 EASA ATPL item: ahead of the main wheels (printed 8.33, exact 8.337), aft of the nosewheel", () => {
    const from = (main: number) =>
      sheetOf([
        { reading: 285, arm: main - 92 },
        { reading: 1465, arm: main },
        { reading: 1395, arm: main },
      ]).empty;
    expectPrintedBalance(from(0), { weight: "3,145", arm: "-8.34" });
    expectPrinted(from(92).arm, "83.7");
  });
  test("D9 EASA ATPL item: published inputs, answer computed here", () => {
    const { empty } = sheetOf([
      { reading: 475, arm: 55 },
      { reading: 1046, arm: 121 },
      { reading: 1040, arm: 121 },
    ]);
    expectPrintedBalance(empty, { weight: "2,561", moment: "278,531", arm: "108.76" });
  });
  test("D29 FAA-H-8083-30, chapter 4: seven quarts of oil are 13.125 lb", () => {
    const weight = (7 / 4) * standardWeights.oil.value;
    const { asWeighed, empty } = sheetOf(d6, [{ id: "oil", weight, arm: -49, treatment: "remove" }]);
    expectPrinted(asWeighed.weight - empty.weight, "13.125");
    expect(empty.moment - asWeighed.moment).toBeCloseTo(49 * 13.125, 9);
  });
});

describe("weighing, what must hold", () => {
  test("tare comes off each scale's own reading (AC 43.13-1B par. 10-2r)", () => {
    const chocked = d6.map((scale, index) => ({
      ...scale,
      reading: scale.reading + 3 + index,
      tare: 3 + index,
    }));
    const [bare, sheet] = [sheetOf(d6), sheetOf(chocked)];
    expect(sheet.scales.map((row) => row.net)).toEqual([753, 753, 22]);
    expect(sheet.empty.arm).toBeCloseTo(bare.empty.arm!, 12);
  });
  test("full tanks off, unusable fuel back on, each at its own arm", () => {
    const drained = sheetOf(d6).empty;
    const fuel: WeighingItem = { id: "all fuel", weight: 240, arm: 100, treatment: "remove" };
    const unusable: WeighingItem = { id: "unusable fuel", weight: 6, arm: 90, treatment: "add" };
    const onWheels = (weight: number, arm: number): ScaleReading[] => {
      const onNose = (weight * (mainWheels - arm)) / 87.5;
      return [
        { reading: 753 + (weight - onNose) / 2, arm: mainWheels },
        { reading: 753 + (weight - onNose) / 2, arm: mainWheels },
        { reading: 22 + onNose, arm: 9.875 },
      ];
    };
    const { empty } = sheetOf(onWheels(240, 100), [fuel, unusable]);
    expect(empty.weight).toBeCloseTo(drained.weight + 6, 9);
    expect(empty.moment).toBeCloseTo(drained.moment + 6 * 90, 6);
  });
  test("what cannot be weighed is a problem, and says where", () => {
    const problems = (scales: ScaleReading[], items: WeighingItem[] = []) => {
      const result = emptyFromWeighing(scales, items);
      return result.solved ? [] : result.problems;
    };
    const item = (weight: number): WeighingItem => ({ id: "fuel", weight, arm: 0, treatment: "remove" });
    expect(problems([])).toEqual([{ reason: "no-scales" }]);
    expect(problems([{ reading: 5, tare: 6, arm: 0 }])).toEqual([{ reason: "tare-above-reading", scale: 0 }]);
    expect(problems([{ reading: Number.NaN, arm: 0 }])).toEqual([{ reason: "not-finite", scale: 0 }]);
    expect(problems(d6, [item(1), item(-1)])).toEqual([{ reason: "negative-item", item: 1 }]);
    expect(problems(d6, [item(1528)])).toEqual([{ reason: "no-empty-weight" }]);
    expect(problems(d6, [item(1527)])).toEqual([]);
  });
});
