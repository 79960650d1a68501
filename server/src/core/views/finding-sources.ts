import type { Assessment, Finding } from "../findings/finding";
import { onceEach } from "../once-each";
import { ruleById } from "../rules";
import type { Source } from "../source";
import { sourcesOf } from "./calculation";

/** What a finding rests on: the sources of its limit and value, or those of its rule where they have none. */
export function sourcesBehind({ rule, assessment }: Pick<Finding, "rule" | "assessment">): readonly Source[] {
  const ofValues = assessment ? sourcesOfAssessment(assessment) : [];
  return ofValues.length > 0 ? ofValues : (ruleById.get(rule)?.sources ?? []);
}

/** Assessments are kept while what they rest on is the same, and their sources are asked for at every keystroke. */
const sourcesOfAssessment = onceEach(({ limit, value }: Assessment): readonly Source[] =>
  sourcesOf(limit, value),
);
