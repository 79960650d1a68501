import { limits } from "../limits";
import type { Node, ReadingRule, ScalarNode, Span } from "./tree";

/** A problem with offsets relative to its item, so that it stays valid when the item moves. */
export interface ItemProblem extends Span {
  readonly rule: ReadingRule;
  readonly facts: Readonly<Record<string, string | number>>;
  readonly node?: Node;
  /** The key that a `key-duplicate` repeats; its line is known only once the item's place is. */
  readonly first?: ScalarNode;
}

/** Problems after the cap, and how many of each rule were left out. */
export interface CappedProblems<P> {
  readonly kept: readonly P[];
  readonly omitted: ReadonlyMap<ReadingRule, number>;
}

/** Shared by the many items that have none, to be told from others at a glance. */
export const none: CappedProblems<never> = { kept: [], omitted: new Map() };

/**
 * Collects problems and keeps, of each rule, the first `limits.findingsPerRule` by place in the text. Which
 * ones are kept does not depend on the order in which different places were found.
 */
export class ProblemCollector<P extends ItemProblem = ItemProblem> {
  readonly #byRule = new Map<ReadingRule, P[]>();
  readonly #omitted = new Map<ReadingRule, number>();
  readonly #faultyPlaces = new Set<number>();

  /** Of syntax errors at one place only the first counts: the others follow from it. */
  add(problem: P): void {
    if (problem.rule === "text-not-yaml") {
      if (this.#faultyPlaces.has(problem.start)) return;
      this.#faultyPlaces.add(problem.start);
    }
    let list = this.#byRule.get(problem.rule);
    if (!list) {
      list = [];
      this.#byRule.set(problem.rule, list);
    }
    list.push(problem);
    // Trimmed in batches, so that a text with a million faults costs neither memory nor a sort per fault.
    if (list.length >= 8 * limits.findingsPerRule) this.#trim(problem.rule, list);
  }

  /** Counts problems that were left out before they came here. */
  addOmitted(rule: ReadingRule, count: number): void {
    this.#omitted.set(rule, (this.#omitted.get(rule) ?? 0) + count);
  }

  /** All rules together, in the order of the text. */
  result(): CappedProblems<P> {
    if (this.#byRule.size === 0 && this.#omitted.size === 0) return none;
    const kept: P[] = [];
    for (const [rule, list] of this.#byRule) {
      this.#trim(rule, list);
      kept.push(...list);
    }
    return { kept: kept.sort(byPlace), omitted: this.#omitted };
  }

  #trim(rule: ReadingRule, list: P[]): void {
    list.sort(byPlace);
    const excess = list.length - limits.findingsPerRule;
    if (excess <= 0) return;
    list.length = limits.findingsPerRule;
    this.addOmitted(rule, excess);
  }
}

function byPlace(a: ItemProblem, b: ItemProblem): number {
  return a.start - b.start || a.end - b.end || compare(a.rule, b.rule) || compare(wording(a), wording(b));
}

function wording({ facts }: ItemProblem): string {
  return String(facts.code ?? facts.feature ?? "") + String(facts.detail ?? "");
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
