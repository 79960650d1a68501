import { Recurring } from "../../remember";
import type { Keep } from "../../value";
import type { DeviceResult } from "../devices";

/** A breaker, fuse or contact with its rating: nothing that depends on a condition. The same object while that is. */
export type RatedDevice = Pick<DeviceResult, "inline" | "id" | "device" | "rating">;

export function rateDevices(devices: readonly DeviceResult[], keep: Keep): RatedDevice[] {
  return devices.map(({ inline, id, device, rating }) =>
    rated.recall(inline.record, [inline, device, rating], keep, () => ({ inline, id, device, rating })),
  );
}

const rated = new Recurring<DeviceResult["inline"]["record"], RatedDevice>();
