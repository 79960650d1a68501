import { inUnit } from "../../../quantities";
import type { Bus, Contact, Device, Electrical, Wire } from "../../../records/types";
import { isAtMost } from "../../../rounding";
import { byIdOf } from "../../by-id";
import { Memory, Recurring } from "../../remember";
import {
  derive,
  derived,
  type Keep,
  known,
  type Operand,
  type Subject,
  sumOf,
  type Value,
  written,
} from "../../value";
import type { ElectricalBasis } from "../basis";
import type { ChartResult } from "../guards";
import { type Edge, edgesOf, type Inline, inlinesOf } from "../layout";
import type { RatedDevice } from "../rated";
import { type Extreme, names } from "./extremes";
import { runOf, withstandTime } from "./fault-conductors";
import { type BandLookup, bandOf, isBound, openingValue } from "./opening";
import { leastThrough, type Mesh, type Meshes, type MeshStates } from "./shared-faults";
import { type End, type Supply, supplyOf, type Way, type Ways } from "./ways";

/** A dead short at the far end of a wire, and whether its guard opens in time. */
export interface FaultResult {
  readonly wire: { readonly wire: Wire; readonly id: string };
  readonly guard: RatedDevice;
  readonly band: BandLookup;
  /** Wires at their rating, the weakest source alone: the smallest current. */
  readonly smallest: FaultState;
  /** Wires at 20 degC, all sources: the largest current. */
  readonly largest: FaultState;
  /** Whether the network gives no currents for it, with resistances that are all known. */
  readonly isUnsolved: boolean;
}

/** A wire whose fault can't be compared with what its guard does, though all resistances are known. */
export interface UncomparedFault {
  readonly wire: Wire;
  readonly guard: string;
  /** `returns`: several wires lead a return to it; `network`: the currents can't be had from it. */
  readonly reason: "returns" | "network";
}

export interface FaultState {
  /**
   * Whether the device has to open in time at this current. A largest current that nothing ahead of the bus
   * limits is a bound, which no real system draws.
   */
  readonly isJudged: boolean;
  readonly current: Value | undefined;
  /** Through the wire, where that is more than what runs through the guard; else the same value. */
  readonly inWire: Value | undefined;
  /** Latest time in s after which the guard has opened; undefined while its points don't tell. */
  readonly opening: Value | undefined;
  /** Time in s that the wire stands the current. */
  readonly withstand: Value | undefined;
}

/** What a fault current runs through at the last: the record's things at an `End`. */
interface Last {
  /** Empty where the run that fails leads back. */
  readonly run: readonly Wire[];
  readonly returns: readonly Wire[];
}

/** All that it runs through, where it has one way only. */
interface Loop extends Last {
  readonly bus: string;
  readonly wires: readonly Wire[];
  readonly inlines: readonly Inline[];
}

/** Where it has more than one way to the point where its end begins. */
interface SharedLoop extends Last {
  readonly mesh: Mesh;
}

/** What a fault draws. */
interface Drawn extends Pick<FaultState, "current" | "inWire"> {
  /** Whether the network gives no currents, with resistances that are all known. */
  readonly isUnsolved?: boolean;
}

const leftOutAhead =
  "What lies ahead of the bus is left out: the record gives no resistance of its sources and feeders.";

const throughStructure = "The way back through the structure is left out.";

/** Of currents that have more than one way, which states are looked through. */
const statesOf = {
  smallest: "any sources, any closed",
  largest: "all sources, any closed",
  "largest behind": "all sources, all closed",
} as const satisfies Record<Extreme | "largest behind", MeshStates>;

/** Of such currents. */
const sharedNotes = [
  "The current has more than one way from the sources. All loads are off, and the end of the run is off what else feeds it.",
  "A short along a run that is fed from its far end too is not looked at.",
];

const hotAhead =
  "Wires on a way through the device at their rating, others at 20 degC; whichever sources run, and whichever of the other devices have opened before.";

const largestOfTable =
  "The table gives the largest resistance of a conductor: a real one may pass somewhat more.";

/** What was derived of a bus or a fault, for as long as what it rests on is the same. */
const supplies = new Memory<Electrical, Bus, Supply>();
const faults = new Recurring<Wire, FaultResult>();
const behind = new Recurring<Inline["record"], Value | undefined>();

/** Faults at the ends of runs, and behind devices. */
export class Faults {
  private readonly electrical: Electrical | undefined;
  private readonly buses: ReadonlyMap<string, Bus>;
  private readonly devices: ReadonlyMap<string, Device>;
  private readonly edges: readonly Edge[];
  private readonly inlines: ReadonlyMap<string, Inline>;

  /** @param meshes drawn only when something has more than one way */
  constructor(
    private readonly basis: ElectricalBasis,
    private readonly ways: Ways,
    private readonly meshes: () => Meshes,
  ) {
    const { airframe, kit } = basis.project;
    this.electrical = airframe?.electrical;
    this.buses = byIdOf(this.electrical?.buses);
    this.devices = byIdOf(kit?.devices);
    this.edges = edgesOf(basis.project);
    this.inlines = inlinesOf(basis.project);
  }

  /**
   * One for each wire that a guard with a known rating protects.
   *
   * @param charted the wires, each with its guard
   */
  ofWires(
    charted: readonly Pick<ChartResult, "wire" | "guard">[],
    rated: readonly RatedDevice[],
  ): { faults: FaultResult[]; uncompared: UncomparedFault[] } {
    const guards = new Map(rated.map((device) => [device.inline.record, device]));
    const positions = new Map(this.edges.map(({ wire }, position) => [wire, position]));
    const found: FaultResult[] = [];
    const uncompared: UncomparedFault[] = [];
    for (const { wire, guard: record } of charted) {
      const guard = guards.get(record);
      if (!guard?.rating) continue;
      const fault = this.ofWire(wire, positions.get(wire)!, guard);
      if (fault) found.push(fault);
      if (fault && !fault.isUnsolved) continue;
      uncompared.push({ wire, guard: guard.id, reason: fault ? "network" : "returns" });
    }
    return { faults: found, uncompared };
  }

  /** Largest current in A through a device, of a fault right behind it. */
  behind({ inline, id }: Pick<RatedDevice, "inline" | "id">): Value | undefined {
    const subject = { kind: "protection", id } as const;
    const way = this.ways.to(id);
    if (way) {
      return behind.recall(inline.record, this.restsOf(way, undefined), this.basis.keep, (keep) =>
        this.currentOf(subject, { ...this.loopOf(way), run: [], returns: [] }, "largest", keep),
      );
    }
    const loop = { mesh: this.meshes().to(id), run: [], returns: [] };
    const { current, inWire } = this.sharedCurrents(subject, id, loop, "largest behind", this.basis.keep);
    // What comes to the fault by another way may run through the devices ahead of this one, and not through it.
    return current && inWire && isAtMost(inWire.value, current.value) ? this.basis.keep(current) : undefined;
  }

  /**
   * At the far end of a wire. Where other wires lead to the same end, the wire is taken off it: it then carries all
   * of the current, and its guard no more.
   */
  private ofWire(wire: Wire, edge: number, guard: RatedDevice): FaultResult | undefined {
    const end = this.ways.endOf(edge);
    if (!end) return undefined;
    const way = this.ways.to(end.from);
    const mesh = way ? undefined : this.meshes().to(end.from);
    const rests = this.restsOf(way ?? mesh!, end);
    rests.push(guard.inline.record, guard.device, guard.rating);
    return faults.recall(wire, rests, this.basis.keep, (keep) => {
      const last = {
        run: end.run === undefined ? [] : [wire],
        returns: end.returns.map((one) => this.edges[one]!.wire!),
      };
      return this.faultOf(
        wire,
        guard,
        way ? { ...this.loopOf(way), ...last } : { mesh: mesh!, ...last },
        keep,
      );
    });
  }

  /** The record's things on a way. */
  private loopOf({ bus, wires, inlines }: Way): Omit<Loop, keyof Last> {
    return {
      bus,
      wires: wires.map((edge) => this.edges[edge]!.wire!),
      inlines: inlines.map((id) => this.inlines.get(id)!),
    };
  }

  /** What the current of a fault rests on, as far as the way that it takes. */
  private restsOf(ahead: Way | Mesh, end: End | undefined): unknown[] {
    const rests: unknown[] = [
      this.electrical,
      "bus" in ahead ? ahead.bus : undefined,
      end?.run === undefined,
    ];
    const addInline = (inline: Inline) => rests.push(inline.record, this.holderOf(inline));
    if ("parts" in ahead) {
      for (const { wire, inline } of ahead.parts) {
        if (wire) rests.push(wire);
        if (inline) addInline(inline);
      }
    } else {
      for (const edge of ahead.wires) rests.push(this.edges[edge]!.wire);
      for (const id of ahead.inlines) addInline(this.inlines.get(id)!);
    }
    for (const edge of end?.returns ?? []) rests.push(this.edges[edge]!.wire);
    return rests;
  }

  private faultOf(wire: Wire, guard: RatedDevice, loop: Loop | SharedLoop, keep: Keep): FaultResult {
    const band = bandOf(guard);
    const subject = { kind: "wire", id: wire.id!.value } as const;
    const smallest = this.currentsOf(subject, guard.id, loop, "smallest", keep);
    const largest = this.currentsOf(subject, guard.id, loop, "largest", keep);
    const stateAt = (extreme: Extreme, { current, inWire }: Drawn): FaultState => {
      const isJudged = extreme === "smallest" || this.isLimitedAhead(loop, keep);
      if (!current || !inWire || !isJudged || band.kind !== "band") {
        return { current, inWire, isJudged, opening: undefined, withstand: undefined };
      }
      const withstand = withstandTime(wire, inWire, extreme, keep);
      const opening = openingValue(band.band, "latest", derived("fault current", current), {
        subject,
        quantity: names[extreme].opening,
      });
      // A bound can show that the device opens in time; that it does not, only its own points can.
      const tells =
        !isBound(band.band, "latest", current.value) ||
        (opening && withstand && opening.value <= withstand.value);
      return { current, inWire, isJudged, opening: tells ? keep(opening) : undefined, withstand };
    };
    return {
      wire: { wire, id: subject.id },
      guard,
      band,
      smallest: stateAt("smallest", smallest),
      largest: stateAt("largest", largest),
      isUnsolved: smallest.isUnsolved === true,
    };
  }

  private currentsOf(
    subject: Subject,
    guard: string,
    loop: Loop | SharedLoop,
    extreme: Extreme,
    keep: Keep,
  ): Drawn {
    if (!("mesh" in loop)) {
      const current = this.currentOf(subject, loop, extreme, keep);
      return { current, inWire: current };
    }
    const drawn = this.sharedCurrents(subject, guard, loop, extreme, keep);
    keep(drawn.current);
    keep(drawn.inWire);
    return drawn;
  }

  /** Whether the record limits what every bus that feeds the fault can give. */
  private isLimitedAhead(loop: Loop | SharedLoop, keep: Keep): boolean {
    const isLimited = (bus: string) => this.supply(bus, keep).least !== undefined;
    if (!("mesh" in loop)) return isLimited(loop.bus);
    const points = new Set(loop.mesh.parts.flatMap(({ from, to }) => [from, to]));
    return [...points].filter((point) => this.buses.has(point)).every(isLimited);
  }

  /** Through a device, and through the run that fails: by the network's solution. */
  private sharedCurrents(
    subject: Subject,
    device: string,
    { mesh, ...ends }: SharedLoop,
    asked: Extreme | "largest behind",
    keep: Keep,
  ): Drawn {
    const extreme = asked === "smallest" ? "smallest" : "largest";
    const last = [...ends.run, ...returnsIn(ends, extreme)];
    const volts = this.electrical?.nominal;
    const hot = extreme === "smallest" ? new Set([...mesh.wiresThrough(device), ...last]) : new Set<Wire>();
    const ahead = mesh.parts.map((part): Operand => {
      const { wire, inline, feeder } = part;
      if (wire) {
        return derived(`run ${wire.id?.value}`, runOf(wire, hot.has(wire) ? "smallest" : "largest", keep));
      }
      const resistance = inline ? this.holderOf(inline)?.resistance : feeder?.resistance;
      const name = `resistance of ${inline?.id ?? feeder?.id?.value ?? part.to}`;
      return written(name, resistance, "ohm") ?? noResistance(name);
    });
    const behind = last.map((wire) => derived(`run ${wire.id?.value}`, runOf(wire, extreme, keep)));
    const inSources = mesh.supplies.map(({ at, source }) => {
      const name = `resistance of ${at}`;
      return written(name, source?.resistance, "ohm") ?? noResistance(name);
    });
    const R = [...inSources, ...ahead, ...behind];
    if (!volts || R.some((one) => one === undefined)) return { current: undefined, inWire: undefined };
    const found = leastThrough(device, mesh, statesOf[asked], {
      volts: inUnit(volts.value, "V"),
      ohms: ahead.map((one) => one!.value),
      supplyOhms: inSources.map(({ value }) => value),
      lastOhms: sumOf(behind.map((one) => one!.value)),
    });
    const common = () => ({
      subject,
      operands: { V: written("nominal voltage", volts, "V"), R },
      notes: [...sharedNotes, ...(extreme === "largest" ? [largestOfTable] : [hotAhead])],
    });
    return {
      isUnsolved: found === undefined,
      current: known(found?.device, "A", () => ({
        ...common(),
        quantity: names[extreme].current,
        method: `solution of the network with the fault: the least through ${device}`,
      })),
      inWire: known(found?.whole, "A", () => ({
        ...common(),
        quantity: names[extreme].inWire,
        method: "solution of the network with the fault: all of its current",
      })),
    };
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
          V: written("nominal voltage", this.electrical?.nominal, "V"),
          R: derived("resistance of the loop", resistance),
        },
        compute: ({ V, R }) => V / R,
      }),
    );
  }

  private resistanceOf(subject: Subject, loop: Loop, extreme: Extreme, keep: Keep): Value | undefined {
    const returns = returnsIn(loop, extreme);
    const supply = this.supply(loop.bus, keep)[extreme === "largest" ? "least" : "weakest"];
    const parts: Operand[] = [
      ...(supply ? [derived(`ahead of ${loop.bus}`, supply)] : []),
      ...loop.inlines.flatMap((inline) => this.inlineOhms(inline)),
      ...[...loop.wires, ...loop.run, ...returns].map((wire) =>
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
    const { electrical } = this;
    const bus = this.buses.get(id);
    if (!electrical || !bus) return { least: undefined, weakest: undefined };
    return supplies.recall(electrical, bus, [], keep, (inner) => supplyOf(id, electrical, inner));
  }
}

/** The largest current is that of a short to the structure, which needs no wire back; unless it is on one. */
function returnsIn({ run, returns }: Last, extreme: Extreme): readonly Wire[] {
  return extreme === "largest" && run.length > 0 ? [] : returns;
}

function noResistance(name: string): NonNullable<Operand> {
  return { name, value: 0, unit: "ohm", places: [], notes: ["None is recorded, and none is counted."] };
}
