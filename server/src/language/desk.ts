import { type CheckOptions, check, type Judgement } from "../core/check";
import type { Finding } from "../core/findings/finding";
import { type ProvenRemedy, provenRemedies } from "../core/remedies";
import { RecordShelf } from "../core/shelf";
import type { Documents } from "./documents";

/**
 * The judgements of the open records, made anew only when something that they rest on has changed. Asking for
 * one never gives an old answer.
 */
export class Desk {
  readonly shelf: RecordShelf;
  private readonly judged = new Map<string, Judgement>();
  /** A finding can be that of many judgements; what mends it belongs to the text of one. */
  private readonly proven = new WeakMap<Judgement, Map<Finding, readonly ProvenRemedy[]>>();
  private options: CheckOptions = {};

  constructor(private readonly documents: Documents) {
    this.shelf = new RecordShelf(documents);
  }

  /** With the day of now; what was judged on another day is judged anew. */
  get checkOptions(): CheckOptions {
    const today = dayOf(new Date());
    if (today !== this.options.today) this.setOptions({ ...this.options, today });
    return this.options;
  }

  setOptions(options: CheckOptions): void {
    this.options = options;
    this.judged.clear();
  }

  /** Undefined for what is no record. */
  judge(id: string): Judgement | undefined {
    const record = this.shelf.load(id);
    if (!record) return undefined;
    const options = this.checkOptions;
    const known = this.judged.get(id);
    if (known?.record === record && this.isCurrent(known)) return known;
    const judgement = check(record, this.shelf, options);
    this.judged.set(id, judgement);
    return judgement;
  }

  /** Tried once for each judgement: an editor asks again with every move of the cursor. */
  remediesOf(finding: Finding, judgement: Judgement): readonly ProvenRemedy[] {
    const proven = this.proven.get(judgement) ?? new Map<Finding, readonly ProvenRemedy[]>();
    this.proven.set(judgement, proven);
    const known = proven.get(finding) ?? [...provenRemedies(finding, judgement, this.shelf, this.options)];
    proven.set(finding, known);
    return known;
  }

  forget(id: string): void {
    this.judged.delete(id);
  }

  /** Open records whose judgement rests on this one, or did when it was made, itself left out. */
  dependentsOf(id: string): string[] {
    return this.allDependentsOf(id).filter((one) => this.documents.get(one) !== undefined);
  }

  /** The same of every record that was judged, open or not. */
  allDependentsOf(id: string): string[] {
    return [...this.judged].flatMap(([one, known]) => (one !== id && this.mayRestOn(known, id) ? [one] : []));
  }

  /** Judgements as they were last made. */
  known(id: string): Judgement | undefined {
    return this.judged.get(id);
  }

  private mayRestOn({ project, record }: Judgement, id: string): boolean {
    if (!project) return false;
    if (project.files.some((file) => file.file === id)) return true;
    // A link that led nowhere when it was followed may lead here now.
    const { install, airframe, kit } = project;
    const lost = [airframe ? undefined : install.airframe, kit ? undefined : install.kit];
    return lost.some(
      (link) => link && "path" in link && this.documents.resolve(record.file, link.path.value) === id,
    );
  }

  private isCurrent({ project, record }: Judgement): boolean {
    if (!project) return true;
    const links = [project.install.airframe, project.install.kit].flatMap((link) =>
      link && "path" in link ? [link.path.value] : [],
    );
    return links.every((path) => {
      const id = this.documents.resolve(record.file, path);
      const now = id === undefined ? undefined : this.shelf.load(id);
      const then = project.files.find((file) => file.file === id);
      return now === then || (id === record.file && then === undefined);
    });
  }
}

/** The day where the user is, as YYYY-MM-DD. */
function dayOf(time: Date): string {
  const two = (number: number) => String(number).padStart(2, "0");
  return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`;
}
