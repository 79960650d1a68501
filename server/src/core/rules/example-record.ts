/** Texts of small sound install records, in which an example changes the one thing that it shows. */

/** Top-level keys with all that belongs to them; what is left out is sound. */
export interface RecordParts {
  readonly document?: string;
  readonly airframe?: string;
  readonly kit?: string;
  /** What follows the head: wires, cutouts, conditions ... */
  readonly sections?: string;
}

const soundDocument =
  "document: { number: HM-0412, revision: A, status: draft, title: Survey rack in B9-0417 }";

const soundAirframe = `
airframe:
  aircraft: { type: Brackenfell Type 9, serial: B9-0417, kind: aeroplane, certification-basis: CAR 3 }
  datum: Front face of the firewall
  empty: { weight: 2412 lb, arm: 88.4 in }
  limits: { takeoff: 3800 lb }
  envelopes: []
  electrical: { nominal: 28 V, buses: [{ id: MAIN }], grounds: [{ id: GND-AFT }] }
  panels: [{ id: AFT-FLOOR, outline: { shape: rectangle, width: 30 in, height: 20 in, corner-radius: 0 in } }]
`;

const soundKit = `
kit:
  kit: { number: QSR-60, revision: C, name: survey sensor rack, maker: Quillon Instruments }
  components: [{ id: RACK, weight: 31.2 lb, draws: [{ mode: survey, current: 18 A }] }]
`;

/** Text of an install record with its airframe and its kit written inline. */
export function recordExample(parts: RecordParts = {}): string {
  const { document = soundDocument, airframe = soundAirframe, kit = soundKit, sections = "" } = parts;
  return [document, airframe, kit, sections]
    .map((part) => part.replace(/^\n+|\n+$/g, ""))
    .filter((part) => part !== "")
    .map((part) => `${part}\n`)
    .join("");
}

/** Text of an airframe record, for an install record that names it by its path. */
export function airframeExample(): string {
  return soundAirframe.replace("airframe:\n", "").replace(/^ {2}/gm, "").trimStart();
}

const soundWire = {
  id: "P101A8",
  from: "MAIN",
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
  return recordExample({ sections: `wires:\n  - ${keys.join("\n    ")}` });
}
