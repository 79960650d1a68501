/** What keeps a change from being merged: new findings, and margins below a floor or worn down too far. */
import { type Assessment, marginOf, type Severity } from "../findings/finding";
import { ruleById } from "../rules";
import { type Consequences, type MarginSummary, marginSummary } from "./comparison";

/** A share of the limit, for one rule or for all. */
export interface MarginBound {
  readonly rule?: string | undefined;
  readonly share: number;
}

export interface Gate {
  /** The least severity of a new finding that fails; undefined where none does. */
  readonly failOn: Severity | undefined;
  /** Least margin. */
  readonly floors: readonly MarginBound[];
  /** The share of the margin there was that may be lost. */
  readonly erosions: readonly MarginBound[];
}

/** Why a record does not pass; what findings say themselves is not said again. */
export type Breach =
  | { readonly kind: "below-floor"; readonly margin: MarginSummary; readonly floor: number }
  | {
      readonly kind: "eroded";
      readonly margin: MarginSummary;
      readonly before: number;
      readonly allowed: number;
    };

/** Margins of one judged record that are below a floor. A limit that is exceeded is a finding already. */
export function marginsBelow(
  assessments: readonly Assessment[],
  floors: readonly MarginBound[],
): readonly Breach[] {
  if (floors.length === 0) return [];
  return assessments.flatMap((assessment): Breach[] => {
    const margin = marginOf(assessment);
    const floor = boundFor(assessment.rule, floors);
    if (!assessment.holds || margin === undefined || floor === undefined || margin >= floor) return [];
    return [{ kind: "below-floor", margin: marginSummary(assessment), floor }];
  });
}

/** Margins that lost more than they may. */
export function erodedMargins(
  { margins }: Pick<Consequences, "margins">,
  erosions: readonly MarginBound[],
): readonly Breach[] {
  return margins.flatMap(({ rule, before, after }): Breach[] => {
    const allowed = boundFor(rule, erosions);
    if (allowed === undefined || !before || !after || before.margin === null || after.margin === null)
      return [];
    const lost = before.margin - after.margin;
    return lost > 0 && lost > allowed * Math.abs(before.margin)
      ? [{ kind: "eroded", margin: after, before: before.margin, allowed }]
      : [];
  });
}

/** The last bound that is given counts; one that names the rule before one for all. */
function boundFor(rule: string, bounds: readonly MarginBound[]): number | undefined {
  return (
    bounds.findLast((bound) => bound.rule === rule) ?? bounds.findLast((bound) => bound.rule === undefined)
  )?.share;
}

const ranks: readonly Severity[] = ["information", "warning", "error"];

/** Whether a finding of this severity fails. */
export function reaches(severity: Severity, threshold: Severity | undefined): boolean {
  return threshold !== undefined && ranks.indexOf(severity) >= ranks.indexOf(threshold);
}

/** One line for a breach. */
export function breachWords(breach: Breach): string {
  const { rule, subject, condition, margin } = breach.margin;
  const where = condition === null ? subject : `${subject} (${condition})`;
  const title = ruleById.has(rule) ? rule : "?";
  return breach.kind === "below-floor"
    ? `${where}: margin of ${title} is ${percent(margin!)}, below the floor of ${percent(breach.floor)}`
    : `${where}: margin of ${title} went from ${percent(breach.before)} to ${percent(margin!)}, a loss of more ` +
        `than ${percent(breach.allowed)} of it`;
}

/** A share of the limit for people. */
export function percent(share: number): string {
  const shown = (100 * share).toPrecision(3);
  return `${Number(shown)} %`;
}
