import { recordExample } from "../example-record";

interface EligibilityParts {
  readonly serial?: string;
  /** Groups of the kit, each as a flow map. */
  readonly groups: readonly string[];
  /** Further keys of the airframe, a line of text each. */
  readonly airframe?: readonly string[];
  readonly sections?: string;
}

/** Text of an install record of a kit that says which aircraft it is for. */
export function eligibilityExample({
  serial = "B9-0417",
  groups,
  airframe = [],
  sections = "",
}: EligibilityParts): string {
  return recordExample({
    airframe: [
      "airframe:",
      `  aircraft: { type: Type 9, serial: ${serial}, kind: aeroplane, certification-basis: CAR 3 }`,
      "  datum: Front face of the firewall",
      "  empty: { weight: 2412 lb, arm: 88.4 in }",
      "  limits: { takeoff: 3800 lb }",
      "  envelopes: []",
      ...airframe.map((line) => `  ${line}`),
    ].join("\n"),
    kit: [
      "kit:",
      "  kit: { number: QSR-60, revision: C }",
      "  components: []",
      "  eligibility:",
      ...groups.map((group) => `    - ${group}`),
    ].join("\n"),
    placement: "",
    sections,
  });
}
