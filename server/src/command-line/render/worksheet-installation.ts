/** Pages of the worksheet: lines, drains, climate and eligibility. Titles with their tables; empty ones are left out. */
import type { CaseResult } from "../../core/graph/climate";
import { climateOf, eligibilityOf, linesOf } from "../../core/graph/derivations";
import { type GroupResult, lackWords } from "../../core/graph/eligibility";
import { groupBy } from "../../core/graph/group-by";
import type { QuantityName } from "../../core/graph/quantity-names";
import { showMeasure, type Value } from "../../core/graph/value";
import type { Project } from "../../core/project";
import type { Quantity } from "../../core/quantities";
import type { Written } from "../../core/records/written";
import { type Row, table } from "./layout";

export type Page = readonly [title: string, body: string];

export function installationPages(project: Project): Page[] {
  return [
    ["Eligibility", eligibility(project)],
    ["Lines", lines(project)],
    ["Pressure in lines", pressures(project)],
    ["Flare nuts", flareNuts(project)],
    ["Pass-throughs", passThroughs(project)],
    ["Drains", drains(project)],
    ["Heat balance at the set point", heatBalance(project)],
  ];
}

function lines(project: Project): string {
  return table(
    ["line", "", "size", "least bend", "widest support"],
    linesOf(project).runs.map(
      ({ line, id, size, leastBendRadius, widestSupportSpacing }): Row => [
        id,
        [line.fluid?.value, line.kind?.value].filter((word) => word !== undefined).join(" "),
        show(size),
        show(leastBendRadius),
        show(widestSupportSpacing),
      ],
    ),
  );
}

function pressures(project: Project): string {
  return table(
    ["line", "hottest", "works at", "at rest, hottest", "may work at"],
    linesOf(project)
      .runs.filter(({ pressureRating, saturationPressure }) => pressureRating ?? saturationPressure)
      .map(
        ({ line, id, pressureRating, saturationPressure }): Row => [
          id,
          asWritten(line.hottest),
          asWritten(line.pressure),
          show(saturationPressure),
          show(pressureRating),
        ],
      ),
  );
}

function flareNuts(project: Project): string {
  const nuts = linesOf(project).runs.flatMap((run) => run.fittings.map((nut) => ({ run, ...nut })));
  return table(
    ["nut", "line", "torque", "least", "most", "table"],
    nuts.map(
      ({ run, fitting, id, least, most }): Row => [
        id,
        run.id,
        asWritten(fitting.torque),
        show(least),
        show(most),
        fitting.table?.value ?? "not named",
      ],
    ),
  );
}

function passThroughs(project: Project): string {
  return table(
    ["", "hole", "full", "what goes through"],
    linesOf(project).passThroughs.map(({ passThrough, id, fill }): Row => {
      const held = [...(passThrough.wires ?? []), ...(passThrough.lines ?? [])].map(({ value }) => value);
      return [id, asWritten(passThrough.hole), show(fill), held.join(" ")];
    }),
  );
}

function drains(project: Project): string {
  return table(
    ["drain", "from", "to", "attitude", "fall", "slope"],
    linesOf(project).drains.flatMap(({ id, stretches }) =>
      stretches.map(
        ({ ends, attitude, fall, slope }): Row => [id, ...ends, attitude ?? "level", show(fall), show(slope)],
      ),
    ),
  );
}

/** From gain to gain, as the sum is made; the equipment stands between the two parts, a line for each. */
const gains: readonly (readonly [QuantityName, string])[] = [
  ["unshaded-solar-gain", "sun without shades"],
  ["solar-gain", "sun"],
  ["conduction-gain", "walls"],
  ["fresh-air-gain", "fresh air"],
  ["people-heat", "people"],
];
const rest: readonly (readonly [QuantityName, string])[] = [
  ["fresh-air-moisture", "moisture of fresh air"],
  ["people-moisture", "moisture of people"],
  ["cooling-load", "to take out"],
  ["cooling-capacity", "cooling capacity"],
  ["heating-load", "to put in"],
  ["heating-capacity", "heating capacity"],
  ["steady-temperature", "settles at"],
];

/** Conditions across, parts down; what is known in no condition is left out. */
function heatBalance(project: Project): string {
  const { cases, values } = climateOf(project);
  return [...groupBy(cases, ({ space }) => space)]
    .map(([space, ofSpace]) => {
      const row = (words: string, quantity: QuantityName, id = space): Row => [
        words,
        ...ofSpace.map(({ condition }) =>
          show(
            values.find(
              (one) => one.quantity === quantity && one.condition === condition && one.subject.id === id,
            ),
          ),
        ),
      ];
      const equipment = (ofSpace[0].entry.equipment ?? []).flatMap(({ component }) => component?.value ?? []);
      const rows = [
        ...gains.map(([quantity, words]) => row(words, quantity)),
        ...equipment.map((id) => row(id, "equipment-heat", `${id} in ${space}`)),
        ...rest.map(([quantity, words]) => row(words, quantity)),
        ["soak to set point", ...ofSpace.map(timeWords)],
      ].filter(([, ...cells]) => cells.some((one) => one !== ""));
      return table([space, ...ofSpace.map(({ condition }) => condition)], rows);
    })
    .join("\n\n");
}

/** Never, where it settles short of the set point; nothing where no soak or too little is recorded. */
function timeWords({ time, load, capacity, climateCase }: CaseResult): string {
  if (time) return showMeasure(time.value / 60, "min", 3);
  return climateCase.soak && load && capacity && load.value >= capacity.value ? "never" : "";
}

function eligibility(project: Project): string {
  const found = eligibilityOf(project);
  const words = ({ isType, serial, isBasis, ...rest }: GroupResult) => {
    if (!isType) return "another type";
    if (serial !== "within") return serial === "outside" ? "another serial number" : "can't be compared";
    if (!isBasis) return "another basis";
    const lack = lackWords({ isType, serial, isBasis, ...rest });
    return lack.length === 0 ? "eligible" : `with ${lack.join(", ")}`;
  };
  return table(
    ["type", "serial numbers", "this aircraft"],
    (found?.groups ?? []).map((one): Row => {
      const ranges = (one.group.serials ?? []).map(
        ({ from, to }) => `${from?.value ?? ""} ${to ? `to ${to.value}` : "and on"}`,
      );
      return [one.group.type?.value ?? "", ranges.join(", ") || "all", words(one)];
    }),
  );
}

function show(value: Value | undefined): string {
  return value ? showMeasure(value.value, value.unit, 3) : "";
}

function asWritten(quantity: Written<Quantity> | undefined): string {
  return quantity ? showMeasure(quantity.value.written, quantity.value.unit) : "";
}
