import { editDistance } from "./quantities/edit-distance";

/** Longer words are not compared, so that a text of any length takes next to no time. */
const longestWord = 64;

/** More guesses than this are none. */
const mostGuesses = 3;

/**
 * The candidates that a word is most likely a slip of: those at the least edit distance, as long as no more
 * than a third of the letters differ. Case counts for nothing. At most three; none where nothing is near.
 */
export function nearest(word: string, candidates: Iterable<string>): string[] {
  if (word.length > longestWord) return [];
  const folded = word.toLowerCase();
  let least = Number.POSITIVE_INFINITY;
  let guesses: string[] = [];
  for (const candidate of candidates) {
    const allowed = Math.floor(Math.max(word.length, candidate.length) / 3);
    if (candidate.length > longestWord || Math.abs(candidate.length - word.length) > allowed) continue;
    const distance = editDistance(folded, candidate.toLowerCase());
    if (distance > allowed || distance > least) continue;
    if (distance < least) guesses = [];
    least = distance;
    guesses.push(candidate);
  }
  return guesses.slice(0, mostGuesses);
}
