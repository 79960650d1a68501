import type { Rule } from "./rule";

/** What the rules of each area are about, from the aircraft to the text. */
export const ruleAreas: Readonly<Record<Rule["area"], string>> = {
  wires: "Wires, bundles and protection",
  protection: "Breakers, fuses, contacts and bonds",
  sources: "Sources and their loads",
  weights: "Weight and balance",
  cutouts: "Openings in panels",
  structure: "Reinforcement of openings",
  air: "Air through openings and ducts",
  mounts: "Mounts and what they stand on",
  placement: "Clearances, reach and access",
  lines: "Hoses, tubes, pass-throughs and drains",
  climate: "Cooling and heating of spaces",
  eligibility: "Eligibility of the aircraft",
  deviations: "Accepted deviations",
  record: "Shape of a record, quantities, links",
  text: "Text of a record",
};
