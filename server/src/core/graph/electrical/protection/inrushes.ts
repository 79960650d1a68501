import type { Condition } from "../../../records/types";
import { derive, derived, sumOf, type Value, written } from "../../value";
import type { ElectricalBasis } from "../basis";
import type { FedLoad } from "../circuit";
import type { DeviceResult } from "../devices";
import type { LoadCurrents } from "../load-currents";
import { drawIn } from "../running";
import { type BandedDevice, type BandLookup, bandOf, isBound, openingValue } from "./opening";

/** A component that switches on behind a breaker or fuse. */
export interface InrushResult {
  readonly component: string;
  readonly device: DeviceResult;
  readonly band: BandLookup;
  /** Conditions in which the current is above the device's rating. */
  readonly states: readonly InrushState[];
}

export interface InrushState {
  readonly condition: Condition;
  /** Through the device: the inrush and what else runs behind it. */
  readonly current: Value;
  readonly time: Value;
  /** Earliest time in s after which the device may open; undefined while its points don't tell. */
  readonly earliest: Value | undefined;
}

/** Every recorded inrush against every device on its way. */
export function deriveInrushes(
  basis: ElectricalBasis,
  currents: LoadCurrents,
  devices: readonly DeviceResult[],
): InrushResult[] {
  const guards = devices.filter(({ inline, rating }) => inline.kind === "protection" && rating);
  const switched = basis.fed.filter(({ component }) => component.draws?.some(({ inrush }) => inrush));
  return switched.flatMap((load) =>
    guards
      .filter(({ components }) => components.includes(load.id))
      .flatMap((device) => {
        const band = bandOf(device);
        const states = basis.conditions.flatMap((condition) =>
          inrushIn(load, device, condition, band.kind === "band" ? band.band : undefined, currents, basis),
        );
        return states.length > 0 ? [{ component: load.id, device, band, states }] : [];
      }),
  );
}

function inrushIn(
  load: FedLoad,
  device: DeviceResult,
  condition: Condition,
  band: BandedDevice | undefined,
  currents: LoadCurrents,
  basis: ElectricalBasis,
): InrushState[] {
  const draw = drawIn(load.component, condition);
  if (!draw?.inrush || !draw.inrushTime || !device.rating) return [];
  const index = basis.conditions.indexOf(condition);
  const others = basis.fed.flatMap(({ id }, position) => {
    const current = id === load.id ? undefined : currents[position]![index];
    return current && device.components.includes(id) ? [derived(`current of ${id}`, current)] : [];
  });
  const about = { subject: { kind: "protection", id: device.id }, condition: condition.id?.value } as const;
  const I_on = written(`inrush of ${load.id}`, draw.inrush, "A");
  const common = { ...about, quantity: "inrush-current", unit: "A" } as const;
  const current = basis.keep(
    others.length === 0
      ? derive({ ...common, formula: "I_on", operands: { I_on }, compute: (numbers) => numbers.I_on })
      : derive({
          ...common,
          formula: "I_on + sum(I)",
          operands: { I_on, I: others },
          compute: (numbers) => numbers.I_on + sumOf(numbers.I),
        }),
  );
  if (!current || current.value <= device.rating.value) return [];
  const time = basis.keep(
    derive({
      subject: { kind: "component", id: load.id },
      condition: about.condition,
      quantity: "inrush-time",
      unit: "s",
      formula: "t",
      operands: { t: written("how long the inrush lasts", draw.inrushTime, "s") },
      compute: ({ t }) => t,
    }),
  );
  if (!time) return [];
  const amps = derived(`current through ${device.id}`, current);
  const earliest =
    band && openingValue(band, "earliest", amps, { ...about, quantity: "inrush-opening-time" });
  // A bound can show that the device holds; that it does not, only its own points can.
  const tells =
    band && earliest && (!isBound(band, "earliest", current.value) || time.value <= earliest.value);
  return [{ condition, current, time, earliest: tells ? basis.keep(earliest) : undefined }];
}
