/** Whether components pass through the panel that they are brought in by. */
import { containment, type Placed, shapeProblems } from "../../methods/geometry";
import type { Panel } from "../../records/types";
import { placedFigure } from "../structure/figures";
import { type NamedPlacement, type Unit, vectorIn } from "./boxes";

export interface PassageResult extends NamedPlacement {
  readonly panel: Panel;
  /** `unknown` where the component has no size, or the panel no clear opening. */
  readonly fits: "yes" | "no" | "unknown";
  /** Its two smaller sides, and the unit that they are in. */
  readonly sides: readonly [number, number] | undefined;
}

/** Undefined where no panel is named. */
export function passageOf(
  named: NamedPlacement,
  panels: readonly Panel[],
  unit: Unit,
): PassageResult | undefined {
  const { placement, component, id } = named;
  const panel = placement.through && panels.find((one) => one.id?.value === placement.through?.value);
  if (!panel) return undefined;
  const { size } = component;
  const sides = size && vectorIn(size.length, size.width, size.height, unit);
  const opening = panel.clearOpening && placedFigure(panel.clearOpening, unit);
  if (!sides || !opening || shapeProblems(opening.shape).length > 0) {
    return { placement, component, id, panel, fits: "unknown", sides: undefined };
  }
  const [a, b] = [sides.x, sides.y, sides.z].sort((one, two) => one - two) as [number, number];
  const fits = passes(opening, a, b) ? "yes" : "no";
  return { placement, component, id, panel, fits, sides: [a, b] };
}

/** Whether a rectangle passes through the middle of an opening, along its axes or across. */
function passes(opening: Placed, a: number, b: number): boolean {
  return [0, Math.PI / 2].some((turn) => {
    const shape = { kind: "rectangle", width: a, height: b, cornerRadius: 0 } as const;
    return (
      containment({ shape, at: middleOf(opening), angle: opening.angle + turn }, opening).kind === "inside"
    );
  });
}

/** The centre of a figure; of a polygon, that of its corners. */
function middleOf({ shape, at, angle }: Placed): { x: number; y: number } {
  if (shape.kind !== "polygon") return at;
  const count = shape.points.length;
  const x = shape.points.reduce((sum, point) => sum + point.x, 0) / count;
  const y = shape.points.reduce((sum, point) => sum + point.y, 0) / count;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: at.x + cos * x - sin * y, y: at.y + sin * x + cos * y };
}
