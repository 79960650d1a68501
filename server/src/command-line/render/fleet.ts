import type { Severity } from "../../core/findings/finding";
import { showShare } from "../../core/views/calculation";
import { isOpen, type LeastMargins, type RecordReport } from "../record-report";
import { table, wrap } from "./layout";

/** What the table of installs shows of one record; it outlives the record's findings. */
export interface FleetLine {
  readonly path: string;
  readonly open: Readonly<Record<Severity, number>>;
  readonly least: LeastMargins;
}

/** Undefined for what is no install record. */
export function fleetLine({ path, findings, least }: RecordReport): FleetLine | undefined {
  if (!least) return undefined;
  const open = { error: 0, warning: 0, information: 0 };
  for (const finding of findings) if (isOpen(finding)) open[finding.severity]++;
  return { path, open, least };
}

/** More installs than these are no table that anybody reads. */
const mostLines = 200;

/** The installs of a check side by side, the worst first; empty where there are fewer than two. */
export function renderFleet(lines: readonly FleetLine[], width: number): string {
  if (lines.length < 2) return "";
  const shown = lines.toSorted(byWorst).slice(0, mostLines);
  const numbers = shown.map(({ open, least }) => [
    String(open.error),
    String(open.warning),
    showShare(least.electrical ?? undefined) || "-",
    showShare(least.cg ?? undefined) || "-",
  ]);
  const head = ["install", "errors", "warnings", "electrical", "CG"];
  const room = width - head.slice(1).join("  ").length - 2;
  const names = shown.map(({ path }) => shortened(path.replace(/\.install\.ya?ml$/, ""), room));
  const body = table(
    head,
    numbers.map((cells, at) => [names[at]!, ...cells]),
  );
  const rest = lines.length > shown.length ? `${lines.length - shown.length} more installs.\n` : "";
  const legend =
    "electrical: least share left of any limit of current or voltage; CG: least distance to the envelope's sides, as a share of its width.";
  return `${body}\n${rest}${wrap(legend, width)}\n\n`;
}

function byWorst(a: FleetLine, b: FleetLine): number {
  return b.open.error - a.open.error || b.open.warning - a.open.warning;
}

/** The end of a path says more than its beginning. */
function shortened(name: string, room: number): string {
  return name.length <= room ? name : `...${name.slice(name.length - room + 3)}`;
}
