/**
 * Where a published number or formula comes from.
 *
 * `standing` says how far the text can be trusted, and every view shows it:
 * - `published`: read in the text of the document named
 * - `secondary`: figure points or values read by a third party, cross-checked
 * - `derived`: computed here from published values or from physics
 * - `memory`: the document's text was not found; such a limit may warn but never fails a record
 * - `common-practice`: a habit of the trade without a published source
 * - `record`: the number was written in a record (maker's or shop's data)
 */
export interface Source {
  readonly document: string;
  readonly edition?: string;
  /** Table, figure or paragraph, as the document numbers it. */
  readonly at?: string;
  readonly standing: Standing;
  readonly note?: string;
}

export type Standing = "published" | "secondary" | "derived" | "memory" | "common-practice" | "record";

/** One line for a person: document, edition, table, and what kind of evidence it is. */
export function citeSource(source: Source): string {
  const parts = [source.document, source.edition, source.at].filter((part) => part !== undefined);
  const standing = standingWords[source.standing];
  return parts.join(", ") + (standing ? ` (${standing})` : "") + (source.note ? `; ${source.note}` : "");
}

const standingWords: Record<Standing, string> = {
  published: "",
  secondary: "read by a third party",
  derived: "derived",
  memory: "from memory, not checked against the text",
  "common-practice": "common practice, no source",
  record: "from the record",
};

/** Many sources, a line for each document: its places one after the other, without the notes. */
export function citeTogether(sources: readonly Source[]): string[] {
  const places = new Map<string, Set<string>>();
  for (const { document, edition, at, standing } of sources) {
    const name = edition === undefined ? document : `${document} (${edition})`;
    const evidence = standingWords[standing];
    const place = [at ?? "", evidence && `(${evidence})`].filter((part) => part !== "").join(" ");
    const known = places.get(name) ?? new Set();
    places.set(name, known.add(place));
  }
  return [...places].map(([name, known]) => {
    const list = [...known].filter((place) => place !== "").join("; ");
    if (list === "" || list.startsWith("(")) return `${name} ${list}`.trimEnd();
    return `${name}: ${list}`;
  });
}

/** True for what no document was read for: such a limit warns and does not fail a record. */
export function isStandIn(source: Source): boolean {
  return source.standing === "memory" || source.standing === "common-practice";
}
