import type { Acceptance } from "../findings/finding";

/** "accepted until 2027-03-31 by stamp HM 7 (HM-0412-DEV-3 rev A): the rack runs from 22 V". */
export function acceptedWords({ until, by, reference, reason }: Omit<Acceptance, "place">): string {
  return `accepted until ${until} by ${by} (${reference}): ${reason}`;
}
