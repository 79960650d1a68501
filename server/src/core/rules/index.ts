import { airRules } from "./air";
import { climateRules } from "./climate";
import { cutoutRules } from "./cutouts";
import { eligibilityRules } from "./eligibility";
import { lineRules } from "./lines";
import { mountRules } from "./mounts";
import { placementRules } from "./placement";
import { protectionRules } from "./protection";
import { recordRules } from "./record";
import type { Rule } from "./rule";
import { sourceRules } from "./sources";
import { structureRules } from "./structure";
import { textRules } from "./text";
import { weightRules } from "./weights";
import { wireRules } from "./wires";

/** Every rule: by area, from the text to the aircraft, then by id. */
export const rules: readonly Rule[] = [
  ...textRules,
  ...recordRules,
  ...wireRules,
  ...protectionRules,
  ...sourceRules,
  ...weightRules,
  ...cutoutRules,
  ...structureRules,
  ...airRules,
  ...mountRules,
  ...placementRules,
  ...lineRules,
  ...climateRules,
  ...eligibilityRules,
];

export const ruleById: ReadonlyMap<string, Rule> = new Map(rules.map((rule) => [rule.id, rule]));
