import type { Rule } from "../rule";
import { deviationDateFaulty } from "./deviation-date-faulty";
import { deviationExceeded } from "./deviation-exceeded";
import { deviationExpired } from "./deviation-expired";
import { deviationRuleUnknown } from "./deviation-rule-unknown";
import { deviationTooBroad } from "./deviation-too-broad";
import { deviationUnused } from "./deviation-unused";

/** Rules of accepted deviations, by id. They are raised where the deviations are applied, in core/deviations. */
export const deviationRules: readonly Rule[] = [
  deviationDateFaulty,
  deviationExceeded,
  deviationExpired,
  deviationRuleUnknown,
  deviationTooBroad,
  deviationUnused,
];
