/** What cutting an opening takes out of the aircraft, and what its reinforcement adds. */
import { area, perimeter } from "../../methods/geometry";
import type { UnitSymbol } from "../../quantities";
import type { Place } from "../../records/written";
import type { CutoutResult } from "../openings";
import { counted } from "../recorded";
import { derive, derived, type Keep, type Operand, type Value, type ValueUnit, written } from "../value";
import type { FoundItems } from "../weights/changed-items";
import { figureOperands, unitOf } from "./figures";
import type { ReinforcementResult } from "./reinforcement";

/** One thing for the weights: metal cut out, or a reinforcement with its fasteners put on. */
export interface SheetChange {
  readonly opening: CutoutResult;
  readonly sense: "added" | "removed";
  /** Where the install record names it. */
  readonly place: Place;
  /** In the unit that was asked for; undefined while a density, a thickness or a fastener's weight is not known. */
  readonly weight: Value | undefined;
  /** Arm, butt line and water line of the panel, as operands in the unit that was asked for. */
  readonly arm: Operand;
  readonly buttLine: Operand;
  readonly waterLine: Operand;
}

interface Units {
  readonly weight: UnitSymbol<"mass">;
  readonly arm: UnitSymbol<"length">;
}

/** What one opening changes. A panel without a place changes weights that nobody can place. */
export function sheetChanges(
  opening: CutoutResult,
  reinforced: ReinforcementResult | undefined,
  units: Units,
  keep: Keep,
): SheetChange[] {
  const { cutout, panel } = opening;
  const at = {
    arm: written(`arm of panel ${panel.id?.value}`, panel.position?.arm, units.arm),
    buttLine: written(`butt line of panel ${panel.id?.value}`, panel.position?.buttLine, units.arm),
    waterLine: written(`water line of panel ${panel.id?.value}`, panel.position?.waterLine, units.arm),
  };
  const removed: SheetChange = {
    opening,
    sense: "removed",
    place: (cutout.id ?? cutout).place,
    weight: keep(removedWeight(opening, units)),
    ...at,
  };
  if (!reinforced) return [removed];
  const added: SheetChange = {
    opening,
    sense: "added",
    place: reinforced.reinforcement.place,
    weight: keep(addedWeight(reinforced, units, keep)),
    ...at,
  };
  return [removed, added];
}

/**
 * The changes as items of the weights: those whose weight and place are both known, for a record says neither of
 * every panel. A reinforcement that can't be weighed here is listed among the added items by whoever weighs it.
 */
export function sheetItems(changes: readonly SheetChange[]): FoundItems {
  const items = changes.flatMap(({ opening: { id }, sense, place, weight, arm, buttLine, waterLine }) => {
    if (!weight || !arm) return [];
    const what = sense === "removed" ? "sheet" : "reinforcement";
    return [
      {
        subject: { kind: "cutout", id: `${id} ${what}` },
        sense,
        place,
        weight: derived(`weight of the ${what} of ${id}`, weight),
        arm,
        buttLine,
        waterLine,
      } as const,
    ];
  });
  return { items, isWhole: true };
}

/** Sheet of an area and a thickness as a weight: each formula holds for the units of its operands. */
function sheetFormula(unit: "in" | "mm", weight: UnitSymbol<"mass">) {
  const density: UnitSymbol<"density"> = weight === "lb" ? "lb/in3" : "kg/m3";
  const factor =
    weight === "lb" ? (unit === "in" ? undefined : 1 / 16387.064) : unit === "in" ? 0.000016387064 : 1e-9;
  return { density, factor, text: factor === undefined ? "A * t * rho" : `A * t * rho * ${factor}` };
}

function removedWeight({ id, area: cut, panel }: CutoutResult, units: Units): Value | undefined {
  const unit = unitOf(panel);
  const { density, factor = 1, text } = sheetFormula(unit, units.weight);
  return derive({
    subject: { kind: "cutout", id },
    quantity: "weight-removed",
    unit: units.weight,
    formula: text,
    operands: {
      A: derived("area of the opening", cut),
      t: written("thickness of the panel", panel.thickness, unit),
      rho: written("density of the panel", panel.density, density),
    },
    compute: ({ A, t, rho }) => A * t * rho * factor,
  });
}

function addedWeight(
  { opening, reinforcement, outline }: ReinforcementResult,
  units: Units,
  keep: Keep,
): Value | undefined {
  const unit = unitOf(opening.panel);
  const subject = { kind: "cutout", id: opening.id } as const;
  const { density, factor = 1, text } = sheetFormula(unit, units.weight);
  const areaUnit: ValueUnit = unit === "in" ? "in2" : "mm2";
  const ring = written("width of the ring", reinforcement.width, unit);
  const { shape } = opening.placed;
  const A = keep(
    outline
      ? derive({
          subject,
          quantity: "reinforcement-area",
          unit: areaUnit,
          method: "area of the doubler's outline less that of the opening",
          operands: {
            ...figureOperands(reinforcement.outline!, unit, "doubler "),
            A: derived("area of the opening", opening.area),
          },
          compute: (n) => area(outline.shape) - n.A!,
        })
      : derive({
          subject,
          quantity: "reinforcement-area",
          unit: areaUnit,
          method: "area between the opening's outline and the ring's own",
          operands: { ...figureOperands(opening.cutout.opening!, unit), w: ring },
          // Grown by w, a convex outline of length P covers P w + pi w2 more; a polygon may be concave.
          compute: (n) =>
            shape.kind === "polygon" ? Number.NaN : perimeter(shape) * n.w! + Math.PI * n.w! ** 2,
        }),
  );
  const fasteners = reinforcement.fasteners;
  const total = counted("fasteners in all", fasteners?.total);
  const perSide = counted("fasteners on each side", fasteners?.countPerSide);
  return derive({
    subject,
    quantity: "reinforcement-weight",
    unit: units.weight,
    formula: `${text} + ${total ? "n" : "2 * n"} * w`,
    operands: {
      A: derived("area of the reinforcement", A),
      t: written("thickness of the reinforcement", reinforcement.thickness, unit),
      rho: written("density of the reinforcement", reinforcement.density, density),
      n: total ?? perSide,
      w: written("weight of one fastener", fasteners?.weightEach, units.weight),
    },
    compute: ({ A, t, rho, n, w }) => A * t * rho * factor + (total ? n : 2 * n) * w,
  });
}
