/** An install record of one panel with one reinforced opening, for the examples of this area. */
import { plainBeginning } from "../example-record";

interface DoublerParts {
  readonly opening?: string;
  /** Keys of the panel, a line each. */
  readonly panel?: readonly string[];
  readonly material?: string;
  readonly thickness?: string;
  /** Keys of the reinforcement, without its fasteners; "" for none at all. */
  readonly doubler?: string;
  readonly fasteners?: string;
  /** Other keys of the cutout, a line each. */
  readonly keys?: readonly string[];
}

export function doublerExample(parts: DoublerParts = {}): string {
  const {
    opening = "{ shape: circle, diameter: 3 in, at: { x: 0 in, y: 0 in } }",
    panel = [],
    material = "2024-T3 clad",
    thickness = "0.032 in",
    doubler = "kind: doubler, material: 2024-T3 clad, thickness: 0.040 in, joint: single-lap, outline: { shape: rectangle, width: 7 in, height: 7 in, corner-radius: 0.5 in }",
    fasteners = "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 0.3 in }",
    keys = [],
  } = parts;
  return [
    ...plainBeginning,
    "  panels:",
    "    - id: BAY-SKIN",
    `      material: ${material}`,
    `      thickness: ${thickness}`,
    "      outline: { shape: rectangle, width: 20 in, height: 12 in, corner-radius: 1 in }",
    ...panel.map((line) => `      ${line}`),
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    "  components: []",
    "cutouts:",
    "  - id: C1",
    "    panel: BAY-SKIN",
    `    opening: ${opening}`,
    ...keys.map((line) => `    ${line}`),
    ...(doubler === "" ? [] : [`    reinforcement: { ${doubler}, fasteners: ${fasteners} }`]),
    "",
  ].join("\n");
}
