/** Limits that hold for every line, drain and hole alike. */
import type { Source } from "../../source";
import { covered } from "../../tables/lookup";
import type { QuantityName } from "../quantity-names";
import { assumed, derive, type Subject, tabled } from "../value";

/** A share as a limit in per cent. */
export function percentLimit(subject: Subject, quantity: QuantityName, share: number, source: Source) {
  return derive({
    subject,
    quantity,
    unit: "%",
    formula: "limit",
    operands: { limit: tabled("limit", covered(100 * share, source), "%", []) },
    compute: ({ limit }) => limit,
    sources: [source],
  });
}

/** A length as a limit, in in; nothing is looked up for it. */
export function plainLimit(
  subject: Subject,
  quantity: QuantityName,
  inches: number,
  source: Source,
  words: string,
) {
  return derive({
    subject,
    quantity,
    unit: "in",
    formula: "limit",
    operands: { limit: { ...assumed("limit", inches, "in", words)!, source } },
    compute: ({ limit }) => limit,
    sources: [source],
  });
}
