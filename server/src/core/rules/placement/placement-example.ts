import { plainBeginning } from "../example-record";

/** What an example may want different about where things are; the rest is sound. */
interface PlacementParts {
  /** Lists of the airframe, as lines. */
  readonly airframe?: readonly string[];
  /** Keys of the rack's placement besides its name. */
  readonly rack?: string;
  /** Keys of the rack in the kit besides its weight. */
  readonly component?: string;
  /** Placement of a second box, 6 in to each side, its centre of gravity in its middle. */
  readonly box?: string;
  /** Sections of the install record, as lines. */
  readonly sections?: readonly string[];
}

/** Text of an install record with a rack of 20 by 12 by 10 in, its centre at 140, 0 and 20 in. */
export function placementExample(parts: PlacementParts = {}): string {
  const {
    airframe = [],
    rack = "arm: 140 in, butt-line: 0 in, water-line: 20 in",
    component = "size: { length: 20 in, width: 12 in, height: 10 in }, cg: { from-front: 10 in, from-left: 6 in, from-bottom: 5 in }",
    box,
    sections = [],
  } = parts;
  return [
    ...plainBeginning,
    ...airframe.map((line) => `  ${line}`),
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    "  components:",
    `    - { id: RACK, weight: 15 lb${component ? `, ${component}` : ""} }`,
    ...(box
      ? [
          "    - { id: BOX, weight: 4 lb, size: { length: 6 in, width: 6 in, height: 6 in }, cg: { from-front: 3 in, from-left: 3 in, from-bottom: 3 in } }",
        ]
      : []),
    "placement:",
    `  - { component: RACK, ${rack} }`,
    ...(box ? [`  - { component: BOX, ${box} }`] : []),
    ...sections,
    "",
  ].join("\n");
}

/** A control cable 1 in around, along the aircraft at this butt line and 20 in up. */
export function cableExample(buttLine: string, keys = ", clearance: 1 in, data: Manual 27-00"): string {
  return (
    "keep-outs: [{ id: ELEVATOR, kind: control-run, radius: 0.5 in, " +
    `along: [{ arm: 60 in, butt-line: ${buttLine}, water-line: 20 in }, ` +
    `{ arm: 200 in, butt-line: ${buttLine}, water-line: 20 in }]${keys} }]`
  );
}
