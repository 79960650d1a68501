/**
 * What a value would lead to, here and now: the record is checked with it in place, and what is judged at that
 * place, and what fails elsewhere because of it, is told. Nothing is computed that a check does not compute.
 */
import { type CheckOptions, check } from "../../check";
import { type Assessment, byMargin, isPlace, marginOf } from "../../findings/finding";
import { showMeasure } from "../../graph/value";
import type { RecordSource } from "../../project";
import { type Node, nodeAt, type Span } from "../../reading";
import { type LoadedRecord, loadRecord } from "../../records/record";
import { nameOf, showUse } from "../calculation";
import { restingOn } from "../resting";
import { unknownDrop } from "./unknown-drop";

/** A value that was tried. */
export interface Trial {
  /** What is judged of the value, each in a few words: what fails, then the least margins. */
  readonly words: readonly string[];
  /** Markdown: each result with its limit, and what would be found. */
  readonly documentation: string;
  /** Faults that would be found at the place itself. */
  readonly own: readonly string[];
  /** Every fault that would be found in the record. */
  readonly faults: ReadonlySet<string>;
}

const most = { words: 2, rows: 6, faults: 4 } as const;

/** Checks the record with `text` in place of `span`. Pure apart from what `source` does. */
export function tryValue(
  record: LoadedRecord,
  span: Span,
  text: string,
  source: RecordSource,
  options: CheckOptions,
): Trial {
  const changed = record.text.slice(0, span.start) + text + record.text.slice(span.end);
  const after = check(loadRecord(record.file, record.kind, changed, record), source, options);
  const leading = text.length - text.trimStart().length;
  const node = nodeAt(after.record.reading, span.start + leading + 1).at(-1)?.node;
  const rests = node ? restingOn(record.file, node) : () => false;
  const judged = after.assessments
    .filter((one) => isAt(one, record.file, node) || (isTold(one) && rests(one.value)))
    .toSorted((a, b) => rankOf(a) - rankOf(b) || byMargin(a, b));
  const unknown = node && after.project ? unknownDrop(node, after.project) : undefined;
  const faults = after.findings.filter(({ severity }) => severity !== "information");
  const own = faults.filter(({ anchor }) => isPlace(anchor) && anchor.node === node);
  return {
    words: [...judged.slice(0, most.words).map(inWords), ...(unknown ? [unknown] : [])],
    documentation: documented(judged, own, unknown),
    own: own.map(({ what }) => what),
    faults: new Set(faults.map(({ rule, subject, what }) => `${rule} ${subject || what}`)),
  };
}

/**
 * Of trials of several values at one place: those that pass. A value passes when nothing is found at its place,
 * and elsewhere nothing but what is found with every one of the values.
 */
export function passing<T extends { readonly trial: Trial }>(tried: readonly T[]): Set<T> {
  const [first] = tried;
  const always = [...(first?.trial.faults ?? [])].filter((fault) =>
    tried.every(({ trial }) => trial.faults.has(fault)),
  );
  return new Set(tried.filter(({ trial }) => trial.own.length === 0 && trial.faults.size === always.length));
}

/**
 * The order in which values that rise in size are best tried, while there is time: the largest, then by halves to
 * the smallest that does without a fault, then outward from it. `isPassed` tells how a value fared that was given.
 */
export function* bestFirst<T>(rising: readonly T[], isPassed: (one: T) => boolean): Iterable<T> {
  const given = new Set<T>();
  const give = function* (at: number) {
    const one = rising[at];
    if (one === undefined || given.has(one)) return;
    given.add(one);
    yield one;
  };
  let low = 0;
  let high = rising.length - 1;
  yield* give(high);
  while (low < high) {
    const middle = (low + high) >> 1;
    yield* give(middle);
    if (isPassed(rising[middle]!)) high = middle;
    else low = middle + 1;
  }
  for (let away = 0; away < rising.length; away++) {
    yield* give(high + away);
    yield* give(high - away);
  }
}

function isAt({ place }: Assessment, file: string, node: Node | undefined): boolean {
  return place.file === file && place.node === node;
}

/** Told wherever it is judged: what fails because of the value, and the drop of the path that a wire is part of. */
function isTold({ holds, value }: Assessment): boolean {
  return !holds || value.quantity === "path-drop";
}

/**
 * What fails, then the drop of the path, which every size of a wire is chosen for, then what else comes of the
 * value, then what only compares it with another choice, such as a rating.
 */
function rankOf({ holds, value }: Assessment): number {
  if (!holds) return 0;
  if (value.quantity === "path-drop") return 1;
  return value.quantity === "device-rating" ? 3 : 2;
}

function inWords(one: Assessment): string {
  const { value, limit } = one;
  const word = wordBefore(one, { "at-most": " of", "at-least": " at least" });
  const verdict = one.holds ? "" : "fails: ";
  return `${verdict}${nameOf(value)} ${showMeasure(value.value, value.unit, 3)}${word} ${showMeasure(limit.value, limit.unit, 3)}${shareOf(one)}`;
}

/** What stands before a limit. A gauge is thicker the lower its number is. */
function wordBefore(
  { limit, sense }: Assessment,
  words: Readonly<Record<Assessment["sense"], string>>,
): string {
  return limit.unit === "AWG" ? ", no thinner than" : words[sense];
}

/** How much of the limit is used, where it holds and there is one to take a share of. */
function shareOf(one: Assessment): string {
  const { value, limit, sense, scale, holds } = one;
  const isShare =
    holds && sense === "at-most" && !scale && limit.unit !== "AWG" && marginOf(one) !== undefined;
  return isShare ? ` (${showUse(value.value / limit.value)})` : "";
}

function documented(
  judged: readonly Assessment[],
  own: readonly { readonly what: string }[],
  unknown: string | undefined,
): string {
  const rows = judged.slice(0, most.rows).map((one) => {
    const { value, limit, holds } = one;
    const where =
      value.condition === undefined ? value.subject.id : `${value.subject.id}, ${value.condition}`;
    const sign = wordBefore(one, { "at-most": " ≤", "at-least": " ≥" });
    return `- ${holds ? "" : "**fails:** "}${nameOf(value)} (${where}) ${showMeasure(value.value, value.unit)}${sign} ${showMeasure(limit.value, limit.unit)}`;
  });
  const found = own.slice(0, most.faults).map(({ what }) => `- **found:** ${what}`);
  const untold = unknown ? [`- ${unknown}`] : [];
  return ["With this value:", ...rows, ...untold, ...found].join("\n").replace(/^With this value:$/, "");
}
