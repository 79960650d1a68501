import { plainBeginning } from "../example-record";

/** What an example of routes may want different; the rest is sound. */
interface RouteParts {
  /** Further keys of the bundle B1, which runs along the aircraft 10 in to the right and 20 in up. */
  readonly bundle?: string;
  /** Keys of the line L1, as in a flow map; left out, there is none. */
  readonly line?: string;
  /** Butt line of a control cable along the aircraft, 20 in up; left out, there is none. */
  readonly cable?: string;
  /** Passes of the one wire in the bundle, as a flow list. */
  readonly passes?: string;
}

/** Text of an install record with a bundle that has a route, a line and a control cable. */
export function routeExample({ bundle, line, cable, passes }: RouteParts): string {
  return [
    ...plainBeginning,
    ...(cable
      ? [
          "  keep-outs:",
          `    - { id: ELEVATOR, kind: control-run, radius: 0.5 in, along: ${routeAlong(cable, "20 in")}, clearance: 1 in, data: Manual 27-00 }`,
        ]
      : []),
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    "  components: [{ id: RACK, weight: 15 lb }]",
    "bundles:",
    `  - { id: B1, wires: 1, loading: 40 %${bundle ? `, ${bundle}` : ""} }`,
    ...(passes
      ? [
          "wires:",
          `  - { id: P1, from: RACK, to: RACK, gauge: 10 AWG, length: 5 ft, rating: 150 degC, bundle: B1, passes: ${passes} }`,
        ]
      : []),
    ...(line ? ["lines:", `  - { id: L1, ${line} }`] : []),
    "",
  ].join("\n");
}

/** A route straight along the aircraft, as a flow list. */
export function routeAlong(buttLine: string, waterLine: string): string {
  return (
    `[{ arm: 60 in, butt-line: ${buttLine}, water-line: ${waterLine} }, ` +
    `{ arm: 200 in, butt-line: ${buttLine}, water-line: ${waterLine} }]`
  );
}
