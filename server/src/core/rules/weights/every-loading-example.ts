/** Parts of a record whose every loading can be looked at; the rest is sound. */
interface EveryLoadingParts {
  readonly rack?: string;
  readonly arm?: string;
  readonly butt?: string;
  readonly baggage?: string;
  readonly bench?: string;
  readonly limits?: string;
  /** Keys of the airframe record besides those that are always there, indented by two. */
  readonly airframe?: string;
  readonly trip?: string;
  readonly load?: string;
  /** Sections of the install record. */
  readonly sections?: string;
}

/** Text of an install record with one rack, and an airframe that says all that every loading takes. */
export function everyLoadingExample(parts: EveryLoadingParts = {}): string {
  const {
    rack = "31.2 lb",
    arm = "92.0 in",
    butt,
    baggage = "limit: 120 lb",
    bench = "",
    limits = "takeoff: 3800 lb",
    airframe = "",
    trip,
    load = "{ station: front-seats, weight: 340 lb }, { station: main-tanks, volume: 40 gal }",
    sections = "",
  } = parts;
  return [
    "document: { number: HM-0412, revision: A, status: draft }",
    "airframe:",
    "  aircraft: { type: Type 9, serial: B9-0417, kind: aeroplane, certification-basis: CAR 3 }",
    "  datum: Front face of the firewall",
    `  empty: { weight: 2412 lb, arm: 87.0 in${butt ? ", butt-line: 0 in" : ""} }`,
    `  limits: { ${limits} }`,
    "  mac: { leading-edge: 72.5 in, length: 63.0 in }",
    "  envelopes:",
    "    - id: normal",
    "      forward: [{ weight: 3800 lb, arm: 80.0 in, or-less: true }]",
    "      aft: [{ weight: 3800 lb, arm: 90.0 in, or-less: true }]",
    ...(butt ? ["      lateral: { left: -2 in, right: 2 in }"] : []),
    "  stations:",
    `    - { id: front-seats, kind: seat, arm: 85.0 in, limit: 400 lb, seats: 2${butt ? ", butt-line: 0 in" : ""} }`,
    `    - { id: main-tanks, kind: fuel, arm: 90.0 in, capacity: 84 gal, density: 6.0 lb/gal${butt ? ", butt-line: 0 in" : ""} }`,
    `    - { id: aft-baggage, name: the aft baggage, kind: baggage, arm: 142.0 in, ${baggage}${butt ? ", butt-line: 0 in" : ""} }`,
    "    - { id: nose-ballast, kind: ballast, arm: -20.0 in, limit: 30 lb }",
    "  crew: { weight: 170 lb, stations: [front-seats] }",
    "  loadings:",
    `    - { id: two-up, envelope: normal, load: [${load}]${trip ? `, trip-fuel: ${trip}` : ""} }`,
    "  equipment:",
    `    - { id: aft-bench, weight: 38.5 lb, arm: 118.0 in${bench} }`,
    ...(airframe ? [airframe] : []),
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    `  components: [{ id: RACK, weight: ${rack} }]`,
    `placement: [{ component: RACK, arm: ${arm}${butt ? `, butt-line: ${butt}` : ""} }]`,
    ...(sections ? [sections] : []),
    "",
  ].join("\n");
}
