/** The parts of a small circuit that an example may want different; the rest is what a sound record has. */
interface ProtectionParts {
  readonly basis?: string;
  readonly nominal?: string;
  /** Sections of the airframe, as lines. */
  readonly airframe?: readonly string[];
  /** Further keys of the electrical system, as lines of block YAML. */
  readonly system?: readonly string[];
  readonly components?: readonly string[];
  readonly devices?: readonly string[];
  readonly loads?: string;
  /** Conditions after the one, as flow maps. */
  readonly conditions?: readonly string[];
  readonly protection?: readonly string[];
  readonly wires?: readonly string[];
  /** Top-level lines that follow: contacts, bonds, spares. */
  readonly sections?: readonly string[];
}

/** Made-up points of a breaker: no maker's. */
export const breakerPoints =
  "opening: [{ at: 120 %, earliest: 100 s, latest: 1000 s }, { at: 200 %, earliest: 8 s, latest: 40 s }, " +
  "{ at: 1000 %, earliest: 0.2 s, latest: 1 s }]";

/** The same, drawn up to the currents of a dead short; made up too. */
export const breakerPointsToFaults = breakerPoints.replace(
  "}]",
  "}, { at: 8000 %, earliest: 5 ms, latest: 20 ms }]",
);

/** Made-up points of a slow fuse: later than the breaker's at every multiple. */
export const slowPoints =
  "opening: [{ at: 100 %, earliest: 10 h, latest: 100 h }, { at: 200 %, earliest: 200 s, latest: 600 s }, " +
  "{ at: 1000 %, earliest: 10 s, latest: 30 s }]";

const sound = {
  basis: "14 CFR 23 before Amdt 23-64",
  nominal: "28 V",
  airframe: [],
  system: [],
  components: ["{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: 15 A }] }"],
  devices: ["{ id: CB-20, kind: breaker, rating: 20 A }"],
  loads: "{ RACK: run }",
  conditions: [],
  protection: ["{ id: CB-RACK, device: CB-20, mounted-on: MAIN }"],
  wires: [
    "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
    "{ id: P2N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
  ],
  sections: [],
} as const satisfies Required<ProtectionParts>;

/** Text of an install record with one load behind one breaker on the bus. */
export function protectionExample(parts: ProtectionParts = {}): string {
  const {
    basis,
    nominal,
    airframe,
    system,
    components,
    devices,
    loads,
    conditions,
    protection,
    wires,
    sections,
  }: Required<ProtectionParts> = { ...sound, ...parts };
  const list = (items: readonly string[], indent: string) => items.map((item) => `${indent}- ${item}`);
  return [
    "document: { number: HM-0412, revision: A, status: draft }",
    "airframe:",
    `  aircraft: { type: Type 9, serial: B9-0417, kind: aeroplane, certification-basis: ${basis} }`,
    "  datum: Front face of the firewall",
    "  empty: { weight: 2412 lb, arm: 88.4 in }",
    "  limits: { takeoff: 3800 lb }",
    "  envelopes: []",
    ...airframe.map((line) => `  ${line}`),
    "  electrical:",
    `    nominal: ${nominal}`,
    "    buses: [{ id: MAIN }]",
    "    grounds: [{ id: GND-AFT }]",
    ...system.map((line) => `    ${line}`),
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    "  components:",
    ...list(components, "    "),
    "  devices:",
    ...list(devices, "    "),
    "conditions:",
    `  - { id: cruise, phase: cruise, altitude: 10000 ft, ambient: 40 degC, loads: ${loads} }`,
    ...list(conditions, "  "),
    "protection:",
    ...list(protection, "  "),
    "wires:",
    ...list(wires, "  "),
    ...sections,
    "",
  ].join("\n");
}

/** A fuse on the bus, 10 ft of wire, a breaker, 10 ft to the load and 2 ft back. */
export const inSeries = {
  protection: ["{ id: F-MAIN, device: F-UP, mounted-on: MAIN }", "{ id: CB-RACK, device: CB-20 }"],
  wires: [
    "{ id: P1, from: F-MAIN, to: CB-RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
    "{ id: P2, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
    "{ id: P3N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
  ],
} as const;

/** Two breakers on the bus, each with 10 ft of wire to a joint; a wire on to the load belongs to it. */
export const twoFeeds = {
  protection: [
    "{ id: CB-A, device: CB-20, mounted-on: MAIN }",
    "{ id: CB-B, device: CB-20, mounted-on: MAIN }",
  ],
  wires: [
    "{ id: P1, from: CB-A, to: TB-1, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
    "{ id: P2, from: CB-B, to: TB-1, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
  ],
  sections: ["junctions: [{ id: TB-1 }]"],
} as const;

/** The same with a mode of 40 A that runs in a condition as long as said. */
export function peakExample(parts: ProtectionParts, duration: string): string {
  return protectionExample({
    components: [
      "{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: 10 A }, { mode: peak, current: 40 A }] }",
    ],
    conditions: [
      `{ id: burst, phase: cruise, duration: ${duration}, altitude: 10000 ft, ambient: 40 degC, loads: { RACK: peak } }`,
    ],
    ...parts,
  });
}
