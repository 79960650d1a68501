import { type Assessment, holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { DeviceResult } from "../../graph/electrical/devices";
import type { GuardResult } from "../../graph/electrical/guards";
import type { WireResult } from "../../graph/electrical/wires";
import { ofEach, recalled } from "../../graph/recall";
import type { Value } from "../../graph/value";
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
export const guardsOf: (project: Project) => readonly Guard[] = recalled(
  ofEach((project) => electricalOf(project).guards, guardOf),
);

function* guardOf({ device: { inline, device, rating, ...rest }, wires }: GuardResult): Iterable<Guard> {
  if (inline.kind !== "protection" || !device || !rating || !inline.record.device) return;
  yield { ...rest, wires, record: inline.record, device, rating, place: inline.record.device.place };
}

/** Why a device above its wires is told where it is; the end of a rule's why. */
export const likelierSlip =
  " It is told where the likelier slip is. A wire is chosen for its load, its run and its heat, and then the device " +
  "for the wire. So where none of the wires that a device guards suits it, though each carries its load, it is told " +
  "at the device, and a smaller one is tried first; else at the wire, and a thicker gauge is tried first.";

/** A limit that a wire sets to the rating of the device that guards it. */
export interface GuardLimit {
  readonly result: WireResult;
  readonly limit: Value;
}

/**
 * Holds a device's rating against the limits of the wires that it guards. What fails stands where the likelier
 * slip is. A wire is chosen for its load, its run and its heat, and the device then for the wire: where no wire
 * suits the device, but each carries its load, the device is the odd one, and one change of it mends them all.
 * Else the wire is.
 */
export function guardAssessments<L extends GuardLimit>(
  { id, rating, place }: Guard,
  limits: readonly L[],
): { readonly of: L; readonly held: Omit<Assessment, "rule" | "facts"> }[] {
  const isWithin = ({ limit }: GuardLimit) => holds(rating.value, "at-most", limit.value);
  const isDeviceOdd = limits.every((one) => !isWithin(one) && !isOverloaded(one));
  return limits.flatMap((of) => {
    const { gauge } = of.result.wire;
    if (!gauge) return [];
    const [own, other] = isDeviceOdd
      ? [place, { place: gauge.place, words: `gauge of wire ${of.result.id}` }]
      : [gauge.place, { place, words: `${id} is chosen here` }];
    const held = {
      subject: { kind: "wire", id: of.result.id },
      place: own,
      value: rating,
      limit: of.limit,
      sense: "at-most",
      holds: isWithin(of),
      related: [other],
    } as const;
    return [{ of, held }];
  });
}

/** A wire that carries more than it may is too thin whatever guards it. */
function isOverloaded({ result }: GuardLimit): boolean {
  return result.states.some(
    ({ current, allowed }) => current && allowed && !holds(current.value, "at-most", allowed.value),
  );
}

/** A smaller device and a thicker wire, the likelier slip first: that at which the assessment stands. */
export function* guardRemedies(assessment: Assessment, project: Project): Iterable<Remedy> {
  const { id } = assessment.subject;
  const wire = electricalOf(project).wires.find((one) => one.id === id)?.wire;
  const device = guardsOf(project).find(({ rating }) => rating === assessment.value);
  const gauges = () => thickerGauges(wire?.gauge, id);
  const devices = () => (device ? smallerDevices(device, project) : []);
  const isDeviceOdd = device?.place.node === assessment.place.node;
  for (const series of isDeviceOdd ? [devices, gauges] : [gauges, devices]) yield* series();
}

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
