/**
 * What openings do to the structure around them: the width that they take out of its load, what reinforces them,
 * the stress at their edges, stiffeners beside them, and the weight that goes and comes.
 */
import type { Project } from "../../project";
import { balanceUnits } from "../balance-units";
import type { CutoutResult, Openings } from "../openings";
import { Memory } from "../remember";
import { keeper, type Value } from "../value";
import { loadPathOf } from "./load-path";
import { ReinforcementDerivation, type ReinforcementResult } from "./reinforcement";
import { type SheetChange, sheetChanges } from "./sheet-weights";
import { type StiffenerResult, stiffenersBy } from "./stiffeners";
import { type StressResult, stressAt } from "./stress";

export interface Structure {
  readonly openings: readonly OpeningStructure[];
  readonly values: readonly Value[];
}

/** What is derived of one opening. */
export interface OpeningStructure {
  readonly opening: CutoutResult;
  readonly reinforced: ReinforcementResult | undefined;
  readonly stiffeners: readonly StiffenerResult[];
  /** Undefined where the panel records no force. */
  readonly stress: StressResult | undefined;
  /** What it does to the aircraft's weight, in the units of its empty weight statement. */
  readonly changes: readonly SheetChange[];
}

/** Pure; an opening is derived again only when its own measures are. */
export function deriveStructure({ airframe }: Project, { cutouts }: Openings): Structure {
  const { keep: keepValue, list } = keeper();
  const units = balanceUnits(airframe?.empty);
  const openings = cutouts.map((opening) =>
    known.recall(opening, opening.panel, [units], keepValue, (keep): OpeningStructure => {
      const path = loadPathOf(opening, keep);
      const { reinforcement } = opening.cutout;
      const reinforced =
        reinforcement && new ReinforcementDerivation(opening, reinforcement, path, keep).run();
      return {
        opening,
        reinforced,
        stiffeners: stiffenersBy(opening, keep),
        stress: stressAt(opening, path, keep),
        changes: sheetChanges(opening, reinforced, units, keep),
      };
    }),
  );
  return { openings, values: list() };
}

const known = new Memory<CutoutResult, CutoutResult["panel"], OpeningStructure>();
