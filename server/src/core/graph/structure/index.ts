/**
 * What openings do to the structure around them: the width that they take out of its load, what reinforces them,
 * the stress at their edges, stiffeners beside them, and the weight that goes and comes.
 */
import { relation } from "../../methods/geometry";
import { none } from "../../none";
import type { Project } from "../../project";
import type { CutoutResult, Openings } from "../openings";
import { Recurring } from "../remember";
import type { Keep } from "../value";
import { balanceUnits } from "../weights/balance-units";
import { loadPathOf } from "./load-path";
import { deriveReinforcement, type ReinforcementResult } from "./reinforcement";
import { type SheetChange, sheetChanges } from "./sheet-weights";
import { type StiffenerResult, stiffenersBy } from "./stiffeners";
import { type StressResult, stressAt } from "./stress";

export interface Structure {
  readonly openings: readonly OpeningStructure[];
  /** Doublers that lie over an opening other than their own. */
  readonly covered: readonly { readonly by: ReinforcementResult; readonly opening: CutoutResult }[];
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
export function deriveStructure({ airframe }: Project, { cutouts }: Openings, keepValue: Keep): Structure {
  const units = balanceUnits(airframe);
  const openings = cutouts.map((opening) => {
    const others = opening.panel.load?.force ? othersIn(cutouts, opening) : none;
    return known.recall(opening, [units, ...others], keepValue, (keep): OpeningStructure => {
      const path = loadPathOf(opening, keep);
      const { reinforcement } = opening.cutout;
      const reinforced = reinforcement && deriveReinforcement(opening, reinforcement, path, keep);
      return {
        opening,
        reinforced,
        stiffeners: stiffenersBy(opening, keep),
        stress: stressAt(opening, others, path, keep),
        changes: sheetChanges(opening, reinforced, units, keep),
      };
    });
  });
  return { openings, covered: coveredOpenings(openings) };
}

/** The other openings of its panel. */
function othersIn(cutouts: readonly CutoutResult[], opening: CutoutResult): readonly CutoutResult[] {
  return cutouts.filter((one) => one !== opening && one.panel === opening.panel);
}

function coveredOpenings(openings: readonly OpeningStructure[]): Structure["covered"] {
  return openings.flatMap(({ reinforced }) => {
    const outline = reinforced?.outline;
    if (!outline) return [];
    return openings.flatMap(({ opening }) =>
      opening !== reinforced.opening &&
      opening.panel === reinforced.opening.panel &&
      relation(outline, opening.placed).kind === "overlapping"
        ? [{ by: reinforced, opening }]
        : [],
    );
  });
}

const known = new Recurring<CutoutResult, OpeningStructure>();
