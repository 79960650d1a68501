/** An install record of one path of cooling air and one duct, for the examples of this area. */
import { plainBeginning } from "../example-record";

interface AirParts {
  /** Keys of the path besides its id, fan and openings. */
  readonly path?: string;
  /** Keys of the cooled component's cooling. */
  readonly cooling?: string;
  readonly draw?: string;
  /** What the cooled component does to a space, as a flow list; nothing when left out. */
  readonly conditioning?: string;
  /** Nominal voltage of the airframe; not recorded when left out. */
  readonly nominal?: string;
  readonly curve?: string;
  readonly altitude?: string;
  readonly loads?: string;
  /** Shape and sizes of the outlet. */
  readonly outlet?: string;
  /** Screen of the inlet. */
  readonly screen?: string;
  /** Text of the ducts, as a flow list; none when left out. */
  readonly ducts?: string;
  /** False leaves the path out. */
  readonly hasPath?: boolean;
}

export function airExample(parts: AirParts = {}): string {
  const {
    path = "inlet-loss: 0.5, outlet-loss: 1, data: Duct test HM-0412-T3, apart: 40 in, outlet-blows: away",
    cooling = "rise: 12 degC, loss-at: 100 cfm, loss: 60 Pa, loss-density: 1.2 kg/m3, data: Cooling sheet QSR-60-24",
    draw = "{ mode: run, current: 20 A, heat: 500 W }",
    curve = "[{ flow: 0 cfm, pressure: 200 Pa }, { flow: 200 cfm, pressure: 0 Pa }]",
    altitude = "8000 ft",
    loads = "{ CHILLER: run, FANS: run }",
    outlet = "shape: rectangle, width: 6 in, height: 4 in, corner-radius: 0.5 in",
    hasPath = true,
  } = parts;
  const conditioning = parts.conditioning ? `, conditioning: ${parts.conditioning}` : "";
  return [
    ...plainBeginning,
    ...(parts.nominal ? [`  electrical: { nominal: ${parts.nominal} }`] : []),
    "  panels:",
    "    - id: BAY-SKIN",
    "      outline: { shape: rectangle, width: 30 in, height: 12 in, corner-radius: 1 in }",
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    "  components:",
    `    - { id: CHILLER, weight: 40 lb, draws: [${draw}], cooling: { ${cooling} }${conditioning} }`,
    "    - { id: FANS, weight: 5 lb, draws: [{ mode: run, current: 6 A }] }",
    `  fans: [{ id: FAN-1, component: FANS, curve: ${curve}, density: 1.2 kg/m3, data: Fan sheet QSR-60-25 }]`,
    `conditions: [{ id: cruise, altitude: ${altitude}, ambient: 30 degC, loads: ${loads} }]`,
    "cutouts:",
    "  - id: C-IN",
    "    panel: BAY-SKIN",
    "    opening: { shape: rectangle, width: 6 in, height: 4 in, corner-radius: 0.5 in, at: { x: -8 in, y: 0 in } }",
    ...(parts.screen ? [`    screen: ${parts.screen}`] : []),
    "  - id: C-OUT",
    "    panel: BAY-SKIN",
    `    opening: { ${outlet}, at: { x: 8 in, y: 0 in } }`,
    ...(hasPath
      ? [
          `air-paths: [{ id: BAY-AIR, fan: FAN-1, cools: CHILLER, inlets: [C-IN], outlets: [C-OUT], ${path} }]`,
        ]
      : []),
    ...(parts.ducts ? [`ducts: ${parts.ducts}`] : []),
    "",
  ].join("\n");
}
