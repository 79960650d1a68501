import { caution } from "../core/views/calculation";
import {
  type CommandName,
  checkForms,
  compareForms,
  type Option,
  optionsOf,
  severities,
  worksheetForms,
} from "./arguments";
import { indent, labelled, wrap } from "./render/layout";

/** Columns of every page: a terminal of usual width, and a log. */
const width = 80;
/** Where words begin that tell what a call, or an option, does. */
const margins = { calls: 34, options: 26 } as const;

interface CommandPage {
  /** The ways to call it, each with what it then does, in a line. */
  readonly calls: readonly (readonly [call: string, does: string])[];
  readonly about: string;
}

const pages: Readonly<Record<CommandName, CommandPage>> = {
  check: {
    calls: [["check [paths]", "check records; folders are searched for them"]],
    about:
      "Checks records, and prints what was found: where, why, what to do, the calculation and its source. Without paths, the working folder is searched.",
  },
  compare: {
    calls: [
      ["compare <base> <head>", "what a change does: two files or two folders"],
      [
        "compare --git A..B [paths]",
        "the same for two revisions; A...B from where they parted; A alone against the work tree",
      ],
    ],
    about:
      "Tells what was changed in the records, and what it does to the aircraft: values, findings and margins.",
  },
  worksheet: {
    calls: [["worksheet <record>", "every value of an install record, worked out"]],
    about:
      "Prints every value of one install record with its formula, its numbers and its sources, the least margins first.",
  },
  explain: {
    calls: [
      ["explain [area]", "the areas of rules; the rules of one"],
      ["explain <rule>", "what a rule finds, why, by which source"],
      ["explain keys <place>", "keys there: install, install.wires, kit ..."],
    ],
    about:
      "Tells what is checked and why, with examples, and which keys a record may have: 'explain wires', 'explain wire-voltage-drop', 'explain keys install.wires'.",
  },
  merge: {
    calls: [["merge <reports>", "one report of the JSON reports of many parts"]],
    about: "Makes one report of what 'check --part 1/5 --report json:FILE' wrote for each of the parts.",
  },
};

type OptionWords = readonly [takes: string, does: string];

/** What an option takes, and what it does; of some it depends on the command. */
const words: Readonly<Record<Option, OptionWords | ((command: CommandName) => OptionWords)>> = {
  report: (command) =>
    command === "worksheet"
      ? ["FORM", formsWords(worksheetForms)]
      : [
          "FORM[:FILE]",
          `${formsWords(command === "compare" ? compareForms : checkForms)}; with a path, of that file; may be repeated`,
        ],
  "fail-on": (command) => [
    severities.toReversed().join("|"),
    command === "compare"
      ? "least severity of a new finding that exits with 1; without it, none does"
      : "least severity that exits with 1 (default error)",
  ],
  severity: ["RULE=LEVEL", "give a rule another severity, or 'off'; may be repeated"],
  brief: ["", "one line for each finding"],
  only: ["RULE", "findings of this rule alone; may be repeated"],
  base: ["REVISION", "findings that this git revision has are known, and fail nothing"],
  baseline: ["FILE", "findings that the file lists are known, and fail nothing"],
  "write-baseline": ["FILE", "list the errors and warnings of now in a file"],
  "changed-since": ["REVISION", "only records that differ from it, and those that name one that does"],
  part: ["2/5", "the second of five parts of the records"],
  jobs: ["NUMBER", "threads; as many as processors, unless you say so"],
  "margin-floor": ["[RULE=]SHARE", "fail where a margin is less, such as 10% of the limit"],
  "margin-erosion": (command) => [
    "[RULE=]SHARE",
    `fail where a margin lost more than this share of what it was${command === "check" ? "; with --base" : ""}`,
  ],
  git: ["A..B", "compare two revisions of git instead of files or folders"],
  help: ["", "this page"],
  version: ["", "the version of Tailcone"],
};

function formsWords(forms: readonly string[]): string {
  return `form of the output: ${forms.join(", ")} (default ${forms[0]})`;
}

/** The page of one command, or without one the page of all. */
export function helpText(command?: CommandName): string {
  return `${(command ? pageOf(command) : generalPage()).join("\n\n")}\n`;
}

function generalPage(): string[] {
  const calls = [
    ...Object.values(pages).flatMap((page) => page.calls),
    ["help <command>", "what a command does, and its options"] as const,
  ];
  return [
    wrap("Tailcone checks aircraft installation records with live engineering calculations.", width),
    callLines(calls),
    wrap("Records are files named *.airframe.yaml, *.kit.yaml and *.install.yaml.", width),
    optionLines(["help", "version"]),
    wrap(
      "Exit codes: 0 nothing at or above the threshold, 1 findings, 2 the tool could not do its work.",
      width,
    ),
    wrap(caution, width),
  ];
}

function pageOf(command: CommandName): string[] {
  const { calls, about } = pages[command];
  return [callLines(calls), wrap(about, width), optionLines([...optionsOf[command], "help"], command)];
}

function callLines(calls: CommandPage["calls"]): string {
  return calls.map(([call, does]) => beside(`tailcone ${call}`, does, margins.calls)).join("\n");
}

function optionLines(options: readonly Option[], command: CommandName = "check"): string {
  return options
    .map((option) => {
      const said = words[option];
      const [takes, does] = typeof said === "function" ? said(command) : said;
      return beside(`--${option} ${takes}`.trimEnd(), does, margins.options);
    })
    .join("\n");
}

/** What is written, and beside it what it does: below it where the first leaves no room. */
function beside(written: string, does: string, margin: number): string {
  const head = `  ${written}`;
  if (head.length <= margin - 2) return labelled(head, does, width, margin);
  return `${head}\n${indent(wrap(does, width - margin), margin)}`;
}
