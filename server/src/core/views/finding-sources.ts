import type { Finding } from "../findings/finding";
import { ruleById } from "../rules";
import type { Source } from "../source";
import { sourcesOf } from "./calculation";

/** What a finding rests on: the sources of its limit and value, or those of its rule where they have none. */
export function sourcesBehind({ rule, assessment }: Pick<Finding, "rule" | "assessment">): readonly Source[] {
  const ofValues = assessment ? sourcesOf([assessment.limit, assessment.value]) : [];
  return ofValues.length > 0 ? ofValues : (ruleById.get(rule)?.sources ?? []);
}
