import type { Rule } from "../rule";
import { checkFailed } from "./check-failed";
import { keyDuplicate } from "./key-duplicate";
import { textAliasLimit } from "./text-alias-limit";
import { textEncodingWrong } from "./text-encoding-wrong";
import { textFeatureNotUsed } from "./text-feature-not-used";
import { textMergeConflict } from "./text-merge-conflict";
import { textNotYaml } from "./text-not-yaml";
import { textTabIndent } from "./text-tab-indent";
import { textTooDeep } from "./text-too-deep";
import { textTooLarge } from "./text-too-large";

/** Rules of the text itself, by id. */
export const textRules: readonly Rule[] = [
  checkFailed,
  keyDuplicate,
  textAliasLimit,
  textEncodingWrong,
  textFeatureNotUsed,
  textMergeConflict,
  textNotYaml,
  textTabIndent,
  textTooDeep,
  textTooLarge,
];
