import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { balanceSources } from "../../methods/balance";
import type { Project } from "../../project";
import { convert, formatMeasure, type UnitSymbol } from "../../quantities";
import { isBelow } from "../../rounding";
import { standardWeights } from "../../tables/standard-weights";
import { defineRule } from "../rule";
import { everyLoadingExample } from "./every-loading-example";
import { changePlace } from "./permitted-limit";

export const usefulLoadLoss = defineRule<{
  lost: number;
  useful: number;
  unit: UnitSymbol<"mass">;
  fuelBefore: number;
  fuel: number;
  persons: number;
}>({
  id: "useful-load-loss",
  severity: "information",
  area: "weights",
  title: "With every seat taken less fuel can be carried than before the change",
  why:
    "What the change adds comes off the useful load. It is felt where seats and tanks could be full together before and " +
    "can't be now, or where they never could and the fuel beside full seats grows less. Persons count as 170 lb each.",
  sources: [balanceSources.usefulLoad, standardWeights.person.source],
  say: ({ lost, useful, unit, fuelBefore, fuel, persons }) => ({
    what:
      `Useful load falls by ${formatMeasure(lost, unit)} to ${formatMeasure(useful, unit)}: beside ${persons} persons ` +
      `${formatMeasure(fuel, unit)} of fuel, before ${formatMeasure(fuelBefore, unit)}.`,
    todo: "Tell the operator what range is left with every seat taken, and revise the loading instructions.",
  }),
  *check(project): Iterable<Problem> {
    const { change, usefulLoad, usefulLoadChange, units } = weightsOf(project);
    if (!usefulLoad || !usefulLoadChange || usefulLoadChange.value >= 0) return;
    const cabin = cabinOf(project, units.weight);
    if (!cabin) return;
    const beside = (load: number) => Math.max(0, Math.min(cabin.tanks, load - cabin.people));
    const [fuelBefore, fuel] = [beside(usefulLoad.value - usefulLoadChange.value), beside(usefulLoad.value)];
    if (!isBelow(fuel, fuelBefore)) return;
    yield {
      rule: "useful-load-loss",
      subject: change.weightChange?.subject ?? usefulLoad.subject,
      place: changePlace(project),
      facts: {
        lost: -usefulLoadChange.value,
        useful: usefulLoad.value,
        unit: units.weight,
        fuelBefore,
        fuel,
        persons: cabin.persons,
      },
    };
  },
  examples: () => [
    {
      title: "A rack that takes fuel from a full cabin",
      text: everyLoadingExample({ limits: "takeoff: 3260 lb" }),
      finds: ["^Useful load falls by 31.2 lb to 816.8 lb: beside 2 persons 476.8 lb of fuel, before 504 lb"],
    },
    { title: "Room for both, as before", text: everyLoadingExample(), finds: [] },
  ],
});

/** Undefined unless every seat says how many it holds, and every tank what it takes. */
function cabinOf(project: Project, unit: UnitSymbol<"mass">) {
  const { stationLimits } = weightsOf(project);
  const stations = [...stationLimits.values()];
  const seats = stations.filter(({ station }) => station.kind?.value === "seat");
  const tanks = stations.filter(({ station }) => station.kind?.value === "fuel");
  if (seats.length === 0 || seats.some(({ station }) => !station.seats)) return undefined;
  if (tanks.some(({ before }) => !before)) return undefined;
  const persons = seats.reduce((sum, { station }) => sum + (station.seats?.value ?? 0), 0);
  const each = convert(standardWeights.person.value, "lb", unit, "mass");
  return {
    persons,
    people: persons * each,
    tanks: tanks.reduce((sum, { before }) => sum + before!.value, 0),
  };
}
