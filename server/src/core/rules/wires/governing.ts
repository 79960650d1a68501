import { type Assessment, holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { DeviceResult } from "../../graph/electrical/devices";
import type { GuardResult } from "../../graph/electrical/guards";
import type { WireResult, WireState } from "../../graph/electrical/wires";
import { ofEach, recalled } from "../../graph/recall";
import type { Value } from "../../graph/value";
import type { Project } from "../../project";
import type { Quantity } from "../../quantities";
import type { Device, Protection } from "../../records/types";
import type { Place, Written } from "../../records/written";
import { gaugeName, standardGauges } from "../../tables/standard-ratings";
import { type Remedy, rewrite } from "../rule";

/** What governs among the states of a thing: the value with the least margin, its limit, and the state. */
export interface Governing<S> {
  readonly state: S;
  readonly value: Value;
  readonly limit: Value;
}

/**
 * Of several conditions the one with the least margin: the only one that a finding has to name. States without a
 * value or without a limit are passed over; of equal ones the first governs.
 */
export function governing<S>(
  states: readonly S[],
  sense: Assessment["sense"],
  valueIn: (state: S) => Value | undefined,
  limitIn: (state: S) => Value | undefined,
): Governing<S> | undefined {
  let worst: S | undefined;
  let worstRatio: number | undefined;
  for (const state of states) {
    const value = valueIn(state);
    const limit = limitIn(state);
    if (!value || !limit) continue;
    const ratio = value.value / limit.value;
    if (worstRatio !== undefined && !(sense === "at-most" ? ratio > worstRatio : ratio < worstRatio))
      continue;
    worst = state;
    worstRatio = ratio;
  }
  if (worst === undefined) return undefined;
  return { state: worst, value: valueIn(worst)!, limit: limitIn(worst)! };
}

/** What a wire carries. */
export function currentOf({ current }: WireState): Value | undefined {
  return current;
}

/** What it may carry. */
export function allowedOf({ allowed }: WireState): Value | undefined {
  return allowed;
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

function guardOf({ device: result, wires }: GuardResult): readonly Guard[] {
  const { id, inline, device, rating, currents, components } = result;
  if (inline.kind !== "protection" || !device || !rating || !inline.record.device) return [];
  const { place } = inline.record.device;
  return [{ id, currents, components, wires, record: inline.record, device, rating, place }];
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
export function holdGuard<L extends GuardLimit>(
  rule: string,
  guard: Guard,
  limits: readonly L[],
  factsOf: (guard: Guard, limit: L) => Assessment["facts"],
): Assessment[] {
  const { id, rating, place } = guard;
  const isWithin = ({ limit }: GuardLimit) => holds(rating.value, "at-most", limit.value);
  const isDeviceOdd = limits.every((one) => !isWithin(one) && !isOverloaded(one));
  const assessments: Assessment[] = [];
  for (const one of limits) {
    const { limit, result } = one;
    const { gauge } = result.wire;
    if (!gauge) continue;
    const related = isDeviceOdd
      ? { place: gauge.place, words: `gauge of wire ${result.id}` }
      : { place, words: `${id} is chosen here` };
    assessments.push({
      rule,
      subject: { kind: "wire", id: result.id },
      place: isDeviceOdd ? place : gauge.place,
      value: rating,
      limit,
      sense: "at-most",
      holds: isWithin(one),
      facts: factsOf(guard, one),
      related: [related],
    });
  }
  return assessments;
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

/** The same in place of the device that an assessment is about. */
export function* largerThanJudged({ subject }: Assessment, project: Project): Iterable<Remedy> {
  const guard = guardsOf(project).find(({ id }) => id === subject.id);
  if (guard) yield* largerDevices(guard, project);
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
