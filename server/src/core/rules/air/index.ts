import type { Rule } from "../rule";

/** Rules of air through openings and ducts, by id. */
export const airRules: readonly Rule[] = [];
