/**
 * Hoses and tubes as they are installed: what each may be bent to, held at, filled with and put under, by its
 * maker's limits where the record gives them, else by the published tables; and the holes that they go through.
 */
import type { Project } from "../../project";
import type { Line } from "../../records/types";
import { Memory } from "../remember";
import type { Keep } from "../value";
import { type DrainResult, deriveDrains } from "./drains";
import { LineDerivation, type LineRun } from "./line-run";
import { derivePassThroughs, type PassThroughResult } from "./pass-throughs";

export interface Lines {
  readonly runs: readonly LineRun[];
  readonly passThroughs: readonly PassThroughResult[];
  readonly drains: readonly DrainResult[];
}

/** Pure; what is missing in the record is left out of the result. */
export function deriveLines(project: Project, keep: Keep): Lines {
  const { lines = [] } = project.install;
  const runs = lines.flatMap((line): LineRun[] =>
    line.id ? [remembered.recall(line, line, [], keep, (kept) => new LineDerivation(line, kept).run())] : [],
  );
  return {
    runs,
    passThroughs: derivePassThroughs(project, runs, keep),
    drains: deriveDrains(project, keep),
  };
}

const remembered = new Memory<Line, Line, LineRun>();
