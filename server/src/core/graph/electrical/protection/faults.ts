import { inUnit } from "../../../quantities";
import type { Bus, Contact, Device, Electrical, Wire } from "../../../records/types";
import { isAtMost } from "../../../rounding";
import { Memory } from "../../remember";
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
import type { LoadPath } from "../circuit";
import type { ChartResult } from "../guards";
import type { Inline } from "../layout";
import { type Extreme, names } from "./extremes";
import { runOf, withstandTime } from "./fault-conductors";
import { type BandLookup, bandOf, isBound, openingValue } from "./opening";
import type { RatedDevice } from "./rated";
import { leastThrough, type Mesh, type Meshes, type MeshStates } from "./shared-faults";
import { type Supply, supplyOf, type Way, type Ways } from "./ways";

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

/** The end of the way that a fault current takes: from a point on, it runs through nothing else. */
interface End {
  /** The run that fails, where it leads to a load or on from a point; empty where it leads back. */
  readonly run: readonly Wire[];
  /** What leads back to ground from there, and the run itself where it does. */
  readonly returns: readonly Wire[];
}

/** The way that a fault current takes. */
interface Loop extends End {
  readonly way: Way;
}

/** Where it has more than one way to the point where its end begins. */
interface SharedLoop extends End {
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
const faults = new Memory<Wire, Inline["record"], FaultResult>();
const behind = new Memory<Inline["record"], Inline["record"], Value | undefined>();

/** Faults at the ends of runs, and behind devices. */
export class Faults {
  private readonly electrical: Electrical | undefined;
  private readonly buses: ReadonlyMap<string, Bus>;
  private readonly devices: ReadonlyMap<string, Device>;
  private readonly pathOfReturn = new Map<Wire, LoadPath>();
  private readonly pathOfLoad = new Map<string, LoadPath>();

  /** @param meshes drawn only when something has more than one way */
  constructor(
    private readonly basis: ElectricalBasis,
    private readonly ways: Ways,
    private readonly meshes: () => Meshes,
  ) {
    const { airframe, kit } = basis.project;
    this.electrical = airframe?.electrical;
    this.buses = new Map((this.electrical?.buses ?? []).map((bus) => [bus.id?.value ?? "", bus]));
    this.devices = new Map((kit?.devices ?? []).map((device) => [device.id?.value ?? "", device]));
    for (const path of basis.circuit.paths) {
      this.pathOfLoad.set(path.id, path);
      for (const wire of path.returns) if (!this.pathOfReturn.has(wire)) this.pathOfReturn.set(wire, path);
    }
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
    const found: FaultResult[] = [];
    const uncompared: UncomparedFault[] = [];
    for (const { wire, guard: record } of charted) {
      const guard = guards.get(record);
      if (!guard?.rating) continue;
      const fault = this.ofWire(wire, guard);
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
      const rests = [this.electrical, ...way.wires, ...this.inlinesAndHolders(way.inlines)];
      return behind.recall(inline.record, inline.record, rests, this.basis.keep, (keep) =>
        this.currentOf(subject, { way, run: [], returns: [] }, "largest", keep),
      );
    }
    const loop = { mesh: this.meshes().to(id), run: [], returns: [] };
    const { current, inWire } = this.sharedCurrents(subject, id, loop, "largest behind", this.basis.keep);
    // What comes to the fault by another way may run through the devices ahead of this one, and not through it.
    return current && inWire && isAtMost(inWire.value, current.value) ? this.basis.keep(current) : undefined;
  }

  private ofWire(wire: Wire, guard: RatedDevice): FaultResult | undefined {
    const loop = this.loopTo(wire) ?? this.sharedLoopTo(wire);
    if (!loop) return undefined;
    const ahead = "way" in loop ? loop.way.wires : wiresIn(loop.mesh);
    const inlines =
      "way" in loop ? loop.way.inlines : loop.mesh.parts.flatMap(({ inline }) => (inline ? [inline] : []));
    const rests = [
      "way" in loop,
      this.electrical,
      guard.device,
      guard.rating,
      ...ahead,
      ...loop.run,
      ...loop.returns,
      ...this.inlinesAndHolders(inlines),
    ];
    return faults.recall(wire, guard.inline.record, rests, this.basis.keep, (keep) =>
      this.faultOf(wire, guard, loop, keep),
    );
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
    if ("way" in loop) {
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
    if ("way" in loop) return isLimited(loop.way.bus);
    const points = new Set(loop.mesh.parts.flatMap(({ from, to }) => [from, to]));
    return [...points].filter((point) => this.buses.has(point)).every(isLimited);
  }

  /**
   * The way to the far end of a wire, and from there to ground. Where other wires lead
   * to the same end, the wire is taken off it: it then carries all of the current, and its guard no more.
   */
  private loopTo(wire: Wire): Loop | undefined {
    const end = this.endOf(wire);
    const way = end && this.ways.to(end.from);
    return way && { way, run: end.run, returns: end.returns };
  }

  private sharedLoopTo(wire: Wire): SharedLoop | undefined {
    const end = this.endOf(wire);
    return end && { mesh: this.meshes().to(end.from), run: end.run, returns: end.returns };
  }

  /**
   * From where the current of a fault runs through nothing but the wire and what follows it to ground. Undefined
   * where several wires lead a return to it.
   */
  private endOf(wire: Wire): (End & { from: string }) | undefined {
    const ofReturn = this.pathOfReturn.get(wire);
    if (ofReturn) {
      const returns = oneWayThrough(wire, ofReturn);
      return returns && { from: ofReturn.id, run: [], returns };
    }
    const ofLoad = this.pathOfLoad.get(wire.to?.value ?? "");
    const returns = ofLoad ? oneWayBack(ofLoad.id, ofLoad.returns) : [];
    return wire.from && { from: wire.from.value, run: [wire], returns };
  }

  /** Through a device, and through the run that fails: by the network's solution. */
  private sharedCurrents(
    subject: Subject,
    device: string,
    { mesh, ...end }: SharedLoop,
    asked: Extreme | "largest behind",
    keep: Keep,
  ): Drawn {
    const extreme = asked === "smallest" ? "smallest" : "largest";
    const last = [...end.run, ...returnsIn(end, extreme)];
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

  private resistanceOf(
    subject: Subject,
    { way, ...end }: Loop,
    extreme: Extreme,
    keep: Keep,
  ): Value | undefined {
    const returns = returnsIn(end, extreme);
    const supply = this.supply(way.bus, keep)[extreme === "largest" ? "least" : "weakest"];
    const parts: Operand[] = [
      ...(supply ? [derived(`ahead of ${way.bus}`, supply)] : []),
      ...way.inlines.flatMap((inline) => this.inlineOhms(inline)),
      ...[...way.wires, ...end.run, ...returns].map((wire) =>
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

  private inlinesAndHolders(inlines: readonly Inline[]): unknown[] {
    return inlines.flatMap((inline) => [inline.record, this.holderOf(inline)]);
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
function returnsIn({ run, returns }: End, extreme: Extreme): readonly Wire[] {
  return extreme === "largest" && run.length > 0 ? [] : returns;
}

/** From a point on toward ground; where a return divides, as if the other ways were off. */
function oneWayBack(point: string, returns: readonly Wire[]): Wire[] {
  const way: Wire[] = [];
  for (let at: string | undefined = point; at !== undefined; ) {
    const next = returns.find((wire) => wire.from?.value === at);
    if (!next || way.includes(next)) break;
    way.push(next);
    at = next.to?.value;
  }
  return way;
}

/** The same from a load, by way of one of its return wires; undefined where several lead to that. */
function oneWayThrough(wire: Wire, { id, returns }: LoadPath): Wire[] | undefined {
  const ahead: Wire[] = [];
  for (let at = wire.from?.value; at !== id; ) {
    const [before, ...others] = returns.filter((one) => one.to?.value === at);
    if (!before || others.length > 0 || ahead.includes(before)) return undefined;
    ahead.unshift(before);
    at = before.from?.value;
  }
  return [...ahead, wire, ...oneWayBack(wire.to?.value ?? "", returns)];
}

function wiresIn({ parts }: Mesh): Wire[] {
  return parts.flatMap(({ wire }) => wire ?? []);
}

function noResistance(name: string): NonNullable<Operand> {
  return { name, value: 0, unit: "ohm", places: [], notes: ["None is recorded, and none is counted."] };
}
