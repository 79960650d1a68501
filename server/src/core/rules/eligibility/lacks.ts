/** What the rules of a lack have in common: the aircraft is one that the kit is for, once something is done. */
import type { Problem } from "../../findings/finding";
import { eligibilityOf } from "../../graph/derivations";
import { type GroupResult, lackWords, placeOfAircraft } from "../../graph/eligibility";
import type { Project } from "../../project";
import type { Place } from "../../records/written";
import { listWords, shorten } from "../wording";

export type LackFacts = {
  readonly kit: string;
  readonly serial: string;
  readonly id: string;
  /** Everything that would make the aircraft eligible, this one among it. */
  readonly all: readonly string[];
  /** Other groups that it could come into, each by what it lacks there. */
  readonly otherWays: readonly string[];
};

export function* lacks(
  rule: string,
  project: Project,
  of: (group: GroupResult) => readonly { readonly id: string; readonly place?: Place }[],
): Iterable<Problem> {
  const eligibility = eligibilityOf(project);
  if (!eligibility?.nearest) return;
  const { nearest, otherWays } = eligibility;
  for (const { id, place } of of(nearest)) {
    const facts: LackFacts = {
      kit: project.kit?.kit?.number?.value ?? "",
      serial: project.airframe?.aircraft?.serial?.value ?? "",
      id,
      all: lackWords(nearest),
      otherWays: otherWays.map((way) => listWords(lackWords(way), "and")),
    };
    yield {
      rule,
      place: place ?? placeOfAircraft(project),
      facts,
      related: [{ place: nearest.group.place, words: "what the kit requires" }],
    };
  }
}

/** "MOD-7 and equipment x would make B9-0417 eligible. Another way: MOD-9." */
export function wayWords({ serial, all, otherWays }: LackFacts): string {
  const way = `${listWords(all.map(shorten), "and")} would make ${shorten(serial)} eligible.`;
  return [way, ...otherWays.map((other) => `Another way: ${other}.`)].join(" ");
}
