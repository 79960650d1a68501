import { plainBeginning } from "../example-record";

/** What an example may want different about a space and what serves it; the rest is sound. */
interface ClimateParts {
  /** Keys of the one case, as in a flow map, beside its condition. */
  readonly climateCase?: string;
  /** Further keys of the climate entry, a line of text each. */
  readonly keys?: readonly string[];
  readonly conditioning?: string;
  readonly loads?: string;
  readonly space?: string;
  readonly setPoint?: string;
}

/**
 * Text of an install record with a space of 24 W/K and 60 kJ/K with one window, a rack of 500 W in it, and a
 * cooling unit for 2000 W.
 */
export function climateExample(parts: ClimateParts = {}): string {
  const {
    climateCase = "outside: 35 degC, sun: 900 W/m2",
    conditioning = "{ mode: run, does: cool, capacity: 2000 W }",
    loads = "{ RACK: survey, CHILLER: run }",
    space = "conductance: 24 W/K, thermal-mass: 60 kJ/K, glazing: [{ id: WINDOW, area: 1.2 m2, solar-gain: 70 % }]",
    setPoint = "25 degC",
  } = parts;
  return [
    ...plainBeginning,
    "  electrical: { nominal: 25 V, buses: [{ id: MAIN }] }",
    "  spaces:",
    `    - { id: BAY, ${space} }`,
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    "  components:",
    "    - { id: RACK, weight: 31 lb, draws: [{ mode: survey, current: 20 A }] }",
    `    - { id: CHILLER, weight: 44 lb, draws: [{ mode: run, current: 40 A }], conditioning: [${conditioning}] }`,
    "  devices: [{ id: CB-50, kind: breaker, rating: 50 A }]",
    "conditions:",
    `  - { id: taxi, altitude: 0 ft, ambient: 35 degC, loads: ${loads} }`,
    "protection: [{ id: CB-RACK, device: CB-50, mounted-on: MAIN }]",
    "wires:",
    "  - { id: P1A8, from: CB-RACK, to: RACK, gauge: 8 AWG, length: 1 ft, rating: 150 degC }",
    "climate:",
    "  - space: BAY",
    `    set-point: ${setPoint}`,
    "    served-by: [CHILLER]",
    "    equipment: [{ component: RACK }]",
    ...(parts.keys ?? []).map((key) => `    ${key}`),
    "    cases:",
    `      - { condition: taxi, ${climateCase} }`,
    "",
  ].join("\n");
}
