/** Words that the messages of all rules share. */
import { nearest } from "../nearest";
import type { IdKind } from "../records/schema";
import type { Condition } from "../records/types";
import type { Whereabouts } from "../records/whereabouts";

/** Longer texts are cut in a message: it has to stay one line. */
const longestQuote = 40;

/** Longer lists are cut in a message. */
const longestList = 8;

const kindNames: Readonly<Record<IdKind, string>> = {
  "added-item": "added item",
  "air-path": "air path",
  ballast: "ballast",
  bond: "bond",
  bracket: "bracket",
  bundle: "bundle",
  bus: "bus",
  component: "component",
  condition: "condition",
  contact: "contact",
  cutout: "cutout",
  device: "device",
  duct: "duct",
  "duct-outlet": "duct outlet",
  "duct-segment": "duct segment",
  envelope: "envelope",
  equipment: "equipment",
  "existing-load": "existing load",
  fan: "fan",
  feeder: "feeder",
  ground: "ground point",
  junction: "junction",
  "keep-out": "keep-out",
  loading: "loading",
  panel: "panel",
  placard: "placard",
  protection: "protection",
  seat: "seat",
  shelf: "shelf",
  scale: "scale",
  source: "source",
  station: "station",
  "weighing-item": "weighing item",
  wire: "wire",
  drain: "drain",
  fitting: "flare nut",
  glazing: "glazing",
  line: "line",
  "pass-through": "pass-through",
  space: "space",
};

/** What a kind of thing is called: "ground point". */
export function kindName(kind: IdKind): string {
  return kindNames[kind];
}

/** "a", "a or b", "a, b or c"; a long list ends in a count of the rest. */
export function listWords(words: readonly string[], conjunction: "and" | "or"): string {
  if (words.length > longestList + 1) {
    return `${words.slice(0, longestList).join(", ")} ${conjunction} ${words.length - longestList} more`;
  }
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} ${conjunction} ${last}`;
}

/** A text from a record, in quotes, on one line, and cut where it is long. */
export function quote(text: string): string {
  return `'${shorten(text)}'`;
}

/** A text from a record, on one line, without signs that nobody sees, and cut where it is long. */
export function shorten(text: string): string {
  const line = text
    .slice(0, 4 * longestQuote)
    .replace(/[\s\p{C}]+/gu, " ")
    .trim();
  const letters = [...line];
  return letters.length > longestQuote ? `${letters.slice(0, longestQuote - 1).join("")}…` : line;
}

/** "wire P101A8", "'opening' of cutout C1", "'arm' of entry 2 in 'placement'", "this record". */
export function nameOf({ ownerKind, ownerId, path }: Whereabouts): string {
  const owner = ownerKind && ownerId !== undefined ? `${kindName(ownerKind)} ${shorten(ownerId)}` : undefined;
  const steps = path.map((step) => (isEntry(step) ? `entry ${step.slice(1)}` : quote(step)));
  return (
    path.reduce(
      (name, step, index) =>
        name === undefined ? steps[index]! : `${steps[index]} ${isEntry(step) ? "in" : "of"} ${name}`,
      owner,
    ) ?? "this record"
  );
}

/** The key that a value stands behind, or undefined for an entry of a list. */
export function keyOf({ path }: Whereabouts): string | undefined {
  const last = path.at(-1);
  return last !== undefined && !isEntry(last) ? last : undefined;
}

/** With a capital at its start. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "a wire", "an envelope". */
export function withArticle(noun: string): string {
  return `${/^[aeiou]/i.test(noun) ? "an" : "a"} ${noun}`;
}

/** "Did you mean 'gauge'?", or undefined where no candidate is near. */
export function didYouMean(word: string, candidates: Iterable<string>): string | undefined {
  const guesses = nearest(word, candidates).map(quote);
  return guesses.length > 0 ? `Did you mean ${listWords(guesses, "or")}?` : undefined;
}

/** What a key stands for, in the words of its schema; empty where it says nothing. */
export function meaningWords(meaning: string | undefined): string {
  return meaning === undefined ? "" : ` Meaning: ${meaning}`;
}

/** Says how many findings a cap left out behind this one; empty if none. */
export function omittedWords(omitted: number | undefined): string {
  return omitted ? ` ${omitted} more of these are not shown.` : "";
}

function isEntry(step: string): boolean {
  return /^#\d+$/.test(step);
}

/** What a condition is called in a message. */
export function conditionName({ id }: Condition): string {
  return id?.value ?? "a condition";
}
