/** Pages of the worksheet: eligibility, brackets, lines, drains and climate. */
import type { CaseResult } from "../../graph/climate";
import { bracketsOf, climateOf, eligibilityOf, linesOf, routesOf } from "../../graph/derivations";
import { type GroupResult, lackWords } from "../../graph/eligibility";
import { groupBy } from "../../graph/group-by";
import type { QuantityName } from "../../graph/quantity-names";
import type { Project } from "../../project";
import { type Cell, cell, type Page, recorded, tablePage } from "./page";

export function installationPages(project: Project): Page[] {
  return [
    eligibility(project),
    brackets(project),
    bends(project),
    lines(project),
    pressures(project),
    flareNuts(project),
    routes(project),
    passThroughs(project),
    drains(project),
    ...heatBalance(project),
  ];
}

function brackets(project: Project): Page {
  return tablePage(
    "brackets",
    "Brackets",
    ["bracket", "sheet", "thickness", "flat length", "as drawn"],
    bracketsOf(project).brackets.map(({ bracket, id, flat }): Cell[] => [
      id,
      bracket.material?.value ?? "",
      recorded(bracket.thickness),
      cell(flat),
      recorded(bracket.flat),
    ]),
  );
}

function bends(project: Project): Page {
  return tablePage(
    "bends",
    "Bends of the brackets, in their order",
    ["bracket", "inside radius", "angle", "setback", "takes up"],
    bracketsOf(project).brackets.flatMap(({ id, bends: found }) =>
      found.map(({ bend, setback, allowance }): Cell[] => [
        id,
        recorded(bend.radius),
        recorded(bend.angle),
        cell(setback),
        cell(allowance),
      ]),
    ),
  );
}

function lines(project: Project): Page {
  return tablePage(
    "lines",
    "Lines",
    ["line", "", "size", "least bend", "widest support"],
    linesOf(project).runs.map(({ line, id, size, leastBendRadius, widestSupportSpacing }): Cell[] => [
      id,
      [line.fluid?.value, line.kind?.value].filter((word) => word !== undefined).join(" "),
      cell(size),
      cell(leastBendRadius),
      cell(widestSupportSpacing),
    ]),
  );
}

function pressures(project: Project): Page {
  return tablePage(
    "line-pressures",
    "Pressure in lines",
    ["line", "hottest", "works at", "at rest, hottest", "may work at"],
    linesOf(project)
      .runs.filter(({ pressureRating, saturationPressure }) => pressureRating ?? saturationPressure)
      .map(({ line, id, pressureRating, saturationPressure }): Cell[] => [
        id,
        recorded(line.hottest),
        recorded(line.pressure),
        cell(saturationPressure),
        cell(pressureRating),
      ]),
  );
}

function flareNuts(project: Project): Page {
  const nuts = linesOf(project).runs.flatMap((run) => run.fittings.map((nut) => ({ run, ...nut })));
  return tablePage(
    "flare-nuts",
    "Flare nuts",
    ["nut", "line", "torque", "least", "most", "table"],
    nuts.map(({ run, fitting, id, least, most }): Cell[] => [
      id,
      run.id,
      recorded(fitting.torque),
      cell(least),
      cell(most),
      fitting.table?.value ?? "not named",
    ]),
  );
}

function routes(project: Project): Page {
  return tablePage(
    "routes",
    "Separation of routes",
    ["", "passes", "nearest", "separation", "to be kept"],
    routesOf(project)
      .separations.toSorted((a, b) => a.value.value - b.value.value)
      .map(({ id, passed, between: [from, to], value, least }): Cell[] => [
        id,
        passed.id,
        `point ${from} to ${to}`,
        cell(value),
        cell(least),
      ]),
  );
}

function passThroughs(project: Project): Page {
  return tablePage(
    "pass-throughs",
    "Pass-throughs",
    ["", "hole", "full", "what goes through"],
    linesOf(project).passThroughs.map(({ passThrough, id, fill }): Cell[] => {
      const held = [...(passThrough.wires ?? []), ...(passThrough.lines ?? [])].map(({ value }) => value);
      return [id, recorded(passThrough.hole), cell(fill), held.join(" ")];
    }),
  );
}

function drains(project: Project): Page {
  return tablePage(
    "drains",
    "Drains",
    ["drain", "from", "to", "attitude", "fall", "slope"],
    linesOf(project).drains.flatMap(({ id, stretches }) =>
      stretches.map(({ ends, attitude, fall, slope }): Cell[] => [
        id,
        ...ends,
        attitude ?? "level",
        cell(fall),
        cell(slope),
      ]),
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
function heatBalance(project: Project): Page[] {
  const { cases } = climateOf(project);
  const values = climateOf.values(project);
  return [...groupBy(cases, ({ space }) => space)].map(([space, ofSpace]) => {
    const row = (words: string, quantity: QuantityName, id = space): Cell[] => [
      words,
      ...ofSpace.map(({ condition }) =>
        cell(
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
    return tablePage(
      `heat-balance-${space}`,
      `Heat balance at the set point of ${space}`,
      ["", ...ofSpace.map(({ condition }) => condition)],
      rows,
      3,
    );
  });
}

/** Never, where it settles short of the set point; nothing where no soak or too little is recorded. */
function timeWords({ time, load, capacity, climateCase }: CaseResult): Cell {
  if (time) return { value: time.value / 60, unit: "min" };
  return climateCase.soak && load && capacity && load.value >= capacity.value ? "never" : "";
}

function eligibility(project: Project): Page {
  const found = eligibilityOf(project);
  const words = ({ isType, serial, isBasis, ...rest }: GroupResult) => {
    if (!isType) return "another type";
    if (serial !== "within") return serial === "outside" ? "another serial number" : "can't be compared";
    if (!isBasis) return "another basis";
    const lack = lackWords({ isType, serial, isBasis, ...rest });
    return lack.length === 0 ? "eligible" : `with ${lack.join(", ")}`;
  };
  return tablePage(
    "eligibility",
    "Eligibility",
    ["type", "serial numbers", "this aircraft"],
    (found?.groups ?? []).map((one): Cell[] => {
      const ranges = (one.group.serials ?? []).map(
        ({ from, to }) => `${from?.value ?? ""} ${to ? `to ${to.value}` : "and on"}`,
      );
      return [one.group.type?.value ?? "", ranges.join(", ") || "all", words(one)];
    }),
  );
}
