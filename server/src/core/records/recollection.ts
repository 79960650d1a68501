/**
 * What was derived and judged of one version of a record, by the function that did it (`graph/recall.ts`). The
 * next version begins with all of it; one that is only tried, as for a remedy, leaves that of its record as it
 * is.
 */
export class Recollection {
  private readonly kept: Map<object, unknown>;

  constructor(before?: Recollection) {
    this.kept = new Map(before?.kept);
  }

  get(of: object): unknown {
    return this.kept.get(of);
  }

  set(of: object, what: unknown): void {
    this.kept.set(of, what);
  }
}
