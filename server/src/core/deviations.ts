/**
 * Accepted deviations: findings that an install record says are accepted stay findings, told as information with
 * who accepted them and until when. A deviation that is expired, unused, exceeded or too broad is a finding too.
 */
import type { Acceptance, Facts, Finding, Problem } from "./findings/finding";
import { marginOf } from "./findings/finding";
import { identitiesOf } from "./identity";
import { nearest } from "./nearest";
import type { LoadedRecord } from "./records/record";
import type { Deviation, InstallRecord } from "./records/types";
import type { Place, Written } from "./records/written";
import { isBelow } from "./rounding";
import { ruleById } from "./rules";

export interface Deviated {
  /** The findings, those that are accepted marked as such. */
  readonly findings: readonly Finding[];
  /** What is wrong with the deviations themselves. */
  readonly problems: readonly Problem[];
}

/** @param today as YYYY-MM-DD; left out, nothing has expired */
export function applyDeviations(
  record: LoadedRecord,
  install: InstallRecord,
  findings: readonly Finding[],
  today: string | undefined,
): Deviated {
  if (!install.deviations || install.deviations.length === 0) return { findings, problems: [] };
  const identities = identitiesOf(
    record,
    findings,
    findings.flatMap(({ assessment }) => assessment ?? []),
  );
  const fieldOf = (finding: Finding) => identities.get(finding)!.field;
  const acceptances = new Map<Finding, Acceptance>();
  const problems: Problem[] = [];
  const isAllComputed = !findings.some(hidesValues);
  for (const deviation of install.deviations) {
    const whole = wholeOf(deviation);
    if (!whole) continue; // what it lacks is a finding already
    const candidates = findings.filter((finding) => !acceptances.has(finding));
    const outcome = apply(whole, candidates, fieldOf, today);
    if (outcome.problem && (isAllComputed || outcome.problem.rule !== "deviation-unused")) {
      problems.push(outcome.problem);
    }
    if (outcome.covers) acceptances.set(outcome.covers, acceptanceOf(whole, outcome.covers));
  }
  return {
    findings: findings.map((finding) => {
      const accepted = acceptances.get(finding);
      if (!accepted) return finding;
      const related = [...finding.related, { place: accepted.place, words: "accepted here" }];
      return { ...finding, severity: "information", accepted, related };
    }),
    problems,
  };
}

/** A deviation with everything that it must have. */
interface Whole {
  readonly place: Place;
  readonly rule: Written<string>;
  readonly subject: Written<string>;
  readonly field: string | undefined;
  readonly leastMargin: number | undefined;
  readonly reason: string;
  readonly reference: string;
  readonly by: string;
  readonly until: Written<string>;
}

function wholeOf(deviation: Deviation): Whole | undefined {
  const { place, rule, subject, field, leastMargin, reason, reference, by, until } = deviation;
  if (!rule || !subject || !reason || !reference || !by || !until) return undefined;
  return {
    place,
    rule,
    subject,
    field: field?.value,
    leastMargin: leastMargin?.value.si,
    reason: reason.value,
    reference: reference.value,
    by: by.value,
    until,
  };
}

interface Outcome {
  readonly covers?: Finding;
  readonly problem?: Problem;
}

/** What one deviation does with the findings that no other one has covered. */
function apply(
  deviation: Whole,
  findings: readonly Finding[],
  fieldOf: (finding: Finding) => string,
  today: string | undefined,
): Outcome {
  const { field, leastMargin } = deviation;
  const [rule, subject, until] = [deviation.rule.value, deviation.subject.value, deviation.until.value];
  const raise = (id: string, place: Place, facts: Facts): Outcome => ({
    problem: { rule: id, place, facts: { rule, subject, ...facts } },
  });
  const known = ruleById.get(rule);
  if (!known) {
    const guess = nearest(rule, ruleById.keys())[0] ?? "";
    return raise("deviation-rule-unknown", deviation.rule.place, { guess });
  }
  if (unacceptable.has(known.area)) {
    return raise("deviation-too-broad", deviation.rule.place, { breadth: "unread" });
  }
  if (!isDay(until)) return raise("deviation-date-faulty", deviation.until.place, { until });
  const ofRule = findings.filter((finding) => finding.rule === rule);
  const matching = ofRule.filter(
    (finding) =>
      (finding.subject || "record") === subject && (field === undefined || fieldOf(finding) === field),
  );
  const [match] = matching;
  if (!match) {
    const found = ofRule.map((finding) => `${finding.subject || "record"} at ${fieldOf(finding)}`);
    return raise("deviation-unused", deviation.subject.place, { found });
  }
  if (matching.length > 1) {
    const fields = matching.map(fieldOf);
    return raise("deviation-too-broad", deviation.subject.place, { breadth: "several", fields });
  }
  if (today !== undefined && until < today) {
    return raise("deviation-expired", deviation.until.place, { until, today });
  }
  const margin = match.assessment && marginOf(match.assessment);
  if (margin === undefined) return { covers: match };
  if (leastMargin === undefined) {
    return {
      covers: match,
      ...raise("deviation-too-broad", deviation.rule.place, { breadth: "unbounded", margin }),
    };
  }
  return isBelow(margin, leastMargin)
    ? raise("deviation-exceeded", deviation.rule.place, { margin, leastMargin })
    : { covers: match };
}

/** Findings of these areas say that something was not read or not checked: nobody can accept what nobody knows. */
const unacceptable: ReadonlySet<string> = new Set(["text", "record", "deviations"]);

/**
 * Whether a finding says that something was not read, or that what draws current is not known: what a deviation
 * accepts may only be out of sight, then, and is not said to be mended.
 */
function hidesValues({ rule }: Finding): boolean {
  const area = ruleById.get(rule)?.area;
  return area === "text" || area === "record" || rule === "load-not-connected" || rule === "network-unsolved";
}

function acceptanceOf({ reason, reference, by, until, place }: Whole, { severity }: Finding): Acceptance {
  return { severity, reason, reference, by, until: until.value, place };
}

/** A day of the calendar, as YYYY-MM-DD. */
function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}
