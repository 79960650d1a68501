/** The parts of a change that an example may want different; the rest is what a sound record has. */
interface BalanceParts {
  /** Weight of the one component. */
  readonly rack?: string;
  /** Arm that it is placed at. */
  readonly arm?: string;
  /** Placements in place of the one. */
  readonly placement?: readonly string[];
  readonly added?: readonly string[];
  /** Ids of equipment taken out. */
  readonly removed?: readonly string[];
  /** Mean aerodynamic chord, as a flow map. */
  readonly mac?: string;
  readonly takeoff?: string;
  readonly forward?: string;
  readonly density?: string;
  /** Limit of the baggage station. */
  readonly baggage?: string;
  /** Loadings in place of the two. */
  readonly loadings?: readonly string[];
}

/** Text of an install record with one rack, four stations, one envelope and two adverse loadings. */
export function balanceExample(parts: BalanceParts = {}): string {
  const {
    rack = "31.2 lb",
    arm = "112.0 in",
    placement = [`{ component: RACK, arm: ${arm} }`],
    added = [],
    removed = [],
    takeoff = "3800 lb",
    forward = "{ weight: 2600 lb, arm: 86.0 in, or-less: true }, { weight: 3800 lb, arm: 88.0 in }",
    density = "6.0 lb/gal",
    baggage = "200 lb",
    loadings = [
      "{ id: pilot-alone, envelope: normal, load: [{ station: front-seats, weight: 170 lb }, { station: main-tanks, volume: 20 gal }] }",
      "{ id: full-aft, envelope: normal, load: [{ station: front-seats, weight: 170 lb }, { station: rear-seats, weight: 340 lb }, { station: baggage, weight: 120 lb }, { station: main-tanks, volume: 20 gal }] }",
    ],
  } = parts;
  return [
    "document: { number: HM-0412, revision: A, status: draft }",
    "airframe:",
    "  aircraft: { type: Type 9, serial: B9-0417, kind: aeroplane, certification-basis: CAR 3 }",
    "  datum: Front face of the firewall",
    "  empty: { weight: 2412 lb, arm: 88.4 in }",
    `  limits: { takeoff: ${takeoff} }`,
    ...(parts.mac ? [`  mac: ${parts.mac}`] : []),
    "  envelopes:",
    "    - id: normal",
    `      forward: [${forward}]`,
    "      aft: [{ weight: 3800 lb, arm: 95.0 in, or-less: true }]",
    "  stations:",
    "    - { id: front-seats, kind: seat, arm: 85.0 in }",
    "    - { id: rear-seats, kind: seat, arm: 118.0 in }",
    `    - { id: baggage, kind: baggage, arm: 142.0 in, limit: ${baggage} }`,
    `    - { id: main-tanks, kind: fuel, arm: 90.0 in${density ? `, density: ${density}` : ""} }`,
    ...(loadings.length > 0 ? ["  loadings:", ...loadings.map((one) => `    - ${one}`)] : []),
    "  equipment:",
    "    - { id: aft-bench, weight: 38.5 lb, arm: 118.0 in }",
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    `  components: [{ id: RACK, weight: ${rack} }]`,
    ...section("placement", placement),
    ...section(
      "removed",
      removed.map((equipment) => `{ equipment: ${equipment} }`),
    ),
    ...section("added", added),
    "",
  ].join("\n");
}

function section(key: string, entries: readonly string[]): string[] {
  return entries.length > 0 ? [`${key}:`, ...entries.map((one) => `  - ${one}`)] : [];
}
