/**
 * What each wire may carry where it runs: free air, bundle and altitude together.
 */
import { allowedCurrent, freeAirCurrent, wireMethods } from "../../methods/wires";
import { none } from "../../none";
import type { Project } from "../../project";
import { inUnit } from "../../quantities";
import type { Bundle, Condition, Wire } from "../../records/types";
import type { Source } from "../../source";
import { altitudeFactor } from "../../tables/altitude-derating";
import { aluminiumResistance } from "../../tables/aluminium-wire";
import { bundleFactor } from "../../tables/bundle-derating";
import { copperResistance } from "../../tables/copper-wire";
import { type FreeAirFit, freeAirFit } from "../../tables/free-air";
import { type CoverageGap, type Covered, covered, type Lookup } from "../../tables/lookup";
import { recalled } from "../recall";
import {
  assumed,
  derived,
  type Keep,
  type KeepOne,
  known,
  type Operand,
  tabled,
  type Value,
  written,
} from "../value";
import { RecurringStates, type StatesOf } from "./recurring-states";
import { type WarmWire, warmWire } from "./warm-wire";

/** A table asked for something that it does not hold. */
export interface Gap {
  readonly wanted: string;
  readonly reason: CoverageGap;
  readonly source: Source;
}

/** What a wire may carry, in each condition, in the order of the conditions. */
export interface WireRating {
  /** In which it runs; undefined where the record does not hold it. */
  readonly bundle: Bundle | undefined;
  readonly states: readonly RatedState[];
  /** Why some numbers of the wire can't be had from the tables, each told once. */
  readonly gaps: readonly Gap[];
}

export interface RatedState {
  /** Undefined where the record or the tables don't tell. */
  readonly allowed: Value | undefined;
  /** What the network's solution needs; undefined while too little of it is known. */
  readonly numbers: WarmWire | undefined;
}

/**
 * Rates the wires of one project, in their order. What a table does not hold becomes a gap of the wire. A rating is
 * the same object while the wire, its bundle and the conditions are.
 */
export function rateWires(
  project: Project,
  conditions: readonly Condition[],
  keep: Keep,
): readonly WireRating[] {
  const laid = laidWiresOf(project);
  const airs = conditions.map((condition): Air => ({ condition, factor: altitudeLookup(condition) }));
  const how: StatesOf<Laid, Rated, WireRating> = {
    things: laid,
    entryOf: ({ wire }) => wire,
    conditions,
    grounds: conditions.map((condition) => [condition, laid]),
    rests: ({ within }) => [within?.bundle],
    restsIn: ({ within }) => [within?.bundle],
    stateIn: (of, index, own) => rate(of, airs[index]!, own),
    whole: ({ within }, states) => ({ bundle: within?.bundle, states, gaps: gapsOf(states) }),
  };
  return ratings.recall(how, keep);
}

/** Every wire of the record where it runs. */
const laidWiresOf = recalled(({ install }): readonly Laid[] => {
  const bundled = new Map<string, Bundled>();
  for (const bundle of install.bundles ?? []) {
    if (bundle.id) bundled.set(bundle.id.value, { bundle, factor: bundleLookup(bundle) });
  }
  return (install.wires ?? []).map((wire) => ({
    wire,
    within: wire.bundle && bundled.get(wire.bundle.value),
  }));
});

const ratings = new RecurringStates<Rated, WireRating>();

/** A bundle with its factor; undefined while the record does not tell it. */
interface Bundled {
  readonly bundle: Bundle;
  readonly factor: Lookup<number> | undefined;
}

/** A condition with its altitude's factor; undefined while the record does not tell it. */
interface Air {
  readonly condition: Condition;
  readonly factor: Lookup<number> | undefined;
}

/** A wire where it runs. */
interface Laid {
  readonly wire: Wire;
  readonly within: Bundled | undefined;
}

/** A rating in one condition. */
interface Rated extends RatedState {
  readonly gaps: readonly Gap[];
}

/** Each gap once, however many conditions show it. */
function gapsOf(states: readonly Rated[]): readonly Gap[] {
  if (states.every((state) => state.gaps.length === 0)) return none;
  const gaps: Gap[] = [];
  for (const state of states) {
    for (const gap of state.gaps) if (gaps.every(({ wanted }) => wanted !== gap.wanted)) gaps.push(gap);
  }
  return gaps;
}

/** Aluminium against copper of the same size, under the same conditions. */
const aluminiumFactor = covered(0.8, {
  document: "SAE AS50881",
  standing: "memory",
  note: "each entry of AC 43.13-1B Table 11-10 is 0.79 to 0.80 of the copper entry",
});

const alone = assumed("bundle factor", 1, "1", "The wire runs in no bundle: alone in free air.")!;

function rate(laid: Laid, air: Air, keep: KeepOne): Rated {
  const { wire, within } = laid;
  const { allowed, gaps } = wire.id ? allowance(laid, air, keep) : { allowed: undefined, gaps: none };
  const { gauge, length, rating, material } = wire;
  const ambientCelsius = celsiusOf(within?.bundle, air.condition);
  if (!gauge || !length || !rating || ambientCelsius === undefined)
    return { allowed, gaps, numbers: undefined };
  const resistance = resistancePer1000Feet(gauge.value.si, material?.value ?? "copper");
  if (!resistance.covered) {
    const gap = gapOf("wire resistance", resistance);
    return { allowed, gaps: gap ? [...gaps, gap] : gaps, numbers: undefined };
  }
  const numbers = warmWire({
    material: material?.value ?? "copper",
    ohmsPer1000FeetAt20: resistance.value,
    lengthFeet: inUnit(length.value, "ft"),
    ambientCelsius,
    ratingCelsius: inUnit(rating.value, "degC"),
    allowedAmps: allowed?.value,
  });
  return { allowed, gaps, numbers };
}

function allowance(laid: Laid, air: Air, keep: KeepOne): Pick<Rated, "allowed" | "gaps"> {
  const { wire, within } = laid;
  const rise = keep(riseOf(laid, air.condition));
  const fit = rise && freeAirFit(wire.gauge!.value.si, rise.value);
  const inFreeAir = fit?.covered ? keep(freeAirValue(wire, air.condition, rise!, fit)) : undefined;
  const inBundle = wire.bundle && within?.factor;
  const factor = wire.bundle ? inBundle?.covered && inBundle.value : alone.value;
  if (!inFreeAir || !factor || !air.factor?.covered) {
    const gaps = [
      gapOf("free-air current", fit),
      gapOf("bundle factor", inBundle),
      gapOf("altitude factor", air.factor),
    ];
    return { allowed: undefined, gaps: gaps.filter((gap) => gap !== undefined) };
  }
  const amps = allowedCurrent({
    freeAirAmps: inFreeAir.value,
    bundleFactor: factor,
    altitudeFactor: air.factor.value,
  });
  return { allowed: keep(allowedValue(laid, air, inFreeAir, amps)), gaps: none };
}

/** @param amps for copper */
function allowedValue(
  { wire, within }: Laid,
  { condition, factor }: Air,
  inFreeAir: Value,
  amps: number,
): Value | undefined {
  const isAluminium = wire.material?.value === "aluminium";
  return known(isAluminium ? amps * aluminiumFactor.value : amps, "A", () => ({
    ...about(wire, condition),
    quantity: "allowed-current",
    formula: isAluminium ? "I_free * f_bundle * f_altitude * f_Al" : "I_free * f_bundle * f_altitude",
    operands: {
      I_free: derived("free-air current", inFreeAir),
      f_bundle: wire.bundle
        ? tabled("bundle factor", within?.factor, "1", [
            within?.bundle.wires?.place,
            within?.bundle.loading?.place,
          ])
        : alone,
      f_altitude: tabled("altitude factor", factor, "1", [condition.altitude?.place]),
      ...(isAluminium && {
        f_Al: tabled("aluminium against copper", aluminiumFactor, "1", [wire.material?.place]),
      }),
    },
    sources: [wireMethods.allowedCurrent.source],
  }));
}

/** Undefined too where the gauge is not known, which a current in free air takes besides. */
function riseOf({ wire, within }: Laid, condition: Condition): Value | undefined {
  const bundle = within?.bundle;
  const { gauge, rating } = wire;
  const ambient = celsiusOf(bundle, condition);
  if (!gauge || !rating || ambient === undefined) return undefined;
  return known(inUnit(rating.value, "degC") - ambient, "K", () => ({
    ...about(wire, condition),
    quantity: "temperature-rise",
    formula: "T_R - T_1",
    operands: { T_R: written("wire rating", rating, "degC"), T_1: ambientOf(bundle, condition) },
  }));
}

function freeAirValue(
  wire: Wire,
  condition: Condition,
  rise: Value,
  { value: line, source, notes }: Covered<FreeAirFit>,
): Value | undefined {
  const { coefficientAmps, exponent } = line;
  return known(freeAirCurrent({ coefficientAmps, exponent, riseKelvin: rise.value }), "A", () => {
    const keys = [wire.gauge?.place];
    return {
      ...about(wire, condition),
      quantity: "free-air-current",
      formula: "b * dT ^ m",
      operands: {
        b: tabled("line of this gauge", covered(coefficientAmps, source, notes), "A", keys),
        dT: derived("temperature rise", rise),
        m: tabled("slope of the line", covered(exponent, source, notes), "1", keys),
      },
      sources: [wireMethods.freeAirCurrent.source],
    };
  });
}

function bundleLookup({ wires, loading }: Bundle): Lookup<number> | undefined {
  return wires && loading && bundleFactor(wires.value, inUnit(loading.value, "%"));
}

function altitudeLookup({ altitude }: Condition): Lookup<number> | undefined {
  return altitude && altitudeFactor(inUnit(altitude.value, "ft"));
}

/** Air temperature around a wire: that along its bundle, else that of the condition. */
export function ambientOf(bundle: Bundle | undefined, condition: Condition): Operand {
  return bundle?.ambient
    ? written("ambient along the bundle", bundle.ambient, "degC")
    : written("ambient of the condition", condition.ambient, "degC");
}

function ambientAround(bundle: Bundle | undefined, condition: Condition) {
  return bundle?.ambient ?? condition.ambient;
}

export function celsiusOf(bundle: Bundle | undefined, condition: Condition): number | undefined {
  const ambient = ambientAround(bundle, condition);
  return ambient && inUnit(ambient.value, "degC");
}

/** Largest resistance of a conductor at 20 degC, in ohm per 1000 ft, by its gauge. */
export function resistancePer1000Feet(gauge: number, material: "copper" | "aluminium"): Lookup<number> {
  return material === "aluminium" ? aluminiumResistance(gauge) : copperResistance(gauge);
}

/** Where a look-up has no answer, what was wanted of it and why there is none. */
export function gapOf<T>(wanted: string, lookup: Lookup<T> | undefined): Gap | undefined {
  return lookup && !lookup.covered ? { wanted, reason: lookup.reason, source: lookup.source } : undefined;
}

/** What a value of a wire in a condition is about. */
export function about(wire: Wire, condition: Condition) {
  return { subject: { kind: "wire", id: wire.id!.value }, condition: condition.id?.value } as const;
}
