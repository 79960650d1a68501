import { conductorArea, faultFactor, faultHeatMethods, withstandSeconds } from "../../../methods/fault-heat";
import { resistanceAt, wireMethods } from "../../../methods/wires";
import { inUnit } from "../../../quantities";
import type { Bus, Contact, Device, Electrical, Wire } from "../../../records/types";
import { copperConductor } from "../../../tables/copper-wire";
import { faultTemperature } from "../../../tables/fault-temperatures";
import { covered } from "../../../tables/lookup";
import { Memory } from "../../remember";
import {
  derive,
  derived,
  type Keep,
  type Operand,
  type Subject,
  sumOf,
  tabled,
  type Value,
  written,
} from "../../value";
import type { Inline, LoadPath } from "../circuit";
import type { DeviceResult } from "../devices";
import type { ElectricalBasis } from "../index";
import { resistancePer1000Feet } from "../wire-ratings";
import type { WireResult } from "../wires";
import { type BandLookup, bandOf, isBound, openingValue } from "./opening";
import { type Supply, supplyOf, type Way, type Ways } from "./ways";

/** A dead short at the far end of a wire, and whether its guard opens in time. */
export interface FaultResult {
  readonly wire: Pick<WireResult, "wire" | "id">;
  readonly guard: Pick<DeviceResult, "inline" | "id" | "device" | "rating">;
  readonly band: BandLookup;
  /** Wires at their rating, the weakest source alone: the smallest current. */
  readonly smallest: FaultState;
  /** Wires at 20 degC, all sources: the largest current. */
  readonly largest: FaultState;
}

export interface FaultState {
  /**
   * Whether the device has to open in time at this current. A largest current that nothing ahead of the bus
   * limits is a bound, which no real system draws.
   */
  readonly isJudged: boolean;
  readonly current: Value | undefined;
  /** Latest time in s after which the guard has opened; undefined while its points don't tell. */
  readonly opening: Value | undefined;
  /** Time in s that the wire stands the current. */
  readonly withstand: Value | undefined;
}

/** The way that a fault current takes. */
interface Loop {
  readonly way: Way;
  readonly returns: readonly Wire[];
}

/** Which of the two currents a value belongs to. */
type Extreme = "smallest" | "largest";

const names = {
  smallest: {
    run: "hot-resistance",
    loop: "loop-resistance",
    current: "fault-current",
    opening: "opening-time",
    withstand: "withstand-time",
  },
  largest: {
    run: "cold-resistance",
    loop: "least-loop-resistance",
    current: "largest-fault-current",
    opening: "largest-fault-opening-time",
    withstand: "largest-fault-withstand-time",
  },
} as const satisfies Record<Extreme, object>;

const leftOutAhead =
  "What lies ahead of the bus is left out: the record gives no resistance of its sources and feeders.";

const throughStructure = "The way back through the structure is left out.";

const largestOfTable =
  "The table gives the largest resistance of a conductor: a real one may pass somewhat more.";

/** What was derived of a wire, a bus or a fault, for as long as what it rests on is the same. */
const runs = {
  smallest: new Memory<Wire, Wire, Value | undefined>(),
  largest: new Memory<Wire, Wire, Value | undefined>(),
};
const heats = new Memory<Wire, Wire, Heat>();
const supplies = new Memory<Electrical, Bus, Supply>();
const faults = new Memory<Wire, Inline["record"], FaultResult>();

/** Faults at the ends of runs, and behind devices. */
export class Faults {
  private readonly buses: ReadonlyMap<string, Bus>;
  private readonly devices: ReadonlyMap<string, Device>;
  private readonly pathOfReturn = new Map<Wire, LoadPath>();
  private readonly pathOfLoad = new Map<string, LoadPath>();

  constructor(
    private readonly basis: ElectricalBasis,
    private readonly ways: Ways,
  ) {
    const { airframe, kit } = basis.project;
    this.buses = new Map((airframe?.electrical?.buses ?? []).map((bus) => [bus.id?.value ?? "", bus]));
    this.devices = new Map((kit?.devices ?? []).map((device) => [device.id?.value ?? "", device]));
    for (const path of basis.circuit.paths) {
      this.pathOfLoad.set(path.id, path);
      for (const wire of path.returns) if (!this.pathOfReturn.has(wire)) this.pathOfReturn.set(wire, path);
    }
  }

  /** One for each wire that a guard with a known rating protects, and that has one way to a bus. */
  ofWires(devices: readonly DeviceResult[]): FaultResult[] {
    return devices.flatMap((guard) =>
      guard.inline.kind === "protection" && guard.rating
        ? guard.wires.flatMap(({ result }) => this.ofWire(result, guard))
        : [],
    );
  }

  /** Largest current in A of a fault right behind a device. */
  behind(id: string): Value | undefined {
    const way = this.ways.to(id);
    return (
      way && this.currentOf({ kind: "protection", id }, { way, returns: [] }, "largest", this.basis.keep)
    );
  }

  private ofWire(wire: WireResult, guard: DeviceResult): FaultResult[] {
    const loop = this.loopTo(wire.wire);
    if (!loop) return [];
    const { way, returns } = loop;
    const holders = way.inlines.map((inline) => this.holderOf(inline));
    const rests = [
      this.basis.project.airframe?.electrical,
      guard.device,
      guard.rating,
      ...way.wires,
      ...returns,
      ...way.inlines.map(({ record }) => record),
      ...holders,
    ];
    const fault = faults.recall(wire.wire, guard.inline.record, rests, this.basis.keep, (keep) =>
      this.faultOf(wire, guard, loop, keep),
    );
    return [fault];
  }

  private faultOf(wire: WireResult, guard: DeviceResult, loop: Loop, keep: Keep): FaultResult {
    const band = bandOf(guard);
    const state = (extreme: Extreme): FaultState => {
      const subject = { kind: "wire", id: wire.id } as const;
      const current = this.currentOf(subject, loop, extreme, keep);
      const isJudged = extreme === "smallest" || this.supply(loop.way.bus, keep).least !== undefined;
      if (!current || !isJudged || band.kind !== "band") {
        return { current, isJudged, opening: undefined, withstand: undefined };
      }
      const withstand = withstandTime(wire.wire, current, extreme, keep);
      const opening = openingValue(band.band, "latest", derived("fault current", current), {
        subject,
        quantity: names[extreme].opening,
      });
      // A bound can show that the device opens in time; that it does not, only its own points can.
      const tells =
        !isBound(band.band, "latest", current.value) ||
        (opening && withstand && opening.value <= withstand.value);
      return { current, isJudged, opening: tells ? keep(opening) : undefined, withstand };
    };
    const { inline, id, device, rating } = guard;
    return {
      // Nothing but what the fault rests on: it is the same as long as that is.
      wire: { wire: wire.wire, id: wire.id },
      guard: { inline, id, device, rating },
      band,
      smallest: state("smallest"),
      largest: state("largest"),
    };
  }

  /** The way to the far end of a wire; at a load, and on its way to ground, the whole loop. */
  private loopTo(wire: Wire): Loop | undefined {
    const path = this.pathOfReturn.get(wire) ?? this.pathOfLoad.get(wire.to?.value ?? "");
    if (path) {
      const way = path.isSingle ? this.ways.to(path.id) : undefined;
      return way && { way, returns: path.returns };
    }
    const way = wire.from && this.ways.to(wire.from.value);
    return way && { way: { ...way, wires: [...way.wires, wire] }, returns: [] };
  }

  private currentOf(subject: Subject, loop: Loop, extreme: Extreme, keep: Keep): Value | undefined {
    const resistance = this.resistanceOf(subject, loop, extreme, keep);
    return keep(
      derive({
        subject,
        quantity: names[extreme].current,
        unit: "A",
        formula: "V / R",
        operands: {
          V: written("nominal voltage", this.basis.project.airframe?.electrical?.nominal, "V"),
          R: derived("resistance of the loop", resistance),
        },
        compute: ({ V, R }) => V / R,
      }),
    );
  }

  private resistanceOf(
    subject: Subject,
    { way, returns }: Loop,
    extreme: Extreme,
    keep: Keep,
  ): Value | undefined {
    const supply = this.supply(way.bus, keep)[extreme === "largest" ? "least" : "weakest"];
    const parts: Operand[] = [
      ...(supply ? [derived(`ahead of ${way.bus}`, supply)] : []),
      ...way.inlines.flatMap((inline) => this.inlineOhms(inline)),
      ...[...way.wires, ...returns].map((wire) =>
        derived(`run ${wire.id?.value}`, runOf(wire, extreme, keep)),
      ),
    ];
    if (parts.length === 0) return undefined;
    return keep(
      derive({
        subject,
        quantity: names[extreme].loop,
        unit: "ohm",
        formula: "sum(R)",
        operands: { R: parts },
        compute: ({ R }) => sumOf(R),
        notes: [
          ...(supply ? [] : [leftOutAhead]),
          ...(returns.length > 0 ? [] : [throughStructure]),
          ...(extreme === "largest" ? [largestOfTable] : []),
        ],
      }),
    );
  }

  private inlineOhms(inline: Inline): Operand[] {
    const holder = this.holderOf(inline);
    return holder?.resistance && holder.resistance.value.si > 0
      ? [written(`resistance of ${inline.id}`, holder.resistance, "ohm")]
      : [];
  }

  /** What has the resistance of something that current runs through. */
  private holderOf(inline: Inline): Contact | Device | undefined {
    return inline.kind === "contact" ? inline.record : this.devices.get(inline.record.device?.value ?? "");
  }

  private supply(id: string, keep: Keep): Supply {
    const { project } = this.basis;
    const bus = this.buses.get(id);
    const electrical = project.airframe?.electrical;
    if (!electrical || !bus) return { least: undefined, weakest: undefined };
    return supplies.recall(electrical, bus, [], keep, (inner) => supplyOf(id, project, inner));
  }
}

/** Resistance of a run in ohm: at 20 degC for the largest current, at its rating for the smallest. */
function runOf(wire: Wire, extreme: Extreme, keep: Keep): Value | undefined {
  return runs[extreme].recall(wire, wire, [], keep, (inner) => inner(runResistance(wire, extreme)));
}

function withstandTime(wire: Wire, current: Value, extreme: Extreme, keep: Keep): Value | undefined {
  const heat = heats.recall(wire, wire, [], keep, (inner) => heatOf(wire, inner));
  const heating = heatingOf(wire);
  if (!heating || heat.finalSource === undefined) return undefined;
  return keep(
    derive({
      subject: { kind: "wire", id: wire.id!.value },
      quantity: names[extreme].withstand,
      unit: "s",
      formula: "(k * S / I) ^ 2",
      operands: {
        k: derived("heat that the conductor may take", heat.factor),
        S: heat.area,
        I: derived("fault current", current),
      },
      compute: ({ S, I }) => withstandSeconds({ ...heating, areaMm2: S, amps: I }),
      sources: [faultHeatMethods.withstandTime.source, heat.finalSource],
      notes: [
        "All heat is taken to stay in the metal: the safe way for any time, near the truth for a few seconds.",
      ],
    }),
  );
}

function runResistance(wire: Wire, extreme: Extreme): Value | undefined {
  if (!wire.gauge || !wire.id) return undefined;
  const material = wire.material?.value ?? "copper";
  const common = {
    subject: { kind: "wire", id: wire.id.value },
    quantity: names[extreme].run,
    unit: "ohm",
  } as const;
  const R_20 = tabled(
    "resistance at 20 degC",
    resistancePer1000Feet(wire.gauge.value.si, material),
    "ohm/1000 ft",
    [wire.gauge.place, wire.material?.place],
  );
  const L = written("length of the run", wire.length, "ft");
  if (extreme === "largest") {
    return derive({
      ...common,
      formula: "R_20 * L / 1000",
      operands: { R_20, L },
      compute: (numbers) => (numbers.R_20 * numbers.L) / 1000,
    });
  }
  return derive({
    ...common,
    formula:
      material === "copper"
        ? "R_20 * L / 1000 * (234.5 + T_R) / 254.5"
        : "R_20 * L / 1000 * (238.1 + T_R) / 258.1",
    operands: { R_20, L, T_R: written("wire rating", wire.rating, "degC") },
    compute: (numbers) =>
      (resistanceAt({ material, resistanceAt20Celsius: numbers.R_20, conductorCelsius: numbers.T_R }) *
        numbers.L) /
      1000,
    sources: [wireMethods.resistanceAt.source],
  });
}

/** What decides how long a conductor stands a fault. */
interface Heat {
  readonly factor: Value | undefined;
  readonly area: Operand;
  readonly finalSource: ReturnType<typeof faultTemperature>["source"] | undefined;
}

/** From its rating, where a loaded wire may already be, to what its insulation stands for a moment. */
function heatingOf(wire: Wire) {
  if (!wire.rating) return undefined;
  const initialCelsius = inUnit(wire.rating.value, "degC");
  const final = faultTemperature(initialCelsius);
  if (!final.covered) return undefined;
  const material = wire.material?.value ?? "copper";
  return { material, initialCelsius, finalCelsius: final.value };
}

function heatOf(wire: Wire, keep: Keep): Heat {
  const heating = heatingOf(wire);
  // The table of aluminium conductors gives no area.
  if (!heating || !wire.gauge || heating.material !== "copper") {
    return { factor: undefined, area: undefined, finalSource: undefined };
  }
  const final = faultTemperature(heating.initialCelsius);
  const conductor = copperConductor(wire.gauge.value.si);
  const area = conductor.covered
    ? covered(conductorArea(conductor.value.circularMils), conductor.source, [
        `${conductor.value.circularMils} circular mils.`,
      ])
    : conductor;
  return {
    area: tabled("area of the conductor", area, "mm2", [wire.gauge.place]),
    finalSource: final.source,
    factor: keep(
      derive({
        subject: { kind: "wire", id: wire.id!.value },
        quantity: "fault-factor",
        unit: "1",
        method: "226 times the root of ln((T_f + 234.5) / (T_i + 234.5)), for copper, in A, s and mm2",
        operands: {
          T_i: written("wire rating, taken as the temperature when the fault begins", wire.rating, "degC"),
          T_f: tabled("temperature that its insulation stands in a fault", final, "degC", [
            wire.rating?.place,
          ]),
        },
        compute: ({ T_i, T_f }) =>
          faultFactor({ material: "copper", initialCelsius: T_i, finalCelsius: T_f }),
        sources: [faultHeatMethods.factor.source],
      }),
    ),
  };
}
