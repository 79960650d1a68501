/**
 * The loadings that must stay legal: weight and centre of gravity of each, before and after the modification,
 * and the limits of its envelope at that weight.
 */
import { armOf, balanceSources, moment } from "../../methods/balance";
import { type LimitGap, type LimitSide, limitAt } from "../../methods/envelope";
import type { Project } from "../../project";
import type { AirframeRecord, Envelope, Loading, Station, StationLoad } from "../../records/types";
import { entryOf, isWholeList } from "../entries";
import { groupBy } from "../group-by";
import type { QuantityName } from "../quantity-names";
import { derive, derived, type Keep, type Operand, sumOf, type Value, written } from "../value";
import type { BalanceUnits } from "./balance-units";
import { limitPointsOf } from "./limit-points";
import type { StationLimit } from "./station-limits";
import { terms, type WeightChange } from "./weight-change";

export interface LoadingResult {
  readonly loading: Loading;
  readonly id: string;
  readonly envelope: Envelope | undefined;
  /** What each station carries, in the order in which the loading names them. */
  readonly stations: readonly StationLoadResult[];
  readonly before: LoadingState;
  readonly after: LoadingState;
}

export interface LoadingState {
  readonly weight: Value | undefined;
  readonly moment: Value | undefined;
  readonly cg: Value | undefined;
  readonly forward: Value | undefined;
  readonly aft: Value | undefined;
  /** Limits that the envelope does not give at this weight. */
  readonly gaps: readonly EnvelopeGap[];
}

export interface EnvelopeGap {
  readonly side: LimitSide;
  readonly gap: LimitGap;
}

export interface StationLoadResult {
  readonly id: string;
  /** Undefined where the airframe has no such station. */
  readonly station: Station | undefined;
  /** One or more entries of the loading. */
  readonly loads: readonly StationLoad[];
  /** Those of them that say neither a weight nor a volume that can be weighed. */
  readonly unweighed: readonly StationLoad[];
  readonly weight: Value | undefined;
  readonly moment: Value | undefined;
  readonly limit: Value | undefined;
}

type StateQuantity = "weight" | "moment" | "cg" | LimitSide;

const quantities = {
  before: {
    weight: "loading-weight-before",
    moment: "loading-moment-before",
    cg: "loading-cg-before",
    forward: "forward-limit-before",
    aft: "aft-limit-before",
  },
  after: {
    weight: "loading-weight",
    moment: "loading-moment",
    cg: "loading-cg",
    forward: "forward-limit",
    aft: "aft-limit",
  },
} as const satisfies Record<string, Record<StateQuantity, QuantityName>>;

/** All loadings of a project's airframe. Pure; values go to `keep`. */
export function deriveLoadings(
  { airframe }: Project,
  units: BalanceUnits,
  change: WeightChange,
  limits: ReadonlyMap<string, StationLimit>,
  keep: Keep,
): LoadingResult[] {
  return airframe ? new LoadingDerivation(airframe, units, change, limits, keep).run() : [];
}

/** Weight and moment that the loads of a loading are added to. */
interface Basis {
  readonly weight: Operand;
  readonly moment: Operand;
}

class LoadingDerivation {
  // Of two with one id the first counts; the second is a finding of its own.
  private readonly stations: ReadonlyMap<string | undefined, readonly [Station, ...Station[]]>;
  private readonly envelopes: ReadonlyMap<string | undefined, readonly [Envelope, ...Envelope[]]>;

  constructor(
    private readonly airframe: AirframeRecord,
    private readonly units: BalanceUnits,
    private readonly change: WeightChange,
    private readonly limits: ReadonlyMap<string, StationLimit>,
    private readonly keep: Keep,
  ) {
    this.stations = groupBy(airframe.stations ?? [], (one) => one.id?.value);
    this.envelopes = groupBy(airframe.envelopes ?? [], (one) => one.id?.value);
  }

  run(): LoadingResult[] {
    const { emptyWeight, emptyMoment, emptyMomentBefore } = this.change;
    const before = {
      weight: this.change.before.weight,
      moment: derived("empty moment before", emptyMomentBefore),
    };
    const after = {
      weight: derived("empty weight", emptyWeight),
      moment: derived("empty moment", emptyMoment),
    };
    return (this.airframe.loadings ?? []).flatMap((loading) => {
      if (!loading.id) return [];
      const id = loading.id.value;
      const envelope = loading.envelope && this.envelopes.get(loading.envelope.value)?.[0];
      const stations = [...groupBy(loading.load ?? [], (load) => load.station?.value)].map(
        ([station, loads]) => this.station(id, station, loads),
      );
      const isWhole = loading.load !== undefined && isWholeList(loading, "load", loading.load);
      const loads = {
        weights: stations.map((one) => derived(`weight at ${one.id}`, one.weight)),
        moments: stations.map((one) => derived(`moment at ${one.id}`, one.moment)),
      };
      const state = (when: keyof typeof quantities, empty: Basis) =>
        this.state(id, quantities[when], envelope, empty, isWhole ? loads : undefined);
      return [
        { loading, id, envelope, stations, before: state("before", before), after: state("after", after) },
      ];
    });
  }

  private station(loading: string, id: string | undefined, loads: readonly StationLoad[]): StationLoadResult {
    const station = id === undefined ? undefined : this.stations.get(id)?.[0];
    const common = { subject: { kind: "station", id: id ?? "" }, condition: loading } as const;
    const weighed = loads.filter((load) => entryOf(load, "weight"));
    const filled = loads.filter((load) => !entryOf(load, "weight"));
    const density = station?.density;
    const weight = this.keep(
      derive({
        ...common,
        quantity: "load-weight",
        unit: this.units.weight,
        formula: terms(weighed.length > 0 && "sum(w)", filled.length > 0 && "+ sum(V) * rho"),
        operands: {
          w: weighed.map((load) => written("weight of the load", load.weight, this.units.weight)),
          V: filled.map((load) => written("volume of the load", load.volume, this.units.volume)),
          ...(filled.length > 0 && { rho: written("density at the station", density, this.units.density) }),
        },
        compute: ({ w, V, rho = 0 }) => sumOf(w) + sumOf(V) * rho,
        notes: weighed.some((load) => entryOf(load, "volume"))
          ? ["Where a load gives both a weight and a volume, the weight counts."]
          : [],
      }),
    );
    const m = this.keep(
      derive({
        ...common,
        quantity: "load-moment",
        unit: this.units.moment,
        formula: "w * x",
        operands: {
          w: derived("weight of the load", weight),
          x: written("arm of the station", station?.arm, this.units.arm),
        },
        compute: ({ w, x }) => moment({ weight: w, arm: x }),
        sources: [balanceSources.centreOfGravity],
      }),
    );
    const isWeighable = (load: StationLoad) =>
      entryOf(load, "volume") && (!station || entryOf(station, "density"));
    return {
      id: id ?? "",
      station,
      loads,
      unweighed: filled.filter((load) => !isWeighable(load)),
      weight,
      moment: m,
      limit: id === undefined ? undefined : this.limits.get(id)?.after,
    };
  }

  private state(
    id: string,
    names: Record<StateQuantity, QuantityName>,
    envelope: Envelope | undefined,
    empty: Basis,
    loads: { readonly weights: readonly Operand[]; readonly moments: readonly Operand[] } | undefined,
  ): LoadingState {
    const common = { subject: { kind: "loading", id }, sources: [balanceSources.centreOfGravity] } as const;
    const isLoaded = loads !== undefined && loads.weights.length > 0;
    const weight = this.keep(
      derive({
        ...common,
        quantity: names.weight,
        unit: this.units.weight,
        formula: terms("W_e", isLoaded && "+ sum(w)"),
        operands: { W_e: empty.weight, w: loads?.weights ?? [undefined] },
        compute: ({ W_e, w }) => W_e + sumOf(w),
      }),
    );
    const total = this.keep(
      derive({
        ...common,
        quantity: names.moment,
        unit: this.units.moment,
        formula: terms("M_e", isLoaded && "+ sum(m)"),
        operands: { M_e: empty.moment, m: loads?.moments ?? [undefined] },
        compute: ({ M_e, m }) => M_e + sumOf(m),
      }),
    );
    const cg = this.keep(
      derive({
        ...common,
        quantity: names.cg,
        unit: this.units.arm,
        formula: "M / W",
        operands: { M: derived("moment of the loading", total), W: derived("weight of the loading", weight) },
        compute: ({ M, W }) => armOf(W, M) ?? Number.NaN,
      }),
    );
    const forward = this.limit(id, names.forward, envelope, "forward", weight);
    const aft = this.limit(id, names.aft, envelope, "aft", weight);
    return {
      weight,
      moment: total,
      cg,
      forward: this.keep(forward.value),
      aft: this.keep(aft.value),
      gaps: [forward, aft].flatMap(({ gap }) => (gap ? [gap] : [])),
    };
  }

  /** Nothing at all while the envelope or the weight is not known. */
  private limit(
    id: string,
    quantity: QuantityName,
    envelope: Envelope | undefined,
    side: LimitSide,
    weight: Value | undefined,
  ): { readonly value?: Value | undefined; readonly gap?: EnvelopeGap } {
    const given = envelope && weight && limitPointsOf(envelope, side, this.units);
    if (!given) return {};
    const { weights, arms, points } = given;
    const found = limitAt(points, side, weight.value);
    if (!found.covered) return { gap: { side, gap: found } };
    const name = envelope.id?.value ?? "";
    const value = derive({
      subject: { kind: "loading", id },
      quantity,
      unit: this.units.arm,
      method: `${side} limit of envelope ${name} at the loading's weight, straight between its points`,
      operands: { W: derived("weight of the loading", weight), W_i: weights, x_i: arms },
      compute: () => found.arm,
      sources: [{ document: "airframe record", at: `envelope ${name}`, standing: "record" }],
    });
    return { value };
  }
}
