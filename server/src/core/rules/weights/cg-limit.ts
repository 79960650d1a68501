/** What the two rules of the envelope's sides have in common: they differ in the side, and in nothing else. */
import type { Assessment, Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import type { ChangedItem } from "../../graph/weights/changed-items";
import type { LoadingResult, LoadingState } from "../../graph/weights/loadings";
import type { WhatIf } from "../../graph/weights/permitted-loadings";
import type { LimitSide } from "../../methods/envelope";
import type { Project } from "../../project";
import { formatApart, formatMeasure, type UnitSymbol } from "../../quantities";
import { isAtMost } from "../../rounding";
import { placeInAirframe } from "../link-places";
import type { Message, Remedy } from "../rule";
import { balanceRemedies, type Past, titlesOf } from "./balance-remedies";
import { type Before, beforeWords, loadsOf, onBoardWords, optionWords } from "./loading-words";
import { pullsTo } from "./pull";
import { withOptions } from "./searched-options";

type Arm = UnitSymbol<"length">;

export type CgFacts = Before & {
  readonly loading: string;
  readonly loads: readonly string[];
  readonly cg: number;
  readonly limit: number;
  /** How far past the limit; negative while there is room. The same wherever the datum is. */
  readonly beyond: number;
  readonly unit: Arm;
  readonly weight: number;
  readonly weightUnit: UnitSymbol<"mass">;
  /** The item of the change that brings the CG most to this side; left out where none does. */
  readonly item?: string | undefined;
  readonly sense?: ChangedItem["sense"] | undefined;
  /** What would bring the CG back, each by itself. */
  readonly options: readonly string[];
};

/** Holds the centre of gravity of each loading against one side of its envelope. */
export function* judgeCg(rule: string, side: LimitSide, project: Project): Iterable<Assessment | Problem> {
  const { loadings, change, units } = weightsOf(project);
  for (const result of loadings) {
    const { weight, cg, [side]: limit } = result.after;
    const isHeld = isKept(side, result.after);
    const excess = beyond(side, result.after);
    if (!weight || !cg || !limit || isHeld === undefined || excess === undefined) continue;
    const [item] = pullsTo(change.items, limit.value, side);
    const past = isHeld ? undefined : pastOf(side, result.id, limit.value, project);
    yield {
      rule,
      subject: { kind: "loading", id: result.id },
      ...whereToPoint(result, item, project),
      value: cg,
      limit,
      sense: side === "aft" ? "at-most" : "at-least",
      holds: isHeld,
      scale: { of: widthOf(result.after) },
      facts: withOptions<CgFacts>(
        {
          loading: result.id,
          loads: loadsOf(result),
          cg: cg.value,
          limit: limit.value,
          beyond: excess,
          unit: units.arm,
          weight: weight.value,
          weightUnit: units.weight,
          wasKept: change.items.length > 0 ? isKept(side, result.before) : undefined,
          beforeValue: result.before.cg?.value,
          beforeBeyond: beyond(side, result.before),
          item: item?.subject.id,
          sense: item?.sense,
        },
        past && (() => titlesOf(balanceRemedies(project, past))),
      ),
    };
  }
}

export function sayCg(side: LimitSide, facts: CgFacts): Message {
  const { loading, loads, unit } = facts;
  const [cg, limit] = formatApart(facts.cg, facts.limit);
  return {
    what:
      `Loading ${loading}: CG ${cg} ${unit} is ${formatMeasure(facts.beyond, unit, 3)} ${side} of the limit of ` +
      `${limit} ${unit} at ${formatMeasure(facts.weight, facts.weightUnit)}${beforeWords(facts, unit)}.`,
    todo: `${whatToDo(side, facts)} ${optionWords(facts.options)} ${onBoardWords(loads)}`,
  };
}

function whatToDo(side: LimitSide, { item, sense, wasKept }: CgFacts): string {
  if (item === undefined && wasKept === undefined)
    return "Correct the loading, or the airframe's data where they are wrong.";
  if (item === undefined)
    return `Nothing that the change adds or takes out brings the CG ${side}: correct the loading.`;
  if (sense === "removed") return `Taking out ${item} brings the CG ${side} most: leave it in.`;
  return `${item} brings the CG ${side} most: move it ${side === "aft" ? "forward" : "aft"}.`;
}

/** What may bring the loading back: a move, or ballast. */
export function cgRemedies(
  side: LimitSide,
  { facts, limit }: Assessment,
  project: Project,
): Iterable<Remedy> {
  const past = pastOf(side, String(facts.loading), limit.value, project);
  return past ? balanceRemedies(project, past) : [];
}

/** What keeps the limit at take-off has to keep it while fuel burns, too. */
export function pastOf(side: LimitSide, loading: string, limit: number, project: Project): Past | undefined {
  const phases = weightsOf(project).phases.find((one) => one.loading.id === loading);
  const keepsIf = (what: WhatIf) => {
    const excess = phases?.excessIf(side, what);
    return excess === undefined ? undefined : isAtMost(excess, 0, limit);
  };
  return phases && { side, limit, keepsIf, loads: [] };
}

/** At the item that brings the CG most to that side. */
export function whereToPoint(
  { loading, id }: LoadingResult,
  item: ChangedItem | undefined,
  project: Project,
): Pick<Assessment, "place" | "related"> {
  const place = loading.id?.place ?? loading.place;
  if (!item) return placeInAirframe(project, place, `loading ${id}`);
  return { place: item.ownArm?.place ?? item.place, related: [{ place, words: `loading ${id}` }] };
}

/** Whether one side's limit is kept; undefined while the CG or the limit is not known. */
function isKept(side: LimitSide, { cg, forward, aft }: LoadingState): boolean | undefined {
  const limit = side === "aft" ? aft : forward;
  if (!cg || !limit) return undefined;
  // Arms near the datum are differences of larger ones; the envelope's two sides can't both be near it.
  const scale = Math.max(Math.abs(forward?.value ?? 0), Math.abs(aft?.value ?? 0));
  return side === "aft" ? isAtMost(cg.value, limit.value, scale) : isAtMost(limit.value, cg.value, scale);
}

/** How far the CG is past one side's limit; negative while there is room. */
function beyond(side: LimitSide, { cg, [side]: limit }: LoadingState): number | undefined {
  if (!cg || !limit) return undefined;
  return side === "aft" ? cg.value - limit.value : limit.value - cg.value;
}

/** Distance between the two limits at the loading's weight. */
function widthOf({ forward, aft }: LoadingState): number | undefined {
  return forward && aft && aft.value - forward.value;
}
