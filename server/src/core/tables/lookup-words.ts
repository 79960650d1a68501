import { formatNumber } from "../quantities";
import type { CoverageGap } from "./lookup";
import { gaugeName } from "./standard-ratings";

/** A gap in words: what was asked, and what the table holds. */
export function coverageWords({ quantity, asked, unit, covers, given }: CoverageGap): string {
  const show = (value: number | string) =>
    typeof value === "string"
      ? value
      : quantity === "gauge"
        ? `${gaugeName(value)} AWG`
        : `${formatNumber(value)}${unit ? ` ${unit}` : ""}`;
  const held =
    covers.kind === "range"
      ? `${show(covers.from)} to ${show(covers.to)}`
      : covers.values.length > 8
        ? `${show(covers.values[0]!)} to ${show(covers.values.at(-1)!)}`
        : covers.values.map(show).join(", ");
  return `${quantity} ${show(asked)}, the table holds ${held}${given ? ` (${given})` : ""}`;
}
