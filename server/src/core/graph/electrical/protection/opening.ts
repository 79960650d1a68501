import {
  faultsOfPoints,
  type OpeningPoint,
  openingMethods,
  openingTime,
} from "../../../methods/opening-time";
import { inUnit } from "../../../quantities";
import type { Device, OpeningPoint as WrittenPoint } from "../../../records/types";
import type { Source } from "../../../source";
import type { QuantityName } from "../../quantity-names";
import { derive, derived, type Operand, type Subject, type Value, written } from "../../value";
import type { DeviceResult } from "../devices";

/** Which edge of the band is asked: when a device may open first, or when it has opened for sure. */
export type Edge = "earliest" | "latest";

/** A breaker or fuse in its place, with points that make a band. */
export interface BandedDevice {
  readonly id: string;
  readonly rating: Value;
  /** Rising; never empty. */
  readonly points: readonly OpeningPoint[];
  readonly written: readonly WholePoint[];
  readonly source: Source;
}

type WholePoint = Required<WrittenPoint>;

/** Whether a device has points, and whether they can be used. */
export type BandLookup =
  | { readonly kind: "band"; readonly band: BandedDevice }
  | { readonly kind: "no-points" }
  | { readonly kind: "faulty-points" };

/** The band of a device, out of the points that its record gives. */
export function bandOf({ id, device, rating }: Pick<DeviceResult, "id" | "device" | "rating">): BandLookup {
  if (!device || !rating) return { kind: "no-points" };
  const band = bands.get(rating) ?? readBand(id, device, rating);
  bands.set(rating, band);
  return band;
}

/** By the value of the rating, which each device in its place has one of. */
const bands = new WeakMap<Value, BandLookup>();

function readBand(id: string, device: Device, rating: Value): BandLookup {
  const whole = (device.opening ?? []).filter(isWhole);
  if (whole.length === 0) return { kind: "no-points" };
  const points = whole.map(({ at, earliest, latest }) => ({
    multiple: inUnit(at.value, "%") / 100,
    earliestSeconds: inUnit(earliest.value, "s"),
    latestSeconds: inUnit(latest.value, "s"),
  }));
  if (whole.length < device.opening!.length || faultsOfPoints(points).length > 0) {
    return { kind: "faulty-points" };
  }
  const sorted = points.toSorted((a, b) => a.multiple - b.multiple);
  return { kind: "band", band: { id, rating, points: sorted, written: whole, source: sourceOf(device) } };
}

function isWhole(point: WrittenPoint): point is WholePoint {
  return point.at !== undefined && point.earliest !== undefined && point.latest !== undefined;
}

function sourceOf({ id, data }: Device): Source {
  return { document: data?.value ?? `Opening points of ${id?.value}`, standing: "record" };
}

/**
 * The band drawn on, as far as it holds without knowing more: more current never opens a device later, so below
 * the lowest point it opens no earlier than there, and above the highest no later.
 */
export function drawnOn({ points }: BandedDevice, edge: Edge, multiple: number): readonly OpeningPoint[] {
  const [first, last] = [points[0]!, points.at(-1)!];
  if (edge === "earliest" && multiple < first.multiple) {
    const { earliestSeconds } = first;
    return [{ multiple, earliestSeconds, latestSeconds: Number.POSITIVE_INFINITY }, ...points];
  }
  if (edge === "latest" && multiple > last.multiple) {
    const latestSeconds = Math.max(
      ...points.filter((point) => point.multiple === last.multiple).map((point) => point.latestSeconds),
    );
    return [...points, { multiple, earliestSeconds: 0, latestSeconds }];
  }
  return points;
}

/** Whether a time at this current is a bound only: outside the points, on the side where one can be had. */
export function isBound({ points, rating }: BandedDevice, edge: Edge, amps: number): boolean {
  const multiple = amps / rating.value;
  return edge === "earliest" ? multiple < points[0]!.multiple : multiple > points.at(-1)!.multiple;
}

const drawnOnNotes: Readonly<Record<Edge, string>> = {
  earliest: "Below the lowest point: less current opens a device no earlier.",
  latest: "Above the highest point: more current opens a device no later.",
};

/**
 * When a device opens at a current in A, in s. Undefined where its points don't cover the current, and no bound
 * can be had from them.
 */
export function openingValue(
  band: BandedDevice,
  edge: Edge,
  amps: Operand,
  about: {
    readonly subject: Subject;
    readonly quantity: QuantityName;
    readonly condition?: string | undefined;
  },
): Value | undefined {
  if (!amps) return undefined;
  const multiple = amps.value / band.rating.value;
  const points = drawnOn(band, edge, multiple);
  const times = openingTime(points, multiple, band.source);
  if (!times.covered) return undefined;
  return derive({
    ...about,
    unit: "s",
    method: `${edge} opening time: straight line on log-log paper between the points of the device`,
    operands: {
      I: amps,
      I_rated: derived(`rating of ${band.id}`, band.rating),
      at: band.written.map((point) => written(`point of ${band.id}`, point.at, "%")),
      t: band.written.map((point) => written(`${edge} at that point`, point[edge], "s")),
    },
    compute: () => (edge === "earliest" ? times.value.earliestSeconds : times.value.latestSeconds),
    sources: [openingMethods.openingTime.source, band.source],
    notes: [...times.notes, ...(points === band.points ? [] : [drawnOnNotes[edge]])],
  });
}
