import { nearest } from "../../nearest";
import type { Place } from "../../records/written";
import { type Remedy, rewrite } from "../rule";

/** Each word that a slip may have been, as an alternative to the others. */
export function* meant(word: string, known: Iterable<string>, place: Place): Iterable<Remedy> {
  for (const guess of nearest(word, known)) yield rewrite(`Write ${guess}`, place, guess, guess);
}
