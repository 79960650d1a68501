/** The parts of an electrical system that an example may want different; the rest is what a sound record has. */
interface SystemParts {
  /** Keys of the alternator after its id, kind and voltage. */
  readonly alternator?: string;
  /** Keys of the battery after its id, kind and voltage. */
  readonly battery?: string;
  /** Sources after these two, as flow maps. */
  readonly moreSources?: readonly string[];
  readonly feeders?: readonly string[];
  /** Existing loads, as flow maps. */
  readonly existing?: readonly string[];
  readonly monitored?: boolean;
  /** Keys of the kit's one component after its id. */
  readonly component?: string;
  /** Keys of its one draw after the mode. */
  readonly draw?: string;
  /** Conditions, as flow maps. */
  readonly conditions?: readonly string[];
  readonly gauge?: string;
  readonly length?: string;
}

/** Made up: no alternator has these points. Its drive ratio makes 2000 rpm of the engine 6000 of its own. */
export const exampleAlternator = [
  "bus: MAIN",
  "rating: 60 A",
  "drive-ratio: 3",
  "output: [{ speed: 2000 rpm, current: 10 A }, { speed: 3000 rpm, current: 40 A }, { speed: 6000 rpm, current: 60 A }, { speed: 9000 rpm, current: 60 A }]",
].join(", ");

const exampleBattery = "bus: MAIN, rating: 200 A, resistance: 20 mohm, capacity: 24 Ah";

/** A condition in which the component runs, as a flow map; its first key is its phase. */
export function runningIn(phase: string, keys = "engine-speed: 2000 rpm"): string {
  return `{ id: ${phase}, phase: ${phase}, ${keys}, altitude: 0 ft, ambient: 40 degC, loads: { RACK: survey } }`;
}

/** Text of an install record with an alternator, a battery, 20 A of existing loads and one load of 18 A. */
export function sourceExample(parts: SystemParts = {}): string {
  const {
    alternator = exampleAlternator,
    battery = exampleBattery,
    moreSources = [],
    existing = [avionics],
    draw = "current: 18 A",
    conditions = [runningIn("cruise")],
    gauge = "8 AWG",
    length = "10 ft",
  } = parts;
  const component = parts.component ? `${parts.component}, ` : "";
  const list = (key: string, entries: readonly string[]) =>
    entries.length > 0 ? [`    ${key}:`, ...entries.map((entry) => `      - ${entry}`)] : [];
  return [
    "document: { number: HM-0412, revision: A, status: draft }",
    "airframe:",
    "  aircraft: { type: Type 9, serial: B9-0417, kind: aeroplane, certification-basis: CAR 3 }",
    "  datum: Front face of the firewall",
    "  empty: { weight: 2412 lb, arm: 88.4 in }",
    "  limits: { takeoff: 3800 lb }",
    "  envelopes: []",
    "  electrical:",
    "    nominal: 28 V",
    ...(parts.monitored === undefined ? [] : [`    monitored: ${parts.monitored}`]),
    ...list("sources", [
      `{ id: ALT, kind: alternator, voltage: 28 V, ${alternator} }`,
      `{ id: BATT, kind: battery, voltage: 25 V, ${battery} }`,
      ...moreSources,
    ]),
    "    buses: [{ id: MAIN }, { id: AUX }]",
    ...list("feeders", parts.feeders ?? []),
    ...list("existing-loads", existing),
    "    grounds: [{ id: GND-AFT }]",
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    `  components: [{ id: RACK, weight: 31.2 lb, ${component}draws: [{ mode: survey, ${draw} }] }]`,
    "  devices: [{ id: CB-50, kind: breaker, rating: 50 A }]",
    "conditions:",
    ...conditions.map((one) => `  - ${one}`),
    "placement:",
    "  - { component: RACK, arm: 142.0 in }",
    "protection:",
    "  - { id: CB-RACK, device: CB-50, mounted-on: MAIN }",
    "wires:",
    `  - { id: P1, from: CB-RACK, to: RACK, gauge: ${gauge}, length: ${length}, rating: 150 degC }`,
    `  - { id: P2N, from: RACK, to: GND-AFT, gauge: ${gauge}, length: 2 ft, rating: 150 degC }`,
    "",
  ].join("\n");
}

/** An existing load with the same current in every phase but the one after the loss of a source. */
export function existingLoad(id: string, amps: number, failedAmps: number, more = ""): string {
  const phases = ["ground-power", "start", "taxi", "take-off", "cruise", "landing"];
  const currents = phases.map((phase) => `${phase}: ${amps} A`).join(", ");
  return `{ id: ${id}, bus: MAIN, currents: { ${currents}, source-failed: ${failedAmps} A }${more} }`;
}

const avionics = existingLoad("avionics", 20, 8);
