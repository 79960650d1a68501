/** Room that must be kept free, as solids. */
import { plus, type Solid, type SweptLine } from "../../methods/solids";
import { inUnit } from "../../quantities";
import type { KeepOut } from "../../records/types";
import { type Operand, written } from "../value";
import { pointIn, pointOperands, type Unit } from "./boxes";
import type { Neighbour } from "./clearances";

/** Undefined while its id or its size is not recorded. */
export function keepOutNeighbour(keepOut: KeepOut, unit: Unit): Neighbour | undefined {
  const solids = solidsOf(keepOut, unit);
  if (!keepOut.id || !solids) return undefined;
  return {
    kind: "keep-out",
    id: keepOut.id.value,
    place: keepOut.id.place,
    solids,
    purpose: keepOut.kind?.value,
    least: keepOut.clearance,
    data: keepOut.data,
    identity: [keepOut],
    operands: () => keepOutOperands(keepOut, unit),
  };
}

function solidsOf({ box, along, radius }: KeepOut, unit: Unit): readonly Solid[] | undefined {
  if (box) {
    const from = box.from && pointIn(box.from, unit);
    const to = box.to && pointIn(box.to, unit);
    if (!from || !to) return undefined;
    const half = { x: (to.x - from.x) / 2, y: (to.y - from.y) / 2, z: (to.z - from.z) / 2 };
    const size = { x: Math.abs(half.x), y: Math.abs(half.y), z: Math.abs(half.z) };
    if (!(size.x > 0 && size.y > 0 && size.z > 0)) return undefined;
    return [{ kind: "box", centre: plus(from, half), half: size, turn: 0 }];
  }
  const points = along?.map((point) => pointIn(point, unit));
  if (!radius || !points?.every((point) => point !== undefined) || points.length === 0) return undefined;
  const around = inUnit(radius.value, unit);
  return points
    .slice(0, Math.max(1, points.length - 1))
    .map((from, index): SweptLine => ({ kind: "line", from, to: points[index + 1] ?? from, radius: around }));
}

function keepOutOperands({ id, box, along, radius }: KeepOut, unit: Unit): Record<string, Operand> {
  const name = id?.value ?? "";
  const operands: Record<string, Operand> = {};
  for (const [index, point] of (along ?? []).entries()) {
    Object.assign(operands, pointOperands(point, unit, `${name} point ${index + 1} `));
  }
  if (box?.from) Object.assign(operands, pointOperands(box.from, unit, `${name} from `));
  if (box?.to) Object.assign(operands, pointOperands(box.to, unit, `${name} to `));
  if (radius) operands[`${name} radius`] = written(`${name} radius`, radius, unit);
  return operands;
}
