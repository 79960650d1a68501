import { type Assessment, holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { FaultResult, FaultState } from "../../graph/electrical/protection/faults";
import { ofEach } from "../../graph/recall";
import { faultHeatMethods } from "../../methods/fault-heat";
import { formatMeasure } from "../../quantities";
import { faultTemperatureSource } from "../../tables/fault-temperatures";
import { defineRule } from "../rule";
import { governing, guardsOf, smallerDevices, thickerGauges } from "../wires/governing";
import { breakerPoints, breakerPointsToFaults, protectionExample, twoFeeds } from "./protection-example";

export const faultCurrentTooSmall = defineRule<{
  wire: string;
  protection: string;
  current: number;
  whole?: number | undefined;
  rating: number;
  opening: number;
  withstand: number;
}>({
  id: "fault-current-too-small",
  severity: "error",
  area: "protection",
  title: "A dead short at the end of a run does not open its device before the wire is harmed",
  why:
    "The resistance of a long or thin run keeps the current of a short small. If it is not large enough, the device " +
    "takes longer to open than the wire stands the heat, or does not open at all. What lies ahead of the bus counts " +
    "only where the airframe's record gives its resistance, so a real current may be smaller still.",
  sources: [faultHeatMethods.withstandTime.source, faultTemperatureSource],
  say: ({ wire, protection, current, whole, rating, opening, withstand }) => {
    const draws =
      whole === undefined
        ? `A short at the end of wire ${wire} draws ${formatMeasure(current, "A", 3)}`
        : `A short at the end of wire ${wire} draws ${formatMeasure(whole, "A", 3)}, ` +
          `${formatMeasure(current, "A", 3)} of it through ${protection}`;
    const lasts =
      opening === undefined
        ? `${protection} of ${formatMeasure(rating, "A")} ${whole === undefined ? "never opens" : "may never open"}`
        : `${protection} may take ${formatMeasure(opening, "s", 3)}, the wire stands ${formatMeasure(withstand, "s", 3)}`;
    return {
      what: `${draws}: ${lasts}.`,
      todo: "Take a thicker gauge or a shorter run, or a device that opens sooner.",
    };
  },
  check: ofEach((project) => electricalOf(project).protection.faults, assess),
  *remedies(assessment, project) {
    const fault = electricalOf(project).protection.faults.find(
      ({ wire, guard }) => wire.id === assessment.subject.id && guard.id === assessment.facts.protection,
    );
    yield* thickerGauges(fault?.wire.wire.gauge, assessment.subject.id);
    const guard = guardsOf(project).find(({ id }) => id === fault?.guard.id);
    if (guard) yield* smallerDevices(guard, project);
  },
  examples: () => [
    {
      title: "24 AWG behind a 20 A breaker (points made up)",
      text: protectionExample({
        devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPoints} }`],
        wires: ["{ id: P1, from: CB-RACK, to: RACK, gauge: 24 AWG, length: 8 ft, rating: 150 degC }"],
      }),
      finds: ["short at the end of wire P1 draws .* A: CB-RACK may take .* s, the wire stands .* s"],
    },
    {
      title: "So long a run that the breaker holds its short (points made up)",
      text: protectionExample({
        devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPoints} }`],
        wires: ["{ id: P1, from: CB-RACK, to: RACK, gauge: 24 AWG, length: 50 ft, rating: 150 degC }"],
      }),
      finds: ["CB-RACK of 20 A never opens"],
    },
    {
      title: "A thin wire that two breakers feed: each sees a part of its fault (points made up)",
      text: protectionExample({
        ...twoFeeds,
        devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPoints} }`],
        wires: [
          ...twoFeeds.wires,
          "{ id: P3, from: TB-1, to: RACK, gauge: 22 AWG, length: 12 ft, rating: 150 degC }",
        ],
      }),
      finds: [
        "short at the end of wire P3 draws .* A, .* A of it through CB-A: CB-A may take .* s, the wire stands .* s",
        "short at the end of wire P3 draws .* A, .* A of it through CB-B: CB-B may take .* s, the wire stands .* s",
      ],
    },
    {
      title: "10 AWG behind the same breaker, sources and feeder known (points made up)",
      text: protectionExample({
        devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPointsToFaults} }`],
        system: [
          "sources:",
          "  - { id: ALT, kind: alternator, bus: MAIN, voltage: 28 V, rating: 100 A, resistance: 20 mohm }",
          "  - { id: BAT, kind: battery, voltage: 25 V, capacity: 24 Ah, resistance: 10 mohm }",
          "feeders: [{ id: W-BAT, from: BAT, to: MAIN, resistance: 3 mohm }]",
        ],
      }),
      finds: [],
    },
  ],
});

function* assess({ wire, guard, band, smallest, largest }: FaultResult): Iterable<Assessment> {
  const gauge = wire.wire.gauge;
  const { inline, rating } = guard;
  if (band.kind !== "band" || !gauge || !rating || !smallest.current) return;
  const neverOpens = smallest.current.value <= rating.value;
  const worst = neverOpens
    ? { state: smallest, value: smallest.current, limit: rating }
    : governing([smallest, largest], "at-most", openingOf, withstandOf);
  if (!worst) return;
  const { value, limit, state } = worst;
  const chosen = inline.kind === "protection" ? inline.record.device : undefined;
  yield {
    rule: "fault-current-too-small",
    subject: { kind: "wire", id: wire.id },
    place: gauge.place,
    value,
    limit,
    sense: neverOpens ? "at-least" : "at-most",
    holds: !neverOpens && holds(value.value, "at-most", limit.value),
    facts: {
      wire: wire.id,
      protection: guard.id,
      rating: rating.value,
      current: state.current?.value,
      whole: state.inWire === state.current ? undefined : state.inWire?.value,
      opening: neverOpens ? undefined : value.value,
      withstand: neverOpens ? undefined : limit.value,
    },
    related: chosen ? [{ place: chosen.place, words: `${guard.id} is chosen here` }] : [],
  };
}

function openingOf({ opening }: FaultState) {
  return opening;
}

function withstandOf({ withstand }: FaultState) {
  return withstand;
}
