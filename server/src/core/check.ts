/**
 * The check: one record in, findings out. Editor and command line both call this and nothing else.
 */
import { applyDeviations } from "./deviations";
import type { Assessment, Finding, Problem, Severity } from "./findings/finding";
import { recalled } from "./graph/recall";
import { subjectWords } from "./graph/value";
import { limits } from "./limits";
import { none } from "./none";
import { judgeAlone, linkProject, type Project, type RecordSource, unmodified } from "./project";
import type { LoadedRecord } from "./records/record";
import { ruleById, rules } from "./rules";
import { linkPlace } from "./rules/link-places";
import type { Message, Rule } from "./rules/rule";
import { isStandIn } from "./source";

export interface Judgement {
  readonly record: LoadedRecord;
  /** Set for an install record: it with the airframe and the kit that it names. */
  readonly project?: Project;
  /** Findings placed in this record, in the order of its text. */
  readonly findings: readonly Finding[];
  /** Values held against limits, those that hold too. */
  readonly assessments: readonly Assessment[];
  /** How many findings a cap left out. */
  readonly leftOut: number;
}

export interface CheckOptions {
  /** Severity by rule id, over what the rule says of itself. */
  readonly severities?: Readonly<Record<string, Severity | "off">>;
  /** The day of the check as YYYY-MM-DD, for what holds until a day; left out, nothing has expired. */
  readonly today?: string;
}

/** Checks one record with what it links. Pure apart from what `source` does; never throws. */
export function check(record: LoadedRecord, source: RecordSource, options: CheckOptions = {}): Judgement {
  const problems: Problem[] = [...record.problems];
  const assessments: Assessment[] = [];
  const failed: Assessment[] = [];
  const typed = record.typing.typed;
  const judgeBy = (some: typeof judges, one: Project) => {
    for (const judge of some) {
      const ruling = judge(one);
      for (const problem of ruling.problems) problems.push(problem);
      for (const assessment of ruling.assessments) assessments.push(assessment);
      for (const assessment of ruling.failed) failed.push(assessment);
    }
  };
  let project: Project | undefined;
  if (typed.kind === "install") {
    project = linkProject(record, typed.record, source);
    for (const problem of project.problems) problems.push(problem);
    judgeBy(judges, project);
  } else {
    for (const problem of judgeAlone(record)) problems.push(problem);
    if (typed.kind === "airframe") judgeBy(weightJudges, unmodified(record, typed.record));
  }
  const toFindings = (faults: readonly Result[]) =>
    faults.map((fault) => toFinding(fault, options, project)).filter((finding) => finding !== undefined);
  const findings = toFindings([...problems, ...failed]);
  const deviated = project
    ? applyDeviations(record, project.install, findings, options.today)
    : { findings, problems: [] };
  const { kept, leftOut } = cap(inOrder(record, [...deviated.findings, ...toFindings(deviated.problems)]));
  return { record, ...(project && { project }), findings: kept, assessments, leftOut };
}

/** At one place the worst comes first. */
const rank: Readonly<Record<Severity, number>> = { error: 0, warning: 1, information: 2 };

/** Each rule that judges projects, judging again only what has changed. */
const judgesById = new Map(
  rules.flatMap(({ id, check }) => (check ? [[id, judgeOf(id, check)] as const] : [])),
);
const judges = [...judgesById.values()];

/** What an airframe is held to by itself: its own loadings, weighing and history. */
const weightJudges = rules.flatMap(({ id, area }) => (area === "weights" && judgesById.get(id)) || []);

/** A rule that fails must not take the findings of the others with it. */
function judgeOf(id: string, check: NonNullable<Rule["check"]>): (project: Project) => Ruling {
  const judge = recalled((project) => rulingOf(check(project)));
  return (project) => {
    try {
      return judge(project);
    } catch (error) {
      const detail = error instanceof Error ? error.message : String(error);
      return rulingOf([{ rule: "check-failed", place: project.install.place, facts: { rule: id, detail } }]);
    }
  };
}

type Result = Assessment | Problem;

/** What a rule found: sorted out once, and looked through again only when the rule judges again. */
interface Ruling {
  readonly problems: readonly Problem[];
  readonly assessments: readonly Assessment[];
  /** Of the assessments those that do not hold. */
  readonly failed: readonly Assessment[];
}

function rulingOf(results: Iterable<Result>): Ruling {
  const problems: Problem[] = [];
  const assessments: Assessment[] = [];
  const failed: Assessment[] = [];
  for (const result of results) {
    // Read, not asked for by `in`: for results of so many shapes the engine is far slower at that.
    const { holds } = result as Partial<Assessment>;
    if (holds === undefined) {
      problems.push(result as Problem);
      continue;
    }
    assessments.push(result as Assessment);
    if (!holds) failed.push(result as Assessment);
  }
  return { problems, assessments, failed };
}

/**
 * Where a finding stands. That of an install record stands in it: what a rule places in a record that this one
 * names is told at the link, with the place beside it.
 */
function placeOf({ place, related = none }: Result, project: Project | undefined) {
  if (!project || place.file === project.file.file || !("node" in place)) return { anchor: place, related };
  const link = project.kit?.place.file === place.file ? "kit" : "airframe";
  const there = { place, words: `in the ${link} record` };
  return { anchor: linkPlace(project, link), related: [there, ...related] };
}

/** What a rule finds again is the finding of before: what was made of that need not be made again. */
const told = new WeakMap<Result, Finding>();

function toFinding(
  fault: Result,
  { severities }: CheckOptions,
  project: Project | undefined,
): Finding | undefined {
  const rule = ruleById.get(fault.rule);
  if (!rule) return undefined;
  const severity = severities?.[rule.id] ?? severityOf(rule, fault);
  if (severity === "off") return undefined;
  const { anchor, related } = placeOf(fault, project);
  const before = told.get(fault);
  if (before?.severity === severity && before.anchor === anchor && before.related === related) return before;
  let words: Message | undefined;
  const say = () => {
    words ??= rule.say(fault.facts);
    return words;
  };
  const finding = {
    rule: rule.id,
    severity,
    subject: fault.subject ? subjectWords(fault.subject) : "",
    anchor,
    related,
    // Put into words when somebody reads it: of a remedy that is only tried, nobody does.
    get what() {
      return say().what;
    },
    get todo() {
      return say().todo;
    },
    facts: fault.facts,
    ...("holds" in fault ? { assessment: fault } : { problem: fault }),
  };
  told.set(fault, finding);
  return finding;
}

/** A limit that rests on memory or on habit warns, whatever its rule would say. */
function severityOf(rule: Rule, fault: Problem | Assessment): Severity {
  if (rule.severity !== "error" || !("limit" in fault)) return rule.severity;
  return fault.limit.sources.some(isStandIn) ? "warning" : "error";
}

/** Leaves out what is beyond the caps, what only informs before what warns, and that before errors. */
function cap(findings: readonly Finding[]): { kept: Finding[]; leftOut: number } {
  const ofRule = new Map<string, number>();
  const within = findings.filter((finding) => {
    const count = (ofRule.get(finding.rule) ?? 0) + 1;
    ofRule.set(finding.rule, count);
    return count <= limits.findingsPerRule;
  });
  if (within.length <= limits.findingsPerFile)
    return { kept: within, leftOut: findings.length - within.length };
  const worst = within.toSorted((a, b) => weightOf(a) - weightOf(b));
  const chosen = new Set(worst.slice(0, limits.findingsPerFile));
  const kept = within.filter((finding) => chosen.has(finding));
  return { kept, leftOut: findings.length - kept.length };
}

/** What is accepted is never left out before what it would be without. */
function weightOf({ severity, accepted }: Finding): number {
  return rank[accepted?.severity ?? severity];
}

/** Findings in the order of the text. */
function inOrder(record: LoadedRecord, findings: readonly Finding[]): Finding[] {
  const placed = findings.map((finding) => ({ finding, start: startOf(record, finding) }));
  placed.sort((a, b) => a.start - b.start || rank[a.finding.severity] - rank[b.finding.severity]);
  return placed.map(({ finding }) => finding);
}

function startOf(record: LoadedRecord, finding: Finding): number {
  const anchor = finding.anchor;
  return "node" in anchor ? record.reading.spanOf(anchor.node).start : anchor.span.start;
}
