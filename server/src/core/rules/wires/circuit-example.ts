/** The parts of a small circuit that an example may want different; the rest is what a sound record has. */
interface CircuitParts {
  readonly gauge?: string;
  readonly length?: string;
  readonly rating?: string;
  readonly material?: string;
  /** Draw of the one component. */
  readonly current?: string;
  readonly device?: string;
  readonly nominal?: string;
  readonly duration?: string;
  readonly altitude?: string;
  readonly ambient?: string;
  readonly loads?: string;
  /** Further keys of the feeder, as in a flow map. */
  readonly keys?: string;
  /** Components in place of the one. */
  readonly components?: readonly string[];
  /** Top-level keys that follow, each with all that belongs to it. */
  readonly sections?: readonly string[];
  /** A bundle B1 that the feeder runs in, as a flow map. */
  readonly bundle?: string;
  /** Protection entries in place of the one breaker on the bus. */
  readonly protection?: readonly string[];
  /** Wires in place of the feeder and its return. */
  readonly wires?: readonly string[];
}

/** Text of an install record with one load, one breaker, a feeder and a return wire. */
export function circuitExample(parts: CircuitParts = {}): string {
  const {
    gauge = "10 AWG",
    length = "12 ft",
    rating = "150 degC",
    current = "18 A",
    device = "{ id: CB-20, kind: breaker, rating: 20 A }",
    nominal = "28 V",
    altitude = "10000 ft",
    ambient = "40 degC",
    loads = "{ RACK: survey }",
    components = [`{ id: RACK, weight: 31.2 lb, draws: [{ mode: survey, current: ${current} }] }`],
    protection = ["{ id: CB-RACK, device: CB-20, mounted-on: MAIN }"],
  } = parts;
  const more =
    (parts.material ? `, material: ${parts.material}` : "") +
    (parts.bundle ? ", bundle: B1" : "") +
    (parts.keys ? `, ${parts.keys}` : "");
  const wires = parts.wires ?? [
    `{ id: P1, from: CB-RACK, to: RACK, gauge: ${gauge}, length: ${length}, rating: ${rating}${more} }`,
    `{ id: P2N, from: RACK, to: GND-AFT, gauge: ${gauge}, length: 2 ft, rating: ${rating} }`,
  ];
  const duration = parts.duration ? `duration: ${parts.duration}, ` : "";
  return [
    "document: { number: HM-0412, revision: A, status: draft }",
    "airframe:",
    "  aircraft: { type: Type 9, serial: B9-0417, kind: aeroplane, certification-basis: CAR 3 }",
    "  datum: Front face of the firewall",
    "  empty: { weight: 2412 lb, arm: 88.4 in }",
    "  limits: { takeoff: 3800 lb }",
    "  envelopes: []",
    "  electrical:",
    `    nominal: ${nominal}`,
    "    buses: [{ id: MAIN }]",
    "    grounds: [{ id: GND-AFT }]",
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    `  components: [${components.join(", ")}]`,
    `  devices: [${device}]`,
    "conditions:",
    `  - { id: cruise, ${duration}altitude: ${altitude}, ambient: ${ambient}, loads: ${loads} }`,
    "placement:",
    "  - { component: RACK, arm: 142.0 in }",
    ...(parts.bundle ? ["bundles:", `  - ${parts.bundle}`] : []),
    ...(protection.length > 0 ? ["protection:", ...protection.map((one) => `  - ${one}`)] : []),
    "wires:",
    ...wires.map((one) => `  - ${one}`),
    ...(parts.sections ?? []),
    "",
  ].join("\n");
}
