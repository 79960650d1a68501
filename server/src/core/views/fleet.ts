/** The installs of a workspace side by side: what stands in the way of each, and how much room is left. */
import type { Judgement } from "../check";
import { type Assessment, marginOf, type Severity } from "../findings/finding";
import { onceEach } from "../once-each";

export interface FleetRow {
  readonly file: string;
  readonly kit: string | undefined;
  readonly airframe: string | undefined;
  readonly counts: Readonly<Record<Severity, number>>;
  /**
   * The least share that is left of any electrical limit; undefined where nothing electrical is judged, and, as
   * the balance, where the record leaves blanks: what it then takes for the least may not be.
   */
  readonly electrical: Margin | undefined;
  /** The least distance to the envelope's sides, as a share of its width. */
  readonly balance: Margin | undefined;
}

/** Room that is left in one assessment, as a share; negative when its limit is exceeded. */
export interface Margin {
  readonly share: number;
  readonly assessment: Assessment;
}

/** Of the recorded loadings, and of the worst that is permitted. */
const balanceRules: readonly string[] = ["cg-forward-of-limit", "cg-aft-of-limit", "loading-made-illegal"];

/** Rules that find what a derivation then does without. */
const leavesBlank = /^(key-missing$|value-|quantity-|reference-|record-|list-|text-)/;

/** Undefined for what is no install record; made once for a judgement. */
export const fleetRow: (judgement: Judgement) => FleetRow | undefined = onceEach(rowOf);

function rowOf({ record, project, findings, assessments }: Judgement): FleetRow | undefined {
  if (!project) return undefined;
  const counts = { error: 0, warning: 0, information: 0 };
  for (const { severity } of findings) counts[severity]++;
  const isWhole = !findings.some(({ rule }) => leavesBlank.test(rule));
  return {
    file: record.file,
    kit: project.kit?.kit?.number?.value,
    airframe: project.airframe?.aircraft?.serial?.value,
    counts,
    electrical: isWhole ? least(assessments, isElectrical) : undefined,
    balance: isWhole ? least(assessments, ({ rule }) => balanceRules.includes(rule)) : undefined,
  };
}

/** Currents and voltages; the rating of a device that somebody chose is no load. */
function isElectrical({ value }: Assessment): boolean {
  return (value.unit === "A" || value.unit === "V") && value.quantity !== "device-rating";
}

function least(assessments: readonly Assessment[], counts: (one: Assessment) => boolean): Margin | undefined {
  let found: Margin | undefined;
  for (const assessment of assessments) {
    if (!counts(assessment)) continue;
    const share = marginOf(assessment);
    if (share !== undefined && share < (found?.share ?? Number.POSITIVE_INFINITY))
      found = { share, assessment };
  }
  return found;
}
