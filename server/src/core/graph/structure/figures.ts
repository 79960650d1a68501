/** Figures of a record as shapes, and as inputs of what is measured on them. */
import { type Placed, type Shape, shapeProblems } from "../../methods/geometry";
import { inUnit, type Quantity } from "../../quantities";
import type { Figure, Panel, Point as PointRecord } from "../../records/types";
import type { Written } from "../../records/written";
import type { Source } from "../../source";
import { type Operand, written } from "../value";

/** Geometry is derived here, by closed forms for circles, slots, rounded rectangles and polygons. */
export const geometrySource: Source = {
  document: "Plane geometry",
  standing: "derived",
  note: "closed forms, no approximation by polygons",
};

/** Units in which an opening is measured: those of its panel's outline. */
export type Unit = "in" | "mm";

export function unitOf({ outline }: Panel): Unit {
  const size = outline?.width ?? outline?.diameter ?? outline?.length ?? outline?.points?.[0]?.x;
  const imperial: readonly (string | undefined)[] = [undefined, "in", "ft", "mil"];
  return imperial.includes(size?.value.unit) ? "in" : "mm";
}

/** A figure where it lies in its panel; undefined while a size is missing. It may still be no figure. */
export function placedFigure(figure: Figure | undefined, unit: Unit): Placed | undefined {
  const shape = figure && shapeOf(figure, unit);
  const at = figure?.at ? pointOf(figure.at, unit) : { x: 0, y: 0 };
  return shape && at && { shape, at, angle: figure?.angle?.value.si ?? 0 };
}

/** The same, and undefined where it is no figure. */
export function outlineOf(figure: Figure | undefined, unit: Unit): Placed | undefined {
  const placed = placedFigure(figure, unit);
  return placed && shapeProblems(placed.shape).length === 0 ? placed : undefined;
}

export type Operands = Readonly<Record<string, Operand>>;

/** Every size and coordinate of a figure, as inputs of what is measured on it. */
export function figureOperands(figure: Figure, unit: Unit, prefix = ""): Operands {
  const sizes: [string, Written<Quantity> | undefined][] = [
    ["diameter", figure.diameter],
    ["length", figure.length],
    ["width", figure.width],
    ["height", figure.height],
    ["corner radius", figure.cornerRadius],
    ["x", figure.at?.x],
    ["y", figure.at?.y],
    ...(figure.points ?? []).flatMap((point, index): [string, Written<Quantity> | undefined][] => [
      [`point ${index + 1} x`, point.x],
      [`point ${index + 1} y`, point.y],
    ]),
  ];
  const operands: Record<string, Operand> = {};
  for (const [name, size] of sizes) {
    if (size) operands[`${prefix}${name}`] = written(`${prefix}${name}`, size, unit);
  }
  if (figure.angle) operands[`${prefix}angle`] = written(`${prefix}angle`, figure.angle, "deg");
  return operands;
}

/** The shape that a figure describes, in a unit of length; undefined while a size is missing. */
function shapeOf(figure: Figure, unit: Unit): Shape | undefined {
  const size = (length: Written<Quantity>) => inUnit(length.value, unit);
  const { diameter, length, width, height, cornerRadius, points } = figure;
  switch (figure.shape?.value) {
    case "circle":
      return diameter && { kind: "circle", diameter: size(diameter) };
    case "slot":
      return length && width && { kind: "slot", length: size(length), width: size(width) };
    case "rectangle":
      return (
        width &&
        height &&
        cornerRadius && {
          kind: "rectangle",
          width: size(width),
          height: size(height),
          cornerRadius: size(cornerRadius),
        }
      );
    case "polygon": {
      const corners = points?.map((point) => pointOf(point, unit));
      if (!corners?.every((corner) => corner !== undefined)) return undefined;
      return { kind: "polygon", points: corners };
    }
    default:
      return undefined;
  }
}

/** A point in a unit of length; undefined while a coordinate is missing. */
export function pointOf({ x, y }: PointRecord, unit: Unit): { x: number; y: number } | undefined {
  return x && y && { x: inUnit(x.value, unit), y: inUnit(y.value, unit) };
}
