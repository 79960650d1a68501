import type { Device, Protection, Spare } from "../../../records/types";
import { derive, type Operand, sumOf, type Value } from "../../value";
import type { ElectricalBasis } from "../basis";
import type { DeviceResult } from "../devices";
import { paragraphFor } from "./basis";

/** Fuses of one rating that have to be replaceable in flight. */
export interface SpareResult {
  readonly device: Device;
  readonly used: readonly Protection[];
  readonly spares: readonly Spare[];
  readonly carried: Value;
  readonly needed: Value;
}

/** Spare fuses carried against spares needed, for each rating. */
export function deriveSpares(basis: ElectricalBasis, devices: readonly DeviceResult[]): SpareResult[] {
  const { project, keep } = basis;
  const byRating = new Map<number, { device: Device; used: Protection[] }>();
  for (const { inline, device, rating } of devices) {
    if (inline.kind !== "protection" || device?.kind?.value !== "fuse" || !rating) continue;
    if (inline.record.resetInFlight?.value !== true) continue;
    const known = byRating.get(rating.value) ?? { device, used: [] };
    known.used.push(inline.record);
    byRating.set(rating.value, known);
  }
  const ratings = new Map(
    (project.kit?.devices ?? []).map(({ id, rating }) => [id?.value, rating?.value.si]),
  );
  return [...byRating].flatMap(([rating, { device, used }]): SpareResult[] => {
    if (!device.id) return [];
    const spares = (project.install.spares ?? []).filter(
      (spare) => spare.count && spare.device && ratings.get(spare.device.value) === rating,
    );
    const common = { subject: { kind: "device", id: device.id.value }, unit: "1" } as const;
    const carried = keep(
      derive({
        ...common,
        quantity: "spares-carried",
        formula: spares.length === 0 ? "n" : "sum(n)",
        operands: {
          n: spares.length === 0 ? count("spares in the record", 0, []) : spares.map(countOf),
        },
        compute: ({ n }) => (typeof n === "number" ? n : sumOf(n)),
      }),
    );
    const needed = keep(
      derive({
        ...common,
        quantity: "spares-needed",
        formula: "max(1, ceil(n / 2))",
        operands: {
          n: count(
            "fuses of this rating that are replaced in flight",
            used.length,
            used.flatMap(({ resetInFlight }) => (resetInFlight ? [resetInFlight.place] : [])),
          ),
        },
        compute: ({ n }) => Math.max(1, Math.ceil(n / 2)),
        sources: [paragraphFor(project, "e")],
      }),
    );
    return carried && needed ? [{ device, used, spares, carried, needed }] : [];
  });
}

function countOf({ count: written, device }: Spare): Operand {
  return written && count(`spares of ${device?.value}`, written.value, [written.place]);
}

function count(name: string, value: number, places: NonNullable<Operand>["places"]): Operand {
  return { name, value, unit: "1", places, notes: [] };
}
