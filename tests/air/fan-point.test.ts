/** Where a fan's curve meets that of its path, against a search by halves. */

import { expect, it } from "vitest";
import { crossing, type FanPoint } from "../../server/src/core/methods/air/fan-point";
import { fc } from "../support/random";

const steps = fc.array(
  fc.record({
    wide: fc.double({ min: 0.01, max: 10, noNaN: true }),
    drop: fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 10, noNaN: true })),
  }),
  { minLength: 1, maxLength: 8 },
);

function curveOf(all: readonly { wide: number; drop: number }[]): FanPoint[] {
  const total = all.reduce((sum, { drop }) => sum + drop, 0);
  const points: FanPoint[] = [{ flow: 0, pressure: total }];
  for (const { wide, drop } of all) {
    const last = points.at(-1)!;
    points.push({ flow: last.flow + wide, pressure: Math.max(0, last.pressure - drop) });
  }
  return points;
}

function pressureAt(points: readonly FanPoint[], flow: number): number {
  const index = points.findIndex((point) => point.flow >= flow);
  const [a, b] = [points[Math.max(0, index - 1)]!, points[index]!];
  if (a === b) return a.pressure;
  return a.pressure + ((b.pressure - a.pressure) * (flow - a.flow)) / (b.flow - a.flow);
}

it("is found exactly, or told to lie beyond the points", () => {
  fc.assert(
    fc.property(steps, fc.double({ min: 1e-6, max: 100, noNaN: true }), (all, resistance) => {
      const points = curveOf(all);
      const end = points.at(-1)!;
      const found = crossing(points, resistance);
      if (end.pressure > resistance * end.flow ** 2) {
        expect(found.kind).toBe("beyond-curve");
        return;
      }
      if (found.kind !== "found") throw new Error(found.kind);
      let [low, high] = [0, end.flow];
      for (let round = 0; round < 200; round++) {
        const middle = (low + high) / 2;
        if (pressureAt(points, middle) > resistance * middle ** 2) low = middle;
        else high = middle;
      }
      expect(Math.abs(found.flow - low)).toBeLessThanOrEqual(1e-9 * (1 + low));
    }),
  );
});

it("the volume is the same in thinner air: fan and path change alike", () => {
  const points = curveOf([{ wide: 10, drop: 5 }]);
  const thin = points.map(({ flow, pressure }) => ({ flow, pressure: pressure * 0.6 }));
  const [a, b] = [crossing(points, 0.1), crossing(thin, 0.06)];
  if (a.kind !== "found" || b.kind !== "found") throw new Error("not found");
  expect(a.flow).toBeCloseTo(b.flow, 12);
});

it("a curve that rises is told, and one that begins above the crossing", () => {
  const rising = [
    { flow: 0, pressure: 1 },
    { flow: 1, pressure: 2 },
  ];
  expect(crossing(rising, 1)).toEqual({ kind: "not-falling", index: 1 });
  const late = [
    { flow: 10, pressure: 1 },
    { flow: 11, pressure: 0 },
  ];
  expect(crossing(late, 1)).toEqual({ kind: "before-curve" });
  expect(crossing([], 1)).toEqual({ kind: "before-curve" });
});
