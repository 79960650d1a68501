/**
 * Heat balance of each space in each condition that it has to be comfortable in: what the sun, the walls, the
 * fresh air, people and equipment bring in against what the kit takes out, and how long a hot soak takes to go.
 * Nothing is computed as if a missing figure were none: it is told instead.
 */
import { heatOfAir, standardAtmosphere } from "../methods/air/atmosphere";
import {
  airDensity,
  evaporationHeat,
  freshAirGain,
  freshAirMoisture,
  heatBalanceSource,
  steadyTemperature,
  timeToReach,
} from "../methods/heat-balance";
import type { Project } from "../project";
import { inUnit } from "../quantities";
import type { Climate, ClimateCase, Condition, Conditioning, Space } from "../records/types";
import type { Place } from "../records/written";
import { interpolate } from "../tables/interpolation";
import { type CoverageGap, covered } from "../tables/lookup";
import { peopleHeat, peopleHeatSource } from "../tables/people-heat";
import type { Electrical } from "./electrical";
import { isWholeEntry, isWholeList } from "./entries";
import type { QuantityName } from "./quantity-names";
import { Memory } from "./remember";
import {
  derive,
  derived,
  type Keep,
  keeper,
  type Operand,
  type Subject,
  sumOf,
  tabled,
  type Value,
  written,
} from "./value";

export interface ClimateResults {
  readonly cases: readonly CaseResult[];
  readonly values: readonly Value[];
}

/** One space in one condition. */
export interface CaseResult {
  readonly entry: Climate;
  readonly climateCase: ClimateCase;
  readonly space: string;
  readonly condition: string;
  /** Whether what serves the space cools or heats it here; undefined where nothing of it runs. */
  readonly does: "cool" | "heat" | undefined;
  /** Heat that has to be taken out, or put in, to hold the set point, in W. */
  readonly load: Value | undefined;
  readonly capacity: Value | undefined;
  /** Temperature that the space settles at, in degC. */
  readonly steady: Value | undefined;
  /** From the soak to the set point, in s; undefined where it is never reached or no soak is recorded. */
  readonly time: Value | undefined;
  readonly gaps: readonly ClimateGap[];
}

/** A figure that the balance lacks. */
export interface ClimateGap {
  readonly wanted: string;
  readonly place: Place;
  /** Set where a table ends before it. */
  readonly reason?: CoverageGap;
}

/** Pure; what is missing in the record is left out of the result. */
export function deriveClimate(project: Project, electrical: () => Electrical): ClimateResults {
  const { keep, list } = keeper();
  const cases = (project.install.climate ?? []).flatMap((entry) =>
    (entry.cases ?? []).flatMap((climateCase): CaseResult[] => {
      const space = project.airframe?.spaces?.find(({ id }) => id && id.value === entry.space?.value);
      const condition = project.install.conditions?.find(
        ({ id }) => id && id.value === climateCase.condition?.value,
      );
      if (!space || !condition || !entry.setPoint || !isWhole(entry, climateCase, space)) return [];
      const powers = powersIn(entry, condition, electrical);
      const serving = servingIn(entry, condition, project);
      const rests = [
        entry,
        condition,
        ...powers.flatMap(({ volts, amps }) => [volts, amps]),
        ...serving.flatMap(({ points }) => points),
      ];
      return [
        remembered.recall(climateCase, space, rests, keep, (kept) =>
          new Balance({ entry, climateCase, space, condition, powers, serving }, kept).run(),
        ),
      ];
    }),
  );
  return { cases, values: list() };
}

const remembered = new Memory<ClimateCase, Space, CaseResult>();

/** What could not be typed is a finding of its own; a balance without it would be too good. */
function isWhole(entry: Climate, climateCase: ClimateCase, space: Space): boolean {
  return (
    isWholeList(space, "glazing", space.glazing) &&
    isWholeList(entry, "equipment", entry.equipment) &&
    isWholeList(entry, "served-by", entry.servedBy) &&
    isWholeEntry(entry, "fresh-air", entry.freshAir) &&
    isWholeEntry(climateCase, "people", climateCase.people)
  );
}

/** Electrical power of a component that warms the space, by the solved network. */
interface Power {
  readonly id: string;
  readonly share: Operand;
  readonly volts: Value | undefined;
  readonly amps: Value | undefined;
  readonly isRunning: boolean;
  readonly place: Place;
}

interface CaseBasis {
  readonly entry: Climate;
  readonly climateCase: ClimateCase;
  readonly space: Space;
  readonly condition: Condition;
  readonly powers: readonly Power[];
  readonly serving: readonly Serving[];
}

/** A component that serves the space, by its points in the mode that it runs in. */
interface Serving {
  readonly id: string;
  readonly points: readonly Conditioning[];
}

function powersIn({ equipment = [] }: Climate, condition: Condition, electrical: () => Electrical): Power[] {
  return equipment.flatMap(({ component, share, place }): Power[] => {
    if (!component) return [];
    const load = electrical().loads.find(({ path }) => path.id === component.value);
    const state = load?.states.find((one) => one.condition === condition);
    return [
      {
        id: component.value,
        share: share
          ? written("share that warms the space", share, "%")
          : { name: "share that warms the space", value: 100, unit: "%", places: [], notes: [] },
        volts: state?.voltage,
        amps: state?.current,
        isRunning: condition.loads?.some(({ key }) => key.value === component.value) ?? false,
        place,
      },
    ];
  });
}

/** What the components that serve the space do in the modes that they run in. */
function servingIn({ servedBy = [] }: Climate, condition: Condition, { kit }: Project): Serving[] {
  return servedBy.flatMap(({ value: id }) => {
    const mode = condition.loads?.find(({ key }) => key.value === id)?.value?.value;
    const component = kit?.components?.find((one) => one.id?.value === id);
    const points = (component?.conditioning ?? []).filter(
      (one) => mode !== undefined && one.mode?.value === mode,
    );
    return points.length > 0 ? [{ id, points }] : [];
  });
}

type Common = { readonly subject: Subject; readonly condition: string | undefined };

class Balance {
  private readonly gaps: ClimateGap[] = [];
  private readonly common: Common;
  private readonly does: "cool" | "heat" | undefined;
  private readonly inside: Operand;
  private readonly outside: Operand;
  private readonly outsideAir: ClimateCase["outside"];

  constructor(
    private readonly basis: CaseBasis,
    private readonly keep: Keep,
  ) {
    this.common = {
      subject: { kind: "space", id: basis.space.id!.value },
      condition: basis.condition.id?.value,
    };
    this.does = basis.serving[0]?.points[0]?.does?.value;
    this.inside = written("set point", basis.entry.setPoint, "degC");
    this.outsideAir = basis.climateCase.outside ?? basis.condition.outsideAir;
    this.outside = written("outside air", this.outsideAir, "degC");
    if (!this.outsideAir) {
      this.gaps.push({ wanted: "temperature of the outside air", place: basis.climateCase.place });
    }
  }

  run(): CaseResult {
    const { entry, climateCase, space, condition } = this.basis;
    const sun = this.sun();
    const people = this.people();
    const equipment = this.equipment();
    const density = this.density();
    const fixed = this.sum("fixed-heat-gain", [
      ...sun.map((one) => derived("sun through the glazing", one)),
      ...people.sensible.map((one) => derived("people, sensible", one)),
      ...equipment.map((one) => derived(`power of ${one?.subject.id ?? "a component"}`, one)),
    ]);
    const air = entry.freshAir ? [this.freshAir(density)] : [];
    const sensible = this.sum("heat-gain", [
      derived("sun, people and equipment", fixed),
      derived("walls", this.conduction()),
      ...air.map((one) => derived("fresh air", one)),
    ]);
    const moisture = this.does === "heat" ? [] : this.moisture(density, people.latent);
    const load = this.load(sensible, moisture);
    const capacity = this.capacity();
    const exchange = this.exchange(density);
    const steady = this.steady(fixed, moisture, exchange, capacity);
    return {
      entry,
      climateCase,
      space: space.id!.value,
      condition: condition.id?.value ?? "",
      does: this.does,
      load,
      capacity,
      steady,
      time: this.time(exchange, steady),
      gaps: this.gaps,
    };
  }

  /** With the shades as they are in this condition; without them it is shown beside. */
  private sun(): (Value | undefined)[] {
    const { space, entry, climateCase } = this.basis;
    const E = written("sun on the glazing", climateCase.sun, "W/m2");
    const panes = (space.glazing ?? []).flatMap((glazing): { bare: Operand; used: Operand }[] => {
      if (!glazing.id) return [];
      const of = { ...this.common, subject: { kind: "glazing", id: glazing.id.value } } as const;
      const bare = this.keep(
        derive({
          ...of,
          quantity: "glazing-gain",
          unit: "W",
          formula: "A * g / 100 * E",
          operands: {
            A: written("area", glazing.area, "m2"),
            g: written("solar heat gain coefficient", glazing.solarGain, "%"),
            E,
          },
          compute: ({ A, g, E: e }) => (A * g * e) / 100,
          sources: [heatBalanceSource],
        }),
      );
      const shade = entry.shades?.find((one) => one.glazing?.value === glazing.id!.value);
      const isShaded = shade !== undefined && climateCase.shades?.value === "fitted";
      const used = isShaded
        ? this.keep(
            derive({
              ...of,
              quantity: "shaded-glazing-gain",
              unit: "W",
              formula: "q * s / 100",
              operands: {
                q: derived("gain without its shade", bare),
                s: written("share that the shade lets through", shade.passes, "%"),
              },
              compute: ({ q, s }) => (q * s) / 100,
              sources: [heatBalanceSource],
            }),
          )
        : bare;
      return [{ bare: derived(glazing.id.value, bare), used: derived(glazing.id.value, used) }];
    });
    if (panes.length === 0) return [];
    this.sum(
      "unshaded-solar-gain",
      panes.map(({ bare }) => bare),
    );
    return [
      this.sum(
        "solar-gain",
        panes.map(({ used }) => used),
      ),
    ];
  }

  private conduction(): Value | undefined {
    return this.keep(
      derive({
        ...this.common,
        quantity: "conduction-gain",
        unit: "W",
        formula: "UA * (T_o - T_i)",
        operands: {
          UA: written("U x A of its walls", this.basis.space.conductance, "W/K"),
          T_o: this.outside,
          T_i: this.inside,
        },
        compute: ({ UA, T_o, T_i }) => UA * (T_o - T_i),
        sources: [heatBalanceSource],
      }),
    );
  }

  /** Nobody in it gives nothing; people whose heat is not known leave the balance open. */
  private people(): { readonly sensible: (Value | undefined)[]; readonly latent: (Value | undefined)[] } {
    const { people, activity, sensibleEach, latentEach } = this.basis.climateCase;
    if (!people || people.value === 0) return { sensible: [], latent: [] };
    const lookup = activity && this.inside && peopleHeat(activity.value, this.inside.value);
    const each = (key: "sensible" | "latent"): Operand => {
      const own = key === "sensible" ? sensibleEach : latentEach;
      if (own) return written(`${key} heat of each`, own, "W");
      if (lookup?.covered) {
        const keys = [activity!.place, this.basis.entry.setPoint?.place];
        return tabled(`${key} heat of each`, covered(lookup.value[key], peopleHeatSource), "W", keys);
      }
      this.gaps.push({
        wanted: `${key} heat of each person`,
        place: (activity ?? people).place,
        ...(lookup && { reason: lookup.reason }),
      });
      return undefined;
    };
    const n: Operand = { name: "people", value: people.value, unit: "1", places: [people.place], notes: [] };
    const all = (quantity: QuantityName, q: Operand) =>
      this.keep(
        derive({
          ...this.common,
          quantity,
          unit: "W",
          formula: "n * q",
          operands: { n, q },
          compute: (numbers) => numbers.n * numbers.q,
          sources: [heatBalanceSource],
        }),
      );
    return {
      sensible: [all("people-heat", each("sensible"))],
      latent: this.does === "heat" ? [] : [all("people-moisture", each("latent"))],
    };
  }

  private equipment(): (Value | undefined)[] {
    return this.basis.powers
      .filter(({ isRunning }) => isRunning)
      .map(({ id, share, volts, amps, place }) => {
        if (!volts || !amps) this.gaps.push({ wanted: `electrical power of ${id}`, place });
        return this.keep(
          derive({
            ...this.common,
            subject: { kind: "component", id: this.inSpace(id) },
            quantity: "equipment-heat",
            unit: "W",
            formula: "V * I * s / 100",
            operands: { V: derived("voltage at it", volts), I: derived("current of it", amps), s: share },
            compute: ({ V, I, s }) => (V * I * s) / 100,
            sources: [heatBalanceSource],
          }),
        );
      });
  }

  private density(): Value | undefined {
    const { condition, entry } = this.basis;
    if (!entry.freshAir) return undefined;
    const value = this.keep(
      derive({
        ...this.common,
        quantity: "outside-air-density",
        unit: "kg/m3",
        formula: "101325 * ((288.15 - 0.0065 * h) / 288.15) ^ 5.25588 / (287.053 * (T_o + 273.15))",
        operands: { h: written("pressure altitude", condition.altitude, "m"), T_o: this.outside },
        compute: ({ h, T_o }) => airDensity(h, T_o) ?? Number.NaN,
        sources: [standardAtmosphere],
      }),
    );
    if (!value && condition.altitude && this.outsideAir) {
      this.gaps.push({ wanted: "density of air above 11 km", place: condition.altitude.place });
    }
    return value;
  }

  private freshAir(density: Value | undefined): Value | undefined {
    return this.keep(
      derive({
        ...this.common,
        quantity: "fresh-air-gain",
        unit: "W",
        formula: `rho * V * ${heatOfAir} * (T_o - T_i)`,
        operands: {
          rho: derived("density of the outside air", density),
          V: written("fresh air", this.basis.entry.freshAir, "m3/s"),
          T_o: this.outside,
          T_i: this.inside,
        },
        compute: ({ rho, V, T_o, T_i }) => freshAirGain(rho, V, T_o, T_i),
        sources: [heatBalanceSource],
      }),
    );
  }

  private moisture(
    density: Value | undefined,
    people: readonly (Value | undefined)[],
  ): (Value | undefined)[] {
    const { entry, climateCase } = this.basis;
    if (!entry.freshAir || entry.freshAir.value.si === 0) return [...people];
    if (!climateCase.outsideMoisture || !entry.insideMoisture) {
      const wanted = climateCase.outsideMoisture ? "inside-moisture" : "outside-moisture";
      this.gaps.push({ wanted, place: entry.freshAir.place });
    }
    const air = this.keep(
      derive({
        ...this.common,
        quantity: "fresh-air-moisture",
        unit: "W",
        formula: `rho * V * ${evaporationHeat} * max(0, w_o - w_i)`,
        operands: {
          rho: derived("density of the outside air", density),
          V: written("fresh air", entry.freshAir, "m3/s"),
          w_o: written("moisture outside", climateCase.outsideMoisture, "kg/kg"),
          w_i: written("moisture inside", entry.insideMoisture, "kg/kg"),
        },
        compute: ({ rho, V, w_o, w_i }) => freshAirMoisture(rho, V, w_o, w_i),
        sources: [heatBalanceSource],
      }),
    );
    return [...people, air];
  }

  private load(sensible: Value | undefined, moisture: readonly (Value | undefined)[]): Value | undefined {
    const q = derived("sensible gains", sensible);
    if (this.does !== "heat") {
      return this.sum("cooling-load", [q, ...moisture.map((one) => derived("moisture", one))]);
    }
    return this.keep(
      derive({
        ...this.common,
        quantity: "heating-load",
        unit: "W",
        formula: "-q",
        operands: { q },
        compute: (numbers) => -numbers.q,
        sources: [heatBalanceSource],
      }),
    );
  }

  /** What all that serve the space take out or put in together. */
  private capacity(): Value | undefined {
    const { does } = this;
    if (!does) return undefined;
    const each = this.basis.serving.flatMap(({ id, points }) => {
      const ofKind = points.filter((one) => one.does?.value === does);
      return ofKind.length > 0 ? [derived(`capacity of ${id}`, this.capacityOf(id, ofKind))] : [];
    });
    return this.sum(does === "cool" ? "cooling-capacity" : "heating-capacity", each);
  }

  /** One component's, at the outside temperature of this condition. */
  private capacityOf(id: string, points: readonly Conditioning[]): Value | undefined {
    const common = {
      ...this.common,
      subject: { kind: "component", id: this.inSpace(id) },
      quantity: "component-capacity",
      unit: "W",
    } as const;
    const [only] = points;
    if (points.length === 1 && !only?.outside) {
      return this.keep(
        derive({
          ...common,
          formula: "Q",
          operands: { Q: written(`capacity in mode ${only?.mode?.value}`, only?.capacity, "W") },
          compute: ({ Q }) => Q,
        }),
      );
    }
    const outside = this.outsideAir;
    const curve = points
      .flatMap((one): [number, number][] =>
        one.outside && one.capacity
          ? [[inUnit(one.outside.value, "degC"), inUnit(one.capacity.value, "W")]]
          : [],
      )
      .toSorted(([a], [b]) => a - b);
    const watts = this.outside && interpolate(curve, this.outside.value);
    if (watts === undefined && outside) {
      this.gaps.push({ wanted: `capacity of ${id} at this outside temperature`, place: outside.place });
    }
    return this.keep(
      derive({
        ...common,
        method: "straight line between the points of the kit",
        operands: {
          "outside air": this.outside,
          ...Object.fromEntries(
            points.map((one) => [
              `at ${one.outside?.value.written} ${one.outside?.value.unit}`,
              written("capacity", one.capacity, "W"),
            ]),
          ),
        },
        compute: () => watts ?? Number.NaN,
      }),
    );
  }

  /** A component may share its heat between several spaces, so that its values there have names of their own. */
  private inSpace(id: string): string {
    return `${id} in ${this.basis.space.id!.value}`;
  }

  private exchange(density: Value | undefined): Value | undefined {
    const { space, entry } = this.basis;
    const UA = written("U x A of its walls", space.conductance, "W/K");
    if (!entry.freshAir) {
      return this.keep(
        derive({
          ...this.common,
          quantity: "heat-exchange",
          unit: "W/K",
          formula: "UA",
          operands: { UA },
          compute: (numbers) => numbers.UA,
        }),
      );
    }
    return this.keep(
      derive({
        ...this.common,
        quantity: "heat-exchange",
        unit: "W/K",
        formula: `UA + rho * V * ${heatOfAir}`,
        operands: {
          UA,
          rho: derived("density of the outside air", density),
          V: written("fresh air", entry.freshAir, "m3/s"),
        },
        compute: ({ UA: walls, rho, V }) => walls + rho * V * heatOfAir,
        sources: [heatBalanceSource],
      }),
    );
  }

  private steady(
    fixed: Value | undefined,
    moisture: readonly (Value | undefined)[],
    exchange: Value | undefined,
    capacity: Value | undefined,
  ): Value | undefined {
    const m = moisture.map((one) => derived("moisture that has to be condensed", one));
    const common = {
      ...this.common,
      quantity: "steady-temperature",
      unit: "degC",
      sources: [heatBalanceSource],
    } as const;
    const operands = {
      T_o: this.outside,
      G: derived("sun, people and equipment", fixed),
      K: derived("walls and fresh air", exchange),
    };
    if (this.does === undefined) {
      return this.keep(
        derive({
          ...common,
          formula: "T_o + G / K",
          operands,
          compute: ({ T_o, G, K }) => steadyTemperature(T_o, K, G),
        }),
      );
    }
    const Q = derived("capacity", capacity);
    if (this.does === "heat" || m.length === 0) {
      const sign = this.does === "heat" ? 1 : -1;
      return this.keep(
        derive({
          ...common,
          formula: sign > 0 ? "T_o + (G + Q) / K" : "T_o + (G - Q) / K",
          operands: { ...operands, Q },
          compute: ({ T_o, G, K, Q: q }) => steadyTemperature(T_o, K, G + sign * q),
        }),
      );
    }
    return this.keep(
      derive({
        ...common,
        formula: "T_o + (G - (Q - sum(m))) / K",
        operands: { ...operands, Q, m },
        compute: ({ T_o, G, K, Q: q, m: wet }) => steadyTemperature(T_o, K, G - (q - sumOf(wet))),
      }),
    );
  }

  private time(exchange: Value | undefined, steady: Value | undefined): Value | undefined {
    const { climateCase, space } = this.basis;
    if (!climateCase.soak || this.does === undefined) return undefined;
    if (!space.thermalMass)
      this.gaps.push({ wanted: "thermal-mass of the space", place: climateCase.soak.place });
    const from = written("after the soak", climateCase.soak, "degC");
    if (from && this.inside && from.value === this.inside.value) return undefined;
    const tau = this.keep(
      derive({
        ...this.common,
        quantity: "time-constant",
        unit: "s",
        formula: "C / K",
        operands: {
          C: written("thermal mass", space.thermalMass, "J/K"),
          K: derived("walls and fresh air", exchange),
        },
        compute: ({ C, K }) => C / K,
        sources: [heatBalanceSource],
      }),
    );
    return this.keep(
      derive({
        ...this.common,
        quantity: "time-to-set-point",
        unit: "s",
        formula: "tau * log((T_0 - T_s) / (T_1 - T_s))",
        operands: {
          tau: derived("time constant", tau),
          T_0: from,
          T_s: derived("temperature that it settles at", steady),
          T_1: this.inside,
        },
        compute: ({ tau: t, T_0, T_s, T_1 }) =>
          timeToReach(t, 1, { from: T_0, to: T_1, steady: T_s }) ?? Number.NaN,
        sources: [heatBalanceSource],
      }),
    );
  }

  private sum(quantity: QuantityName, q: readonly Operand[]): Value | undefined {
    const common = { ...this.common, quantity, unit: "W", sources: [heatBalanceSource] } as const;
    return this.keep(
      q.length === 0
        ? derive({ ...common, formula: "0", operands: {}, compute: () => 0 })
        : derive({ ...common, formula: "sum(q)", operands: { q }, compute: (numbers) => sumOf(numbers.q) }),
    );
  }
}
