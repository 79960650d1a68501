import { parseArgs } from "node:util";
import type { Severity } from "../core/findings/finding";
import { nearest } from "../core/nearest";
import { ruleById } from "../core/rules";

export interface CheckArguments {
  readonly command: "check";
  readonly paths: readonly string[];
  readonly report: ReportForm;
  readonly failOn: Severity;
  readonly severities: Readonly<Record<string, Severity | "off">>;
  readonly isBrief: boolean;
}

export interface WorksheetArguments {
  readonly command: "worksheet";
  readonly record: string;
  readonly report: ReportForm;
}

export interface ExplainArguments {
  readonly command: "explain";
  /** Left out: list all. */
  readonly rule?: string;
}

export type ReportForm = "text" | "json";

export type Command =
  | CheckArguments
  | WorksheetArguments
  | ExplainArguments
  | { readonly command: "help" }
  | { readonly command: "version" };

interface Mistake {
  readonly mistake: string;
}

const commands = ["check", "worksheet", "explain"] as const;
export const severities: readonly Severity[] = ["information", "warning", "error"];

/** Reads the arguments, or says in one line what is wrong with them. */
export function parseCommand(argv: readonly string[]): Command | Mistake {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(argv);
  } catch (error) {
    return { mistake: error instanceof Error ? error.message.split("\n")[0]! : String(error) };
  }
  const { values, positionals } = parsed;
  if (values.version) return { command: "version" };
  const [command, ...rest] = positionals;
  if (values.help || command === undefined) return { command: "help" };
  const report = oneOf(["text", "json"] as const, values.report ?? "text", "--report");
  if (typeof report === "object") return report;
  switch (command) {
    case "check":
      return checkArguments(rest, report, values);
    case "worksheet":
      if (rest.length !== 1) return { mistake: "worksheet takes one install record" };
      if (isOnlyForCheck(values)) return { mistake: "--fail-on, --severity and --brief are for 'check'" };
      return { command, record: rest[0]!, report };
    case "explain":
      if (isOnlyForCheck(values)) return { mistake: "--fail-on, --severity and --brief are for 'check'" };
      return explainArguments(rest);
    default:
      return { mistake: `no command '${command}'${meant(command, commands)}` };
  }
}

function parse(argv: readonly string[]) {
  return parseArgs({
    args: [...argv],
    allowPositionals: true,
    options: {
      report: { type: "string" },
      "fail-on": { type: "string" },
      severity: { type: "string", multiple: true },
      brief: { type: "boolean" },
      help: { type: "boolean", short: "h" },
      version: { type: "boolean" },
    },
  });
}

function checkArguments(
  paths: readonly string[],
  report: ReportForm,
  values: ReturnType<typeof parse>["values"],
): Command | Mistake {
  const failOn = oneOf(severities, values["fail-on"] ?? "error", "--fail-on");
  if (typeof failOn === "object") return failOn;
  const overrides: Record<string, Severity | "off"> = {};
  for (const assignment of values.severity ?? []) {
    const [rule = "", level = "", ...more] = assignment.split("=");
    if (more.length > 0) return { mistake: `--severity takes RULE=LEVEL, not '${assignment}'` };
    if (!ruleById.has(rule)) return { mistake: `no rule '${rule}'${meant(rule, [...ruleById.keys()])}` };
    const chosen = oneOf([...severities, "off"] as const, level, `--severity ${rule}`);
    if (typeof chosen === "object") return chosen;
    overrides[rule] = chosen as Severity | "off";
  }
  return {
    command: "check",
    paths: paths.length > 0 ? paths : ["."],
    report,
    failOn,
    severities: overrides,
    isBrief: values.brief ?? false,
  };
}

function isOnlyForCheck(values: ReturnType<typeof parse>["values"]): boolean {
  return values["fail-on"] !== undefined || values.severity !== undefined || values.brief !== undefined;
}

function explainArguments([rule, ...more]: readonly string[]): Command | Mistake {
  if (more.length > 0) return { mistake: "explain takes one rule" };
  if (rule === undefined) return { command: "explain" };
  if (ruleById.has(rule)) return { command: "explain", rule };
  return { mistake: `no rule '${rule}'${meant(rule, [...ruleById.keys()])}` };
}

function oneOf<T extends string>(allowed: readonly T[], value: string, option: string): T | Mistake {
  const found = allowed.find((one) => one === value);
  return found ?? { mistake: `${option} takes ${allowed.join(", ")}, not '${value}'` };
}

function meant(word: string, known: readonly string[]): string {
  const near = nearest(word, known).map((guess) => `'${guess}'`);
  return near.length === 0 ? "" : `; did you mean ${near.join(" or ")}?`;
}
