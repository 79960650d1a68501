/**
 * Forces in the fasteners of a mount that lie in one plane. Lengths are in any one unit, forces in any one
 * unit; the plane has the axes u and v, and n points out of it towards what is mounted, u, v, n right-handed.
 *
 * Source: derived, statics of a rigid base on equal springs. A group shares a force by area, a moment in its
 * plane by the polar moment about its centroid, and an overturning moment by the moments of area about it.
 */

/** A fastener of the group; `area` weighs its share, 1 for all where all are alike. */
export interface GroupFastener {
  readonly u: number;
  readonly v: number;
  readonly area: number;
}

/** A force and the point that it acts at; `n` of the point is its height over the plane. */
export interface AppliedForce {
  readonly force: Vector;
  readonly at: Vector;
}

export interface Vector {
  readonly u: number;
  readonly v: number;
  readonly n: number;
}

/** What one fastener takes: the shear that the load puts on it, and its tension, negative where it is pressed. */
export interface FastenerForce {
  readonly u: number;
  readonly v: number;
  readonly tension: number;
}

/**
 * The forces in the fasteners, in their order.
 *
 * Tension is linear over the plane about the group's centroid. For a moment about one axis that is never less
 * in the worst fastener than what a base that tips over its outermost row gives (the largest distance from the
 * mean times that from the least to the mean is never below the variance), and the same for two rows.
 *
 * Undefined where the group can't hold the force: no fastener, one fastener under a moment, or all in one line
 * with a moment about that line.
 */
export function fastenerForces(
  fasteners: readonly GroupFastener[],
  { force, at }: AppliedForce,
): readonly FastenerForce[] | undefined {
  const area = fasteners.reduce((sum, one) => sum + one.area, 0);
  if (!(area > 0)) return undefined;
  const centre = {
    u: fasteners.reduce((sum, one) => sum + one.area * one.u, 0) / area,
    v: fasteners.reduce((sum, one) => sum + one.area * one.v, 0) / area,
  };
  const arms = fasteners.map((one) => ({ u: one.u - centre.u, v: one.v - centre.v, area: one.area }));
  const uu = arms.reduce((sum, arm) => sum + arm.area * arm.u ** 2, 0);
  const vv = arms.reduce((sum, arm) => sum + arm.area * arm.v ** 2, 0);
  const uv = arms.reduce((sum, arm) => sum + arm.area * arm.u * arm.v, 0);

  const off = { u: at.u - centre.u, v: at.v - centre.v };
  const twist = off.u * force.v - off.v * force.u;
  const tipping = { u: off.u * force.n - at.n * force.u, v: off.v * force.n - at.n * force.v };
  const reach = Math.hypot(off.u, off.v, at.n, Math.sqrt((uu + vv) / area));
  const noise = 1e-9 * Math.hypot(force.u, force.v, force.n) * reach;

  const turn = perUnit(twist, uu + vv, noise);
  const slope = slopes(tipping, { uu, vv, uv }, noise);
  if (turn === undefined || !slope) return undefined;
  return arms.map((arm) => ({
    u: arm.area * (force.u / area - turn * arm.v),
    v: arm.area * (force.v / area + turn * arm.u),
    tension: arm.area * (force.n / area + slope.u * arm.u + slope.v * arm.v),
  }));
}

interface SecondMoments {
  readonly uu: number;
  readonly vv: number;
  readonly uv: number;
}

/** Moment over resistance; none for a moment that is no more than noise, undefined where nothing resists it. */
function perUnit(moment: number, resistance: number, noise: number): number | undefined {
  if (Math.abs(moment) <= noise) return 0;
  return resistance > 0 ? moment / resistance : undefined;
}

/** How tension rises along u and v; undefined where the fasteners stand in one line and the moment is about it. */
function slopes(
  tipping: { readonly u: number; readonly v: number },
  { uu, vv, uv }: SecondMoments,
  noise: number,
): { readonly u: number; readonly v: number } | undefined {
  if (Math.hypot(tipping.u, tipping.v) <= noise) return { u: 0, v: 0 };
  const determinant = uu * vv - uv ** 2;
  if (determinant > 1e-12 * (uu + vv) ** 2) {
    return {
      u: (tipping.u * vv - tipping.v * uv) / determinant,
      v: (tipping.v * uu - tipping.u * uv) / determinant,
    };
  }
  const length = Math.hypot(uu, uv) || Math.hypot(uv, vv);
  if (!(length > 0)) return undefined;
  const [du, dv] = uu > 0 ? [uu / length, uv / length] : [0, 1];
  const across = tipping.u * dv - tipping.v * du;
  if (Math.abs(across) > Math.max(noise, 1e-9 * Math.hypot(tipping.u, tipping.v))) return undefined;
  const along = (tipping.u * du + tipping.v * dv) / (uu + vv);
  return { u: along * du, v: along * dv };
}

/**
 * Room left of a strength, as the trade writes it: allowable / applied - 1. Infinite where nothing is applied.
 *
 * Source: derived; the definition.
 */
export function marginOfSafety(allowable: number, applied: number): number {
  return applied > 0 ? allowable / applied - 1 : Number.POSITIVE_INFINITY;
}

/** Share of strength that shear and tension take together; sound up to 1. Rs^3 + Rt^2, for bolts. */
export function shearTensionInteraction(shearRatio: number, tensionRatio: number): number {
  return shearRatio ** 3 + tensionRatio ** 2;
}

/** Strength of a sheet against a fastener's shank: bearing strength x diameter x thickness. */
export function bearingStrength(stress: number, diameter: number, thickness: number): number {
  return stress * diameter * thickness;
}
