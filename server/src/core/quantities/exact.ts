/**
 * Exact arithmetic for unit factors, so that a conversion rounds once and only at its end: 12 in and 1 ft are
 * the same number to the last bit.
 */

/** n/d with d > 0; not necessarily in lowest terms. */
export interface Rational {
  readonly n: bigint;
  readonly d: bigint;
}

const decimalLiteral = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/;

/**
 * The rational that a finite number, or a decimal written out, stands for as it is printed: 0.1 is one tenth,
 * not the binary fraction next to it, because that is what somebody wrote.
 */
export function exactly(value: number | string): Rational {
  const [, sign = "", whole = "0", fraction = "", exponent = "0"] = decimalLiteral.exec(String(value)) ?? [];
  const digits = BigInt(sign + whole + fraction);
  const scale = Number(exponent) - fraction.length;
  return scale < 0 ? { n: digits, d: 10n ** BigInt(-scale) } : { n: digits * 10n ** BigInt(scale), d: 1n };
}

export function plus(a: Rational, b: Rational): Rational {
  return { n: a.n * b.d + b.n * a.d, d: a.d * b.d };
}

export function minus(a: Rational, b: Rational): Rational {
  return { n: a.n * b.d - b.n * a.d, d: a.d * b.d };
}

export function times(a: Rational, b: Rational): Rational {
  return { n: a.n * b.n, d: a.d * b.d };
}

/** a/b; b must be positive, as every unit factor and rounding step is. */
export function over(a: Rational, b: Rational): Rational {
  return { n: a.n * b.d, d: a.d * b.n };
}

/** Whole numbers up to here are numbers too, and their quotient is rounded once. */
const largestWhole = BigInt(Number.MAX_SAFE_INTEGER);

/** More than the 53 bits of a number plus the two that decide a rounding. */
const quotientBits = 66;

/** The number next to the rational (ties to even). Never minus zero. */
export function toNumber(a: Rational): number {
  const magnitude = a.n < 0n ? -a.n : a.n;
  if (magnitude <= largestWhole && a.d <= largestWhole) return Number(a.n) / Number(a.d);
  const shift = quotientBits - (bitLength(magnitude) - bitLength(a.d));
  const n = shift > 0 ? magnitude << BigInt(shift) : magnitude;
  const d = shift > 0 ? a.d : a.d << BigInt(-shift);
  const quotient = n / d;
  // An odd last bit keeps a value just above a tie from being taken for the tie.
  const sticky = quotient * d === n ? quotient : quotient | 1n;
  // In two steps, because 2 ** -shift alone can leave the range where the result does not.
  const half = Math.trunc(shift / 2);
  const result = Number(sticky) * 2 ** -half * 2 ** -(shift - half);
  return a.n < 0n ? -result : result;
}

/** Bits that hold a positive integer, at most three too many. */
function bitLength(a: bigint): number {
  return a.toString(16).length * 4;
}
