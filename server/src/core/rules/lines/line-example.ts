import { plainBeginning } from "../example-record";

/** Top-level sections of an example; what is left out is not there. */
interface LineParts {
  /** Keys of the one line L1 in place of those of a sound one, as in a flow map. */
  readonly line?: string;
  /** Further top-level sections, a line of text each. */
  readonly sections?: readonly string[];
  readonly attitudes?: string;
}

/** Text of an install record with one line: a 3/8 in aluminium tube. */
export function lineExample(parts: LineParts = {}): string {
  const line = parts.line ?? "kind: tube, fluid: water, dash: 6, material: aluminium";
  return [
    ...plainBeginning,
    ...(parts.attitudes ? [`  attitudes: ${parts.attitudes}`] : []),
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    "  components: []",
    "lines:",
    `  - { id: L1, ${line} }`,
    ...(parts.sections ?? []),
    "",
  ].join("\n");
}

/** The same with a drain D1 in place of what else could be wrong. */
export function drainExample(points: readonly string[], attitudes?: string): string {
  return lineExample({
    ...(attitudes && { attitudes }),
    sections: ["drains:", "  - id: D1", "    points:", ...points.map((point) => `      - { ${point} }`)],
  });
}
