import { circuitExample } from "../wires/circuit-example";

/**
 * Text of an install record whose one load loses more than it may, and with one deviation: the keys of a sound
 * one, changed, added or (undefined) left out.
 */
export function deviationExample(
  changes: Readonly<Record<string, string | undefined>> = {},
  gauge = "14 AWG",
): string {
  const keys = Object.entries({ ...soundDeviation, ...changes }).flatMap(([key, value]) =>
    value === undefined ? [] : [`${key}: ${value}`],
  );
  return circuitExample({
    gauge,
    length: "18 ft",
    sections: ["deviations:", `  - ${keys.join("\n    ")}`],
  });
}

const soundDeviation = {
  rule: "wire-voltage-drop",
  subject: "component RACK",
  "least-margin": "-60 %",
  reason: "the rack runs from 22 V",
  reference: "HM-0412-DEV-3 rev A",
  by: "stamp HM 7",
  until: "2099-12-31",
} as const;
