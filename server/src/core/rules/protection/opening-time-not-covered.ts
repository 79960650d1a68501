import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { DeviceResult } from "../../graph/electrical/devices";
import type { FaultResult, FaultState } from "../../graph/electrical/protection/faults";
import type { InrushResult } from "../../graph/electrical/protection/inrushes";
import type { OrderResult } from "../../graph/electrical/protection/order";
import type { PeakResult, PeakState } from "../../graph/electrical/protection/peaks";
import { ofEach } from "../../graph/recall";
import type { Value } from "../../graph/value";
import { formatMeasure } from "../../quantities";
import type { Place } from "../../records/written";
import { isAtMost } from "../../rounding";
import type { Source } from "../../source";
import { defineRule } from "../rule";
import { conditionName, listWords } from "../wording";
import {
  breakerPoints,
  breakerPointsToFaults,
  inSeries,
  peakExample,
  protectionExample,
  slowPoints,
} from "./protection-example";

interface Facts {
  readonly [fact: string]: string | number | readonly string[] | undefined;
  /** What is not shown. */
  readonly question: string;
  /** What keeps it from being shown. */
  readonly reason: string;
  readonly todo: string;
}

/**
 * A device that carries this share of its rating beforehand opens this many times sooner than from cold, at the most
 * of what the table gives.
 */
const preload = { share: 0.6, sooner: 3.7 } as const;
const preloadSource: Source = {
  document: "MS3320N",
  at: "Table VII",
  standing: "secondary",
  note: "breakers that carry 60 % of their rating open 1.6 to 3.7 times sooner",
};

export const openingTimeNotCovered = defineRule<Facts>({
  id: "opening-time-not-covered",
  severity: "information",
  area: "protection",
  title: "Opening times that a check needs are not recorded",
  why:
    "When a breaker or fuse opens is its maker's data: no published table was found, and none is assumed. Outside " +
    "the points that the record gives nothing is known, so the record is not shown to be wrong here, and not shown " +
    "to be right.",
  sources: [preloadSource],
  say: ({ question, reason, todo }) => ({ what: `${question}: ${reason}.`, todo }),
  *check(project): Iterable<Problem> {
    yield* ofOrders(project);
    yield* ofInrushes(project);
    yield* ofPeaks(project);
    const told = new Set<string>();
    for (const problem of ofFaults(project)) {
      const guard = problem.subject!.id;
      if (!told.has(guard)) yield problem;
      told.add(guard);
    }
  },
  examples: () => [
    {
      title: "A fuse ahead of a breaker, both without points",
      text: protectionExample({
        devices: ["{ id: F-UP, kind: fuse, rating: 30 A }", "{ id: CB-20, kind: breaker, rating: 20 A }"],
        ...inSeries,
      }),
      finds: [
        "^Whether CB-RACK opens before F-MAIN is not known: no opening times of F-MAIN and CB-RACK\\.$",
      ],
    },
    {
      title: "An inrush beyond the highest point",
      text: protectionExample({
        components: [
          "{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: 5 A, inrush: 300 A, inrush-time: 50 ms }] }",
        ],
        devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPoints} }`],
      }),
      finds: [
        "inrush of RACK is not known: 300 A lies outside the points",
        "short of wire P1 is not known: .* A lies outside the points",
      ],
    },
    {
      title: "A peak of 5 s, where a cold device may open after 8 s",
      text: peakExample(
        { devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPointsToFaults} }`] },
        "5 s",
      ),
      finds: ["^Whether CB-RACK holds 40 A for 5 s \\(burst\\) when it is warm from 10 A is not known"],
    },
    {
      title: "A peak of 2 s: at half of its rating beforehand it holds it warm, too",
      text: peakExample(
        { devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPointsToFaults} }`] },
        "2 s",
      ),
      finds: [],
    },
    {
      title: "Points for every current that a fault can draw",
      text: protectionExample({
        devices: [
          `{ id: F-UP, kind: fuse, rating: 30 A, ${slowPoints.replace("1000 %", "8000 %")} }`,
          `{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPointsToFaults} }`,
        ],
        ...inSeries,
      }),
      finds: [],
    },
  ],
});

const ofOrders = ofEach((project) => electricalOf(project).protection.orders, ofOrder);
const ofInrushes = ofEach((project) => electricalOf(project).protection.inrushes, ofInrush);
const ofPeaks = ofEach((project) => electricalOf(project).protection.peaks, ofPeak);
const ofFaults = ofEach((project) => electricalOf(project).protection.faults, ofFault);

const addPoints =
  "Add the maker's points to the kit's device, as in opening: [{ at: 200 %, earliest: 8 s, latest: 40 s }].";

const outsideWords = (amps: string) => `${amps} lies outside the points of its device`;

/** Points are given as shares of the rating, and so is the one that is wanted. */
function pointsAt({ value }: Value, { rating }: Pick<DeviceResult, "rating">): string {
  if (!rating) return addPoints;
  const share = formatMeasure((100 * value) / rating.value, "%");
  return `Add what the maker gives for about ${share} of its rating to the points of the kit's device.`;
}

function* ofOrder({ upstream, downstream, bands, largest, compared }: OrderResult): Iterable<Problem> {
  const open = compared?.coordination.notCovered ?? [];
  const hasBands = bands.upstream.kind === "band" && bands.downstream.kind === "band";
  if (hasBands && largest && open.length === 0) return;
  const question = `Whether ${downstream.id} opens before ${upstream.id} is not known`;
  const unusable = unusableWords([
    [upstream, bands.upstream.kind],
    [downstream, bands.downstream.kind],
  ]);
  if (unusable) return yield* problem(upstream, question, unusable, addPoints);
  if (!largest) {
    yield* problem(
      upstream,
      question,
      "no resistance ahead of a fault bounds its current",
      "Add the resistance of the devices, or of the sources and feeders ahead of the bus, in the airframe's record.",
    );
  }
  if (open.length > 0) {
    const ranges = open.map(
      ({ fromAmps, toAmps }) => `${formatMeasure(fromAmps, "A", 3)} to ${formatMeasure(toAmps, "A", 3)}`,
    );
    yield* problem(upstream, question, `no points cover ${listWords(ranges, "and")}`, addPoints);
  }
}

function* ofInrush({ component, device, band, states }: InrushResult): Iterable<Problem> {
  const state = states.find(({ earliest }) => !earliest);
  if (!state) return;
  const question = `Whether ${device.id} holds the inrush of ${component} is not known`;
  const reason =
    unusableWords([[device, band.kind]]) ?? outsideWords(formatMeasure(state.current.value, "A"));
  yield* problem(
    device,
    question,
    reason,
    band.kind === "band" ? pointsAt(state.current, device) : addPoints,
  );
}

/** Points are taken to hold from cold; how much sooner a loaded device opens is known for some loads only. */
function* ofPeak({ device, states }: PeakResult): Iterable<Problem> {
  const state = states.find((one) => isAtMost(one.time.value, one.earliest.value) && isWarm(one, device));
  if (!state) return;
  const { before, current, time, condition } = state;
  yield* problem(
    device,
    `Whether ${device.id} holds ${formatMeasure(current.value, "A")} for ${formatMeasure(time.value, "s")} ` +
      `(${conditionName(condition)}) when it is warm from ${formatMeasure(before!.value, "A")} is not known`,
    "its points are taken to hold from cold",
    "Ask its maker for the opening times of a device that carries this load, or take a larger one.",
  );
}

function isWarm({ before, time, earliest }: PeakState, { rating }: DeviceResult): boolean {
  if (!before || before.value === 0) return false;
  const isCovered = isAtMost(before.value, preload.share * rating!.value);
  return !isCovered || !isAtMost(time.value * preload.sooner, earliest.value);
}

/** Only where there are points: without them nothing is asked of every device of a record. */
function* ofFault(fault: FaultResult): Iterable<Problem> {
  const { wire, guard, band } = fault;
  const open = band.kind === "no-points" ? undefined : openFor(fault);
  if (!open) return;
  const question = `Whether ${guard.id} opens in time at a short of wire ${wire.id} is not known`;
  yield* problem(guard, question, open.reason, open.todo);
}

function openFor({ guard, band, smallest, largest }: FaultResult) {
  const unusable = band.kind === "band" ? undefined : unusableWords([[guard, band.kind]]);
  if (unusable) return { reason: unusable, todo: addPoints };
  const beyond = beyondPoints(smallest, guard) ?? beyondPoints(largest, guard);
  if (beyond) {
    return { reason: outsideWords(formatMeasure(beyond.value, "A", 3)), todo: pointsAt(beyond, guard) };
  }
  if (!smallest.opening || smallest.withstand) return undefined;
  return {
    reason: "no table gives how long the wire stands it",
    todo: "Show by the wire maker's data that the wire stands the fault until the device has opened.",
  };
}

/** The current at which the device has to open, and has no point that tells when. */
function beyondPoints(
  { current, isJudged, opening }: FaultState,
  { rating }: FaultResult["guard"],
): Value | undefined {
  return current && isJudged && !opening && current.value > rating!.value ? current : undefined;
}

function unusableWords(
  devices: readonly (readonly [Pick<DeviceResult, "id">, "band" | "no-points" | "faulty-points"])[],
): string | undefined {
  const without = devices.filter(([, kind]) => kind === "no-points").map(([{ id }]) => id);
  const faulty = devices.filter(([, kind]) => kind === "faulty-points").map(([{ id }]) => id);
  const words = [
    without.length > 0 ? `no opening times of ${listWords(without, "and")}` : undefined,
    faulty.length > 0 ? `the opening points of ${listWords(faulty, "and")} contradict themselves` : undefined,
  ].filter((one) => one !== undefined);
  return words.length > 0 ? words.join("; ") : undefined;
}

function* problem(
  device: Pick<DeviceResult, "inline" | "id">,
  question: string,
  reason: string,
  todo: string,
): Iterable<Problem> {
  const place = placeOf(device);
  if (!place) return;
  yield {
    rule: "opening-time-not-covered",
    subject: { kind: "protection", id: device.id },
    place,
    facts: { question, reason, todo } satisfies Facts,
  };
}

function placeOf({ inline }: Pick<DeviceResult, "inline">): Place | undefined {
  return inline.kind === "protection" ? inline.record.device?.place : undefined;
}
