import type { GroupFastener, Vector } from "../../methods/fastener-group";
import { type Attitude, type Face, turnedBack, type Vector3 } from "../../methods/solids";
import { inUnit, type Quantity } from "../../quantities";
import type { Component, Placement, Spot } from "../../records/types";
import type { Written } from "../../records/written";
import type { LoadDirection } from "../../tables/load-factors";
import { type Operand, written } from "../value";

/** The plane that a component's fasteners lie in, in inches, with the axes u and v and n away from the structure. */
export interface MountPlane {
  readonly fasteners: readonly GroupFastener[];
  /** Centre of gravity. */
  readonly cg: Vector;
  /** A direction of the component's own axes in those of the plane. */
  readonly along: (own: Vector3) => Vector;
  /** Everything that it was read from. */
  readonly operands: () => Readonly<Record<string, Operand>>;
}

type Axis = "x" | "y" | "z";
type Signed = readonly [axis: Axis, sign: 1 | -1];

/** u, v and n of each face, right-handed, in the component's axes: x to the rear, y to the right, z up. */
const planes: Readonly<Record<Face, readonly [u: Signed, v: Signed, n: Signed]>> = {
  bottom: [
    ["x", 1],
    ["y", 1],
    ["z", 1],
  ],
  top: [
    ["x", 1],
    ["y", -1],
    ["z", -1],
  ],
  left: [
    ["z", 1],
    ["x", 1],
    ["y", 1],
  ],
  right: [
    ["x", 1],
    ["z", 1],
    ["y", -1],
  ],
  front: [
    ["y", 1],
    ["z", 1],
    ["x", 1],
  ],
  rear: [
    ["z", 1],
    ["y", 1],
    ["x", -1],
  ],
};

const keys = { x: "from-front", y: "from-left", z: "from-bottom" } as const;
const sides = { x: "length", y: "width", z: "height" } as const;

/** The plane of a component's mount, or what its kit would have to say first, in the kit's keys. */
export function mountPlaneOf(component: Component): MountPlane | { readonly missing: readonly string[] } {
  const { mount, cg, size } = component;
  const face = mount?.face?.value;
  const missing = new Set<string>();
  if (!face || !mount?.fasteners) missing.add("mount");
  const [u, v, n] = planes[face ?? "bottom"];
  for (const axis of ["x", "y", "z"] as const) {
    if (!coordinate(cg, axis)) missing.add(`cg: ${keys[axis]}`);
  }
  for (const spot of mount?.fasteners ?? []) {
    for (const [axis] of [u, v]) if (!coordinate(spot, axis)) missing.add(`mount: ${keys[axis]}`);
  }
  const isFarFace = n[1] < 0;
  const side = size?.[sides[n[0]]];
  if (isFarFace && !side) missing.add(`size: ${sides[n[0]]}`);
  if (missing.size > 0) return { missing: [...missing] };

  const read = (spot: Spot | undefined, [axis, sign]: Signed) =>
    sign * inUnit(coordinate(spot, axis)!.value, "in");
  const plane = isFarFace ? -inUnit(side!.value, "in") : 0;
  return {
    fasteners: mount!.fasteners!.map((spot) => ({ u: read(spot, u), v: read(spot, v), area: 1 })),
    cg: { u: read(cg, u), v: read(cg, v), n: read(cg, n) - plane },
    along: (own) => ({ u: u[1] * own[u[0]], v: v[1] * own[v[0]], n: n[1] * own[n[0]] }),
    operands: () => {
      const operands: Record<string, Operand> = {};
      for (const axis of ["x", "y", "z"] as const) {
        operands[`CG ${keys[axis]}`] = written(`CG ${keys[axis]}`, coordinate(cg, axis), "in");
      }
      if (isFarFace) operands[sides[n[0]]] = written(sides[n[0]], side, "in");
      for (const [index, spot] of mount!.fasteners!.entries()) {
        for (const [axis] of [u, v]) {
          const name = `fastener ${index + 1} ${keys[axis]}`;
          operands[name] = written(name, coordinate(spot, axis), "in");
        }
      }
      return operands;
    },
  };
}

function coordinate(spot: Spot | undefined, axis: Axis): Written<Quantity<"length">> | undefined {
  return axis === "x" ? spot?.fromFront : axis === "y" ? spot?.fromLeft : spot?.fromBottom;
}

/** How a component stands: as its placement says. */
export function attitudeOf(placement: Placement | undefined): Attitude {
  return { up: placement?.up?.value ?? "top", turn: placement?.turn?.value.si ?? 0 };
}

/** Where an item pulls in each direction, in the axes of the aircraft; a side is both. */
const pulls: Readonly<Record<LoadDirection, readonly Vector3[]>> = {
  forward: [{ x: -1, y: 0, z: 0 }],
  aft: [{ x: 1, y: 0, z: 0 }],
  side: [
    { x: 0, y: -1, z: 0 },
    { x: 0, y: 1, z: 0 },
  ],
  up: [{ x: 0, y: 0, z: 1 }],
  down: [{ x: 0, y: 0, z: -1 }],
};

/** The same in the plane of a mount. */
export function pullsOn(plane: MountPlane, attitude: Attitude, direction: LoadDirection): Vector[] {
  return pulls[direction].map((pull) => plane.along(turnedBack(pull, attitude)));
}
