import type { Component } from "../../../records/types";
import { derive, type Value } from "../../value";
import type { ElectricalBasis } from "../basis";
import type { DeviceResult } from "../devices";
import { paragraphFor } from "./basis";

/** The breaker or fuse next to an essential component, with all that loses power when it opens. */
export interface SharingResult {
  readonly essential: Component;
  readonly id: string;
  readonly device: DeviceResult;
  readonly others: readonly string[];
  readonly count: Value;
  readonly allowed: Value;
}

/** How many components stand behind the device of each essential one. */
export function deriveSharing(basis: ElectricalBasis, devices: readonly DeviceResult[]): SharingResult[] {
  const { circuit, project, keep } = basis;
  return circuit.paths.flatMap(({ component, id, feed }) => {
    const last = feed.at(-1);
    if (component.essential?.value !== true || !last) return [];
    const next = circuit.protecting.get(last) ?? new Set();
    return devices.flatMap((device): SharingResult[] => {
      if (device.inline.kind !== "protection" || !next.has(device.inline.record)) return [];
      const common = { subject: { kind: "protection", id: device.id }, unit: "1" } as const;
      const count = keep(
        derive({
          ...common,
          quantity: "circuits-behind",
          formula: "n",
          operands: {
            n: {
              name: `components behind ${device.id}`,
              value: device.components.length,
              unit: "1",
              places: [],
              notes: [],
            },
          },
          compute: ({ n }) => n,
        }),
      );
      const allowed = keep(
        derive({
          ...common,
          quantity: "circuits-allowed",
          formula: "n",
          operands: {
            n: {
              name: "circuits on the device of an essential one: itself",
              value: 1,
              unit: "1",
              places: component.essential ? [component.essential.place] : [],
              notes: [],
            },
          },
          compute: ({ n }) => n,
          sources: [paragraphFor(project, "b")],
        }),
      );
      const others = device.components.filter((one) => one !== id);
      return count && allowed ? [{ essential: component, id, device, others, count, allowed }] : [];
    });
  });
}
