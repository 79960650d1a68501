/**
 * What was derived and judged of one version of a record, by the function that did it (`graph/recall.ts`). The
 * next version begins with all of it; one that is only tried, as for a remedy, leaves that of its record as it
 * is.
 */
export class Recollection {
  private readonly kept: Map<object, unknown>;
  /** By project: this version of the record with those of the records that it names. */
  private done: WeakMap<object, Map<object, unknown>> | undefined;

  constructor(before?: Recollection) {
    this.kept = new Map(before?.kept);
  }

  get(of: object): unknown {
    return this.kept.get(of);
  }

  set(of: object, what: unknown): void {
    this.kept.set(of, what);
  }

  /** What is known to hold for just this project, and goes with it. */
  doneOf(project: object): Map<object, unknown> {
    this.done ??= new WeakMap();
    let known = this.done.get(project);
    if (!known) {
      known = new Map();
      this.done.set(project, known);
    }
    return known;
  }
}
