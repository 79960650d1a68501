/** What the rules of mounts have in common: a load of one direction beside a strength, and a larger fastener. */
import { type Assessment, holds } from "../../findings/finding";
import { mountsOf } from "../../graph/derivations";
import type { MountCase, MountResult } from "../../graph/mounts";
import type { Value } from "../../graph/value";
import type { Project } from "../../project";
import { inUnit } from "../../quantities";
import { fastenerDiameters } from "../../tables/fastener-strengths";
import type { LoadDirection } from "../../tables/load-factors";
import { type Remedy, rewrite } from "../rule";

/** What a mount's load of one direction says in a sentence. */
export type LoadFacts = {
  readonly component: string;
  readonly direction: LoadDirection;
  readonly value: number;
  readonly limit: number;
};

/** Holds a value of each direction of each mount against its limit. */
export function* holdCases(
  rule: string,
  project: Project,
  pick: (one: MountCase) => Value | undefined,
  strengthOf: (mount: MountResult) => Value | undefined,
): Iterable<Assessment> {
  for (const mount of mountsOf(project).mounts) {
    const limit = strengthOf(mount);
    for (const one of mount.cases) {
      const value = pick(one);
      if (!value || !limit) continue;
      yield {
        rule,
        subject: value.subject,
        place: placeOf(mount),
        value,
        limit,
        sense: "at-most",
        holds: holds(value.value, "at-most", limit.value),
        facts: {
          component: mount.id,
          direction: one.direction,
          value: value.value,
          limit: limit.value,
        } satisfies LoadFacts,
        related: [],
      };
    }
  }
}

/** Where a finding about a mount's fastener points. */
export function placeOf({ mount }: MountResult) {
  return (mount.fastener?.diameter ?? mount.fastener ?? mount).place;
}

/** "under its load forward", "under its load to the side". */
export function loadWords(direction: LoadDirection): string {
  return direction === "side" ? "to the side" : direction;
}

/** The next sizes of the mount's kind of fastener. A strength that is recorded belongs to the old size. */
export function* largerFasteners({ subject }: Assessment, project: Project): Iterable<Remedy> {
  const fastener = mountsOf(project).mounts.find(({ id }) => id === subject.id)?.mount.fastener;
  if (!fastener?.kind || !fastener.diameter || fastener.shear || fastener.tension) return;
  const now = inUnit(fastener.diameter.value, "in");
  for (const diameter of fastenerDiameters(fastener.kind.value)) {
    if (diameter <= now * 1.05) continue;
    const text = `${fraction(diameter)} in`;
    yield rewrite(`Fasten ${subject.id} with ${text} fasteners`, fastener.diameter.place, text);
  }
}

/** Diameters are halves, quarters ... of an inch. */
function fraction(inches: number): string {
  let [over, under] = [Math.round(inches * 32), 32];
  while (over % 2 === 0 && under > 1) [over, under] = [over / 2, under / 2];
  return under === 1 ? String(over) : `${over}/${under}`;
}
