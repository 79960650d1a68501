import { type Part, partOf } from "./part";
import type { NumberFault } from "./problem";

export type NumberRead =
  /** The value is NaN for what is not on the number line: "NaN", "inf", "1/0". */
  | { readonly kind: "number"; readonly at: Part; readonly value: number }
  /** `meant` are the numbers that may have been meant, likeliest first. */
  | {
      readonly kind: "fault";
      readonly at: Part;
      readonly reason: NumberFault;
      readonly meant: readonly string[];
    };

type Reader = (match: readonly string[]) => number | { reason: NumberFault; meant: readonly string[] };

/**
 * The ways of the trade to write a number, in the order in which they are tried. Each starts with a sign, for
 * which typesetters have one of their own. None can match a text in more ways than one, so reading takes time
 * linear in its length.
 */
const forms: readonly (readonly [RegExp, Reader])[] = [
  [/([-+\u2212]?)\.?(?:nan|inf(?:inity)?)(?![a-z])/iy, () => Number.NaN],
  [/([-+\u2212]?)(\d[\d.]*(?:,[\d.]*)+)/y, ([, sign, run]) => readCommas(sign!, run!)],
  [
    /([-+\u2212]?)([1-9]\d{0,2}(?:[ \u00a0\u202f]\d{3})+(?:\.\d+)?)(?!\s?[\d/])/y,
    ([, sign, run]) => ({ reason: "thousands-space", meant: [sign + run!.replace(/\s/g, "")] }),
  ],
  [
    /([-+\u2212]?)(\d+)(?:\s+|\s*-\s*)(\d+)\/(\d+)/y,
    ([, sign, whole, above, below]) => signed(sign!, Number(whole) + divide(above!, below!)),
  ],
  [/([-+\u2212]?)(\d+)\/(\d+)/y, ([, sign, above, below]) => signed(sign!, divide(above!, below!))],
  [
    /([-+\u2212]?)((?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?)/iy,
    ([, sign, digits]) => signed(sign!, notLost(Number(digits), digits!)),
  ],
];

/** Digits that belong to no single number with the ones before them: "1.2.3", "5-6", "5 6". */
const moreDigits = /(?:[.,/]*|\s*[-\u2013]\s*|\s+)\d[\d.,/]*/y;

/**
 * The number that a quantity's text has from `from` on, after blanks: a decimal ("14.5", "-.040", "1.2e-4"), a
 * fraction ("1/8") or a whole number with a fraction ("1-1/4", "1 1/4").
 */
export function readNumber(text: string, from: number): NumberRead {
  const rest = partOf(text, from);
  if (rest.start === rest.end) return { kind: "fault", at: rest, reason: "empty", meant: [] };
  for (const [form, read] of forms) {
    const match = matchAt(form, text, rest.start);
    if (!match) continue;
    const at = { start: rest.start, end: form.lastIndex };
    const value = read(match);
    if (typeof value !== "number") return { kind: "fault", at, ...value };
    if (!matchAt(moreDigits, text, at.end)) return { kind: "number", at, value };
    return { kind: "fault", at: { ...at, end: moreDigits.lastIndex }, reason: "malformed", meant: [] };
  }
  return { kind: "fault", at: rest, reason: "no-number", meant: [] };
}

function matchAt(pattern: RegExp, text: string, start: number): RegExpExecArray | null {
  pattern.lastIndex = start;
  return pattern.exec(text);
}

/** NaN for a division by zero, which says nothing about size. */
function divide(above: string, below: string): number {
  return Number(below) === 0 ? Number.NaN : notLost(Number(above) / Number(below), above);
}

/** A value too small for a number must not pass for zero. */
function notLost(value: number, digits: string): number {
  return value === 0 && /^[0.]*[1-9]/.test(digits) ? Number.MIN_VALUE : value;
}

/** Never minus zero. */
function signed(sign: string, magnitude: number): number {
  return sign === "" || sign === "+" || magnitude === 0 ? magnitude : -magnitude;
}

function readCommas(sign: string, run: string): { reason: NumberFault; meant: readonly string[] } {
  const withoutCommas = sign + run.replaceAll(",", "");
  const withPoint = sign + run.replace(",", ".");
  if (/^[1-9]\d{0,2},\d{3}$/.test(run)) {
    // Also the way in which half the world writes three decimals.
    return { reason: "thousands-comma", meant: [withoutCommas, withPoint] };
  }
  if (/^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/.test(run)) {
    return { reason: "thousands-comma", meant: [withoutCommas] };
  }
  if (/^\d+,\d+$/.test(run)) return { reason: "decimal-comma", meant: [withPoint] };
  if (/^[1-9]\d{0,2}(?:\.\d{3})+,\d+$/.test(run)) {
    return { reason: "decimal-comma", meant: [sign + run.replaceAll(".", "").replace(",", ".")] };
  }
  return { reason: "malformed", meant: [] };
}
