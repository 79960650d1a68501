/** What a wire's drop does further up: a load of constant power draws more current, the less voltage reaches it. */
import { holds, type Related } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { drawIn } from "../../graph/electrical/running";
import type { Project } from "../../project";
import { formatMeasure } from "../../quantities";
import type { Condition } from "../../records/types";

/**
 * The wires to look at first, where more is asked of the sources in a condition than they may give: of each load
 * of constant power that loses more voltage than is allowed, the one that drops most.
 */
export function dropCauses(project: Project, condition: Condition): Related[] {
  return electricalOf(project).loads.flatMap(({ path, states }) => {
    const state = states.find((one) => one.condition === condition);
    const wire = state?.worst[0]?.wire;
    if (!state?.drop || !state.limit || !wire?.gauge) return [];
    const isKept = holds(state.drop.value, "at-most", state.limit.value);
    if (isKept || !drawIn(path.component, condition)?.power) return [];
    const lost = formatMeasure(state.drop.value, "V");
    return [{ place: wire.gauge.place, words: `${path.id} loses ${lost} on the way, and draws more for it` }];
  });
}
