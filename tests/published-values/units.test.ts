/**
 * Every unit of the table against two witnesses: the values that NIST Special Publication 811 prints, and
 * mathjs, a general-purpose library with a unit table of its own.
 */
import { evaluate, type Unit } from "mathjs";
import { describe, expect, test } from "vitest";
import {
  allDimensions,
  convert,
  type Dimension,
  dimensions,
  isUnitOf,
  quantityOf,
  type UnitSymbol,
  unitsOf,
} from "../../server/src/core/quantities";

/** SI value of one of a unit. */
function siOf<D extends Dimension>(dimension: D, unit: UnitSymbol<D>): number {
  return quantityOf(1, unit, dimension).si;
}

describe("NIST SP 811, 2008 edition, appendix B.8", () => {
  // The listed factors, read in third-party transcriptions of the table. Exact ones are printed bold there.
  const exact: [Dimension, UnitSymbol, number][] = [
    ["length", "in", 2.54e-2],
    ["length", "ft", 3.048e-1],
    ["length", "mil", 2.54e-5],
    ["length", "um", 1e-6],
    ["volume", "L", 1e-3],
    ["volume", "imp gal", 4.54609e-3],
    ["force", "kgf", 9.80665],
    ["pressure", "bar", 1e5],
    ["pressure", "mmH2O", 9.80665],
    ["time", "min", 60],
    ["time", "h", 3600],
    ["time", "day", 8.64e4],
  ];

  test.each(exact)("%s: 1 %s is %d exactly", (dimension, unit, listed) => {
    expect(siOf(dimension, unit)).toBe(listed);
  });

  const rounded: [Dimension, UnitSymbol, number][] = [
    ["area", "cmil", 5.067075e-10],
    ["volume", "gal", 3.785412e-3],
    ["volume", "qt", 9.463529e-4],
    ["volume", "fl oz", 2.957353e-5],
    ["mass", "lb", 4.535924e-1],
    ["mass", "oz", 2.834952e-2],
    ["force", "lbf", 4.448222],
    ["power", "hp", 7.456999e2],
    ["power", "Btu/h", 2.930711e-1],
    ["speed", "rpm", 1.047198e-1],
    ["velocity", "kt", 5.144444e-1],
    ["pressure", "psi", 6.894757e3],
    ["pressure", "inHg", 3.386389e3],
    ["pressure", "mmHg", 1.333224e2],
    ["pressure", "inH2O", 2.490889e2],
    ["volume-flow", "cfm", 4.719474e-4],
    ["volume-flow", "gal/min", 6.30902e-5],
    ["torque", "in lb", 1.129848e-1],
    ["torque", "ft lb", 1.355818],
    ["density", "lb/gal", 1.198264e2],
    ["density", "lb/ft3", 1.601846e1],
    ["density", "lb/in3", 2.76799e4],
  ];

  test.each(rounded)("%s: 1 %s is %d in seven digits", (dimension, unit, listed) => {
    expect(Number(siOf(dimension, unit).toPrecision(7))).toBe(listed);
  });

  test("temperature: t/degC = T/K - 273.15 and t/degC = (t/degF - 32)/1.8", () => {
    expect(convert(0, "degC", "K", "temperature")).toBe(273.15);
    expect(convert(32, "degF", "degC", "temperature")).toBe(0);
    expect(convert(212, "degF", "degC", "temperature")).toBe(100);
    expect(convert(-40, "degC", "degF", "temperature")).toBe(-40);
  });
});

describe("mathjs", () => {
  type Expressions = { readonly [D in Dimension]: { readonly [U in UnitSymbol<D>]: string } };

  // mathjs holds these three rounded (mmHg to six digits), so they are spelled out in what it holds exactly.
  const psi = "lbf/in^2";
  const hp = "550 foot lbf/s";
  const mmHg = "13595.1 kg/m^3 * 9.80665 m/s^2 * 1 mm";
  const inMathjs: Expressions = {
    length: { m: "m", cm: "cm", mm: "mm", um: "um", km: "km", in: "inch", ft: "foot", mil: "mil" },
    area: { m2: "m^2", cm2: "cm^2", mm2: "mm^2", in2: "sqin", ft2: "sqft", cmil: "pi/4 * mil^2" },
    volume: {
      m3: "m^3",
      cm3: "cc",
      L: "litre",
      mL: "ml",
      in3: "cuin",
      ft3: "cuft",
      gal: "gallon",
      qt: "quart",
      "fl oz": "fluidounce",
      "imp gal": "4.54609 litre",
    },
    mass: { kg: "kg", g: "gram", lb: "lbm", oz: "oz" },
    force: { N: "N", kN: "kN", lbf: "lbf", kgf: "kgf" },
    moment: {
      "kg m": "kg m",
      "kg cm": "kg cm",
      "kg mm": "kg mm",
      "lb in": "lbm inch",
      "lb ft": "lbm foot",
    },
    current: { A: "A", mA: "mA", kA: "kA" },
    voltage: { V: "V", mV: "mV", kV: "kV" },
    resistance: { ohm: "ohm", mohm: "mohm", uohm: "uohm", kohm: "kohm", Mohm: "Mohm" },
    "resistance-per-length": {
      "ohm/m": "ohm/m",
      "mohm/m": "mohm/m",
      "ohm/ft": "ohm/foot",
      "mohm/ft": "mohm/foot",
      "ohm/1000 ft": "ohm/(1000 foot)",
    },
    power: { W: "W", kW: "kW", hp, "Btu/h": "BTU/hour" },
    charge: { C: "C", Ah: "A hour", mAh: "mA hour" },
    energy: { J: "J", kJ: "kJ", Wh: "Wh", kWh: "kWh" },
    time: { s: "s", ms: "ms", min: "minute", h: "hour", day: "day", week: "week" },
    speed: { "rad/s": "rad/s", rpm: "cycle/minute" },
    velocity: {
      "m/s": "m/s",
      "km/h": "km/hour",
      "ft/min": "foot/minute",
      "ft/s": "foot/s",
      kt: "1852 m/hour",
      mph: "mile/hour",
    },
    temperature: { K: "K", degC: "degC", degF: "degF" },
    "temperature-difference": { K: "K", degC: "K", degF: "degR" },
    pressure: {
      Pa: "Pa",
      hPa: "hPa",
      kPa: "kPa",
      MPa: "MPa",
      bar: "bar",
      mbar: "mbar",
      psi,
      ksi: `1000 ${psi}`,
      psf: "lbf/sqft",
      inHg: `25.4 * ${mmHg}`,
      mmHg,
      inH2O: "25.4 mmH2O",
      mmH2O: "mmH2O",
    },
    "volume-flow": {
      "m3/s": "m^3/s",
      "m3/h": "m^3/hour",
      "L/s": "litre/s",
      "L/min": "litre/minute",
      "L/h": "litre/hour",
      cfm: "cuft/minute",
      "gal/h": "gallon/hour",
      "gal/min": "gallon/minute",
    },
    "mass-flow": {
      "kg/s": "kg/s",
      "kg/h": "kg/hour",
      "lb/s": "lbm/s",
      "lb/min": "lbm/minute",
      "lb/h": "lbm/hour",
    },
    torque: { "N m": "N m", "in lb": "inch lbf", "ft lb": "foot lbf" },
    angle: { rad: "rad", deg: "deg" },
    density: {
      "kg/m3": "kg/m^3",
      "kg/L": "kg/litre",
      "lb/gal": "lbm/gallon",
      "lb/ft3": "lbm/cuft",
      "lb/in3": "lbm/cuin",
    },
    "mass-per-length": {
      "kg/m": "kg/m",
      "g/m": "gram/m",
      "lb/ft": "lbm/foot",
      "lb/in": "lbm/inch",
      "lb/1000 ft": "lbm/(1000 foot)",
    },
    "area-load": { "kg/m2": "kg/m^2", "lb/ft2": "lbm/sqft", "lb/in2": "lbm/sqin" },
    "line-load": { "kg/m": "kg/m", "lb/ft": "lbm/foot", "lb/in": "lbm/inch" },
    "load-factor": { g: "1" },
    "thermal-conductance": { "W/K": "W/K", "Btu/h/degF": "9/5 BTU/(hour K)" },
    "heat-capacity": { "J/K": "J/K", "kJ/K": "kJ/K", "Btu/degF": "9/5 BTU/K" },
    irradiance: { "W/m2": "W/m^2", "Btu/h/ft2": "BTU/(hour sqft)" },
    "humidity-ratio": { "kg/kg": "1", "g/kg": "0.001", "gr/lb": "64.79891e-6 / 0.45359237" },
    ratio: { "%": "0.01" },
    gauge: { AWG: "1" },
  };

  const cases = allDimensions.flatMap((dimension) =>
    Object.entries<string>(inMathjs[dimension]).map(([unit, expression]) => ({
      dimension,
      unit,
      expression,
    })),
  );

  test.each(cases)("$dimension: 1 $unit is $expression", ({ dimension, unit, expression }) => {
    if (!isUnitOf(dimension, unit)) throw new Error("not a unit");
    const ours = siOf(dimension, unit);
    const theirs = evaluate(/^\d/.test(expression) ? expression : `1 ${expression}`) as Unit | number;
    const base = dimensions[dimension].base.replace(/(\d)/, "^$1");
    const inBase = typeof theirs === "number" ? theirs : theirs.toNumber(base);
    expect(Math.abs(ours / inBase - 1)).toBeLessThan(1e-12);
  });

  test("no unit is left out", () => {
    for (const dimension of allDimensions) {
      expect(Object.keys(inMathjs[dimension]).sort()).toEqual([...unitsOf(dimension)].sort());
    }
  });
});

test("every base unit is a unit of factor one", () => {
  for (const dimension of allDimensions) {
    const { base } = dimensions[dimension];
    if (isUnitOf(dimension, base)) expect(siOf(dimension, base)).toBe(1);
    else expect([dimension, base]).toEqual(["ratio", "1"]);
  }
});
