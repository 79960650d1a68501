import { sameWithinRounding } from "../rounding";
import { exactly, times, toNumber } from "./exact";
import { gaugeSize } from "./gauge";
import type { UnitSymbol } from "./units";

/** Sizes that are written out in full; others take an exponent. */
const writtenOut = { from: 1e-6, below: 1e9 } as const;

/** Digits that tell any two numbers apart. */
const allDigits = 17;

/**
 * A number for people: so many significant digits, but never fewer than stand before the point (a moment of
 * 38466 stays one), without zeros at the end of the decimals, with an ASCII minus, and without an exponent from
 * 1e-6 to 1e9. For display only; it may round a value onto its limit (see `formatApart`).
 */
export function formatNumber(value: number, significantDigits = 4): string {
  if (value === 0 || !Number.isFinite(value)) return String(value + 0);
  const size = Math.abs(value);
  if (size < writtenOut.from || size >= writtenOut.below) return exponential(value, significantDigits);
  const before = Number(size.toExponential().split("e")[1]) + 1;
  return trimmed(value.toFixed(Math.max(0, significantDigits - before)));
}

/**
 * Two numbers that are compared, with as many digits as it takes to see which is larger: "0.5001" against
 * "0.5", where four digits would say 0.5 against 0.5. Equal numbers come out alike.
 */
export function formatApart(a: number, b: number, significantDigits = 4): readonly [string, string] {
  for (let digits = significantDigits; digits < allDigits; digits++) {
    const texts = [formatNumber(a, digits), formatNumber(b, digits)] as const;
    if (a === b || texts[0] !== texts[1]) return texts;
  }
  return [formatNumber(a, allDigits), formatNumber(b, allDigits)];
}

/** A number with its unit as records write it: "0.41 V", "20 %", "70 degC", "8 AWG", "1/0 AWG". */
export function formatMeasure(value: number, unit: UnitSymbol, significantDigits = 4): string {
  const number =
    unit === "AWG" && Number.isInteger(value) ? gaugeSize(value) : formatNumber(value, significantDigits);
  return `${number} ${unit}`;
}

/**
 * The smallest multiple of `step` that is not below the value: for what must not fall short, such as ballast.
 * A value that is a multiple but for binary rounding stays. A step that is not above zero changes nothing.
 */
export function roundUp(value: number, step: number): number {
  return roundToStep(value, step, Math.ceil);
}

/** The largest multiple of `step` that is not above the value: for what must not be exceeded, such as limits. */
export function roundDown(value: number, step: number): number {
  return roundToStep(value, step, Math.floor);
}

function roundToStep(value: number, step: number, choose: (steps: number) => number): number {
  const steps = value / step;
  if (!(step > 0) || !Number.isFinite(steps)) return value;
  const nearest = Math.round(steps);
  const whole = sameWithinRounding(steps, nearest) ? nearest : choose(steps);
  // Exact, so that 77 steps of 0.1 are 7.7 and nothing is left behind it.
  return toNumber(times(exactly(whole), exactly(step)));
}

function exponential(value: number, significantDigits: number): string {
  const [mantissa = "", exponent = ""] = value.toExponential(significantDigits - 1).split("e");
  return `${trimmed(mantissa)}e${exponent.replace("+", "")}`;
}

/** Zeros at the end of decimals say nothing that a person asked for. */
function trimmed(digits: string): string {
  return digits.includes(".") ? digits.replace(/\.?0+$/, "") : digits;
}
