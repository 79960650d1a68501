/** What the tool promises of its speed. A benchmark holds itself against it; no test does. */

const keystroke = { lines: 1000, milliseconds: 25 };
const coldStartMultiple = 3;

/**
 * @returns for each budget that was measured: what is within `limit`, in `unit`
 */
export function heldAgainstBudgets({ edits, coldStart }) {
  const typed = edits?.find(({ asked }) => asked === keystroke.lines);
  return [
    {
      name: `keystroke in ${keystroke.lines} lines, p95 beyond the floor`,
      value: typed?.beyondFloor.p95,
      limit: keystroke.milliseconds,
      unit: "ms",
    },
    {
      name: "cold start, --version",
      value: coldStart?.versionMultiple,
      limit: coldStartMultiple,
      unit: "x node -e 0",
    },
    {
      name: "cold start, check",
      value: coldStart?.checkMultiple,
      limit: coldStartMultiple,
      unit: "x node -e 0",
    },
  ]
    .filter(({ value }) => value !== undefined)
    .map((budget) => ({ ...budget, isWithin: budget.value <= budget.limit }));
}
