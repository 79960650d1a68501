import { expect } from "vitest";
import { armOf, type Balance, type PointMass } from "../../server/src/core/methods/balance";

/** As printed: within half of the last digit, plus half a unit for each `line` that the document rounded. */
export function expectPrinted(actual: number | undefined, printed: string, lines = 0): void {
  const decimals = printed.split(".")[1]?.length ?? 0;
  const printedValue = Number(printed.replaceAll(",", ""));
  const room = 0.5 * 10 ** -decimals + 0.5 * lines;
  expect(actual).toBeDefined();
  expect(
    Math.abs(actual! - printedValue),
    `${actual} is not what is printed as ${printed}`,
  ).toBeLessThanOrEqual(room * (1 + 1e-9));
}

export function expectPrintedBalance(
  actual: Balance,
  printed: { weight: string; moment?: string; arm: string },
  lines = 0,
): void {
  expectPrinted(actual.weight, printed.weight);
  if (printed.moment !== undefined) expectPrinted(actual.moment, printed.moment, lines);
  expectPrinted(actual.arm, printed.arm);
}

/** An item of which the document prints weight and moment. */
export function withMoment(weight: number, moment: number): PointMass {
  return { weight, arm: armOf(weight, moment)! };
}
