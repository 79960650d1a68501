/** What a fault meets in a conductor: its resistance, cold or hot, and the heat that it stands. */
import { conductorArea, faultFactor, faultHeatMethods, withstandSeconds } from "../../../methods/fault-heat";
import { resistanceAt, wireMethods } from "../../../methods/wires";
import { inUnit } from "../../../quantities";
import type { Wire } from "../../../records/types";
import { copperConductor } from "../../../tables/copper-wire";
import { faultTemperature } from "../../../tables/fault-temperatures";
import { covered } from "../../../tables/lookup";
import { Memory } from "../../remember";
import { derive, derived, type Keep, type Operand, tabled, type Value, written } from "../../value";
import { resistancePer1000Feet } from "../wire-ratings";
import { type Extreme, names } from "./extremes";

/** What was derived of a wire, for as long as what it rests on is the same. */
const runs = {
  smallest: new Memory<Wire, Wire, Value | undefined>(),
  largest: new Memory<Wire, Wire, Value | undefined>(),
};
const heats = new Memory<Wire, Wire, Heat>();

/** Resistance of a run in ohm: at 20 degC for the largest current, at its rating for the smallest. */
export function runOf(wire: Wire, extreme: Extreme, keep: Keep): Value | undefined {
  return runs[extreme].recall(wire, wire, [], keep, (inner) => inner(runResistance(wire, extreme)));
}

export function withstandTime(wire: Wire, current: Value, extreme: Extreme, keep: Keep): Value | undefined {
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
