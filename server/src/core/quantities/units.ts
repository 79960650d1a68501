/**
 * The unit table: every unit that a record may use, its exact factor to the SI base unit of its dimension, and
 * the spellings seen in the trade.
 *
 * Sources of the factors:
 * - [IYP] international yard and pound agreement, 1959 (US Federal Register notice of 1 July 1959):
 *   1 yd = 0.9144 m, 1 lb = 0.453 592 37 kg, both exact
 * - [SP811] NIST Special Publication 811, 2008 edition, appendix B.8
 * - [SI] the BIPM SI brochure, 9th edition: prefixes, degree Celsius, and the units accepted for use with it
 *   (minute, hour, day, degree, litre)
 * Derived factors (psi, ft lb, lb/ft3 ...) are computed here from these, so that none is typed in rounded.
 */
import { exactly, over, type Rational, times } from "./exact";

/** SI base units are in `dimensions`. */
export type Dimension = keyof typeof dimensions;

/**
 * What a quantity is of. `base` is the unit of every `si` value. `example` is a right value, for messages.
 * `name` is how the trade says it.
 */
export const dimensions = {
  length: { name: "length", base: "m", example: "14.5 ft" },
  area: { name: "area", base: "m2", example: "24 in2" },
  volume: { name: "volume", base: "m3", example: "20 gal" },
  mass: { name: "weight", base: "kg", example: "3.2 lb" },
  force: { name: "force", base: "N", example: "150 lbf" },
  moment: { name: "moment", base: "kg m", example: "8064 lb in" },
  current: { name: "current", base: "A", example: "12 A" },
  voltage: { name: "voltage", base: "V", example: "28 V" },
  resistance: { name: "resistance", base: "ohm", example: "12 mohm" },
  "resistance-per-length": { name: "resistance per length", base: "ohm/m", example: "1.02 ohm/1000 ft" },
  power: { name: "power", base: "W", example: "340 W" },
  charge: { name: "charge", base: "C", example: "24 Ah" },
  energy: { name: "energy", base: "J", example: "600 Wh" },
  time: { name: "time", base: "s", example: "30 min" },
  speed: { name: "rotational speed", base: "rad/s", example: "2400 rpm" },
  velocity: { name: "velocity", base: "m/s", example: "900 ft/min" },
  temperature: { name: "temperature", base: "K", example: "70 degC" },
  "temperature-difference": { name: "temperature difference", base: "K", example: "35 degC" },
  pressure: { name: "pressure", base: "Pa", example: "150 psi" },
  "volume-flow": { name: "volume flow", base: "m3/s", example: "400 cfm" },
  "mass-flow": { name: "mass flow", base: "kg/s", example: "90 lb/h" },
  torque: { name: "torque", base: "N m", example: "25 in lb" },
  angle: { name: "angle", base: "rad", example: "45 deg" },
  density: { name: "density", base: "kg/m3", example: "6 lb/gal" },
  "mass-per-length": { name: "weight per length", base: "kg/m", example: "5.75 lb/1000 ft" },
  "area-load": { name: "floor load", base: "kg/m2", example: "100 lb/ft2" },
  "line-load": { name: "running load", base: "kg/m", example: "60 lb/ft" },
  "load-factor": { name: "load factor", base: "g", example: "3.8 g" },
  "thermal-conductance": { name: "thermal conductance", base: "W/K", example: "24 W/K" },
  "heat-capacity": { name: "heat capacity", base: "J/K", example: "60 kJ/K" },
  irradiance: { name: "irradiance", base: "W/m2", example: "900 W/m2" },
  "humidity-ratio": { name: "humidity ratio", base: "kg/kg", example: "12 g/kg" },
  ratio: { name: "ratio", base: "1", example: "20 %" },
  gauge: { name: "wire gauge", base: "AWG", example: "8 AWG" },
} as const;

/** `si` value = written value x factor + offset. */
export interface UnitDefinition {
  readonly factor: Rational;
  readonly offset: Rational;
  /** Other spellings; see `spell` for the ones that need no entry (case, hyphens, plurals, "per"). */
  readonly aliases: readonly string[];
}

const zero = exactly(0);

function unit(factor: Rational, ...aliases: string[]): UnitDefinition {
  return { factor, offset: zero, aliases };
}

function shifted(factor: Rational, offset: Rational, ...aliases: string[]): UnitDefinition {
  return { factor, offset, aliases };
}

function of(count: number | string, factor: Rational): Rational {
  return times(exactly(count), factor);
}

const one = exactly(1);
const milli = exactly("0.001");
const kilo = exactly(1000);
const mega = exactly(1_000_000);

/** To 36 places, twice what a number holds. */
const pi = exactly("3.141592653589793238462643383279502884");

// [IYP]
const pound = exactly("0.45359237");
const ounce = over(pound, exactly(16));
const foot = over(exactly("0.9144"), exactly(3));
const inch = over(foot, exactly(12));
const mil = over(inch, kilo);
const thousandFeet = times(foot, kilo);

// [SP811] mile 1.609 344 E+03, nautical mile 1.852 E+03, both exact
const mile = of(5280, foot);
const nauticalMile = exactly(1852);

// [SI]
const centimetre = exactly("0.01");
const litre = milli;
const minute = exactly(60);
const hour = exactly(3600);
const day = exactly(86_400);

const squareInch = times(inch, inch);
const squareFoot = times(foot, foot);
const cubicInch = times(squareInch, inch);
const cubicFoot = times(squareFoot, foot);
// [SP811] gallon (US) is 231 in3, gallon (Imperial) 4.546 09 E-03 exact
const gallon = of(231, cubicInch);

// [SP811] standard acceleration of free fall 9.806 65 E+00 exact; pound-force and kilogram-force follow
const standardGravity = exactly("9.80665");
const poundForce = times(pound, standardGravity);

const ampereHour = hour;
const wattHour = hour;
const degree = over(pi, exactly(180));
const degreeFahrenheit = over(exactly(5), exactly(9));

// [SP811] British thermal unit (International Table) is 1055.055 852 62 J exactly
const btu = exactly("1055.05585262");

// [SP811] conventional millimetre of water 9.806 65 E+00 exact (1000 kg/m3); conventional mercury is
// 13 595.1 kg/m3, which gives the listed 1.333 224 E+02 per millimetre
const millimetreOfWater = standardGravity;
const millimetreOfMercury = times(exactly("13.5951"), standardGravity);

export const table = {
  length: {
    m: unit(one),
    cm: unit(centimetre),
    mm: unit(milli),
    um: unit(exactly("0.000001"), "micron", "microns"),
    km: unit(kilo),
    in: unit(inch, '"'),
    ft: unit(foot, "'"),
    // [SP811] mil (0.001 in)
    mil: unit(mil, "mils", "thou"),
  },
  area: {
    m2: unit(one),
    cm2: unit(times(centimetre, centimetre)),
    mm2: unit(times(milli, milli)),
    in2: unit(squareInch),
    ft2: unit(squareFoot),
    // [SP811] circular mil 5.067 075 E-10: the area of a circle one mil across
    cmil: unit(times(over(pi, exactly(4)), times(mil, mil)), "circular mil", "circular mils"),
  },
  volume: {
    m3: unit(one),
    cm3: unit(times(centimetre, times(centimetre, centimetre)), "cc"),
    L: unit(litre),
    mL: unit(times(litre, milli)),
    in3: unit(cubicInch),
    ft3: unit(cubicFoot),
    gal: unit(gallon),
    qt: unit(over(gallon, exactly(4)), "quart", "quarts"),
    "fl oz": unit(over(gallon, exactly(128))),
    "imp gal": unit(exactly("0.00454609"), "imperial gal", "UK gal"),
  },
  mass: {
    kg: unit(one),
    g: unit(milli),
    lb: unit(pound, "lbm"),
    oz: unit(ounce),
  },
  force: {
    N: unit(one),
    kN: unit(kilo),
    lbf: unit(poundForce, "lb"),
    kgf: unit(standardGravity, "kp"),
  },
  moment: {
    "kg m": unit(one, "m kg"),
    "kg cm": unit(centimetre, "cm kg"),
    "kg mm": unit(milli, "mm kg"),
    "lb in": unit(times(pound, inch), "in lb"),
    "lb ft": unit(times(pound, foot), "ft lb"),
  },
  current: { A: unit(one), mA: unit(milli), kA: unit(kilo) },
  voltage: { V: unit(one, "VDC", "V DC"), mV: unit(milli), kV: unit(kilo) },
  resistance: {
    ohm: unit(one),
    mohm: unit(milli, "milliohm", "milliohms"),
    uohm: unit(exactly("0.000001"), "microohm", "microohms"),
    kohm: unit(kilo),
    Mohm: unit(mega, "megohm", "megohms"),
  },
  "resistance-per-length": {
    "ohm/m": unit(one),
    "mohm/m": unit(milli, "ohm/km"),
    "ohm/ft": unit(over(one, foot)),
    "mohm/ft": unit(over(milli, foot)),
    "ohm/1000 ft": unit(over(one, thousandFeet)),
  },
  power: {
    W: unit(one),
    kW: unit(kilo),
    // [SP811] horsepower (550 ft lbf/s) 7.456 999 E+02
    hp: unit(of(550, times(foot, poundForce)), "horsepower"),
    "Btu/h": unit(over(btu, hour)),
  },
  charge: {
    C: unit(one, "coulomb", "coulombs"),
    Ah: unit(ampereHour, "A h"),
    mAh: unit(times(milli, ampereHour), "mA h"),
  },
  energy: {
    J: unit(one),
    kJ: unit(kilo),
    Wh: unit(wattHour, "W h"),
    kWh: unit(times(kilo, wattHour), "kW h"),
  },
  time: {
    s: unit(one),
    ms: unit(milli),
    min: unit(minute),
    h: unit(hour),
    day: unit(day, "days", "d"),
    week: unit(of(7, day), "weeks", "wk"),
  },
  speed: {
    "rad/s": unit(one),
    // [SP811] revolution per minute (rpm) 1.047 198 E-01
    rpm: unit(over(pi, exactly(30)), "rev/min", "r/min"),
  },
  velocity: {
    "m/s": unit(one),
    "km/h": unit(over(kilo, hour), "kph"),
    "ft/min": unit(over(foot, minute), "fpm"),
    "ft/s": unit(foot, "fps"),
    // [SP811] knot (nautical mile per hour) 5.144 444 E-01
    kt: unit(over(nauticalMile, hour)),
    mph: unit(over(mile, hour), "mi/h"),
  },
  // [SP811] table B.8: T/K = t/degC + 273.15, T/K = (t/degF + 459.67)/1.8
  temperature: {
    K: unit(one, "kelvin"),
    degC: shifted(one, exactly("273.15"), "C"),
    degF: shifted(degreeFahrenheit, of("459.67", degreeFahrenheit), "F"),
  },
  "temperature-difference": {
    K: unit(one, "kelvin"),
    degC: unit(one, "C"),
    degF: unit(degreeFahrenheit, "F"),
  },
  pressure: {
    Pa: unit(one),
    hPa: unit(exactly(100)),
    kPa: unit(kilo),
    MPa: unit(mega),
    bar: unit(exactly(100_000)),
    mbar: unit(exactly(100), "mb"),
    psi: unit(over(poundForce, squareInch), "lbf/in2", "lb/in2"),
    ksi: unit(of(1000, over(poundForce, squareInch))),
    psf: unit(over(poundForce, squareFoot), "lbf/ft2", "lb/ft2"),
    inHg: unit(of("25.4", millimetreOfMercury), "in Hg"),
    mmHg: unit(millimetreOfMercury, "mm Hg"),
    // The conventional inch of water; the one at 60 degF is 0.1 % less ([SP811] 2.4884 E+02).
    inH2O: unit(of("25.4", millimetreOfWater), "in H2O", "in w.g.", "in wg", "in w.c.", "in wc"),
    mmH2O: unit(millimetreOfWater, "mm H2O"),
  },
  "volume-flow": {
    "m3/s": unit(one),
    "m3/h": unit(over(one, hour)),
    "L/s": unit(litre),
    "L/min": unit(over(litre, minute), "lpm"),
    "L/h": unit(over(litre, hour)),
    cfm: unit(over(cubicFoot, minute), "ft3/min"),
    "gal/h": unit(over(gallon, hour), "gph"),
    "gal/min": unit(over(gallon, minute), "gpm"),
  },
  "mass-flow": {
    "kg/s": unit(one),
    "kg/h": unit(over(one, hour)),
    "lb/s": unit(pound),
    "lb/min": unit(over(pound, minute)),
    "lb/h": unit(over(pound, hour), "pph"),
  },
  torque: {
    "N m": unit(one, "Nm"),
    "in lb": unit(times(inch, poundForce), "lb in", "in lbf", "lbf in"),
    "ft lb": unit(times(foot, poundForce), "lb ft", "ft lbf", "lbf ft"),
  },
  angle: { rad: unit(one), deg: unit(degree) },
  density: {
    "kg/m3": unit(one),
    "kg/L": unit(kilo, "g/cm3", "g/mL"),
    "lb/gal": unit(over(pound, gallon)),
    "lb/ft3": unit(over(pound, cubicFoot)),
    "lb/in3": unit(over(pound, cubicInch)),
  },
  "mass-per-length": {
    "kg/m": unit(one),
    "g/m": unit(milli, "kg/km"),
    "lb/ft": unit(over(pound, foot)),
    "lb/in": unit(over(pound, inch)),
    "lb/1000 ft": unit(over(pound, thousandFeet)),
  },
  "area-load": {
    "kg/m2": unit(one),
    "lb/ft2": unit(over(pound, squareFoot), "psf"),
    "lb/in2": unit(over(pound, squareInch)),
  },
  "line-load": {
    "kg/m": unit(one),
    "lb/ft": unit(over(pound, foot)),
    "lb/in": unit(over(pound, inch)),
  },
  "load-factor": { g: unit(one) },
  "thermal-conductance": {
    "W/K": unit(one, "W/degC"),
    "Btu/h/degF": unit(over(btu, times(hour, degreeFahrenheit))),
  },
  "heat-capacity": {
    "J/K": unit(one, "J/degC"),
    "kJ/K": unit(kilo, "kJ/degC"),
    "Btu/degF": unit(over(btu, degreeFahrenheit)),
  },
  irradiance: { "W/m2": unit(one), "Btu/h/ft2": unit(over(btu, times(hour, squareFoot))) },
  // A grain is 1/7000 lb ([SP811] grain 6.479 891 E-05 kg exact).
  "humidity-ratio": {
    "kg/kg": unit(one, "lb/lb"),
    "g/kg": unit(milli),
    "gr/lb": unit(over(one, exactly(7000)), "grains/lb"),
  },
  ratio: { "%": unit(exactly("0.01"), "percent", "pct") },
  // A size, not a measure: 1/0 is 0, 2/0 is -1, 3/0 is -2, 4/0 is -3.
  gauge: { AWG: unit(one, "ga", "gauge") },
} as const satisfies Record<Dimension, Record<string, UnitDefinition>>;

type UnitSymbols = { readonly [D in Dimension]: keyof (typeof table)[D] & string };

/** A canonical unit symbol of any of the dimensions D. */
export type UnitSymbol<D extends Dimension = Dimension> = UnitSymbols[D];

/** The dimension, or the dimensions, that a symbol measures. */
export type DimensionOf<U extends UnitSymbol> = {
  [D in Dimension]: U extends UnitSymbol<D> ? D : never;
}[Dimension];

/** Symbols that measure more than one dimension: "g", "degC", "lb/ft" ... */
export type SharedUnit = {
  [A in Dimension]: { [B in Exclude<Dimension, A>]: UnitSymbol<A> & UnitSymbol<B> }[Exclude<Dimension, A>];
}[Dimension];

/** Symbols that say by themselves what they measure. */
export type OwnUnit = Exclude<UnitSymbol, SharedUnit>;

/** The smallest and the largest wire size, as gauge numbers: 4/0 and 30. */
export const gaugeRange = { thickest: -3, thinnest: 30 } as const;

export const allDimensions = Object.keys(dimensions) as Dimension[];

/** The units of a dimension in the order of the table, SI first. */
export function unitsOf<D extends Dimension>(dimension: D): UnitSymbol<D>[] {
  return Object.keys(table[dimension]) as UnitSymbol<D>[];
}

/** Whether a text is the canonical symbol of a unit of the dimension. */
export function isUnitOf<D extends Dimension>(dimension: D, symbol: string): symbol is UnitSymbol<D> {
  return Object.hasOwn(table[dimension], symbol);
}

/** The definition behind a symbol. The types keep a symbol of another dimension out. */
export function definitionOf<D extends Dimension>(dimension: D, symbol: UnitSymbol<D>): UnitDefinition {
  const units: Readonly<Record<string, UnitDefinition>> = table[dimension];
  return units[symbol]!;
}
