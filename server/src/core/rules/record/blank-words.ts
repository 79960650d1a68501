import type { RecordFacts } from "../../records/problem-facts";
import type { Message } from "../rule";
import { keyOf, meaningWords, nameOf, sentence } from "../wording";

/** What is said of a key with nothing behind it, finished record or not. */
export function saidOfBlank(facts: RecordFacts["value-missing"]): Message {
  const { meaning, example, isRequired, ...where } = facts;
  return {
    what: `${sentence(nameOf(where))} has no value.`,
    todo: completion(keyOf(where), example, isRequired) + meaningWords(meaning),
  };
}

function completion(key: string | undefined, example: string | undefined, isRequired: boolean): string {
  if (key === undefined) return "Write the entry, or take its dash out.";
  if (example !== undefined) return `Write it, such as ${key}: ${example}.`;
  return isRequired ? "Write it: it can't be left out." : "Write it, or take the key out.";
}
