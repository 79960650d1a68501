import { basename, resolve } from "node:path";
import { version } from "../../../package.json";
import { type CheckOptions, check, type Judgement } from "../core/check";
import { remembered } from "../core/once-each";
import { linkProject } from "../core/project";
import { type Comparison, compareJudgements, compareTexts, type FileChange } from "../core/views/comparison";
import { comparisonHtml } from "../core/views/comparison-html";
import { comparisonMarkdown } from "../core/views/comparison-markdown";
import { type Breach, erodedMargins, marginsBelow, reaches } from "../core/views/gate";
import { type CompareArguments, type CompareForm, Mistake } from "./arguments";
import { isFolder } from "./find-records";
import { Repository } from "./git";
import { comparisonText } from "./render/comparison-text";
import { safeJson } from "./render/json";
import { outletFor } from "./report-outputs";
import { fileSnapshot, folderSnapshot, revisionSnapshot, type Snapshot, workTreeSnapshot } from "./snapshot";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings";

/** What a gate holds against a comparison: findings and margins. */
export interface GatedComparison extends Comparison {
  readonly version: string;
  /** Margins below a floor or worn down, by the record's path. */
  readonly breaches: readonly { readonly path: string; readonly breach: Breach }[];
}

/** Shows what a change of records does to the aircraft. */
export function compareCommand(wanted: CompareArguments, around: Surroundings): ExitCode {
  const [base, head] = sidesOf(wanted, around.workingFolder);
  const options = { severities: wanted.severities, today: around.today };
  const compared = compareSnapshots(base, head, options, wanted);
  const forms: Readonly<Record<CompareForm, () => string>> = {
    text: () => comparisonText(compared, around),
    json: () => safeJson(`${JSON.stringify(compared, null, 2)}\n`),
    markdown: () => comparisonMarkdown(compared),
    html: () => comparisonHtml(compared),
  };
  for (const { form, path } of wanted.reports) {
    const outlet = outletFor(path, around);
    outlet.write(forms[form]());
    outlet.close();
  }
  const fails =
    compared.breaches.length > 0 ||
    compared.records.some(({ findings }) =>
      findings.appeared.some((one) => !one.accepted && reaches(one.severity, wanted.failOn)),
    );
  return fails ? exitCodes.findings : exitCodes.clean;
}

function sidesOf({ sides }: CompareArguments, workingFolder: string): [Snapshot, Snapshot] {
  if (sides.kind === "paths") {
    const { base, head } = sides;
    if (isFolder(base, resolve(workingFolder, base))) {
      return [folderSnapshot(base, workingFolder), folderSnapshot(head, workingFolder)];
    }
    const name = basename(head);
    return [fileSnapshot(base, workingFolder, name), fileSnapshot(head, workingFolder, name)];
  }
  const repository = Repository.around(workingFolder);
  const [, first = "", dots, second] = /^(.*?)(?:(\.\.\.?)(.*))?$/s.exec(sides.range) ?? [];
  // What both revisions have is one text, and git is asked for it once.
  const texts = { root: repository.root, text: remembered((object: string) => repository.text(object)) };
  const at = (revision: string) =>
    revisionSnapshot(texts, repository.revision(revision), sides.paths, workingFolder);
  const headName = second === "" ? "HEAD" : second;
  const baseName = dots === "..." ? repository.mergeBase(first || "HEAD", headName!) : first || "HEAD";
  const head =
    headName === undefined ? workTreeSnapshot(repository, sides.paths, workingFolder) : at(headName);
  return [at(baseName), head];
}

function compareSnapshots(
  base: Snapshot,
  head: Snapshot,
  options: CheckOptions,
  gate: Pick<CompareArguments, "floors" | "erosions">,
): GatedComparison {
  const names = [...new Set([...head.files.keys(), ...base.files.keys()])].sort();
  if (names.length === 0) throw new Mistake("there are no records to compare");
  const files = new Map<string, FileChange | undefined>();
  const compareFile = (name: string, old: Judgement["record"] | undefined, now: typeof old): boolean => {
    if (!files.has(name)) files.set(name, compareTexts(name, old, now));
    return old?.text !== now?.text;
  };
  const records: Comparison["records"][number][] = [];
  const breaches: GatedComparison["breaches"][number][] = [];
  for (const name of names) {
    const [before, after] = [recordIn(base, name), recordIn(head, name)];
    const reached = linkedNames(base, before, head, after).map(([linked, one, other]) =>
      compareFile(linked, one, other),
    );
    const isReached = reached.includes(true);
    // What rests on the same texts comes to the same, so that only a floor can be of interest.
    if (!isReached && gate.floors.length === 0) continue;
    const now = after && check(after, head.shelf, options);
    for (const breach of marginsBelow(now?.assessments ?? [], gate.floors))
      breaches.push({ path: name, breach });
    if (!isReached) continue;
    const old = before && check(before, base.shelf, options);
    const consequences = compareJudgements(name, old, now);
    records.push(consequences);
    for (const breach of erodedMargins(consequences, gate.erosions)) breaches.push({ path: name, breach });
  }
  return {
    version,
    base: base.title,
    head: head.title,
    files: [...files.values()].filter((change) => change !== undefined),
    records,
    breaches,
  };
}

type LoadedRecord = Judgement["record"];

function recordIn(side: Snapshot, name: string): LoadedRecord | undefined {
  const file = side.files.get(name);
  return file === undefined ? undefined : side.shelf.load(file);
}

/** A record and those that it names, on both sides, matched by name. */
function linkedNames(
  base: Snapshot,
  old: LoadedRecord | undefined,
  head: Snapshot,
  now: LoadedRecord | undefined,
): [name: string, before: LoadedRecord | undefined, after: LoadedRecord | undefined][] {
  const [before, after] = [recordsBehind(base, old), recordsBehind(head, now)];
  return [...new Set([...after.keys(), ...before.keys()])].map((name) => [
    name,
    // What only one side names may be on the other side all the same.
    before.get(name) ?? recordIn(base, name),
    after.get(name) ?? recordIn(head, name),
  ]);
}

function recordsBehind(side: Snapshot, record: LoadedRecord | undefined): Map<string, LoadedRecord> {
  const typed = record?.typing.typed;
  const records =
    record && typed?.kind === "install"
      ? linkProject(record, typed.record, side.shelf).files
      : record
        ? [record]
        : [];
  return new Map(records.map((one) => [side.nameOf(one.file), one]));
}
