/** What warms a space, or cools it by itself: sun, walls, people, equipment, fresh air. */
import { heatOfAir, standardAtmosphere } from "../../methods/air/atmosphere";
import {
  airDensity,
  evaporationHeat,
  freshAirGain,
  freshAirMoisture,
  heatBalanceSource,
} from "../../methods/heat-balance";
import { covered } from "../../tables/lookup";
import { peopleHeat, peopleHeatSource } from "../../tables/people-heat";
import type { QuantityName } from "../quantity-names";
import { derive, derived, type Operand, tabled, type Value, written } from "../value";
import { type Balance, inSpace, sumOfHeats } from "./basis";

/** With the shades as they are in this condition; without them it is shown beside. */
export function sunGain(balance: Balance): (Value | undefined)[] {
  const { space, entry, climateCase } = balance.basis;
  const E = written("sun on the glazing", climateCase.sun, "W/m2");
  const panes = (space.glazing ?? []).flatMap((glazing): { bare: Operand; used: Operand }[] => {
    if (!glazing.id) return [];
    const of = { ...balance.common, subject: { kind: "glazing", id: glazing.id.value } } as const;
    const bare = balance.keep(
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
      ? balance.keep(
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
  sumOfHeats(
    balance,
    "unshaded-solar-gain",
    panes.map(({ bare }) => bare),
  );
  return [
    sumOfHeats(
      balance,
      "solar-gain",
      panes.map(({ used }) => used),
    ),
  ];
}

export function conductionGain(balance: Balance): Value | undefined {
  return balance.keep(
    derive({
      ...balance.common,
      quantity: "conduction-gain",
      unit: "W",
      formula: "UA * (T_o - T_i)",
      operands: {
        UA: written("U x A of its walls", balance.basis.space.conductance, "W/K"),
        T_o: balance.outside,
        T_i: balance.inside,
      },
      compute: ({ UA, T_o, T_i }) => UA * (T_o - T_i),
      sources: [heatBalanceSource],
    }),
  );
}

/** Nobody in it gives nothing; people whose heat is not known leave the balance open. */
export function peopleGains(balance: Balance): {
  readonly sensible: (Value | undefined)[];
  readonly latent: (Value | undefined)[];
} {
  const { people, activity, sensibleEach, latentEach } = balance.basis.climateCase;
  if (!people || people.value === 0) return { sensible: [], latent: [] };
  const lookup = activity && balance.inside && peopleHeat(activity.value, balance.inside.value);
  const each = (key: "sensible" | "latent"): Operand => {
    const own = key === "sensible" ? sensibleEach : latentEach;
    if (own) return written(`${key} heat of each`, own, "W");
    if (lookup?.covered) {
      const keys = [activity!.place, balance.basis.entry.setPoint?.place];
      return tabled(`${key} heat of each`, covered(lookup.value[key], peopleHeatSource), "W", keys);
    }
    balance.gaps.push({
      wanted: `${key} heat of each person`,
      place: (activity ?? people).place,
      ...(lookup && { reason: lookup.reason }),
    });
    return undefined;
  };
  const n: Operand = { name: "people", value: people.value, unit: "1", places: [people.place], notes: [] };
  const all = (quantity: QuantityName, q: Operand) =>
    balance.keep(
      derive({
        ...balance.common,
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
    latent: balance.does === "heat" ? [] : [all("people-moisture", each("latent"))],
  };
}

export function equipmentGains(balance: Balance): (Value | undefined)[] {
  return balance.basis.powers
    .filter(({ isRunning }) => isRunning)
    .map(({ id, share, volts, amps, place }) => {
      if (!volts || !amps) balance.gaps.push({ wanted: `electrical power of ${id}`, place });
      return balance.keep(
        derive({
          ...balance.common,
          subject: { kind: "component", id: inSpace(balance, id) },
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

export function outsideDensity(balance: Balance): Value | undefined {
  const { condition, entry } = balance.basis;
  if (!entry.freshAir) return undefined;
  const value = balance.keep(
    derive({
      ...balance.common,
      quantity: "outside-air-density",
      unit: "kg/m3",
      formula: "101325 * ((288.15 - 0.0065 * h) / 288.15) ^ 5.25588 / (287.053 * (T_o + 273.15))",
      operands: { h: written("pressure altitude", condition.altitude, "m"), T_o: balance.outside },
      compute: ({ h, T_o }) => airDensity(h, T_o) ?? Number.NaN,
      sources: [standardAtmosphere],
    }),
  );
  if (!value && condition.altitude && balance.outsideAir) {
    balance.gaps.push({ wanted: "density of air above 11 km", place: condition.altitude.place });
  }
  return value;
}

export function freshAirGains(balance: Balance, density: Value | undefined): Value | undefined {
  return balance.keep(
    derive({
      ...balance.common,
      quantity: "fresh-air-gain",
      unit: "W",
      formula: `rho * V * ${heatOfAir} * (T_o - T_i)`,
      operands: {
        rho: derived("density of the outside air", density),
        V: written("fresh air", balance.basis.entry.freshAir, "m3/s"),
        T_o: balance.outside,
        T_i: balance.inside,
      },
      compute: ({ rho, V, T_o, T_i }) => freshAirGain(rho, V, T_o, T_i),
      sources: [heatBalanceSource],
    }),
  );
}

export function moistureGains(
  balance: Balance,
  density: Value | undefined,
  people: readonly (Value | undefined)[],
): (Value | undefined)[] {
  const { entry, climateCase } = balance.basis;
  if (!entry.freshAir || entry.freshAir.value.si === 0) return [...people];
  if (!climateCase.outsideMoisture || !entry.insideMoisture) {
    const wanted = climateCase.outsideMoisture ? "inside-moisture" : "outside-moisture";
    balance.gaps.push({ wanted, place: entry.freshAir.place });
  }
  const air = balance.keep(
    derive({
      ...balance.common,
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
