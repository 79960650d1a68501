/** Clearances of solids: by brute force, against a general-purpose geometry package, and by what must hold. */
import RAPIER from "@dimforge/rapier3d-compat";
import { beforeAll, describe, expect, it } from "vitest";
import {
  type Attitude,
  clearance,
  type Face,
  leastMove,
  moved,
  type Solid,
  type SweptLine,
  sidesWhenUp,
  turned,
  turnedBack,
  type UprightBox,
  type Vector3,
} from "../../server/src/core/methods/solids";
import { fc } from "../support/random";

const coordinate = fc.double({ min: -12, max: 12, noNaN: true });
const point: fc.Arbitrary<Vector3> = fc.record({ x: coordinate, y: coordinate, z: coordinate });
const half = fc.double({ min: 0.5, max: 6, noNaN: true });
const turn = fc.double({ min: -4, max: 4, noNaN: true });
const box: fc.Arbitrary<UprightBox> = fc.record({
  kind: fc.constant("box" as const),
  centre: point,
  half: fc.record({ x: half, y: half, z: half }),
  turn: fc.oneof(turn, fc.constantFrom(0, Math.PI / 2, Math.PI)),
});
const line: fc.Arbitrary<SweptLine> = fc.record({
  kind: fc.constant("line" as const),
  from: point,
  to: point,
  radius: fc.double({ min: 0.1, max: 3, noNaN: true }),
});
const solid: fc.Arbitrary<Solid> = fc.oneof(box, line);

/** Nearest point of a solid without its radius to a point: written for boxes and lines apart from the code. */
function nearest(of: Solid, to: Vector3): Vector3 {
  if (of.kind === "line") {
    const way = { x: of.to.x - of.from.x, y: of.to.y - of.from.y, z: of.to.z - of.from.z };
    const square = way.x ** 2 + way.y ** 2 + way.z ** 2;
    const along = (to.x - of.from.x) * way.x + (to.y - of.from.y) * way.y + (to.z - of.from.z) * way.z;
    const share = square === 0 ? 0 : Math.min(1, Math.max(0, along / square));
    return { x: of.from.x + share * way.x, y: of.from.y + share * way.y, z: of.from.z + share * way.z };
  }
  const [cos, sin] = [Math.cos(of.turn), Math.sin(of.turn)];
  const [x, y, z] = [to.x - of.centre.x, to.y - of.centre.y, to.z - of.centre.z];
  const clamp = (value: number, most: number) => Math.min(most, Math.max(-most, value));
  const u = clamp(cos * x + sin * y, of.half.x);
  const v = clamp(cos * y - sin * x, of.half.y);
  return {
    x: of.centre.x + cos * u - sin * v,
    y: of.centre.y + sin * u + cos * v,
    z: of.centre.z + clamp(z, of.half.z),
  };
}

const distance = (a: Vector3, b: Vector3) => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

/** Going back and forth between two convex solids, from each to its nearest point of the other, nears the least distance. */
function byProjection(a: Solid, b: Solid): number {
  let at = nearest(a, b.kind === "box" ? b.centre : b.from);
  let least = Number.POSITIVE_INFINITY;
  for (let step = 0; step < 1000; step++) {
    const other = nearest(b, at);
    const next = nearest(a, other);
    const now = distance(next, other);
    if (least - now < 1e-13 && step > 50) return now;
    least = Math.min(least, now);
    at = next;
  }
  return least;
}

const radiusOf = (of: Solid) => (of.kind === "line" ? of.radius : 0);

describe("brute force", () => {
  it("solids that are apart", () => {
    let apart = 0;
    fc.assert(
      fc.property(box, solid, (a, b) => {
        const found = clearance(a, b);
        const stepped = byProjection(a, b) - radiusOf(b);
        if (found < -radiusOf(b) + 1e-6) {
          expect(stepped).toBeLessThan(-radiusOf(b) + 1e-3);
          return;
        }
        apart++;
        // Never below the true distance; the projections close in on it from above.
        expect(found).toBeLessThanOrEqual(stepped + 1e-9);
        expect(stepped - found).toBeLessThan(2e-3);
      }),
      { numRuns: 200, endOnFailure: true },
    );
    expect(apart).toBeGreaterThan(60);
  });

  it("solids that share room: no shorter move parts them, and one of that length does", () => {
    let sharing = 0;
    fc.assert(
      fc.property(box, solid, fc.array(point, { minLength: 30, maxLength: 30 }), (a, b, directions) => {
        const found = clearance(a, b);
        if (found >= -1e-6) return;
        sharing++;
        const depth = -found;
        const after = (way: Vector3, by: number) => {
          const size = Math.hypot(way.x, way.y, way.z);
          const centre = {
            x: a.centre.x + (way.x / size) * by,
            y: a.centre.y + (way.y / size) * by,
            z: a.centre.z + (way.z / size) * by,
          };
          return clearance({ ...a, centre }, b);
        };
        for (const way of directions) {
          if (Math.hypot(way.x, way.y, way.z) < 1e-3) continue;
          expect(after(way, depth * 0.999)).toBeLessThan(1e-9);
        }
        const outward = normalsOf(a, b).map((way) => after(way, depth * 1.001));
        expect(Math.max(...outward)).toBeGreaterThan(0);
      }),
      { numRuns: 300, endOnFailure: true },
    );
    expect(sharing).toBeGreaterThan(30);
  });
});

/** Every direction that could be the shortest way out. */
function normalsOf(a: UprightBox, b: Solid): Vector3[] {
  const axes = (of: UprightBox): Vector3[] => [
    { x: Math.cos(of.turn), y: Math.sin(of.turn), z: 0 },
    { x: -Math.sin(of.turn), y: Math.cos(of.turn), z: 0 },
    { x: 0, y: 0, z: 1 },
  ];
  const own = axes(a);
  const others =
    b.kind === "box"
      ? axes(b)
      : [
          ...own.map((axis) =>
            cross(axis, { x: b.to.x - b.from.x, y: b.to.y - b.from.y, z: b.to.z - b.from.z }),
          ),
          away(a, b),
        ];
  return [...own, ...others]
    .filter(({ x, y, z }) => Math.hypot(x, y, z) > 1e-9)
    .flatMap(({ x, y, z }) => [
      { x, y, z },
      { x: -x, y: -y, z: -z },
    ]);
}

/** From the nearest point of a line that only its radius reaches. */
function away(a: UprightBox, b: SweptLine): Vector3 {
  let at: Vector3 = b.from;
  for (let step = 0; step < 2000; step++) at = nearest(b, nearest(a, at));
  const on = nearest(a, at);
  return { x: on.x - at.x, y: on.y - at.y, z: on.z - at.z };
}

function cross(a: Vector3, b: Vector3): Vector3 {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

describe("a general-purpose geometry package", () => {
  beforeAll(() => RAPIER.init());

  it("finds the same distances, to the digits of its single precision", () => {
    let compared = 0;
    fc.assert(
      fc.property(box, solid, (a, b) => {
        const found = clearance(a, b);
        // It gives up where solids share much room; depth is held against brute force above.
        fc.pre(found > 1e-3);
        const contact = shapeOf(a).contactShape(
          a.centre,
          turnAbout(a.turn),
          shapeOf(b),
          middleOf(b),
          b.kind === "box" ? turnAbout(b.turn) : alongLine(b),
          100,
        );
        expect(contact).not.toBeNull();
        expect(Math.abs(contact!.distance - found)).toBeLessThan(2e-3 * (1 + found));
        compared++;
      }),
      { numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(150);
  });
});

function shapeOf(of: Solid) {
  if (of.kind === "box") return new RAPIER.Cuboid(of.half.x, of.half.y, of.half.z);
  return new RAPIER.Capsule(distance(of.from, of.to) / 2, of.radius);
}

function middleOf(of: Solid): Vector3 {
  if (of.kind === "box") return of.centre;
  const { from, to } = of;
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2, z: (from.z + to.z) / 2 };
}

const turnAbout = (angle: number) => ({ x: 0, y: 0, z: Math.sin(angle / 2), w: Math.cos(angle / 2) });

/** The rotation that takes y, along which the package's capsules lie, to the line. */
function alongLine({ from, to }: SweptLine) {
  const size = distance(from, to) || 1;
  const [x, y, z] = [(to.x - from.x) / size, (to.y - from.y) / size, (to.z - from.z) / size];
  const w = 1 + y;
  if (w < 1e-9) return { x: 1, y: 0, z: 0, w: 0 };
  const norm = Math.hypot(z, x, w);
  return { x: z / norm, y: 0, z: -x / norm, w: w / norm };
}

describe("what must hold", () => {
  it("moving or turning the whole changes nothing, and boxes see each other alike", () => {
    fc.assert(
      fc.property(box, solid, point, turn, (a, b, by, about) => {
        const before = clearance(a, b);
        const [cos, sin] = [Math.cos(about), Math.sin(about)];
        const place = ({ x, y, z }: Vector3): Vector3 => ({
          x: cos * x - sin * y + by.x,
          y: sin * x + cos * y + by.y,
          z: z + by.z,
        });
        const carried = <S extends Solid>(of: S): S =>
          (of.kind === "box"
            ? { ...of, centre: place(of.centre), turn: of.turn + about }
            : { ...of, from: place(of.from), to: place(of.to) }) as S;
        expect(clearance(carried(a), carried(b))).toBeCloseTo(before, 6);
        if (b.kind === "box") expect(clearance(b, a)).toBeCloseTo(before, 6);
      }),
    );
  });

  it("worked by hand", () => {
    const cube = (x: number, y: number, z: number): UprightBox => ({
      kind: "box",
      centre: { x, y, z },
      half: { x: 1, y: 1, z: 1 },
      turn: 0,
    });
    expect(clearance(cube(0, 0, 0), cube(5, 0, 0))).toBeCloseTo(3, 12);
    expect(clearance(cube(0, 0, 0), cube(5, 6, 14))).toBeCloseTo(13, 12);
    expect(clearance(cube(0, 0, 0), cube(1.5, 0.2, 0.1))).toBeCloseTo(-0.5, 12);
    expect(clearance(cube(0, 0, 0), cube(2, 0, 0))).toBe(0);
    const turnedCube = { ...cube(4, 0, 0), turn: Math.PI / 4 };
    expect(clearance(cube(0, 0, 0), turnedCube)).toBeCloseTo(3 - Math.SQRT2, 12);
    const cable: SweptLine = {
      kind: "line",
      from: { x: -9, y: 0, z: 4 },
      to: { x: 9, y: 0, z: 4 },
      radius: 0.5,
    };
    expect(clearance(cube(0, 0, 0), cable)).toBeCloseTo(2.5, 12);
    expect(clearance(cube(0, 0, 3.5), cable)).toBeCloseTo(-1, 12);
  });

  it("the least move keeps what is needed, and nothing less does", () => {
    fc.assert(
      fc.property(
        box,
        fc.array(solid, { minLength: 1, maxLength: 3 }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.constantFrom("x" as const, "y" as const, "z" as const),
        fc.constantFrom(1 as const, -1 as const),
        (a, others, needed, axis, sign) => {
          const way = leastMove(a, others, needed, axis, sign);
          const after = (by: number) =>
            Math.min(...others.map((other) => clearance(moved(a, axis, sign * by), other)));
          expect(after(way)).toBeGreaterThanOrEqual(needed - 1e-9);
          if (way === 0) return;
          for (const share of [0, 0.3, 0.7, 0.999]) expect(after(way * share)).toBeLessThan(needed + 1e-9);
        },
      ),
    );
  });
});

describe("how a box stands", () => {
  const faces: readonly Face[] = ["top", "bottom", "left", "right", "front", "rear"];
  const outward: Readonly<Record<Face, Vector3>> = {
    top: { x: 0, y: 0, z: 1 },
    bottom: { x: 0, y: 0, z: -1 },
    left: { x: 0, y: -1, z: 0 },
    right: { x: 0, y: 1, z: 0 },
    front: { x: -1, y: 0, z: 0 },
    rear: { x: 1, y: 0, z: 0 },
  };

  it.each(faces)("%s up", (up) => {
    const { x, y, z } = turned(outward[up], { up, turn: 0.7 });
    expect([x, y, z]).toEqual([expect.closeTo(0), expect.closeTo(0), expect.closeTo(1)]);
    const sides = sidesWhenUp({ x: 1, y: 2, z: 3 }, up);
    expect([sides.x, sides.y, sides.z].sort()).toEqual([1, 2, 3]);
  });

  it("is turned without stretching or mirroring, and turned back", () => {
    const attitude: fc.Arbitrary<Attitude> = fc.record({ up: fc.constantFrom(...faces), turn });
    fc.assert(
      fc.property(attitude, point, point, (stance, a, b) => {
        const [one, two] = [turned(a, stance), turned(b, stance)];
        expect(distance(one, two)).toBeCloseTo(distance(a, b), 9);
        const across = turned(cross(a, b), stance);
        const same = cross(one, two);
        expect(distance(across, same)).toBeLessThan(1e-9 * (1 + distance(across, { x: 0, y: 0, z: 0 })));
        expect(distance(turnedBack(one, stance), a)).toBeLessThan(1e-12 * 100);
      }),
    );
  });
});
