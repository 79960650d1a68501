/** What a space settles at, and how long it takes from a soak to its set point. */
import { heatOfAir } from "../../methods/air/atmosphere";
import { heatBalanceSource, steadyTemperature, timeToReach } from "../../methods/heat-balance";
import { derive, derived, sumOf, type Value, written } from "../value";
import type { Balance } from "./basis";

export function heatExchange(balance: Balance, density: Value | undefined): Value | undefined {
  const { space, entry } = balance.basis;
  const UA = written("U x A of its walls", space.conductance, "W/K");
  if (!entry.freshAir) {
    return balance.keep(
      derive({
        ...balance.common,
        quantity: "heat-exchange",
        unit: "W/K",
        formula: "UA",
        operands: { UA },
        compute: (numbers) => numbers.UA,
      }),
    );
  }
  return balance.keep(
    derive({
      ...balance.common,
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

export function steadyState(
  balance: Balance,
  fixed: Value | undefined,
  moisture: readonly (Value | undefined)[],
  exchange: Value | undefined,
  capacity: Value | undefined,
): Value | undefined {
  const m = moisture.map((one) => derived("moisture that has to be condensed", one));
  const common = {
    ...balance.common,
    quantity: "steady-temperature",
    unit: "degC",
    sources: [heatBalanceSource],
  } as const;
  const operands = {
    T_o: balance.outside,
    G: derived("sun, people and equipment", fixed),
    K: derived("walls and fresh air", exchange),
  };
  if (balance.does === undefined) {
    return balance.keep(
      derive({
        ...common,
        formula: "T_o + G / K",
        operands,
        compute: ({ T_o, G, K }) => steadyTemperature(T_o, K, G),
      }),
    );
  }
  const Q = derived("capacity", capacity);
  if (balance.does === "heat" || m.length === 0) {
    const sign = balance.does === "heat" ? 1 : -1;
    return balance.keep(
      derive({
        ...common,
        formula: sign > 0 ? "T_o + (G + Q) / K" : "T_o + (G - Q) / K",
        operands: { ...operands, Q },
        compute: ({ T_o, G, K, Q: q }) => steadyTemperature(T_o, K, G + sign * q),
      }),
    );
  }
  return balance.keep(
    derive({
      ...common,
      formula: "T_o + (G - (Q - sum(m))) / K",
      operands: { ...operands, Q, m },
      compute: ({ T_o, G, K, Q: q, m: wet }) => steadyTemperature(T_o, K, G - (q - sumOf(wet))),
    }),
  );
}

export function timeToSetPoint(
  balance: Balance,
  exchange: Value | undefined,
  steady: Value | undefined,
): Value | undefined {
  const { climateCase, space } = balance.basis;
  if (!climateCase.soak || balance.does === undefined) return undefined;
  if (!space.thermalMass)
    balance.gaps.push({ wanted: "thermal-mass of the space", place: climateCase.soak.place });
  const from = written("after the soak", climateCase.soak, "degC");
  if (from && balance.inside && from.value === balance.inside.value) return undefined;
  const tau = balance.keep(
    derive({
      ...balance.common,
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
  return balance.keep(
    derive({
      ...balance.common,
      quantity: "time-to-set-point",
      unit: "s",
      formula: "tau * log((T_0 - T_s) / (T_1 - T_s))",
      operands: {
        tau: derived("time constant", tau),
        T_0: from,
        T_s: derived("temperature that it settles at", steady),
        T_1: balance.inside,
      },
      compute: ({ tau: t, T_0, T_s, T_1 }) =>
        timeToReach(t, 1, { from: T_0, to: T_1, steady: T_s }) ?? Number.NaN,
      sources: [heatBalanceSource],
    }),
  );
}
