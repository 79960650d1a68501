import { holds } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import type { Phase } from "../../graph/weights/loading-phases";
import { formatApart, formatMeasure, roundUp, type UnitSymbol } from "../../quantities";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { everyLoadingExample } from "./every-loading-example";
import { loadsOf, onBoardWords } from "./loading-words";
import { heaviestAdded } from "./pull";

export const phaseWeightAboveLimit = defineRule<{
  loading: string;
  loads: readonly string[];
  phase: Phase;
  weight: number;
  limit: number;
  unit: UnitSymbol<"mass">;
}>({
  id: "phase-weight-above-limit",
  severity: "error",
  area: "weights",
  title: "A loading is too heavy on the ramp, at landing or without fuel",
  why:
    "Ramp, landing and zero-fuel weights have limits of their own, of the gear and of the wing. What the change adds to " +
    "the empty weight counts in each of them; less fuel helps the first two and never the third.",
  sources: [],
  say: ({ loading, loads, phase, weight, limit, unit }) => {
    const [there, allowed] = formatApart(weight, limit);
    return {
      what: `Loading ${loading} has a ${phase} weight of ${there} ${unit}, above the limit of ${allowed} ${unit}.`,
      todo:
        `Carry at least ${formatMeasure(roundUp(weight - limit, 0.1), unit)} less` +
        `${phase === "zero-fuel" ? " besides fuel" : ""} in this loading. ${onBoardWords(loads)}`,
    };
  },
  *check(project) {
    const { phases, change, units } = weightsOf(project);
    const heaviest = heaviestAdded(change.items)?.place;
    for (const { loading, phases: results } of phases) {
      const own = (loading.loading.id ?? loading.loading).place;
      const words = `loading ${loading.id}`;
      for (const { phase, weight, limit } of results) {
        yield {
          rule: "phase-weight-above-limit",
          subject: { kind: "loading", id: loading.id },
          ...(heaviest
            ? { place: heaviest, related: [{ place: own, words }] }
            : placeInAirframe(project, own, words)),
          value: weight,
          limit,
          sense: "at-most",
          holds: holds(weight.value, "at-most", limit.value),
          facts: {
            loading: loading.id,
            loads: loadsOf(loading),
            phase,
            weight: weight.value,
            limit: limit.value,
            unit: units.weight,
          },
        };
      }
    }
  },
  examples: () => [
    {
      title: "Too heavy without fuel",
      text: everyLoadingExample({ limits: "takeoff: 3800 lb, zero-fuel: 2780 lb" }),
      finds: ["^Loading two-up has a zero-fuel weight of 2783 lb, above the limit of 2780 lb"],
    },
    {
      title: "Too heavy to land after a short flight, and on the ramp",
      text: everyLoadingExample({
        limits: "takeoff: 3800 lb, ramp: 3030 lb, landing: 3000 lb, taxi-fuel: 12 lb",
        trip: "20 lb",
      }),
      finds: ["ramp weight of 3035 lb, above the limit of 3030 lb", "landing weight of 3003 lb"],
    },
    {
      title: "Room everywhere",
      text: everyLoadingExample({
        limits: "takeoff: 3800 lb, ramp: 3812 lb, landing: 3600 lb, zero-fuel: 3400 lb, taxi-fuel: 12 lb",
        trip: "60 lb",
      }),
      finds: [],
    },
  ],
});
