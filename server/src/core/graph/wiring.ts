/**
 * Wires as things that are installed: how tightly each may be bent, and what each and all of them weigh.
 */
import { conductorWeightMethod, copperWeightPer1000Feet } from "../methods/conductor-weight";
import type { Project } from "../project";
import { convert, type UnitSymbol } from "../quantities";
import type { Wire } from "../records/types";
import { copperConductor } from "../tables/copper-wire";
import { covered, type Lookup } from "../tables/lookup";
import { wireInstallationLimits } from "../tables/wire-installation-limits";
import { isWholeList } from "./entries";
import { groupBy } from "./group-by";
import { Recurring } from "./remember";
import { derive, derived, type Keep, known, type Subject, tabled, type Value, written } from "./value";
import { balanceUnits } from "./weights/balance-units";

export interface Wiring {
  readonly runs: readonly WireRun[];
  /** In the unit of the airframe's empty weight. Undefined while the weight of any wire is not known. */
  readonly harnessWeight: Value | undefined;
}

export interface WireRun {
  readonly wire: Wire;
  readonly id: string;
  /** Undefined while no outside diameter is recorded, neither of it nor of a wire of its bundle. */
  readonly leastBendRadius: Value | undefined;
  /** By its maker's data, or of a copper conductor alone. */
  readonly weight: Value | undefined;
}

/** All wires of a record together. */
export const harnessSubject: Subject = { kind: "harness", id: "harness" };

/** Units in which weight per length x length / 1000 is the weight. */
interface WireUnits {
  readonly weight: UnitSymbol<"mass">;
  readonly perLength: UnitSymbol<"mass-per-length">;
  readonly length: UnitSymbol<"length">;
  /** What the conductor's weight in lb/1000 ft is multiplied by, as part of a formula. */
  readonly fromPounds: string;
}

const pounds: WireUnits = { weight: "lb", perLength: "lb/1000 ft", length: "ft", fromPounds: "" };
const kilograms: WireUnits = {
  weight: "kg",
  perLength: "g/m",
  length: "m",
  fromPounds: " * 453.59237 / 304.8",
};

/** Pure; what is missing in the record is left out of the result. */
export function deriveWiring(project: Project, keep: Keep): Wiring {
  const { install, airframe } = project;
  const wires = install.wires ?? [];
  const units = balanceUnits(airframe).weight === "kg" ? kilograms : pounds;
  const bundles = diametersByBundle(wires);
  const runs: WireRun[] = [];
  for (const wire of wires) {
    if (!wire.id) continue;
    const id = wire.id.value;
    const beside = (wire.bundle && bundles.get(wire.bundle.value)) ?? diametersOf([wire]);
    const run = remembered.recall(wire, [units, ...beside], keep, (own) => ({
      wire,
      id,
      leastBendRadius: own(leastBendRadius(wire, beside)),
      weight: own(wireWeight(wire, units, own)),
    }));
    runs.push(run);
  }
  const isWhole = isWholeList(install, "wires", install.wires) && runs.length === wires.length;
  const weight = isWhole ? keep(harnessWeight(runs, units)) : undefined;
  return { runs, harnessWeight: weight };
}

const remembered = new Recurring<Wire, WireRun>();

/** Of wires that run together the first of the largest, if any has an outside diameter, and whether each has one. */
type Diameters = readonly [largest: Wire | undefined, isEachKnown: boolean];

function diametersOf(beside: readonly Wire[]): Diameters {
  let largest: Wire | undefined;
  let isEachKnown = true;
  for (const wire of beside) {
    if (!wire.outsideDiameter) isEachKnown = false;
    else if (!largest || wire.outsideDiameter.value.si > largest.outsideDiameter!.value.si) largest = wire;
  }
  return [largest, isEachKnown];
}

function diametersByBundle(wires: readonly Wire[]): ReadonlyMap<string | undefined, Diameters> {
  const bundles = groupBy(wires, ({ bundle }) => bundle?.value);
  return new Map([...bundles].map(([bundle, beside]) => [bundle, diametersOf(beside)]));
}

/** By the largest diameter that is recorded in the wire's bundle, itself counted. */
function leastBendRadius(wire: Wire, [largest, isEachKnown]: Diameters): Value | undefined {
  if (!largest) return undefined;
  const { value, source } = wireInstallationLimits.bendRadius;
  const ofWhich = largest === wire ? "" : ` of ${largest.id?.value}, the largest in the bundle`;
  return derive({
    subject: { kind: "wire", id: wire.id!.value },
    quantity: "least-bend-radius",
    unit: "in",
    formula: "k * D",
    operands: {
      k: tabled("outside diameters", covered(value, source), "1", []),
      D: written(`outside diameter${ofWhich}`, largest.outsideDiameter, "in"),
    },
    compute: ({ k, D }) => k * D,
    sources: [source],
    notes: isEachKnown
      ? []
      : ["Wires of the bundle without an outside diameter in this record may ask for a larger radius."],
  });
}

function wireWeight(wire: Wire, units: WireUnits, keep: Keep): Value | undefined {
  const perLength = wire.weightPerLength
    ? written("weight per length", wire.weightPerLength, units.perLength)
    : derived("weight of the conductor per length", keep(conductorWeight(wire, units)));
  return derive({
    subject: { kind: "wire", id: wire.id!.value },
    quantity: "wire-weight",
    unit: units.weight,
    formula: "w * L / 1000",
    operands: { w: perLength, L: written("length of the run", wire.length, units.length) },
    compute: ({ w, L }) => (w * L) / 1000,
  });
}

/** Of copper only: no table of aluminium conductors gives their area. */
function conductorWeight(wire: Wire, units: WireUnits): Value | undefined {
  if (!wire.gauge || wire.material?.value === "aluminium") return undefined;
  return derive({
    subject: { kind: "wire", id: wire.id!.value },
    quantity: "conductor-weight",
    unit: units.perLength,
    formula: `0.0030269 * CM${units.fromPounds}`,
    operands: {
      CM: tabled("area of the conductor", circularMils(wire.gauge.value.si), "cmil", [wire.gauge.place]),
    },
    compute: ({ CM }) =>
      convert(copperWeightPer1000Feet(CM), "lb/1000 ft", units.perLength, "mass-per-length"),
    sources: [conductorWeightMethod.source],
    notes: [
      "The weight of the insulation is not in it: with weight-per-length from the maker's data the whole wire counts.",
    ],
  });
}

function circularMils(gauge: number): Lookup<number> {
  const conductor = copperConductor(gauge);
  return conductor.covered ? covered(conductor.value.circularMils, conductor.source) : conductor;
}

function harnessWeight(runs: readonly WireRun[], { weight }: WireUnits): Value | undefined {
  if (runs.length === 0) return undefined;
  let sum = 0;
  for (const run of runs) {
    if (!run.weight) return undefined;
    sum += run.weight.value;
  }
  return known(sum, weight, () => ({
    subject: harnessSubject,
    quantity: "harness-weight",
    formula: "sum(w)",
    operands: { w: runs.map((run) => derived(`weight of ${run.id}`, run.weight)) },
  }));
}
