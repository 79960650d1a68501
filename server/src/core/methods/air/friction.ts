/** Friction of ducts. */

/** Up to here flow is laminar; from `turbulentFrom` on it is turbulent. */
export const laminarTo = 2300;
export const turbulentFrom = 4000;

const mostSteps = 50;

/**
 * Darcy friction factor: 64/Re in laminar flow, Colebrook's equation in turbulent flow. Between the two, where
 * flow changes from moment to moment, a straight line joins them, so that the factor has no jump.
 *
 * @param reynolds above zero
 * @param roughness over the hydraulic diameter
 */
export function frictionFactor(reynolds: number, roughness: number): number {
  if (reynolds <= laminarTo) return 64 / reynolds;
  if (reynolds >= turbulentFrom) return colebrook(reynolds, roughness);
  const share = (reynolds - laminarTo) / (turbulentFrom - laminarTo);
  return (1 - share) * (64 / laminarTo) + share * colebrook(turbulentFrom, roughness);
}

/** 1/sqrt(f) = -2 log10(e / 3.7 D + 2.51 / (Re sqrt(f))), by Newton's method from Haaland's estimate. */
export function colebrook(reynolds: number, roughness: number): number {
  let x = 1 / Math.sqrt(haaland(reynolds, roughness));
  for (let step = 0; step < mostSteps; step++) {
    const inner = roughness / 3.7 + (2.51 * x) / reynolds;
    const excess = x + 2 * Math.log10(inner);
    const slope = 1 + (2 / Math.LN10) * (2.51 / (reynolds * inner));
    const change = excess / slope;
    x -= change;
    if (Math.abs(change) <= 1e-14 * x) break;
  }
  return 1 / x ** 2;
}

/** 1/sqrt(f) = -1.8 log10[(e / 3.7 D)^1.11 + 6.9 / Re]: an estimate without iteration. */
export const haaland = (reynolds: number, roughness: number): number =>
  1 / (-1.8 * Math.log10((roughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** 2;
