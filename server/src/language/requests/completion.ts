import { dirname, posix, relative, sep } from "node:path";
import {
  type CancellationToken,
  type CompletionItem,
  CompletionItemKind,
  InsertTextFormat,
  InsertTextMode,
} from "vscode-languageserver";
import type { Judgement } from "../../core/check";
import type { Span } from "../../core/reading";
import {
  bestFirst,
  type Completion,
  completionsAt,
  passing,
  type Trial,
  tryValue,
} from "../../core/views/completion";
import type { Converter } from "../convert";
import { openedAt, type Room } from "../room";

/** What comes in front of a key or a value; after any other sign nobody wants a list. */
export const completionTriggers = [" ", ":", "[", "{", ","];

/** Trying values goes on for so long; what was not tried by then is tried when the user looks at it. */
const trialMilliseconds = 300;

/** So many find the smallest of two dozen sizes that passes, however long they take. */
const leastTrials = 6;

const kinds: Readonly<Record<Completion["kind"], CompletionItemKind>> = {
  key: CompletionItemKind.Property,
  entry: CompletionItemKind.Snippet,
  word: CompletionItemKind.EnumMember,
  unit: CompletionItemKind.Unit,
  size: CompletionItemKind.Value,
  name: CompletionItemKind.Reference,
  file: CompletionItemKind.File,
};

/** What a completion item carries, so that its value can be tried later. */
interface TrialData {
  readonly uri: string;
  readonly version: number;
  readonly span: Span;
  readonly text: string;
}

export function answerCompletion(room: Room): void {
  const { connection } = room;
  /** What the last list was made of: the user goes on typing in it, so that the text is soon another. */
  let listed: (Pick<TrialData, "uri" | "version"> & { readonly judgement: Judgement }) | undefined;

  connection.onCompletion(async ({ textDocument: { uri }, position }, cancelled) => {
    const opened = openedAt(room, uri);
    if (!opened) return null;
    const { judgement, converter } = opened;
    const found = completionsAt(judgement, converter.lines.offsetAt(position), (kind) =>
      room.documents
        .records()
        .filter((id) => id.includes(`.${kind}.y`))
        .map((id) => pathFrom(opened.id, id)),
    );
    const trials = judgement.project ? await tryAll(found, judgement, room, cancelled) : new Map();
    if (cancelled.isCancellationRequested) return null;
    const version = room.documents.get(opened.id)?.version ?? 0;
    listed = { uri, version, judgement };
    return {
      isIncomplete: false,
      items: inOrder(found, trials).map((one, rank) =>
        toItem(one, rank, trials, { uri, version }, converter, room),
      ),
    };
  });

  connection.onCompletionResolve((item) => {
    const data = item.data as TrialData | undefined;
    if (!data || !listed || listed.uri !== data.uri || listed.version !== data.version) return item;
    return { ...item, ...shown(tried(listed.judgement, data.span, data.text, room)) };
  });
}

/** Tries one value after the other; between two of them messages get in, and the client may change its mind. */
async function tryAll(
  found: readonly Completion[],
  judgement: Judgement,
  room: Room,
  cancelled: CancellationToken,
): Promise<Map<Completion, Trial>> {
  const trials = new Map<Completion, Trial>();
  const end = performance.now() + trialMilliseconds;
  const passes = (one: Completion) => passedAmong(trials).has(one);
  for (const one of bestFirst(
    found.filter(({ isTriable }) => isTriable),
    passes,
  )) {
    const isLate = performance.now() > end && trials.size >= leastTrials;
    if (cancelled.isCancellationRequested || isLate) break;
    trials.set(one, tried(judgement, one.span, one.insert, room));
    await new Promise((resolve) => setImmediate(resolve));
  }
  return trials;
}

function passedAmong(trials: ReadonlyMap<Completion, Trial>): Set<Completion> {
  return new Set([...passing([...trials].map(([one, trial]) => ({ one, trial })))].map(({ one }) => one));
}

function tried({ record }: Judgement, span: Span, text: string, { desk }: Room): Trial {
  return tryValue(record, span, text, desk.shelf, desk.checkOptions);
}

/** By rank; of what was tried, what passes comes first, then what is larger than that, then what fails. */
function inOrder(found: readonly Completion[], trials: ReadonlyMap<Completion, Trial>): Completion[] {
  const passed = passedAmong(trials);
  const smallest = found.findIndex((one) => passed.has(one));
  const place = (one: Completion) => {
    if (passed.has(one)) return 0;
    return trials.has(one) || found.indexOf(one) < smallest ? 2 : 1;
  };
  return found.toSorted((a, b) => a.rank - b.rank || place(a) - place(b));
}

function toItem(
  one: Completion,
  rank: number,
  trials: ReadonlyMap<Completion, Trial>,
  document: Pick<TrialData, "uri" | "version">,
  converter: Converter,
  { client }: Room,
): CompletionItem {
  const { label, insert, snippet, detail, documentation, filter, span, goesOn } = one;
  const trial = trials.get(one);
  const isSnippet = snippet !== undefined && client.takesSnippets;
  const newText = isSnippet ? snippet : insert;
  return {
    label,
    kind: kinds[one.kind],
    ...(detail && { detail }),
    ...(documentation && { documentation: { kind: "markdown", value: documentation } }),
    ...(trial && shown(trial)),
    sortText: String(rank).padStart(4, "0"),
    ...(filter !== undefined && { filterText: filter }),
    insertTextFormat: isSnippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    ...(newText.includes("\n") && { insertTextMode: InsertTextMode.asIs }),
    textEdit: { range: converter.range(span), newText },
    ...(rank === 0 && trial && { preselect: true }),
    ...(goesOn &&
      client.canSuggest && { command: { title: "Suggest", command: "editor.action.triggerSuggest" } }),
    ...(one.isTriable &&
      !trial && { data: { ...document, span: { start: span.start, end: span.end }, text: insert } }),
  };
}

/** Beside the label there is room for the first few words; all stand where the editor tells more of an item. */
function shown({ words, documentation, own }: Trial): Partial<CompletionItem> {
  const [first = own[0] ?? "nothing is judged here", ...others] = words;
  return {
    detail: [first, ...others].join("; "),
    labelDetails: { description: first },
    ...(documentation !== "" && { documentation: { kind: "markdown", value: documentation } }),
  };
}

/** A path as records write it. */
function pathFrom(from: string, to: string): string {
  return relative(dirname(from), to).split(sep).join(posix.sep);
}
