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
import { freeAirFit } from "../../tables/free-air";
import { type CoverageGap, covered, type Lookup } from "../../tables/lookup";
import { assumed, derive, derived, type Keep, type Operand, tabled, type Value, written } from "../value";

/** A table asked for something that it does not hold. */
export interface Gap {
  readonly wanted: string;
  readonly reason: CoverageGap;
  readonly source: Source;
}

/** Aluminium against copper of the same size, under the same conditions. */
const aluminiumFactor = covered(0.8, {
  document: "SAE AS50881",
  standing: "memory",
  note: "each entry of AC 43.13-1B Table 11-10 is 0.79 to 0.80 of the copper entry",
});

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
    const bundle = this.bundleOf(wire);
    return bundle?.ambient
      ? written("ambient along the bundle", bundle.ambient, "degC")
      : written("ambient of the condition", condition.ambient, "degC");
  }

  /** Why some numbers of a wire can't be had from the tables; each told once. */
  gapsOf(wire: Wire): readonly Gap[] {
    return this.gaps.get(wire) ?? [];
  }

  note<T>(wire: Wire, wanted: string, lookup: Lookup<T>): Lookup<T> {
    if (!lookup.covered) {
      const known = this.gaps.get(wire) ?? [];
      if (!known.some((gap) => gap.wanted === wanted)) {
        known.push({ wanted, reason: lookup.reason, source: lookup.source });
        this.gaps.set(wire, known);
      }
    }
    return lookup;
  }

  allowedCurrent(wire: Wire, condition: Condition): Value | undefined {
    const isAluminium = wire.material?.value === "aluminium";
    const altitude =
      condition.altitude &&
      this.note(wire, "altitude factor", altitudeFactor(inUnit(condition.altitude.value, "ft")));
    return this.keep(
      derive({
        ...this.about(wire, condition),
        quantity: "allowed-current",
        unit: "A",
        formula: isAluminium ? "I_free * f_bundle * f_altitude * f_Al" : "I_free * f_bundle * f_altitude",
        operands: {
          I_free: derived("free-air current", this.freeAirCurrent(wire, condition)),
          f_bundle: this.bundleFactor(wire),
          f_altitude: tabled("altitude factor", altitude, "1", [condition.altitude?.place]),
          ...(isAluminium && {
            f_Al: tabled("aluminium against copper", aluminiumFactor, "1", [wire.material?.place]),
          }),
        },
        compute: ({ I_free, f_bundle, f_altitude, f_Al = 1 }) =>
          f_Al * allowedCurrent({ freeAirAmps: I_free, bundleFactor: f_bundle, altitudeFactor: f_altitude }),
        sources: [wireMethods.allowedCurrent.source],
      }),
    );
  }

  private freeAirCurrent(wire: Wire, condition: Condition): Value | undefined {
    const about = this.about(wire, condition);
    const rise = this.keep(
      derive({
        ...about,
        quantity: "temperature-rise",
        unit: "K",
        formula: "T_R - T_1",
        operands: { T_R: written("wire rating", wire.rating, "degC"), T_1: this.ambient(wire, condition) },
        compute: ({ T_R, T_1 }) => T_R - T_1,
      }),
    );
    if (!rise || !wire.gauge) return undefined;
    const fit = this.note(wire, "free-air current", freeAirFit(wire.gauge.value.si, rise.value));
    const part = (pick: "coefficientAmps" | "exponent") =>
      fit.covered ? covered(fit.value[pick], fit.source, fit.notes) : undefined;
    return this.keep(
      derive({
        ...about,
        quantity: "free-air-current",
        unit: "A",
        formula: "b * dT ^ m",
        operands: {
          b: tabled("line of this gauge", part("coefficientAmps"), "A", [wire.gauge.place]),
          dT: derived("temperature rise", rise),
          m: tabled("slope of the line", part("exponent"), "1", [wire.gauge.place]),
        },
        compute: ({ b, dT, m }) => freeAirCurrent({ coefficientAmps: b, riseKelvin: dT, exponent: m }),
        sources: [wireMethods.freeAirCurrent.source],
      }),
    );
  }

  private bundleFactor(wire: Wire): Operand {
    if (!wire.bundle) {
      return assumed("bundle factor", 1, "1", "The wire runs in no bundle: alone in free air.");
    }
    const bundle = this.bundleOf(wire);
    if (!bundle?.wires || !bundle.loading) return undefined;
    const factor = bundleFactor(bundle.wires.value, inUnit(bundle.loading.value, "%"));
    const keys = [bundle.wires.place, bundle.loading.place];
    return tabled("bundle factor", this.note(wire, "bundle factor", factor), "1", keys);
  }

  private bundleOf(wire: Wire): Bundle | undefined {
    return wire.bundle && this.bundles.get(wire.bundle.value);
  }

  private about(wire: Wire, condition: Condition) {
    return { subject: { kind: "wire", id: wire.id!.value }, condition: condition.id?.value } as const;
  }
}
