/** Components as boxes in the aircraft, and what their numbers were read from. */
import { minus, plus, sidesWhenUp, turned, type UprightBox, type Vector3 } from "../../methods/solids";
import type { Project } from "../../project";
import { inUnit, type Quantity } from "../../quantities";
import type { Component, Placement, SpacePoint, Spot } from "../../records/types";
import type { Written } from "../../records/written";
import type { Source } from "../../source";
import { attitudeOf } from "../mounts/pattern";
import { type Operand, written } from "../value";

/** Distances of solids are derived here. */
export const solidsSource: Source = {
  document: "Solid geometry",
  standing: "derived",
  note: "exact distances of upright boxes and swept lines",
};

/** Units in which places and distances are: those of the first placement. */
export type Unit = "in" | "mm";

export function unitOf({ placement }: Project["install"]): Unit {
  const first = placement?.find(({ arm }) => arm)?.arm?.value.unit;
  return first === undefined || first === "in" || first === "ft" ? "in" : "mm";
}

/** A placement whose component the kit has. */
export interface NamedPlacement {
  readonly placement: Placement;
  readonly component: Component;
  readonly id: string;
}

export interface PlacedComponent extends NamedPlacement {
  readonly box: UprightBox;
}

/** The box of a component, or the keys that would have to be recorded first. */
export function boxOf(
  { placement, component }: NamedPlacement,
  unit: Unit,
): UprightBox | { readonly missing: readonly string[] } {
  const { size, cg } = component;
  const centre = pointIn(placement, unit);
  const sides = size && vectorIn(size.length, size.width, size.height, unit);
  const middle = spotIn(cg, unit);
  if (!centre || !sides || !middle) {
    return {
      missing: [
        ...(sides ? [] : ["size in the kit"]),
        ...(middle ? [] : ["cg in the kit"]),
        ...(placement.arm ? [] : ["arm"]),
        ...(placement.buttLine ? [] : ["butt-line"]),
        ...(placement.waterLine ? [] : ["water-line"]),
      ],
    };
  }
  const attitude = attitudeOf(placement);
  const half = { x: sides.x / 2, y: sides.y / 2, z: sides.z / 2 };
  return {
    kind: "box",
    centre: plus(centre, turned(minus(half, middle), attitude)),
    half: sidesWhenUp(half, attitude.up),
    turn: attitude.turn,
  };
}

/** A point of the aircraft; undefined while a coordinate is missing. */
export function pointIn(
  { arm, buttLine, waterLine }: SpacePoint | Placement,
  unit: Unit,
): Vector3 | undefined {
  return vectorIn(arm, buttLine, waterLine, unit);
}

/** A spot of a component in its own axes; undefined while a coordinate is missing. */
export function spotIn(spot: Spot | undefined, unit: Unit): Vector3 | undefined {
  return spot && vectorIn(spot.fromFront, spot.fromLeft, spot.fromBottom, unit);
}

export function vectorIn(
  x: Written<Quantity<"length">> | undefined,
  y: Written<Quantity<"length">> | undefined,
  z: Written<Quantity<"length">> | undefined,
  unit: Unit,
): Vector3 | undefined {
  if (!x || !y || !z) return undefined;
  return { x: inUnit(x.value, unit), y: inUnit(y.value, unit), z: inUnit(z.value, unit) };
}

export function boxOperands(
  { placement, component }: Pick<NamedPlacement, "placement" | "component">,
  unit: Unit,
  prefix = "",
): Record<string, Operand> {
  const { size, cg } = component;
  const operands: Record<string, Operand> = {
    ...pointOperands(placement, unit, prefix),
    [`${prefix}length`]: written(`${prefix}length`, size?.length, unit),
    [`${prefix}width`]: written(`${prefix}width`, size?.width, unit),
    [`${prefix}height`]: written(`${prefix}height`, size?.height, unit),
    ...spotOperands(cg, unit, `${prefix}CG `),
  };
  if (placement.turn) operands[`${prefix}turn`] = written(`${prefix}turn`, placement.turn, "deg");
  return operands;
}

export function spotOperands(spot: Spot | undefined, unit: Unit, prefix: string): Record<string, Operand> {
  return {
    [`${prefix}from front`]: written(`${prefix}from front`, spot?.fromFront, unit),
    [`${prefix}from left`]: written(`${prefix}from left`, spot?.fromLeft, unit),
    [`${prefix}from bottom`]: written(`${prefix}from bottom`, spot?.fromBottom, unit),
  };
}

export function pointOperands(
  { arm, buttLine, waterLine }: SpacePoint | Placement,
  unit: Unit,
  prefix: string,
): Record<string, Operand> {
  return {
    [`${prefix}arm`]: written(`${prefix}arm`, arm, unit),
    [`${prefix}butt line`]: written(`${prefix}butt line`, buttLine, unit),
    [`${prefix}water line`]: written(`${prefix}water line`, waterLine, unit),
  };
}
