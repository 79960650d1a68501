/** What the two rules of the envelope's sides have in common: they differ in the side, and in nothing else. */
import type { Assessment, Problem } from "../../findings/finding";
import type { ChangedItem } from "../../graph/changed-items";
import { weightsOf } from "../../graph/derivations";
import type { LoadingResult, LoadingState } from "../../graph/loadings";
import { armOf, moment } from "../../methods/balance";
import type { LimitSide } from "../../methods/envelope";
import type { Project } from "../../project";
import {
  convert,
  formatApart,
  formatMeasure,
  inUnit,
  roundDown,
  roundUp,
  type UnitSymbol,
} from "../../quantities";
import { isAtMost } from "../../rounding";
import { type Message, type Remedy, rewrite } from "../rule";
import { placeInAirframe } from "./anchors";
import { type Before, beforeWords, loadsOf, onBoardWords } from "./loading-words";

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
  /** Of a limit that is not kept: the arm at which that item alone would keep it, rounded the safe way. */
  readonly moveTo?: number | undefined;
  readonly moveUnit?: Arm | undefined;
};

/** Holds the centre of gravity of each loading against one side of its envelope. */
export function* judgeCg(rule: string, side: LimitSide, project: Project): Iterable<Assessment | Problem> {
  const { loadings, change, units } = weightsOf(project);
  for (const result of loadings) {
    const { weight, cg, [side]: limit } = result.after;
    const isHeld = isKept(side, result.after);
    const past = beyond(side, result.after);
    if (!weight || !cg || !limit || isHeld === undefined || past === undefined) continue;
    const item = strongestPull(change.items, limit.value, side);
    const move = !isHeld && item && moveThatKeeps(side, item, result.after, project, units.arm);
    yield {
      rule,
      subject: { kind: "loading", id: result.id },
      ...whereToPoint(result, item, project),
      value: cg,
      limit,
      sense: side === "aft" ? "at-most" : "at-least",
      holds: isHeld,
      scale: { of: widthOf(result.after) },
      facts: {
        loading: result.id,
        loads: loadsOf(result),
        cg: cg.value,
        limit: limit.value,
        beyond: past,
        unit: units.arm,
        weight: weight.value,
        weightUnit: units.weight,
        wasKept: isKept(side, result.before),
        beforeValue: result.before.cg?.value,
        beforeBeyond: beyond(side, result.before),
        item: item?.subject.id,
        sense: item?.sense,
        ...move,
      } satisfies CgFacts,
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
    todo: `${whatToDo(side, facts)} Or restrict the loading, or carry fixed ballast. ${onBoardWords(loads)}`,
  };
}

function whatToDo(side: LimitSide, { item, sense, moveTo, moveUnit }: CgFacts): string {
  if (item === undefined)
    return `Nothing that the change adds or takes out brings the CG ${side}: correct the loading.`;
  if (sense === "removed") return `Taking out ${item} brings the CG ${side} most: leave it in.`;
  const by = moveTo === undefined ? "" : `, to ${moveTo} ${moveUnit} or further if it alone is moved`;
  return `${item} brings the CG ${side} most: move it ${side === "aft" ? "forward" : "aft"}${by}.`;
}

/** Moves the item of the finding as far as it takes. */
export function* moveItem({ facts, place }: Assessment): Iterable<Remedy> {
  const { item, moveTo, moveUnit } = facts;
  if (moveTo === undefined) return;
  yield rewrite(`Move ${item} to ${moveTo} ${moveUnit}`, place, `${moveTo} ${moveUnit}`);
}

function whereToPoint(
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

/** The item whose moment about an arm is the largest toward one side. */
function strongestPull(items: readonly ChangedItem[], arm: number, side: LimitSide): ChangedItem | undefined {
  const direction = side === "aft" ? 1 : -1;
  let strongest: { readonly item: ChangedItem; readonly pull: number } | undefined;
  for (const item of items) {
    if (!item.weight || !item.arm) continue;
    const weight = item.sense === "added" ? item.weight.value : -item.weight.value;
    const pull = direction * moment({ weight, arm: item.arm.value - arm });
    if (pull > (strongest?.pull ?? 0)) strongest = { item, pull };
  }
  return strongest?.item;
}

/** Steps to which an arm is rounded when one is proposed; none for units that nobody measures an arm in. */
const armSteps: Readonly<Partial<Record<Arm, number>>> = { in: 0.1, ft: 0.01, mm: 1, cm: 0.1, m: 0.001 };

/**
 * Where the item alone would have to be for the CG to keep the limit, as its weight stays and so does the limit.
 * Nothing for an arm outside everything that the records place: no aircraft may be there.
 */
function moveThatKeeps(
  side: LimitSide,
  item: ChangedItem,
  { weight, cg, [side]: limit }: LoadingState,
  project: Project,
  unit: Arm,
): Pick<CgFacts, "moveTo" | "moveUnit"> | undefined {
  if (!item.ownArm || !item.weight || !item.arm || !weight || !cg || !limit) return undefined;
  const distance = armOf(item.weight.value, weight.value * (limit.value - cg.value));
  const moveUnit = item.ownArm.value.unit;
  const step = armSteps[moveUnit];
  if (distance === undefined || step === undefined) return undefined;
  const wanted = convert(item.arm.value + distance, unit, moveUnit, "length");
  const moveTo = side === "aft" ? roundDown(wanted, step) : roundUp(wanted, step);
  const { stations = [], equipment = [] } = project.airframe ?? {};
  const arms = [...stations, ...equipment, { arm: item.ownArm }].flatMap(({ arm }) =>
    arm ? [inUnit(arm.value, moveUnit)] : [],
  );
  const isAboard = arms.some((arm) => arm <= moveTo) && arms.some((arm) => arm >= moveTo);
  return isAboard ? { moveTo, moveUnit } : undefined;
}

/** Distance between the two limits at the loading's weight. */
function widthOf({ forward, aft }: LoadingState): number | undefined {
  return forward && aft && aft.value - forward.value;
}
