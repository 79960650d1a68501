import { plainBeginning } from "../example-record";

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
    ...plainBeginning,
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
