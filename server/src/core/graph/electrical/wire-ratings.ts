/**
 * What each wire may carry where it runs: free air, bundle and altitude together.
 */
import { allowedCurrent, freeAirCurrent, wireMethods } from "../../methods/wires";
import type { Project } from "../../project";
import { inUnit } from "../../quantities";
import type { Bundle, Condition, Wire } from "../../records/types";
import type { Source } from "../../source";
import { altitudeFactor } from "../../tables/altitude-derating";
import { bundleFactor } from "../../tables/bundle-derating";
import { type FreeAirFit, freeAirFit } from "../../tables/free-air";
import { type CoverageGap, covered, type Lookup } from "../../tables/lookup";
import { Memory } from "../remember";
import { assumed, derived, type Keep, known, type Operand, tabled, type Value, written } from "../value";

/** A table asked for something that it does not hold. */
export interface Gap {
  readonly wanted: string;
  readonly reason: CoverageGap;
  readonly source: Source;
}

/** Rates the wires of one project. What a table does not hold becomes a gap of the wire. */
export class WireRatings {
  private readonly bundles = new Map<string, Bundle>();
  private readonly gaps = new Map<Wire, Gap[]>();

  constructor(
    project: Project,
    private readonly keep: Keep,
  ) {
    for (const bundle of project.install.bundles ?? []) {
      if (bundle.id) this.bundles.set(bundle.id.value, bundle);
    }
  }

  /** Air temperature around a wire: that along its bundle, else that of the condition. */
  ambient(wire: Wire, condition: Condition): Operand {
    return ambientOf(this.bundleOf(wire), condition);
  }

  /** The same as a number, in degC. */
  ambientCelsius(wire: Wire, condition: Condition): number | undefined {
    return celsiusOf(this.bundleOf(wire), condition);
  }

  /** Current that a wire may carry in a condition; undefined where the record or the tables don't tell. */
  allowedCurrent(wire: Wire, condition: Condition): Value | undefined {
    const bundle = this.bundleOf(wire);
    const { allowed, gaps } = rated.recall(wire, condition, [bundle], this.keep, (keep) =>
      rate(wire, condition, bundle, keep),
    );
    for (const gap of gaps) this.add(wire, gap);
    return allowed;
  }

  /** Passes a look-up on, and notes where it has no answer. */
  note<T>(wire: Wire, wanted: string, lookup: Lookup<T>): Lookup<T> {
    const gap = gapOf(wanted, lookup);
    if (gap) this.add(wire, gap);
    return lookup;
  }

  /** Why some numbers of a wire can't be had from the tables, each told once; grows while values are derived. */
  gapsOf(wire: Wire): readonly Gap[] {
    return this.listOf(wire);
  }

  private add(wire: Wire, gap: Gap): void {
    const gaps = this.listOf(wire);
    if (!gaps.some(({ wanted }) => wanted === gap.wanted)) gaps.push(gap);
  }

  private listOf(wire: Wire): Gap[] {
    const gaps = this.gaps.get(wire) ?? [];
    this.gaps.set(wire, gaps);
    return gaps;
  }

  private bundleOf(wire: Wire): Bundle | undefined {
    return wire.bundle && this.bundles.get(wire.bundle.value);
  }
}

interface Rated {
  readonly allowed: Value | undefined;
  readonly gaps: readonly Gap[];
}

const rated = new Memory<Wire, Condition, Rated>();

/** Aluminium against copper of the same size, under the same conditions. */
const aluminiumFactor = covered(0.8, {
  document: "SAE AS50881",
  standing: "memory",
  note: "each entry of AC 43.13-1B Table 11-10 is 0.79 to 0.80 of the copper entry",
});

const alone = assumed("bundle factor", 1, "1", "The wire runs in no bundle: alone in free air.");

function rate(wire: Wire, condition: Condition, bundle: Bundle | undefined, keep: Keep): Rated {
  const inBundle = bundleLookup(wire, bundle);
  const altitude = condition.altitude && altitudeFactor(inUnit(condition.altitude.value, "ft"));
  const { value: inFreeAir, fit } = freeAir(wire, condition, bundle, keep);
  const gaps = [
    gapOf("free-air current", fit),
    gapOf("bundle factor", inBundle),
    gapOf("altitude factor", altitude),
  ].filter((gap) => gap !== undefined);
  const f_bundle = wire.bundle
    ? tabled("bundle factor", inBundle, "1", [bundle?.wires?.place, bundle?.loading?.place])
    : alone;
  if (!inFreeAir || !f_bundle || !altitude?.covered) return { allowed: undefined, gaps };

  const amps = allowedCurrent({
    freeAirAmps: inFreeAir.value,
    bundleFactor: f_bundle.value,
    altitudeFactor: altitude.value,
  });
  const isAluminium = wire.material?.value === "aluminium";
  const allowed = keep(
    known({
      ...about(wire, condition),
      quantity: "allowed-current",
      unit: "A",
      formula: isAluminium ? "I_free * f_bundle * f_altitude * f_Al" : "I_free * f_bundle * f_altitude",
      value: isAluminium ? amps * aluminiumFactor.value : amps,
      operands: () => ({
        I_free: derived("free-air current", inFreeAir),
        f_bundle,
        f_altitude: tabled("altitude factor", altitude, "1", [condition.altitude?.place]),
        ...(isAluminium && {
          f_Al: tabled("aluminium against copper", aluminiumFactor, "1", [wire.material?.place]),
        }),
      }),
      sources: [wireMethods.allowedCurrent.source],
    }),
  );
  return { allowed, gaps };
}

function freeAir(
  wire: Wire,
  condition: Condition,
  bundle: Bundle | undefined,
  keep: Keep,
): { readonly value?: Value | undefined; readonly fit?: Lookup<FreeAirFit> } {
  const ambient = celsiusOf(bundle, condition);
  const { gauge, rating } = wire;
  if (!gauge || !rating || ambient === undefined) return {};
  const rise = keep(
    known({
      ...about(wire, condition),
      quantity: "temperature-rise",
      unit: "K",
      formula: "T_R - T_1",
      value: inUnit(rating.value, "degC") - ambient,
      operands: () => ({ T_R: written("wire rating", rating, "degC"), T_1: ambientOf(bundle, condition) }),
    }),
  );
  if (!rise) return {};
  const fit = freeAirFit(gauge.value.si, rise.value);
  if (!fit.covered) return { fit };
  const part = (pick: keyof FreeAirFit) => covered(fit.value[pick], fit.source, fit.notes);
  const value = keep(
    known({
      ...about(wire, condition),
      quantity: "free-air-current",
      unit: "A",
      formula: "b * dT ^ m",
      value: freeAirCurrent({ ...fit.value, riseKelvin: rise.value }),
      operands: () => ({
        b: tabled("line of this gauge", part("coefficientAmps"), "A", [gauge.place]),
        dT: derived("temperature rise", rise),
        m: tabled("slope of the line", part("exponent"), "1", [gauge.place]),
      }),
      sources: [wireMethods.freeAirCurrent.source],
    }),
  );
  return { value, fit };
}

function bundleLookup(wire: Wire, bundle: Bundle | undefined): Lookup<number> | undefined {
  if (!wire.bundle || !bundle?.wires || !bundle.loading) return undefined;
  return bundleFactor(bundle.wires.value, inUnit(bundle.loading.value, "%"));
}

function ambientOf(bundle: Bundle | undefined, condition: Condition): Operand {
  return bundle?.ambient
    ? written("ambient along the bundle", bundle.ambient, "degC")
    : written("ambient of the condition", condition.ambient, "degC");
}

function celsiusOf(bundle: Bundle | undefined, condition: Condition): number | undefined {
  const ambient = bundle?.ambient ?? condition.ambient;
  return ambient && inUnit(ambient.value, "degC");
}

function gapOf<T>(wanted: string, lookup: Lookup<T> | undefined): Gap | undefined {
  return lookup && !lookup.covered ? { wanted, reason: lookup.reason, source: lookup.source } : undefined;
}

function about(wire: Wire, condition: Condition) {
  return { subject: { kind: "wire", id: wire.id!.value }, condition: condition.id?.value } as const;
}
