/** Two numbers tell what the published methods say of a wire's resistance at any current. */
import { describe, expect, it } from "vitest";
import { warmOhms, warmWire } from "../../server/src/core/graph/electrical/warm-wire";
import { conductorTemperature, resistanceAt } from "../../server/src/core/methods/wires";
import { fc } from "../support/random";

const wire = fc.record({
  material: fc.constantFrom("copper" as const, "aluminium" as const),
  ohmsPer1000FeetAt20: fc.double({ min: 0.05, max: 30, noNaN: true }),
  lengthFeet: fc.double({ min: 0.1, max: 200, noNaN: true }),
  ambientCelsius: fc.integer({ min: -55, max: 70 }),
  ratingCelsius: fc.constantFrom(105, 150, 200, 260),
  allowedAmps: fc.double({ min: 0.5, max: 400, noNaN: true }),
});

/** A hundred feet of a conductor of 1.01 ohm/1000 ft. */
const copper = {
  material: "copper",
  ohmsPer1000FeetAt20: 1.01,
  lengthFeet: 100,
  ratingCelsius: 150,
} as const;

describe("the resistance of a wire that its current warms", () => {
  it("is that of the conductor temperature (AC 43.13-1B par. 11-66), but for a millionth of an ampere", () => {
    fc.assert(
      fc.property(wire, fc.double({ min: 1, max: 1000, noNaN: true }), (of, amps) => {
        const { material, ohmsPer1000FeetAt20: resistanceAt20Celsius, lengthFeet } = of;
        const conductorCelsius = conductorTemperature({ ...of, amps });
        const per1000Feet = resistanceAt({ material, resistanceAt20Celsius, conductorCelsius });
        expect(warmOhms(warmWire(of), amps) / ((per1000Feet * lengthFeet) / 1000)).toBeCloseTo(1, 5);
      }),
    );
  });

  it("is that at the ambient for a current that is nothing but noise", () => {
    const cold = warmWire({ ...copper, ambientCelsius: 20, allowedAmps: 50 });
    expect(warmOhms(cold, 1e-9)).toBeCloseTo(0.101, 12);
  });

  it("is that at the rating where no table gives the allowed current", () => {
    const unknown = warmWire({ ...copper, ambientCelsius: 20, allowedAmps: undefined });
    // 0.101 ohm x (234.5 + 150) / (234.5 + 20)
    for (const amps of [0, 20]) expect(warmOhms(unknown, amps)).toBeCloseTo(0.1525914, 7);
  });
});
