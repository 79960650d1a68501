/** The closed form of the pull-down against a numeric integration of the heat balance that it stands for. */

import { describe, expect, it } from "vitest";
import { steadyTemperature, timeToReach } from "../../server/src/core/methods/heat-balance";
import { fc } from "../support/random";

/** C dT/dt = K (T_o - T) + G, by the classical Runge-Kutta method; the temperature after `time`. */
function integrated(
  { heatCapacity, exchange, outside, gain }: Space,
  from: number,
  time: number,
  steps = 400,
): number {
  const rate = (celsius: number) => (exchange * (outside - celsius) + gain) / heatCapacity;
  const h = time / steps;
  let celsius = from;
  for (let step = 0; step < steps; step++) {
    const k1 = rate(celsius);
    const k2 = rate(celsius + (h / 2) * k1);
    const k3 = rate(celsius + (h / 2) * k2);
    const k4 = rate(celsius + h * k3);
    celsius += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  return celsius;
}

interface Space {
  readonly heatCapacity: number;
  readonly exchange: number;
  readonly outside: number;
  /** All gains that do not depend on the temperature inside, what is taken out counted against. */
  readonly gain: number;
}

const spaces: fc.Arbitrary<Space> = fc.record({
  heatCapacity: fc.double({ min: 5e3, max: 5e5, noNaN: true }),
  exchange: fc.double({ min: 2, max: 200, noNaN: true }),
  outside: fc.double({ min: -50, max: 55, noNaN: true }),
  gain: fc.double({ min: -6000, max: 6000, noNaN: true }),
});
const celsius = fc.double({ min: -50, max: 90, noNaN: true });

describe("a lumped space", () => {
  it("is at the wanted temperature after the time that was told", () => {
    let reached = 0;
    fc.assert(
      fc.property(spaces, celsius, celsius, (space, from, to) => {
        const steady = steadyTemperature(space.outside, space.exchange, space.gain);
        const time = timeToReach(space.heatCapacity, space.exchange, { from, to, steady });
        // Runge-Kutta with steps of a 40th of the time constant is exact to far more than is asked here.
        if (time === undefined || time > 10 * (space.heatCapacity / space.exchange)) return;
        reached += 1;
        expect(Math.abs(integrated(space, from, time) - to)).toBeLessThan(1e-4);
      }),
    );
    expect(reached).toBeGreaterThan(10);
  });

  it("is told never to get there exactly where the way does not lead there", () => {
    fc.assert(
      fc.property(spaces, celsius, celsius, (space, from, to) => {
        const steady = steadyTemperature(space.outside, space.exchange, space.gain);
        const time = timeToReach(space.heatCapacity, space.exchange, { from, to, steady });
        const isOnTheWay = from === to || (from > to && to > steady) || (from < to && to < steady);
        expect(time !== undefined).toBe(isOnTheWay);
      }),
    );
  });

  it("stays where it settles", () => {
    fc.assert(
      fc.property(spaces, (space) => {
        const steady = steadyTemperature(space.outside, space.exchange, space.gain);
        const after = integrated(space, steady, space.heatCapacity / space.exchange);
        expect(Math.abs(after - steady)).toBeLessThan(1e-6 * Math.max(1, Math.abs(steady)));
      }),
    );
  });
});
