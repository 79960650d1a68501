/** What the kit takes out of a space, or puts in. */
import { inUnit } from "../../quantities";
import type { Conditioning } from "../../records/types";
import { interpolate } from "../../tables/interpolation";
import { derive, derived, type Value, written } from "../value";
import { type Balance, inSpace, sumOfHeats } from "./basis";

/** What all that serve the space take out or put in together. */
export function kitCapacity(balance: Balance): Value | undefined {
  const { does } = balance;
  if (!does) return undefined;
  const each = balance.basis.serving.flatMap(({ id, points }) => {
    const ofKind = points.filter((one) => one.does?.value === does);
    return ofKind.length > 0 ? [derived(`capacity of ${id}`, capacityOf(balance, id, ofKind))] : [];
  });
  return sumOfHeats(balance, does === "cool" ? "cooling-capacity" : "heating-capacity", each);
}

/** One component's, at the outside temperature of this condition. */
function capacityOf(balance: Balance, id: string, points: readonly Conditioning[]): Value | undefined {
  const common = {
    ...balance.common,
    subject: { kind: "component", id: inSpace(balance, id) },
    quantity: "component-capacity",
    unit: "W",
  } as const;
  const [only] = points;
  if (points.length === 1 && !only?.outside) {
    return balance.keep(
      derive({
        ...common,
        formula: "Q",
        operands: { Q: written(`capacity in mode ${only?.mode?.value}`, only?.capacity, "W") },
        compute: ({ Q }) => Q,
      }),
    );
  }
  const outside = balance.outsideAir;
  const curve = points
    .flatMap((one): [number, number][] =>
      one.outside && one.capacity
        ? [[inUnit(one.outside.value, "degC"), inUnit(one.capacity.value, "W")]]
        : [],
    )
    .toSorted(([a], [b]) => a - b);
  const watts = balance.outside && interpolate(curve, balance.outside.value);
  if (watts === undefined && outside) {
    balance.gaps.push({ wanted: `capacity of ${id} at this outside temperature`, place: outside.place });
  }
  return balance.keep(
    derive({
      ...common,
      method: "straight line between the points of the kit",
      operands: {
        "outside air": balance.outside,
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
