/** What an example may want different about a mount; the rest is sound. */
interface MountParts {
  readonly basis?: string;
  /** Keys of the aircraft and of the airframe that follow, as lines. */
  readonly category?: string;
  readonly airframe?: readonly string[];
  /** Keys of the shelf besides its id. */
  readonly shelf?: string;
  readonly weight?: string;
  readonly cg?: string;
  readonly fasteners?: readonly string[];
  readonly size?: string;
  readonly fastener?: string;
  /** Keys of the mount that follow its fastener. */
  readonly keys?: string;
  /** Mounts in place of the one. */
  readonly mounts?: readonly string[];
  readonly document?: string;
  readonly placement?: string;
}

/** Four places 8 in apart from front to rear and 4 in across, under a box of 12 by 8 by 8 in. */
const corners = [
  "{ from-front: 2 in, from-left: 2 in }",
  "{ from-front: 10 in, from-left: 2 in }",
  "{ from-front: 2 in, from-left: 6 in }",
  "{ from-front: 10 in, from-left: 6 in }",
];

/** Text of an install record with one box of 15 lb, its centre of gravity 4 in up, on four bolts. */
export function mountExample(parts: MountParts = {}): string {
  const {
    basis = "14 CFR 23 before Amdt 23-64",
    category = "normal",
    airframe = [],
    shelf = "material: 2024-T3 clad, thickness: 0.050 in, load-limit: 60 lb, floor-load: 50 lb/ft2, data: B9-53",
    weight = "15 lb",
    cg = "{ from-front: 6 in, from-left: 4 in, from-bottom: 4 in }",
    fasteners = corners,
    size = "{ length: 12 in, width: 8 in, height: 8 in }",
    fastener = "{ kind: an-bolt, diameter: 3/16 in }",
    keys = ", edge-distance: 0.5 in",
    mounts = [
      `{ component: RACK, where: occupant-compartment, shelf: AFT-SHELF, fastener: ${fastener}${keys} }`,
    ],
    document = "",
    placement = "{ component: RACK, arm: 142 in }",
  } = parts;
  const kind = category ? `, category: ${category}` : "";
  return [
    `document: { number: HM-0412, revision: A, status: draft${document} }`,
    "airframe:",
    `  aircraft: { type: Type 9, serial: B9-0417, kind: aeroplane, certification-basis: ${basis}${kind} }`,
    "  datum: Front face of the firewall",
    "  empty: { weight: 2412 lb, arm: 88.4 in }",
    "  limits: { takeoff: 3800 lb }",
    "  envelopes: []",
    `  shelves: [{ id: AFT-SHELF${shelf ? `, ${shelf}` : ""} }]`,
    ...airframe.map((line) => `  ${line}`),
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    "  components:",
    "    - id: RACK",
    `      weight: ${weight}`,
    ...(size ? [`      size: ${size}`] : []),
    ...(cg ? [`      cg: ${cg}`] : []),
    ...(fasteners.length > 0 ? [`      mount: { face: bottom, fasteners: [${fasteners.join(", ")}] }`] : []),
    "placement:",
    `  - ${placement}`,
    ...(mounts.length > 0 ? ["mounts:", ...mounts.map((one) => `  - ${one}`)] : []),
    "",
  ].join("\n");
}
