/**
 * What is reported of one checked record, as plain data: it is what every report is made from, it goes from one
 * thread to another, and it outlives the record itself.
 */
import type { Judgement } from "../core/check";
import { type Acceptance, type Finding, isPlace, type Severity } from "../core/findings/finding";
import { type Identity, identitiesOf, identityKey } from "../core/identity";
import { lineIndex } from "../core/reading";
import { citeSource } from "../core/source";
import { sourcesBehind } from "../core/views/finding-sources";
import { fleetRow } from "../core/views/fleet";
import type { Breach } from "../core/views/gate";
import { crypto } from "./builtins";

export interface RecordReport {
  /** For people, relative to the working folder; with forward slashes, as the next. */
  readonly path: string;
  /** For forges, relative to the repository. */
  readonly repositoryPath: string;
  readonly findings: readonly ReportedFinding[];
  /** How many findings a cap left out. */
  readonly leftOut: number;
  /** How many values hold their limits. */
  readonly held: number;
  /** Margins below a floor or worn down. */
  readonly breaches: readonly Breach[];
  /** Least shares that are left, of an install record only. */
  readonly least: LeastMargins | null;
}

/** As shares, negative when a limit is exceeded; null where nothing of the kind is judged. */
export interface LeastMargins {
  readonly electrical: number | null;
  /** Of the distance to the envelope's sides, as a share of its width. */
  readonly cg: number | null;
}

/** Its keys are published. */
export interface ReportedFinding {
  readonly rule: string;
  readonly severity: Severity;
  readonly subject: string;
  readonly path: string;
  readonly start: ReportedPoint;
  readonly end: ReportedPoint;
  readonly message: string;
  readonly remedy: string;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string | null;
  readonly source: readonly string[];
  /** Where in the record, by names: `wires[P102A8].gauge`. */
  readonly field: string;
  /** The condition, or which of several that nothing else tells apart; mostly empty. */
  readonly which: string;
  /** The same for the same finding, whatever its line and its numbers are. */
  readonly fingerprint: string;
  /** Set where the record accepts it. */
  readonly accepted: Omit<Acceptance, "place"> | null;
  /** It was there before: in the revision or in the baseline that the check was given. */
  readonly known: boolean;
  /** The finding at length, for people; not published. */
  readonly text?: string;
}

/** From 1; columns in UTF-16 code units. */
export interface ReportedPoint {
  readonly line: number;
  readonly column: number;
}

export interface ReportOptions {
  /** The only rules whose findings are reported; empty: all. */
  readonly only?: readonly string[];
  readonly pathOf: (file: string) => string;
  readonly repositoryPathOf: (file: string) => string;
  /** The finding at length, with the field that it stands at; left out, it is not made. */
  readonly textOf?: ((finding: Finding, field: string) => string) | undefined;
  /** Keys of the findings that were there before; undefined where nobody asked. */
  readonly before?: ReadonlySet<string> | undefined;
  readonly breaches?: readonly Breach[];
}

export function reportOf(judgement: Judgement, options: ReportOptions): RecordReport {
  const { record, findings, assessments, leftOut } = judgement;
  const path = options.pathOf(record.file);
  const repositoryPath = options.repositoryPathOf(record.file);
  const lines = lineIndex(record.text);
  const identities = identitiesOf(record, findings, assessments);
  const only = options.only ?? [];
  const wanted = only.length === 0 ? findings : findings.filter(({ rule }) => only.includes(rule));
  const point = (offset: number): ReportedPoint => {
    const { line, character } = lines.positionAt(offset);
    return { line: line + 1, column: character + 1 };
  };
  return {
    path,
    repositoryPath,
    findings: wanted.map((finding): ReportedFinding => {
      const { rule, severity, subject, anchor, what, todo, assessment, accepted } = finding;
      const span = isPlace(anchor) ? record.reading.spanOf(anchor.node) : anchor.span;
      const identity = identities.get(finding)!;
      const { place: _, ...acceptance } = accepted ?? {};
      return {
        rule,
        severity,
        subject,
        path,
        start: point(span.start),
        end: point(span.end),
        message: what,
        remedy: todo,
        value: assessment?.value.value ?? null,
        limit: assessment?.limit.value ?? null,
        unit: assessment?.value.unit ?? null,
        source: sourcesBehind(finding).map(citeSource),
        field: identity.field,
        which: identity.which,
        fingerprint: fingerprintOf(repositoryPath, identity),
        accepted: accepted ? (acceptance as Omit<Acceptance, "place">) : null,
        known: options.before?.has(identityKey(identity)) ?? false,
        ...(options.textOf && { text: options.textOf(finding, identity.field) }),
      };
    }),
    leftOut,
    held: assessments.filter(({ holds }) => holds).length,
    breaches: options.breaches ?? [],
    least: leastOf(judgement),
  };
}

function leastOf(judgement: Judgement): LeastMargins | null {
  const row = fleetRow(judgement);
  return row ? { electrical: row.electrical?.share ?? null, cg: row.balance?.share ?? null } : null;
}

function fingerprintOf(path: string, identity: Identity): string {
  return crypto()
    .createHash("sha256")
    .update(`${path}\n${identityKey(identity)}`)
    .digest("hex")
    .slice(0, 32);
}

/** Whether a finding counts: one that is accepted or was there before does not. */
export function isOpen({ accepted, known }: Pick<ReportedFinding, "accepted" | "known">): boolean {
  return accepted === null && !known;
}

/** What all records together come to. */
export interface Tally {
  records: number;
  readonly open: Record<Severity, number>;
  accepted: number;
  known: number;
  held: number;
  breaches: number;
}

export function emptyTally(): Tally {
  return {
    records: 0,
    open: { error: 0, warning: 0, information: 0 },
    accepted: 0,
    known: 0,
    held: 0,
    breaches: 0,
  };
}

export function count(tally: Tally, { findings, held, breaches }: RecordReport): void {
  tally.records++;
  tally.held += held;
  tally.breaches += breaches.length;
  for (const finding of findings) {
    if (finding.accepted) tally.accepted++;
    else if (finding.known) tally.known++;
    else tally.open[finding.severity]++;
  }
}
