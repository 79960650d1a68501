/** What the air pulls at a mount that stands outside. */
import { antennaDrag, antennaSource, drag, dragSource } from "../../methods/air-load";
import type { Mount } from "../../records/types";
import { isStandIn, type Source } from "../../source";
import { derive, type Keep, type Operand, type Subject, type Value, written } from "../value";

export interface AirLoad {
  /** lbf, limit; undefined inside, and where it is not known. */
  readonly value: Value | undefined;
  /** Keys of the mount that it lacks. */
  readonly missing: readonly string[];
  /** Sources from memory that it rests on. */
  readonly standIns: readonly Source[];
}

/** Newton as lbf. */
const newtons = 4.4482216152605;

export function airLoadOf({ where, airLoad }: Mount, subject: Subject, keep: Keep): AirLoad {
  if (where?.value !== "external") return { value: undefined, missing: [], standIns: [] };
  if (!airLoad) return { value: undefined, missing: ["air-load"], standIns: [] };
  const { kind, area, airspeed, coefficient, data } = airLoad;
  const common = {
    subject,
    quantity: "air-load",
    condition: "aft",
    unit: "lbf",
    notes: ["Taken to pull straight aft at the centre of gravity."],
  } as const;
  const isAntenna = kind?.value === "antenna" && !coefficient;
  const value = isAntenna
    ? derive({
        ...common,
        formula: "0.000327 * A * V^2",
        operands: {
          A: written("area seen from ahead", area, "ft2"),
          V: written("equivalent airspeed", airspeed, "mph"),
        },
        compute: ({ A, V }) => antennaDrag(A, V),
        sources: [antennaSource],
      })
    : derive({
        ...common,
        formula: `C * 1.225 / 2 * A * V^2 / ${newtons}`,
        operands: {
          C: coefficientOf(coefficient),
          A: written("area seen from ahead", area, "m2"),
          V: written("equivalent airspeed", airspeed, "m/s"),
        },
        compute: ({ C, A, V }) => drag(C, A, V) / newtons,
        sources: [dragSource, ...(data ? [{ document: data.value, standing: "record" } as const] : [])],
      });
  return {
    value: keep(value),
    missing: kind?.value === "other" && !coefficient ? ["air-load: coefficient"] : [],
    standIns: value?.sources.filter(isStandIn) ?? [],
  };
}

function coefficientOf(coefficient: NonNullable<Mount["airLoad"]>["coefficient"]): Operand {
  return (
    coefficient && {
      name: "drag coefficient",
      value: coefficient.value,
      unit: "1",
      places: [coefficient.place],
      notes: [],
    }
  );
}
