/** Fastener groups against statics: what the fasteners take together is what the load puts on them. */

import { describe, expect, it } from "vitest";
import {
  type AppliedForce,
  type FastenerForce,
  fastenerForces,
  type GroupFastener,
} from "../../server/src/core/methods/fastener-group";
import { fc } from "../support/random";

const coordinate = fc.double({ min: -20, max: 20, noNaN: true });
const force = fc.double({ min: -5000, max: 5000, noNaN: true });
const vector = (one: fc.Arbitrary<number>) => fc.record({ u: one, v: one, n: one });
const applied = fc.record({ force: vector(force), at: vector(coordinate) });
const group = fc.array(
  fc.record({ u: coordinate, v: coordinate, area: fc.double({ min: 0.1, max: 3, noNaN: true }) }),
  { minLength: 3, maxLength: 12 },
);

/** Far enough from one line that rounding does not decide. */
function spread(fasteners: readonly GroupFastener[]): boolean {
  const [first] = fasteners;
  return fasteners.some((a) =>
    fasteners.some(
      (b) => Math.abs((a.u - first!.u) * (b.v - first!.v) - (a.v - first!.v) * (b.u - first!.u)) > 1,
    ),
  );
}

const close = (a: number, b: number, size: number) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-7 * (1 + size));

/** The load's force and moment about the origin less those of the fasteners: six numbers, all zero. */
function unbalanced(
  fasteners: readonly GroupFastener[],
  { force: F, at }: AppliedForce,
  forces: readonly FastenerForce[],
): number[] {
  const sums = [F.u, F.v, F.n, at.v * F.n - at.n * F.v, at.n * F.u - at.u * F.n, at.u * F.v - at.v * F.u];
  for (const [index, { u, v, tension }] of forces.entries()) {
    const { u: x, v: y } = fasteners[index]!;
    for (const [part, taken] of [u, v, tension, y * tension, -x * tension, x * v - y * u].entries()) {
      sums[part]! -= taken;
    }
  }
  return sums;
}

describe("equilibrium", () => {
  it("the fasteners hold the force and its moments about any point", () => {
    fc.assert(
      fc.property(group, applied, (fasteners, load) => {
        fc.pre(spread(fasteners));
        const forces = fastenerForces(fasteners, load)!;
        for (const sum of unbalanced(fasteners, load, forces)) close(sum, 0, 5000 * 40);
      }),
    );
  });

  it("is that of springs: of all ways to hold the load, the one with the least energy", () => {
    // A push along any way of holding no load at all only adds energy, so the forces are square to all of them.
    fc.assert(
      fc.property(group, applied, applied, (fasteners, load, other) => {
        fc.pre(spread(fasteners));
        const forces = fastenerForces(fasteners, load)!;
        // Another way to hold a second load: all of it on three fasteners that span a triangle.
        const chosen = triangleOf(fasteners);
        const part = fastenerForces(
          chosen.map((index) => fasteners[index]!),
          other,
        )!;
        const whole = fastenerForces(fasteners, other)!;
        let work = 0;
        for (const [index, { area }] of fasteners.entries()) {
          const own = forces[index]!;
          const at = chosen.indexOf(index);
          const difference = {
            u: (at < 0 ? 0 : part[at]!.u) - whole[index]!.u,
            v: (at < 0 ? 0 : part[at]!.v) - whole[index]!.v,
            tension: (at < 0 ? 0 : part[at]!.tension) - whole[index]!.tension,
          };
          work += (own.u * difference.u + own.v * difference.v + own.tension * difference.tension) / area;
        }
        const size = Math.max(
          ...[...forces, ...part, ...whole].map(({ u, v, tension }) => Math.hypot(u, v, tension)),
        );
        expect(Math.abs(work)).toBeLessThanOrEqual(1e-7 * (1 + size ** 2) * fasteners.length * 10);
      }),
    );
  });
});

/** Three fasteners of the group that are far from one line. */
function triangleOf(fasteners: readonly GroupFastener[]): readonly number[] {
  let best = { size: 0, indices: [0, 1, 2] };
  for (let a = 0; a < fasteners.length; a++) {
    for (let b = a + 1; b < fasteners.length; b++) {
      for (let c = b + 1; c < fasteners.length; c++) {
        const [p, q, r] = [fasteners[a]!, fasteners[b]!, fasteners[c]!];
        const size = Math.abs((q.u - p.u) * (r.v - p.v) - (q.v - p.v) * (r.u - p.u));
        if (size > best.size) best = { size, indices: [a, b, c] };
      }
    }
  }
  return best.indices;
}

describe("properties", () => {
  it("moving group and load together changes nothing", () => {
    fc.assert(
      fc.property(group, applied, coordinate, coordinate, (fasteners, { force: F, at }, du, dv) => {
        fc.pre(spread(fasteners));
        const before = fastenerForces(fasteners, { force: F, at })!;
        const after = fastenerForces(
          fasteners.map((one) => ({ ...one, u: one.u + du, v: one.v + dv })),
          { force: F, at: { ...at, u: at.u + du, v: at.v + dv } },
        )!;
        for (const [index, { u, v, tension }] of after.entries()) {
          const size = 5000 * 40;
          close(u, before[index]!.u, size);
          close(v, before[index]!.v, size);
          close(tension, before[index]!.tension, size);
        }
      }),
    );
  });

  it("turning the frame turns the forces and leaves the tensions", () => {
    fc.assert(
      fc.property(
        group,
        applied,
        fc.double({ min: 0, max: 7, noNaN: true }),
        (fasteners, { force: F, at }, turn) => {
          fc.pre(spread(fasteners));
          const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
          const turned = <T extends { readonly u: number; readonly v: number }>(one: T): T => ({
            ...one,
            u: cos * one.u - sin * one.v,
            v: sin * one.u + cos * one.v,
          });
          const before = fastenerForces(fasteners, { force: F, at })!.map(turned);
          const after = fastenerForces(fasteners.map(turned), { force: turned(F), at: turned(at) })!;
          for (const [index, { u, v, tension }] of after.entries()) {
            close(u, before[index]!.u, 5000 * 40);
            close(v, before[index]!.v, 5000 * 40);
            close(tension, before[index]!.tension, 5000 * 40);
          }
        },
      ),
    );
  });

  it("is never kinder than a base that tips over its outermost row", () => {
    const rows = fc.uniqueArray(fc.integer({ min: 0, max: 40 }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(rows, fc.double({ min: 1, max: 1000, noNaN: true }), (places, moment) => {
        const least = Math.min(...places);
        const levers = places.map((place) => place - least);
        const tipping = (moment * Math.max(...levers)) / levers.reduce((sum, one) => sum + one ** 2, 0);
        const forces = fastenerForces(
          places.map((u) => ({ u, v: 0, area: 1 })),
          { force: { u: -moment, v: 0, n: 0 }, at: { u: 0, v: 0, n: 1 } },
        )!;
        expect(Math.max(...forces.map(({ tension }) => tension))).toBeGreaterThanOrEqual(
          tipping * (1 - 1e-9),
        );
      }),
    );
  });
});

describe("what a group can't hold", () => {
  const load: AppliedForce = { force: { u: 100, v: 0, n: 0 }, at: { u: 0, v: 0, n: 4 } };

  it("a moment about the line that all fasteners stand in", () => {
    const across = [-1, 0, 2].map((v) => ({ u: 0, v, area: 1 }));
    expect(fastenerForces(across, load)).toBeUndefined();
    const along = [-1, 0, 2].map((u) => ({ u, v: 0, area: 1 }));
    expect(fastenerForces(along, load)).toBeDefined();
    const aslant = [-1, 0, 2].map((step) => ({ u: step, v: 2 * step, area: 1 }));
    expect(fastenerForces(aslant, load)).toBeUndefined();
  });

  it("any moment with one fastener, any force with none", () => {
    const one = [{ u: 0, v: 0, area: 1 }];
    expect(fastenerForces(one, load)).toBeUndefined();
    expect(fastenerForces(one, { force: load.force, at: { u: 0, v: 1, n: 0 } })).toBeUndefined();
    expect(fastenerForces(one, { force: load.force, at: { u: 3, v: 0, n: 0 } })).toEqual([
      { u: 100, v: 0, tension: 0 },
    ]);
    expect(fastenerForces([], load)).toBeUndefined();
  });
});
