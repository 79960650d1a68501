import { expect, it } from "vitest";
import { crossingOf } from "../../server/src/core/methods/envelope";
import { balanceExample } from "../../server/src/core/rules/weights/balance-example";
import { faultsIn, remediesFor } from "../remedies/support";

const point = (weight: number, arm: number, orLess = false) => ({ weight, arm, orLess });

it("finds limits that were taken for each other, and where one point lies beyond the other line", () => {
  const forward = [point(2000, 82, true), point(3800, 88)];
  const aft = [point(2000, 95, true), point(3800, 95)];
  expect(crossingOf({ forward, aft })).toBeUndefined();
  expect(crossingOf({ forward: aft, aft: forward })).toMatchObject({ weight: 2000, isEverywhere: true });
  // 82 + 16 x 1300 / 1800 reaches 95 at 3462.5: only the heavy end is crossed.
  const steep = crossingOf({ forward: [point(2000, 82), point(3800, 100)], aft })!;
  expect(steep).toMatchObject({ weight: 3800, aft: 95, isEverywhere: false });
  expect(steep.forward).toBeCloseTo(100, 9);
});

it("lets limits meet in a point, and step at one weight", () => {
  const meeting = { forward: [point(2000, 82), point(3800, 95)], aft: [point(2000, 95), point(3800, 95)] };
  expect(crossingOf(meeting)).toBeUndefined();
  const stepping = {
    forward: [point(2000, 80), point(3000, 80), point(3000, 86), point(3800, 86)],
    aft: [point(2000, 84), point(3000, 84), point(3000, 95), point(3800, 95)],
  };
  expect(crossingOf(stepping)).toBeUndefined();
});

it("sees no crossing in the noise of two limits that meet at the datum", () => {
  for (let arm = 0.1; arm < 5; arm += 0.1) {
    const forward = [point(1700, -3 * arm), point(2333.3, 0)];
    expect(crossingOf({ forward, aft: [point(1700, arm), point(2333.3, 0)] })).toBeUndefined();
  }
});

it("says nothing where one side is not given, and looks at the one weight where both are", () => {
  expect(crossingOf({ forward: [], aft: [point(2000, 82)] })).toBeUndefined();
  expect(crossingOf({ forward: [point(2000, 95)], aft: [point(2000, 82)] })).toMatchObject({ forward: 95 });
});

it("is the one finding of an envelope, in which the names are changed", () => {
  const swapped = balanceExample().replace(
    /forward: (.*)\n( *)aft: (.*)\n/,
    (_, forward, indent, aft) => `forward: ${aft}\n${indent}aft: ${forward}\n`,
  );
  expect(swapped).not.toBe(balanceExample());
  expect(faultsIn(swapped)).toEqual(["envelope-limits-crossed"]);
  const [remedy] = remediesFor("envelope-limits-crossed", swapped);
  expect(remedy?.title).toBe("Change the names of 'forward' and 'aft'");
  expect(faultsIn(remedy!.text)).toEqual(faultsIn(balanceExample()));
});
