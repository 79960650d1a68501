/**
 * An install record together with the airframe and the kit that it names: what every rule judges.
 */
import type { Problem } from "./findings/finding";
import { sameProblems } from "./findings/same-problems";
import { raise } from "./records/problem-facts";
import { judgeNames, type LoadedRecord, Names } from "./records/record";
import type { RecordKind } from "./records/schema";
import { recordKindOf } from "./records/schema";
import type { AirframeRecord, InstallRecord, KitRecord } from "./records/types";
import type { Link, Written } from "./records/written";

/** Gives the core other records of the workspace. It owns all knowledge of paths. */
export interface RecordSource {
  /** Identity of the file that `path`, written in record `from`, names; undefined when it leaves the workspace. */
  resolve(from: string, path: string): string | undefined;
  /** The record, or undefined when there is no such file. */
  load(file: string): LoadedRecord | undefined;
}

export interface Project {
  readonly file: LoadedRecord;
  /** Every record that takes part, the install record first. */
  readonly files: readonly LoadedRecord[];
  readonly install: InstallRecord;
  readonly airframe?: AirframeRecord;
  readonly kit?: KitRecord;
  readonly names: Names;
  /** What is wrong with links and ids. Problems of the records' own shape are theirs. */
  readonly problems: readonly Problem[];
}

/** Links one install record. Pure apart from what `source` does; never throws. */
export function linkProject(file: LoadedRecord, install: InstallRecord, source: RecordSource): Project {
  const problems: Problem[] = [];
  const files = [file];
  const absent: RecordKind[] = [];

  const follow = <R>(kind: "airframe" | "kit", link: Link<R> | undefined): R | undefined => {
    if (link && "inline" in link) return link.inline;
    const found = link && openLink(kind, link.path, file, source);
    if (found && "record" in found) {
      files.push(found.record);
      return found.record.typing.typed.record as R;
    }
    if (found) problems.push(found);
    absent.push(kind);
    return undefined;
  };

  const airframe = follow<AirframeRecord>("airframe", install.airframe);
  const kit = follow<KitRecord>("kit", install.kit);
  const names = new Names(files);
  const ofNames = judgeNames(names, file, absent);
  for (const problem of ofNames) if (problem.place.file === file.file) problems.push(problem);
  const { recollection } = file;
  const told = sameProblems(recollection.get(linkProject) as readonly Problem[] | undefined, problems);
  recollection.set(linkProject, told);
  return { file, files, install, ...(airframe && { airframe }), ...(kit && { kit }), names, problems: told };
}

/** What is wrong with the ids of an airframe or kit record by itself. */
export function judgeAlone(file: LoadedRecord): Problem[] {
  return judgeNames(new Names([file]), file);
}

/** An airframe by itself as a project: with a change that changes nothing, and a kit of nothing. */
export function unmodified(file: LoadedRecord, airframe: AirframeRecord): Project {
  const { place } = airframe;
  return {
    file,
    files: [file],
    install: { place, airframe: { inline: airframe } },
    airframe,
    kit: { place, components: [] },
    names: new Names([file]),
    problems: [],
  };
}

function openLink(
  kind: "airframe" | "kit",
  path: Written<string>,
  from: LoadedRecord,
  source: RecordSource,
): { record: LoadedRecord } | Problem {
  const facts = { path: [kind], target: path.value, kind };
  const file = source.resolve(from.file, path.value);
  if (file === undefined) return raise("record-outside-workspace", path.place, facts);
  if (file === from.file) return raise("record-circular", path.place, facts);
  const found = recordKindOf(file);
  if (found !== kind) return raise("record-wrong-kind", path.place, { ...facts, ...(found && { found }) });
  const record = source.load(file);
  return record ? { record } : raise("record-missing", path.place, facts);
}
