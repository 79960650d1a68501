/** What an example may want different about a panel and its openings. */
interface PanelParts {
  readonly openings?: readonly string[];
  readonly outline?: string;
  readonly fasteners?: string;
  readonly minimums?: string;
}

/** Text of an install record with one panel, 20 by 12 in, and openings C1, C2 … in it. */
export function panelExample(parts: PanelParts = {}): string {
  const {
    openings = ["{ shape: circle, diameter: 3 in, at: { x: 0 in, y: 0 in } }"],
    outline = "{ shape: rectangle, width: 20 in, height: 12 in, corner-radius: 1 in }",
    minimums = "{ edge: 1 in, between: 1.5 in, corner-radius: 0.5 in, data: Repair data B9-51 }",
  } = parts;
  return [
    "document: { number: HM-0412, revision: A, status: draft }",
    "airframe:",
    "  aircraft: { type: Type 9, serial: B9-0417, kind: aeroplane, certification-basis: CAR 3 }",
    "  datum: Front face of the firewall",
    "  empty: { weight: 2412 lb, arm: 88.4 in }",
    "  limits: { takeoff: 3800 lb }",
    "  envelopes: []",
    "  panels:",
    "    - id: AFT-FLOOR",
    `      outline: ${outline}`,
    ...(parts.fasteners ? [`      fasteners: ${parts.fasteners}`] : []),
    ...(minimums ? [`      minimums: ${minimums}`] : []),
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    "  components: []",
    "cutouts:",
    ...openings.map((opening, index) => `  - { id: C${index + 1}, panel: AFT-FLOOR, opening: ${opening} }`),
    "",
  ].join("\n");
}
