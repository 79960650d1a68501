/**
 * Currents, allowed currents and voltage drops of the wires, in every condition of the record.
 */
import {
  allowedCurrent,
  conductorTemperature,
  freeAirCurrent,
  resistanceAt,
  wireMethods,
} from "../methods/wires";
import type { Project } from "../project";
import { inUnit } from "../quantities";
import type { Bundle, Component, Condition, Device, Protection, Wire } from "../records/types";
import type { Place } from "../records/written";
import type { Source } from "../source";
import { altitudeFactor } from "../tables/altitude-derating";
import { aluminiumResistance } from "../tables/aluminium-wire";
import { bundleFactor } from "../tables/bundle-derating";
import { copperConductor } from "../tables/copper-wire";
import { freeAirFit } from "../tables/free-air";
import { type CoverageGap, covered, type Lookup } from "../tables/lookup";
import { voltageDropLimit } from "../tables/voltage-drop-limits";
import { wireChartBreaker, wireChartFuse } from "../tables/wire-chart";
import { type Circuit, type LoadPath, traceCircuit } from "./circuit";
import { assumed, derive, derived, type Operand, sumOf, tabled, type Value, written } from "./value";

export interface Electrical {
  readonly circuit: Circuit;
  readonly wires: readonly WireResult[];
  readonly paths: readonly PathResult[];
  readonly protection: readonly ProtectionResult[];
  readonly bundles: readonly BundleResult[];
  readonly values: readonly Value[];
}

export interface WireResult {
  readonly wire: Wire;
  readonly id: string;
  /** Whether any load's path leads through it. */
  readonly isUsed: boolean;
  readonly states: readonly WireState[];
  /** Why some of its values can't be had from the tables. */
  readonly gaps: readonly Gap[];
}

export interface WireState {
  readonly condition: Condition;
  readonly current?: Value | undefined;
  readonly allowed?: Value | undefined;
  readonly drop?: Value | undefined;
}

/** A table asked for something that it does not hold. */
export interface Gap {
  readonly wanted: string;
  readonly reason: CoverageGap;
  readonly source: Source;
}

export interface PathResult {
  readonly path: LoadPath;
  readonly states: readonly {
    readonly condition: Condition;
    readonly drop: Value;
    readonly limit: Value;
    /** The wires of the path, the one that drops most first. */
    readonly worst: readonly WireResult[];
  }[];
}

export interface ProtectionResult {
  readonly protection: Protection;
  readonly id: string;
  readonly device: Device;
  readonly rating: Value;
  readonly currents: readonly { readonly condition: Condition; readonly current: Value }[];
  readonly wires: readonly { readonly result: WireResult; readonly chart: Value | undefined }[];
}

export interface BundleResult {
  readonly bundle: Bundle;
  readonly id: string;
  readonly wires: readonly WireResult[];
  readonly states: readonly { readonly condition: Condition; readonly loading: Value }[];
}

/** Up to this long a current counts as intermittent. AC 43.13-1B par. 11-66; the time itself is from memory. */
const intermittentUpToSeconds = 120;

/** All electrical values of a project. Pure; what is missing in the record is left out of the result. */
export function deriveElectrical(project: Project): Electrical {
  return new ElectricalDerivation(project).run();
}

class ElectricalDerivation {
  private readonly values: Value[] = [];
  private readonly circuit: Circuit;
  private readonly conditions: readonly Condition[];
  private readonly bundles = new Map<string, Bundle>();
  private readonly devices = new Map<string, Device>();
  /** Currents of the loads behind a wire or a device, by condition. */
  private readonly carried = new Map<object, Map<Condition, Operand[]>>();

  constructor(private readonly project: Project) {
    this.circuit = traceCircuit(project);
    this.conditions = project.install.conditions ?? [];
    for (const bundle of project.install.bundles ?? [])
      if (bundle.id) this.bundles.set(bundle.id.value, bundle);
    for (const device of project.kit?.devices ?? []) if (device.id) this.devices.set(device.id.value, device);
  }

  run(): Electrical {
    this.carryLoads();
    const wires = this.wires();
    const results = new Map(wires.map((result) => [result.wire, result]));
    return {
      circuit: this.circuit,
      wires,
      paths: this.circuit.paths.map((path) => this.path(path, results)),
      protection: this.protection(wires),
      bundles: this.bundleLoadings(wires),
      values: this.values,
    };
  }

  /** Adds each load's current to everything on its path. */
  private carryLoads(): void {
    for (const path of this.circuit.paths) {
      for (const condition of this.conditions) {
        const current = this.loadCurrent(path.component, path.id, condition);
        if (!current) continue;
        for (const part of [...path.feed, ...path.devices, ...path.returns]) {
          const byCondition = this.carried.get(part) ?? new Map<Condition, Operand[]>();
          this.carried.set(part, byCondition);
          const loads = byCondition.get(condition);
          const operand = derived(`current of ${path.id}`, current);
          if (loads) loads.push(operand);
          else byCondition.set(condition, [operand]);
        }
      }
    }
  }

  private loadCurrent(component: Component, id: string, condition: Condition): Value | undefined {
    const running = condition.loads?.find((pair) => pair.key.value === id);
    const draw = running && component.draws?.find((one) => one.mode?.value === running.value.value);
    if (!draw) return undefined;
    const common = {
      subject: { kind: "component", id },
      quantity: "load-current",
      condition: condition.id?.value,
      unit: "A",
    } as const;
    if (draw.current) {
      return this.keep(
        derive({
          ...common,
          formula: "I",
          operands: { I: written(`current in mode ${draw.mode!.value}`, draw.current, "A") },
          compute: ({ I }) => I,
        }),
      );
    }
    return this.keep(
      derive({
        ...common,
        formula: "P / V",
        operands: {
          P: written(`power in mode ${draw.mode!.value}`, draw.power, "W"),
          V: written("nominal voltage", this.project.airframe?.electrical?.nominal, "V"),
        },
        compute: ({ P, V }) => P / V,
        notes: ["Power taken at the nominal voltage; a lower voltage at the load means more current."],
      }),
    );
  }

  private carriedCurrent(
    part: object,
    subject: Value["subject"],
    quantity: "wire-current" | "device-current",
    condition: Condition,
  ): Value | undefined {
    const loads = this.carried.get(part)?.get(condition);
    return (
      loads &&
      this.keep(
        derive({
          subject,
          quantity,
          condition: condition.id?.value,
          unit: "A",
          formula: "sum(I)",
          operands: { I: loads },
          compute: ({ I }) => sumOf(I),
        }),
      )
    );
  }

  private wires(): WireResult[] {
    const results: WireResult[] = [];
    for (const wire of this.project.install.wires ?? []) {
      if (!wire.id) continue;
      const gaps: Gap[] = [];
      const states = this.conditions.map((condition) => this.wireState(wire, condition, gaps));
      results.push({
        wire,
        id: wire.id.value,
        isUsed: this.circuit.protecting.has(wire),
        states,
        gaps: gaps.filter((gap, index) => gaps.findIndex((one) => one.wanted === gap.wanted) === index),
      });
    }
    return results;
  }

  private wireState(wire: Wire, condition: Condition, gaps: Gap[]): WireState {
    const subject = { kind: "wire", id: wire.id!.value } as const;
    const current = this.carriedCurrent(wire, subject, "wire-current", condition);
    const allowed = this.allowedCurrent(wire, condition, gaps);
    const drop = current && this.drop(wire, condition, current, allowed, gaps);
    return { condition, current, allowed, drop };
  }

  private ambient(wire: Wire, condition: Condition): Operand {
    const bundle = this.bundleOf(wire);
    return bundle?.ambient
      ? written("ambient along the bundle", bundle.ambient, "degC")
      : written("ambient of the condition", condition.ambient, "degC");
  }

  private bundleOf(wire: Wire): Bundle | undefined {
    return wire.bundle && this.bundles.get(wire.bundle.value);
  }

  private allowedCurrent(wire: Wire, condition: Condition, gaps: Gap[]): Value | undefined {
    const subject = { kind: "wire", id: wire.id!.value } as const;
    const place = { subject, condition: condition.id?.value };
    const note = <T>(wanted: string, lookup: Lookup<T> | undefined): Lookup<T> | undefined => {
      if (lookup && !lookup.covered) gaps.push({ wanted, reason: lookup.reason, source: lookup.source });
      return lookup;
    };

    const rise = this.keep(
      derive({
        ...place,
        quantity: "temperature-rise",
        unit: "K",
        formula: "T_R - T_1",
        operands: { T_R: written("wire rating", wire.rating, "degC"), T_1: this.ambient(wire, condition) },
        compute: ({ T_R, T_1 }) => T_R - T_1,
      }),
    );
    if (!rise || !wire.gauge) return undefined;
    const gauge = wire.gauge.value.si;
    const fit = note("free-air current", freeAirFit(gauge, rise.value));
    const part = (pick: "coefficientAmps" | "exponent") =>
      fit?.covered ? covered(fit.value[pick], fit.source, fit.notes) : undefined;
    const freeAir = this.keep(
      derive({
        ...place,
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

    const bundle = this.bundleOf(wire);
    const bundleOperand: Operand = !wire.bundle
      ? assumed("bundle factor", 1, "1", "The wire runs in no bundle: alone in free air.")
      : bundle?.wires && bundle.loading
        ? tabled(
            "bundle factor",
            note("bundle factor", bundleFactor(bundle.wires.value, inUnit(bundle.loading.value, "%"))),
            "1",
            [bundle.wires.place, bundle.loading.place],
          )
        : undefined;
    const altitude =
      condition.altitude && note("altitude factor", altitudeFactor(inUnit(condition.altitude.value, "ft")));
    const isAluminium = wire.material?.value === "aluminium";
    return this.keep(
      derive({
        ...place,
        quantity: "allowed-current",
        unit: "A",
        formula: isAluminium ? "I_free * f_bundle * f_altitude * f_Al" : "I_free * f_bundle * f_altitude",
        operands: {
          I_free: derived("free-air current", freeAir),
          f_bundle: bundleOperand,
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

  private drop(
    wire: Wire,
    condition: Condition,
    current: Value,
    allowed: Value | undefined,
    gaps: Gap[],
  ): Value | undefined {
    if (!wire.gauge) return undefined;
    const place = { subject: current.subject, condition: condition.id?.value };
    const material = wire.material?.value ?? "copper";
    const per1000Feet = resistanceLookup(wire.gauge.value.si, material);
    if (!per1000Feet.covered) {
      gaps.push({ wanted: "wire resistance", reason: per1000Feet.reason, source: per1000Feet.source });
      return undefined;
    }
    const temperature = this.conductorTemperature(wire, condition, current, allowed);
    const resistance = this.keep(
      derive({
        ...place,
        quantity: "wire-resistance",
        unit: "ohm",
        formula:
          material === "copper"
            ? "R_20 * L / 1000 * (234.5 + T_2) / 254.5"
            : "R_20 * L / 1000 * (238.1 + T_2) / 258.1",
        operands: {
          R_20: tabled("resistance at 20 degC", per1000Feet, "ohm/1000 ft", [
            wire.gauge.place,
            wire.material?.place,
          ]),
          L: written("length of the run", wire.length, "ft"),
          T_2: derived("conductor temperature", temperature),
        },
        compute: ({ R_20, L, T_2 }) =>
          (resistanceAt({ material, resistanceAt20Celsius: R_20, conductorCelsius: T_2 }) * L) / 1000,
        sources: [wireMethods.resistanceAt.source],
      }),
    );
    return this.keep(
      derive({
        ...place,
        quantity: "wire-drop",
        unit: "V",
        formula: "I * R",
        operands: { I: derived("current", current), R: derived("resistance of the run", resistance) },
        compute: ({ I, R }) => I * R,
        sources: [wireMethods.voltageDrop.source],
      }),
    );
  }

  private conductorTemperature(
    wire: Wire,
    condition: Condition,
    current: Value,
    allowed: Value | undefined,
  ): Value | undefined {
    const common = {
      subject: current.subject,
      quantity: "conductor-temperature",
      condition: condition.id?.value,
      unit: "degC",
    } as const;
    const T_R = written("wire rating", wire.rating, "degC");
    if (!allowed) {
      return this.keep(
        derive({
          ...common,
          formula: "T_R",
          operands: { T_R },
          compute: (numbers) => numbers.T_R,
          notes: ["No allowed current is known, so the conductor is taken at its rating, the safe way."],
        }),
      );
    }
    return this.keep(
      derive({
        ...common,
        formula: "T_1 + (T_R - T_1) * sqrt(I / I_max)",
        operands: {
          T_1: this.ambient(wire, condition),
          T_R,
          I: derived("current", current),
          I_max: derived("allowed current", allowed),
        },
        compute: (numbers) =>
          conductorTemperature({
            ambientCelsius: numbers.T_1,
            ratingCelsius: numbers.T_R,
            amps: numbers.I,
            allowedAmps: numbers.I_max,
          }),
        sources: [wireMethods.conductorTemperature.source],
      }),
    );
  }

  private path(path: LoadPath, results: ReadonlyMap<Wire, WireResult>): PathResult {
    const wires = [...path.feed, ...path.returns]
      .map((wire) => results.get(wire))
      .filter((one) => one !== undefined);
    const states = this.conditions.flatMap((condition) => {
      const drops = wires.map((result) => ({
        result,
        drop: result.states.find((state) => state.condition === condition)?.drop,
      }));
      if (drops.length === 0) return [];
      const subject = { kind: "component", id: path.id } as const;
      const drop = this.keep(
        derive({
          subject,
          quantity: "path-drop",
          condition: condition.id?.value,
          unit: "V",
          formula: "sum(V)",
          operands: { V: drops.map(({ result, drop }) => derived(`drop of wire ${result.id}`, drop)) },
          compute: ({ V }) => sumOf(V),
          sources: [wireMethods.voltageDrop.source],
          notes:
            path.returns.length > 0
              ? []
              : [
                  "Returns through the structure: its drop counts as none where the bond is 0.005 ohm or less (AC 43.13-1B par. 11-66).",
                ],
        }),
      );
      const limit = drop && this.dropLimit(subject, condition);
      if (!drop || !limit) return [];
      const worst = drops
        .toSorted((a, b) => (b.drop?.value ?? 0) - (a.drop?.value ?? 0))
        .map(({ result }) => result);
      return [{ condition, drop, limit, worst }];
    });
    return { path, states };
  }

  private dropLimit(subject: Value["subject"], condition: Condition): Value | undefined {
    const nominal = this.project.airframe?.electrical?.nominal;
    if (!nominal) return undefined;
    const isShort =
      condition.duration !== undefined && condition.duration.value.si <= intermittentUpToSeconds;
    const lookup = voltageDropLimit(nominal.value.si, isShort ? "intermittent" : "continuous");
    return this.keep(
      derive({
        subject,
        quantity: "drop-limit",
        condition: condition.id?.value,
        unit: "V",
        formula: "V_allowed",
        operands: {
          V_allowed: tabled(isShort ? "allowed, intermittent" : "allowed, continuous", lookup, "V", [
            nominal.place,
            condition.duration?.place,
          ]),
        },
        compute: ({ V_allowed }) => V_allowed,
        sources: [lookup.source],
      }),
    );
  }

  private protection(wires: readonly WireResult[]): ProtectionResult[] {
    const results: ProtectionResult[] = [];
    for (const protection of this.project.install.protection ?? []) {
      const device = protection.device && this.devices.get(protection.device.value);
      if (!protection.id || !device?.rating || !device.kind) continue;
      const subject = { kind: "protection", id: protection.id.value } as const;
      const rating = this.keep(
        derive({
          subject,
          quantity: "device-rating",
          unit: "A",
          formula: "I_rated",
          operands: {
            I_rated: withPlace(
              written(`rating of ${device.id?.value}`, device.rating, "A"),
              protection.device!.place,
            ),
          },
          compute: ({ I_rated }) => I_rated,
        }),
      );
      if (!rating) continue;
      const behind = wires.filter((result) => this.circuit.protecting.get(result.wire)?.has(protection));
      results.push({
        protection,
        id: protection.id.value,
        device,
        rating,
        currents: this.conditions.flatMap((condition) => {
          const current = this.carriedCurrent(protection, subject, "device-current", condition);
          return current ? [{ condition, current }] : [];
        }),
        wires: behind.map((result) => ({ result, chart: this.chartRating(result, device) })),
      });
    }
    return results;
  }

  private chartRating({ wire, id, gaps }: WireResult, device: Device): Value | undefined {
    if (!wire.gauge || wire.material?.value === "aluminium") return undefined;
    const lookup = (device.kind!.value === "fuse" ? wireChartFuse : wireChartBreaker)(wire.gauge.value.si);
    if (!lookup.covered) {
      (gaps as Gap[]).push({
        wanted: `${device.kind!.value} in the wire chart`,
        reason: lookup.reason,
        source: lookup.source,
      });
    }
    return this.keep(
      derive({
        subject: { kind: "wire", id },
        quantity: "chart-rating",
        unit: "A",
        formula: "I_chart",
        operands: {
          I_chart: tabled(`largest ${device.kind!.value} for this gauge`, lookup, "A", [wire.gauge.place]),
        },
        compute: ({ I_chart }) => I_chart,
        sources: [lookup.source],
      }),
    );
  }

  /** How far a bundle is loaded, where every wire in it is in this record. */
  private bundleLoadings(wires: readonly WireResult[]): BundleResult[] {
    return [...this.bundles].map(([id, bundle]) => {
      const inside = wires.filter((result) => result.wire.bundle?.value === id);
      const isComplete = bundle.wires?.value === inside.length;
      const states = !isComplete
        ? []
        : this.conditions.flatMap((condition) => {
            const state = inside.map((result) => result.states.find((one) => one.condition === condition)!);
            const carrying = state.filter((one) => one.current !== undefined);
            if (carrying.length === 0) return [];
            const loading = this.keep(
              derive({
                subject: { kind: "bundle", id },
                quantity: "bundle-loading",
                condition: condition.id?.value,
                unit: "%",
                formula: "100 * sum(I) / sum(I_max)",
                operands: {
                  I: carrying.map((one) => derived(`current of ${one.current!.subject.id}`, one.current)),
                  I_max: state.map((one, index) =>
                    derived(`allowed current of ${inside[index]!.id}`, one.allowed),
                  ),
                },
                compute: ({ I, I_max }) => (100 * sumOf(I)) / sumOf(I_max),
                sources: [wireMethods.bundleLoading.source],
              }),
            );
            return loading ? [{ condition, loading }] : [];
          });
      return { bundle, id, wires: inside, states };
    });
  }

  private keep(value: Value | undefined): Value | undefined {
    if (value) this.values.push(value);
    return value;
  }
}

/** Aluminium against copper of the same size, under the same conditions. */
const aluminiumFactor = covered(0.8, {
  document: "SAE AS50881",
  standing: "memory",
  note: "each entry of AC 43.13-1B Table 11-10 is 0.79 to 0.80 of the copper entry",
});

function resistanceLookup(gauge: number, material: "copper" | "aluminium"): Lookup<number> {
  if (material === "aluminium") return aluminiumResistance(gauge);
  const conductor = copperConductor(gauge);
  return conductor.covered
    ? covered(conductor.value.ohmsPer1000Feet, conductor.source, conductor.notes)
    : conductor;
}

function withPlace(operand: Operand, place: Place): Operand {
  return operand && { ...operand, places: [...operand.places, place] };
}
