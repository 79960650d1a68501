/** Texts of small sound install records, in which an example changes the one thing that it shows. */

/** Top-level keys, each with all that belongs to it. What is left out is sound; what is empty is not there. */
export interface RecordParts {
  readonly document?: string;
  readonly airframe?: string;
  readonly kit?: string;
  readonly placement?: string;
  /** What follows: wires, cutouts, conditions ... */
  readonly sections?: string;
}

const sound = {
  document: "document: { number: HM-0412, revision: A, status: draft, title: Survey rack in B9-0417 }",
  airframe: `
airframe:
  aircraft: { type: Brackenfell Type 9, serial: B9-0417, kind: aeroplane, certification-basis: CAR 3 }
  datum: Front face of the firewall
  empty: { weight: 2412 lb, arm: 88.4 in }
  limits: { takeoff: 3800 lb }
  envelopes:
    - id: normal
      forward: [{ weight: 2000 lb, arm: 82 in }, { weight: 3800 lb, arm: 82 in }]
      aft: [{ weight: 2000 lb, arm: 95 in }, { weight: 3800 lb, arm: 95 in }]
  stations: [{ id: front-seats, kind: seat, arm: 85 in }]
  loadings: [{ id: pilot-alone, envelope: normal, load: [{ station: front-seats, weight: 170 lb }] }]
  electrical: { nominal: 28 V, buses: [{ id: MAIN }], grounds: [{ id: GND-AFT }] }
  panels: [{ id: AFT-FLOOR, outline: { shape: rectangle, width: 30 in, height: 20 in, corner-radius: 0 in } }]
`,
  kit: `
kit:
  kit: { number: QSR-60, revision: C, name: survey sensor rack, maker: Quillon Instruments }
  components: [{ id: RACK, weight: 31.2 lb, draws: [{ mode: survey, current: 18 A }] }]
  devices: [{ id: CB-50, kind: breaker, rating: 50 A }]
`,
  placement: "placement: [{ component: RACK, arm: 142 in }]",
  sections: "",
} as const;

/** How an install record begins that is of one area only: its document, and an airframe that more keys may follow. */
export const plainBeginning: readonly string[] = [
  "document: { number: HM-0412, revision: A, status: draft }",
  "airframe:",
  "  aircraft: { type: Type 9, serial: B9-0417, kind: aeroplane, certification-basis: CAR 3 }",
  "  datum: Front face of the firewall",
  "  empty: { weight: 2412 lb, arm: 88.4 in }",
  "  limits: { takeoff: 3800 lb }",
  "  envelopes: []",
];

/** Text of an install record with its airframe and its kit written inline. */
export function recordExample(parts: RecordParts = {}): string {
  const { document, airframe, kit, placement, sections } = { ...sound, ...parts };
  return [document, airframe, kit, placement, sections]
    .map((part) => part.trim())
    .filter((part) => part !== "")
    .map((part) => `${part}\n`)
    .join("");
}

/** Text of an airframe record, for an install record that names it by its path. */
export function airframeExample(): string {
  return sound.airframe.replace("airframe:\n", "").replace(/^ {2}/gm, "").trimStart();
}

const soundWire = {
  id: "P101A8",
  from: "CB-RACK",
  to: "RACK",
  gauge: "8 AWG",
  length: "14.5 ft",
  rating: "150 degC",
};

/**
 * Text of an install record with one wire, its keys changed, added or (undefined) left out; the last keys are
 * the added ones.
 */
export function wireExample(changes: Readonly<Record<string, string | undefined>> = {}): string {
  const keys = Object.entries({ ...soundWire, ...changes })
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${key}: ${value}`.trimEnd());
  return recordExample({
    sections: `
protection: [{ id: CB-RACK, device: CB-50, mounted-on: MAIN }]
wires:
  - ${keys.join("\n    ")}
`,
  });
}
