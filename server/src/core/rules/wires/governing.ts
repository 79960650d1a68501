import type { Assessment } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { DeviceResult } from "../../graph/electrical/devices";
import type { GuardResult } from "../../graph/electrical/guards";
import type { Value } from "../../graph/value";
import { onceEach } from "../../once-each";
import type { Project } from "../../project";
import type { Quantity } from "../../quantities";
import type { Device, Protection } from "../../records/types";
import type { Place, Written } from "../../records/written";
import { gaugeName, standardGauges } from "../../tables/standard-ratings";
import { type Remedy, rewrite } from "../rule";

/** Of several conditions the one with the least margin: the only one that a finding has to name. */
export function governing<T extends { readonly value: Value; readonly limit: Value }>(
  states: readonly T[],
  sense: Assessment["sense"],
): T | undefined {
  const ratio = ({ value, limit }: T) => value.value / limit.value;
  return states.reduce<T | undefined>((worst, one) => {
    if (!worst) return one;
    const isWorse = sense === "at-most" ? ratio(one) > ratio(worst) : ratio(one) < ratio(worst);
    return isWorse ? one : worst;
  }, undefined);
}

/** Thicker standard gauges than the one written, the next one first. */
export function* thickerGauges(gauge: Written<Quantity> | undefined, wire: string): Iterable<Remedy> {
  if (!gauge) return;
  for (const candidate of standardGauges) {
    if (candidate >= gauge.value.si) continue;
    const text = `${gaugeName(candidate)} AWG`;
    yield rewrite(`Make wire ${wire} ${text}`, gauge.place, text, "gauge");
  }
}

/** A breaker or fuse whose device and rating are known. */
export interface Guard
  extends Pick<DeviceResult, "id" | "currents" | "components">,
    Pick<GuardResult, "wires"> {
  readonly record: Protection;
  readonly device: Device;
  readonly rating: Value;
  /** Where its device is chosen. */
  readonly place: Place;
}

/** The same object for a device while its result is. */
export function guardsOf(project: Project): Guard[] {
  return electricalOf(project).guards.flatMap(guardOf);
}

const guardOf = onceEach(({ device: { inline, device, rating, ...rest }, wires }: GuardResult): Guard[] =>
  inline.kind === "protection" && device && rating && inline.record.device
    ? [{ ...rest, wires, record: inline.record, device, rating, place: inline.record.device.place }]
    : [],
);

/** Devices of the kit, of the same kind, with a smaller rating than this one; the largest of them first. */
export function smallerDevices(current: Guard, project: Project): Iterable<Remedy> {
  const smaller = devicesLike(current, project).filter((one) => ratingOf(one) < ratingOf(current.device));
  return swaps(
    current,
    smaller.toSorted((a, b) => ratingOf(b) - ratingOf(a)),
  );
}

/** Devices of the kit, of the same kind, with a larger rating than this one; the smallest of them first. */
export function largerDevices(current: Guard, project: Project): Iterable<Remedy> {
  const larger = devicesLike(current, project).filter((one) => ratingOf(one) > ratingOf(current.device));
  return swaps(
    current,
    larger.toSorted((a, b) => ratingOf(a) - ratingOf(b)),
  );
}

function devicesLike({ device }: Guard, project: Project): Device[] {
  return (project.kit?.devices ?? []).filter((one) => one.rating && one.kind?.value === device.kind?.value);
}

function ratingOf(device: Device): number {
  return device.rating!.value.si;
}

function* swaps({ place, id }: Guard, devices: readonly Device[]): Iterable<Remedy> {
  for (const device of devices) {
    if (!device.id) continue;
    const text = device.id.value;
    yield rewrite(`Take ${text} for ${id}`, place, text, "device");
  }
}
