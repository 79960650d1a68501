import type { Condition } from "../../../records/types";
import { derive, derived, type Keep, type Value, written } from "../../value";
import type { DeviceResult, DeviceState } from "../devices";
import { type BandedDevice, bandOf, isBound, openingValue } from "./opening";

/** A breaker or fuse that carries more than its rating in short conditions, and whose points tell how long it may. */
export interface PeakResult {
  readonly device: DeviceResult;
  readonly states: readonly PeakState[];
}

export interface PeakState {
  readonly condition: Condition;
  readonly current: Value;
  readonly time: Value;
  /** Earliest time in s after which the device may open. */
  readonly earliest: Value;
  /** The most that it carries in the other conditions: it may be warm from that when the peak comes. */
  readonly before: Value | undefined;
}

/** Every peak whose length and whose device's opening time are known; a device without one is left out. */
export function derivePeaks(devices: readonly DeviceResult[], keep: Keep): PeakResult[] {
  return devices.flatMap((device): PeakResult[] => {
    const { rating, currents } = device;
    const isAbove = ({ condition, current }: DeviceState) =>
      rating !== undefined && condition.duration !== undefined && current.value > rating.value;
    const above = currents.filter(isAbove);
    const band = above.length > 0 ? bandOf(device) : undefined;
    if (band?.kind !== "band") return [];
    const before = currents
      .filter((state) => !isAbove(state))
      .map(({ current }) => current)
      .reduce<Value | undefined>((most, one) => (most && most.value >= one.value ? most : one), undefined);
    const states = above.flatMap((state) => peakIn(state, band.band, before, keep));
    return states.length > 0 ? [{ device, states }] : [];
  });
}

function peakIn(
  { condition, current }: DeviceState,
  band: BandedDevice,
  before: Value | undefined,
  keep: Keep,
): PeakState[] {
  const about = { subject: current.subject, condition: condition.id?.value } as const;
  const time = derive({
    ...about,
    quantity: "peak-time",
    unit: "s",
    formula: "t",
    operands: { t: written("how long the condition lasts", condition.duration, "s") },
    compute: ({ t }) => t,
  });
  const amps = derived(`current through ${band.id}`, current);
  const earliest = openingValue(band, "earliest", amps, { ...about, quantity: "peak-opening-time" });
  if (!time || !earliest) return [];
  // A bound can show that the device holds; that it does not, only its own points can.
  if (isBound(band, "earliest", current.value) && time.value > earliest.value) return [];
  keep(time);
  keep(earliest);
  return [{ condition, current, time, earliest, before }];
}
