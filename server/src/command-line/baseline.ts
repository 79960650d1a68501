/**
 * A baseline: findings of old data that are known and do not fail, each by its record, rule, thing and field.
 * A line of it stands for one finding; none is counted, so that a new fault can't take the place of a mended one.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { Mistake } from "./arguments";
import type { RecordReport, ReportedFinding } from "./record-report";

interface Entry {
  readonly record: string;
  readonly rule: string;
  readonly subject: string;
  readonly field: string;
  readonly which?: string;
}

export class Baseline {
  private readonly left: Set<string>;
  private constructor(private readonly keys: ReadonlySet<string>) {
    this.left = new Set(keys);
  }

  /** @throws {Mistake} where the file is none */
  static read(path: string, workingFolder: string): Baseline {
    let found: unknown;
    try {
      found = JSON.parse(readFileSync(resolve(workingFolder, path), "utf8"));
    } catch (error) {
      const why = error instanceof SyntaxError ? "it is no JSON" : "there is no such file";
      throw new Mistake(`can't read the baseline '${path}': ${why}`);
    }
    const entries = (found as { findings?: unknown } | null)?.findings;
    if (!Array.isArray(entries) || !entries.every(isEntry)) {
      throw new Mistake(`'${path}' is no baseline; --write-baseline makes one`);
    }
    return new Baseline(new Set(entries.map(keyOf)));
  }

  /** The same report, what the baseline knows marked as known. */
  mark(report: RecordReport): RecordReport {
    return {
      ...report,
      findings: report.findings.map((finding) => {
        const key = keyOf(entryOf(finding, report));
        if (!this.keys.has(key)) return finding;
        this.left.delete(key);
        return { ...finding, known: true };
      }),
    };
  }

  /** How many of its findings no record has any more. */
  get unused(): number {
    return this.left.size;
  }
}

/** Collects what a new baseline holds: errors and warnings that are not accepted. */
export class BaselineDraft {
  private readonly entries: Entry[] = [];

  add(report: RecordReport): void {
    for (const finding of report.findings) {
      if (!finding.accepted && finding.severity !== "information")
        this.entries.push(entryOf(finding, report));
    }
  }

  /** @throws {Mistake} where it can't be written */
  write(path: string, workingFolder: string): number {
    const lines = this.entries.map((entry) => `    ${JSON.stringify(entry)}`).sort();
    const text = `{\n  "version": 1,\n  "findings": [${lines.length > 0 ? `\n${lines.join(",\n")}\n  ` : ""}]\n}\n`;
    try {
      writeFileSync(resolve(workingFolder, path), text);
    } catch {
      throw new Mistake(`can't write '${path}'`);
    }
    return lines.length;
  }
}

function entryOf({ rule, subject, field, which }: ReportedFinding, { repositoryPath }: RecordReport): Entry {
  return { record: repositoryPath, rule, subject, field, ...(which !== "" && { which }) };
}

function keyOf({ record, rule, subject, field, which = "" }: Entry): string {
  return JSON.stringify([record, rule, subject, field, which]);
}

function isEntry(value: unknown): value is Entry {
  if (typeof value !== "object" || value === null) return false;
  const { record, rule, subject, field, which = "" } = value as Partial<Record<keyof Entry, unknown>>;
  return [record, rule, subject, field, which].every((one) => typeof one === "string");
}
