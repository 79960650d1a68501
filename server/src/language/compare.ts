/** The comparison of an open record with a revision of it. The texts of the revision come from the client. */
import { check } from "../core/check";
import { recordKindOf } from "../core/records/schema";
import { RecordShelf } from "../core/shelf";
import { type Comparison, compareJudgements, compareTexts } from "../core/views/comparison";
import { comparisonHtml } from "../core/views/comparison-html";
import { comparisonMarkdown } from "../core/views/comparison-markdown";
import type { Desk } from "./desk";
import type { Documents } from "./documents";

/** What `tailcone/compare` is asked. */
export interface CompareRequest {
  readonly uri: string;
  /** What the revision is called, as the client gives it back in `tailcone/revisionText`. */
  readonly revision: string;
}

/** What `tailcone/revisionText` asks the client; it answers with the text, or null where there was none. */
export interface RevisionTextRequest {
  readonly uri: string;
  readonly revision: string;
}

export interface CompareAnswer {
  /** The revision does not have the record. */
  readonly isNew: boolean;
  readonly html: string;
  readonly markdown: string;
}

/** Null for what is no record. */
export async function compareWithRevision(
  id: string,
  revision: string,
  desk: Desk,
  documents: Documents,
  textOf: (request: RevisionTextRequest) => Promise<string | null>,
): Promise<CompareAnswer | null> {
  const head = desk.judge(id);
  if (!head) return null;
  const texts = new Map<string, string | undefined>();
  const fetch = async (file: string): Promise<void> => {
    if (texts.has(file) || !recordKindOf(file)) return;
    const text = await textOf({ uri: documents.uriOf(file), revision });
    texts.set(file, text ?? undefined);
  };
  const shelf = new RecordShelf({
    resolve: (from, path) => documents.resolve(from, path),
    text: (file) => texts.get(file),
  });
  await fetch(id);
  const record = shelf.load(id);
  const typed = record?.typing.typed;
  const links = typed?.kind === "install" ? [typed.record.airframe, typed.record.kit] : [];
  for (const link of links) {
    const linked = link && "path" in link ? documents.resolve(id, link.path.value) : undefined;
    if (linked !== undefined) await fetch(linked);
  }
  const base = record && check(record, shelf, desk.checkOptions);
  const files = [
    ...new Set([head, base].flatMap((one) => one?.project?.files ?? (one ? [one.record] : []))),
  ].map(({ file }) => file);
  const nameOf = (file: string) =>
    documents.uriOf(file).split("/").slice(-1).map(decodeURIComponent).join("");
  const comparison: Comparison = {
    base: revision,
    head: "now",
    files: [...new Set(files)].flatMap(
      (file) => compareTexts(nameOf(file), shelf.load(file), desk.shelf.load(file)) ?? [],
    ),
    records: [compareJudgements(nameOf(id), base, head)],
  };
  return {
    isNew: record === undefined,
    html: comparisonHtml(comparison),
    markdown: comparisonMarkdown(comparison),
  };
}
