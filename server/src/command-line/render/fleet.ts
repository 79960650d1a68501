import type { Judgement } from "../../core/check";
import { type FleetRow, fleetRow, showMargin } from "../../core/views/fleet";
import { table, wrap } from "./layout";

/** The installs among the judgements side by side; empty where there are fewer than two. */
export function renderFleet(
  judgements: readonly Judgement[],
  pathOf: (file: string) => string,
  width: number,
): string {
  const rows = judgements.map(fleetRow).filter((row) => row !== undefined);
  if (rows.length < 2) return "";
  const numbers = rows.map(({ counts, electrical, balance }) => [
    String(counts.error),
    String(counts.warning),
    showMargin(electrical) || "-",
    showMargin(balance) || "-",
  ]);
  const head = ["install", "errors", "warnings", "electrical", "CG"];
  const room = width - head.slice(1).join("  ").length - 2;
  const names = rows.map((row) => shortened(nameOf(row, pathOf), room));
  const body = table(
    head,
    numbers.map((cells, at) => [names[at]!, ...cells]),
  );
  const legend =
    "electrical: least share left of any limit of current or voltage; CG: least distance to the envelope's sides, as a share of its width.";
  return `\n${body}\n${wrap(legend, width)}\n`;
}

function nameOf({ file }: FleetRow, pathOf: (file: string) => string): string {
  return pathOf(file).replace(/\.install\.ya?ml$/, "");
}

/** The end of a path says more than its beginning. */
function shortened(name: string, room: number): string {
  return name.length <= room ? name : `...${name.slice(name.length - room + 3)}`;
}
