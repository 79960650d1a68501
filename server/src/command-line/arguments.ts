import { parseArgs } from "node:util";
import type { Severity } from "../core/findings/finding";
import { nearest } from "../core/nearest";
import { keysWithin, type RecordKind, recordSchemas, type Schema } from "../core/records/schema";
import { ruleById } from "../core/rules";
import { ruleAreas } from "../core/rules/areas";
import type { Rule } from "../core/rules/rule";
import type { MarginBound } from "../core/views/gate";

/** A report, and the file that it goes to; without one, to the output. */
export interface WantedReport<Form extends string> {
  readonly form: Form;
  readonly path?: string;
}

export const checkForms = ["text", "json", "sarif", "junit", "github", "gitlab"] as const;
export type CheckForm = (typeof checkForms)[number];

export const compareForms = ["text", "json", "markdown", "html"] as const;
export type CompareForm = (typeof compareForms)[number];

export const worksheetForms = ["text", "json"] as const;

export type Severities = Readonly<Record<string, Severity | "off">>;

export interface CheckArguments {
  readonly command: "check";
  readonly paths: readonly string[];
  readonly reports: readonly WantedReport<CheckForm>[];
  readonly failOn: Severity;
  readonly severities: Severities;
  readonly isBrief: boolean;
  /** The only rules whose findings are shown and count; empty: all. */
  readonly only: readonly string[];
  /** Revision whose findings are known already. */
  readonly base?: string | undefined;
  /** File of findings that are known already. */
  readonly baseline?: string | undefined;
  readonly writeBaseline?: string | undefined;
  /** Only records that differ from this revision, and those that depend on them. */
  readonly changedSince?: string | undefined;
  readonly part?: Part | undefined;
  readonly floors: readonly MarginBound[];
  readonly erosions: readonly MarginBound[];
  /** How many threads; left out, as many as there are processors. */
  readonly jobs?: number | undefined;
}

/** One of so many parts of a check, from 1. */
export interface Part {
  readonly number: number;
  readonly of: number;
}

export interface CompareArguments {
  readonly command: "compare";
  readonly sides:
    | { readonly kind: "paths"; readonly base: string; readonly head: string }
    | { readonly kind: "git"; readonly range: string; readonly paths: readonly string[] };
  readonly reports: readonly WantedReport<CompareForm>[];
  /** Undefined: new findings fail nothing. */
  readonly failOn: Severity | undefined;
  readonly severities: Severities;
  readonly floors: readonly MarginBound[];
  readonly erosions: readonly MarginBound[];
}

export interface MergeArguments {
  readonly command: "merge";
  readonly paths: readonly string[];
  readonly reports: readonly WantedReport<CheckForm>[];
  readonly failOn: Severity;
}

export interface WorksheetArguments {
  readonly command: "worksheet";
  readonly record: string;
  readonly report: (typeof worksheetForms)[number];
}

export interface ExplainArguments {
  readonly command: "explain";
  readonly of:
    | { readonly kind: "areas" }
    | { readonly kind: "area"; readonly area: Rule["area"] }
    | { readonly kind: "rule"; readonly rule: string }
    /** Keys of a record, from its kind inwards: ["install", "wires"]. */
    | { readonly kind: "keys"; readonly path: readonly string[] };
}

export type Command =
  | CheckArguments
  | CompareArguments
  | MergeArguments
  | WorksheetArguments
  | ExplainArguments
  /** Of one command, or of all. */
  | { readonly command: "help"; readonly of?: CommandName | undefined }
  | { readonly command: "version" };

/** What is wrong with the arguments, in one line. */
export class Mistake extends Error {}

export const severities: readonly Severity[] = ["information", "warning", "error"];

const options = {
  report: { type: "string", multiple: true },
  "fail-on": { type: "string" },
  severity: { type: "string", multiple: true },
  brief: { type: "boolean" },
  only: { type: "string", multiple: true },
  base: { type: "string" },
  baseline: { type: "string" },
  "write-baseline": { type: "string" },
  "changed-since": { type: "string" },
  part: { type: "string" },
  jobs: { type: "string" },
  "margin-floor": { type: "string", multiple: true },
  "margin-erosion": { type: "string", multiple: true },
  git: { type: "string" },
  help: { type: "boolean", short: "h" },
  version: { type: "boolean" },
} as const;

export type Option = keyof typeof options;

export type CommandName = Exclude<Command["command"], "help" | "version">;

/** The options of each command; each has --help and --version. */
export const optionsOf: Readonly<Record<CommandName, readonly Option[]>> = {
  check: [
    "report",
    "fail-on",
    "severity",
    "brief",
    "only",
    "base",
    "baseline",
    "write-baseline",
    "changed-since",
    "part",
    "jobs",
    "margin-floor",
    "margin-erosion",
  ],
  compare: ["git", "report", "fail-on", "severity", "margin-floor", "margin-erosion"],
  merge: ["report", "fail-on"],
  worksheet: ["report"],
  explain: [],
};

export const commands = Object.keys(optionsOf) as CommandName[];

/** Reads the arguments. @throws {Mistake} */
export function parseCommand(argv: readonly string[]): Command {
  const { values, positionals } = parse(argv);
  if (values.version) return { command: "version" };
  const [word, ...rest] = positionals;
  if (word === undefined) return { command: "help" };
  if (word === "help") return { command: "help", of: rest[0] === undefined ? undefined : commandOf(rest[0]) };
  const command = commandOf(word);
  if (values.help) return { command: "help", of: command };
  for (const option of Object.keys(values) as Option[]) {
    if (optionsOf[command].includes(option)) continue;
    const users = commands.filter((one) => optionsOf[one].includes(option)).map((one) => `'${one}'`);
    throw new Mistake(`--${option} is for ${users.join(" and ")}, not for '${command}'`);
  }
  switch (command) {
    case "check":
      return checkArguments(rest, values);
    case "compare":
      return compareArguments(rest, values);
    case "merge":
      if (rest.length === 0) throw new Mistake("merge takes the JSON reports of 'check'");
      return {
        command,
        paths: rest,
        reports: reportsOf(values, checkForms),
        failOn: oneOf(severities, values["fail-on"] ?? "error", "--fail-on"),
      };
    case "worksheet": {
      if (rest.length !== 1) throw new Mistake("worksheet takes one install record");
      const report = values.report?.at(-1) ?? "text";
      return { command, record: rest[0]!, report: oneOf(worksheetForms, report, "--report") };
    }
    case "explain":
      return explainArguments(rest);
  }
}

function commandOf(word: string): CommandName {
  const command = commands.find((one) => one === word);
  if (!command) throw new Mistake(`no command '${word}'${meant(word, [...commands, "help"])}`);
  return command;
}

type Values = ReturnType<typeof parseArgs<{ readonly options: typeof options }>>["values"];

/** Takes the words apart; what is said of a wrong one is ours, so the parser is not strict. */
function parse(argv: readonly string[]): { values: Values; positionals: string[] } {
  const parsed = parseArgs({ args: [...argv], allowPositionals: true, options, strict: false, tokens: true });
  for (const token of parsed.tokens) {
    if (token.kind !== "option") continue;
    const { name, rawName, value, inlineValue } = token;
    if (!Object.hasOwn(options, name)) {
      const names = Object.keys(options).map((option) => `--${option}`);
      throw new Mistake(`no option '${rawName}'${meant(rawName, names)}`);
    }
    if (options[name as Option].type === "boolean") {
      if (value !== undefined) throw new Mistake(`${rawName} takes no value`);
    } else if (value === undefined || value === "" || (!inlineValue && /^-\D/.test(value))) {
      throw new Mistake(`${rawName} lacks its value`);
    }
  }
  return { values: parsed.values as Values, positionals: parsed.positionals };
}

function checkArguments(paths: readonly string[], values: Values): CheckArguments {
  const { base, baseline } = values;
  if (base !== undefined && baseline !== undefined) {
    throw new Mistake("--base and --baseline both say what is known already; take one of them");
  }
  const erosions = boundsOf(values["margin-erosion"], "--margin-erosion");
  if (erosions.length > 0 && base === undefined) {
    throw new Mistake("--margin-erosion needs --base: the revision whose margins are to be kept");
  }
  if (values.only && values["write-baseline"] !== undefined) {
    throw new Mistake("--write-baseline lists the findings of all rules, not with --only");
  }
  if (values.only && baseline !== undefined) {
    throw new Mistake("--baseline holds the findings of all rules, not with --only");
  }
  return {
    command: "check",
    paths: paths.length > 0 ? paths : ["."],
    reports: reportsOf(values, checkForms),
    failOn: oneOf(severities, values["fail-on"] ?? "error", "--fail-on"),
    severities: severitiesOf(values),
    isBrief: values.brief ?? false,
    only: (values.only ?? []).map(knownRule),
    base,
    baseline,
    writeBaseline: values["write-baseline"],
    changedSince: values["changed-since"],
    part: values.part === undefined ? undefined : partOf(values.part),
    floors: boundsOf(values["margin-floor"], "--margin-floor"),
    erosions,
    jobs: values.jobs === undefined ? undefined : wholeNumber(values.jobs, "--jobs"),
  };
}

function compareArguments(rest: readonly string[], values: Values): CompareArguments {
  const common = {
    command: "compare",
    reports: reportsOf(values, compareForms),
    failOn: values["fail-on"] === undefined ? undefined : oneOf(severities, values["fail-on"], "--fail-on"),
    severities: severitiesOf(values),
    floors: boundsOf(values["margin-floor"], "--margin-floor"),
    erosions: boundsOf(values["margin-erosion"], "--margin-erosion"),
  } as const;
  if (values.git !== undefined) {
    const paths = rest.length > 0 ? rest : ["."];
    return { ...common, sides: { kind: "git", range: values.git, paths } };
  }
  const [base, head, ...more] = rest;
  if (base === undefined || head === undefined || more.length > 0) {
    throw new Mistake("compare takes two files or two folders, or --git BASE..HEAD");
  }
  return { ...common, sides: { kind: "paths", base, head } };
}

function explainArguments([word, ...more]: readonly string[]): ExplainArguments {
  const command = "explain";
  if (word === undefined) return { command, of: { kind: "areas" } };
  if (word === "keys") {
    if (more.length !== 1) throw new Mistake("explain keys takes a place, such as install.wires or airframe");
    return { command, of: { kind: "keys", path: placeOf(more[0]!) } };
  }
  if (more.length > 0) throw new Mistake("explain takes one rule, one area, or keys and a place");
  const areas = Object.keys(ruleAreas) as Rule["area"][];
  const area = areas.find((one) => one === word);
  if (area) return { command, of: { kind: "area", area } };
  if (!ruleById.has(word)) {
    throw new Mistake(`no rule or area '${word}'${meant(word, [...areas, ...ruleById.keys()])}`);
  }
  return { command, of: { kind: "rule", rule: word } };
}

/** A place in a record, such as install.wires.passes; each step is a key of what stands before it. */
function placeOf(written: string): string[] {
  const path = written.split(".");
  let known = Object.keys(recordSchemas);
  let schema: Schema | undefined;
  for (const [at, step] of path.entries()) {
    if (!known.includes(step)) {
      const before = at === 0 ? "kind of record" : `key under ${path.slice(0, at).join(".")}`;
      throw new Mistake(`no ${before} '${step}'${meant(step, known)}`);
    }
    schema = at === 0 ? recordSchemas[step as RecordKind] : keysWithin(schema)[step];
    known = Object.keys(keysWithin(schema));
  }
  return path;
}

/** Reports as `FORM` or `FORM:PATH`; only one of them can have the output. */
function reportsOf<Form extends string>(values: Values, forms: readonly Form[]): WantedReport<Form>[] {
  const reports = (values.report ?? ["text"]).map((wanted): WantedReport<Form> => {
    const [word = "", ...path] = wanted.split(":");
    const form = oneOf(forms, word, "--report");
    if (path.length === 0) return { form };
    if (path.join(":") === "") throw new Mistake(`--report ${form}: lacks the path behind the colon`);
    return { form, path: path.join(":") };
  });
  if (reports.filter(({ path }) => path === undefined).length > 1) {
    throw new Mistake(
      "two reports would be mixed on the output; give all but one a path: --report json:FILE",
    );
  }
  const paths = reports.flatMap(({ path }) => path ?? []);
  if (new Set(paths).size < paths.length) throw new Mistake("two reports would go to one file");
  return reports;
}

function severitiesOf(values: Values): Severities {
  const overrides: Record<string, Severity | "off"> = {};
  for (const assignment of values.severity ?? []) {
    const [rule = "", level = "", ...more] = assignment.split("=");
    if (more.length > 0) throw new Mistake(`--severity takes RULE=LEVEL, not '${assignment}'`);
    overrides[knownRule(rule)] = oneOf([...severities, "off"] as const, level, `--severity ${rule}`);
  }
  return overrides;
}

/** Bounds as `SHARE` or `RULE=SHARE`; a share as 0.1 or 10%. */
function boundsOf(written: readonly string[] | undefined, option: string): MarginBound[] {
  return (written ?? []).map((text) => {
    const [share = "", rule, ...more] = text.split("=").reverse();
    const [, number, sign] = /^(-?\d+(?:\.\d+)?)\s*(%?)$/.exec(share) ?? [];
    if (number === undefined || more.length > 0) {
      throw new Mistake(`${option} takes a share such as 10% or 0.1, or RULE=SHARE, not '${text}'`);
    }
    const value = sign ? Number(number) / 100 : Number(number);
    if (!sign && Math.abs(value) >= 1) {
      throw new Mistake(`${option} takes a share such as 10% or 0.1; '${share}' lacks its % sign`);
    }
    return { ...(rule !== undefined && { rule: knownRule(rule) }), share: value };
  });
}

function partOf(written: string): Part {
  const [, number, of] = /^(\d{1,4})\/(\d{1,4})$/.exec(written) ?? [];
  const part = { number: Number(number), of: Number(of) };
  if (!(part.number >= 1 && part.number <= part.of)) {
    throw new Mistake(`--part takes a part of so many, such as 2/5, not '${written}'`);
  }
  return part;
}

function wholeNumber(written: string, option: string): number {
  if (!/^[1-9]\d{0,3}$/.test(written))
    throw new Mistake(`${option} takes a number from 1 up, not '${written}'`);
  return Number(written);
}

function knownRule(rule: string): string {
  if (!ruleById.has(rule)) throw new Mistake(`no rule '${rule}'${meant(rule, [...ruleById.keys()])}`);
  return rule;
}

function oneOf<T extends string>(allowed: readonly T[], value: string, option: string): T {
  const found = allowed.find((one) => one === value);
  if (found === undefined) throw new Mistake(`${option} takes ${allowed.join(", ")}, not '${value}'`);
  return found;
}

/** Fewer letters than these stand in too many words to mean one of them. */
const fewestLetters = 4;

/** More words than these are no help. */
const mostWords = 8;

/** Words that another is a slip of; else those that start with it, else those that have it in them. */
function alike(word: string, known: readonly string[]): readonly string[] {
  const slips = nearest(word, known);
  if (slips.length > 0 || word.length < fewestLetters) return slips;
  const starting = known.filter((one) => one.startsWith(word));
  const found = starting.length > 0 ? starting : known.filter((one) => one.includes(word));
  return found.slice(0, mostWords);
}

function meant(word: string, known: readonly string[]): string {
  const near = alike(word, known).map((guess) => `'${guess}'`);
  return near.length === 0 ? "" : `; did you mean ${near.join(" or ")}?`;
}
