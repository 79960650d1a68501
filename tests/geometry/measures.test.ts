import { describe, expect, test } from "vitest";
import {
  area,
  boundingBox,
  circleOverlapArea,
  type OutlinePiece,
  outline,
  perimeter,
  type Shape,
  shapeProblems,
  smallestCornerRadius,
} from "../../server/src/core/methods/geometry";
import { fc } from "../support/random";
import { placed, runs, shape } from "./arbitraries";
import { apart, boundaryPieces, gridOver, leastAlong, standsOut } from "./model";

const lengthOf = (piece: OutlinePiece): number =>
  piece.kind === "segment" ? apart(piece.from, piece.to) : piece.radius * piece.sweep;

/** ½∮(x dy − y dx) along one piece, in closed form. */
function greenOf(piece: OutlinePiece): number {
  const { from, to } = piece;
  if (piece.kind === "segment") return (from.x * to.y - to.x * from.y) / 2;
  const { centre, radius, sweep } = piece;
  return (radius ** 2 * sweep + centre.x * (to.y - from.y) - centre.y * (to.x - from.x)) / 2;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

describe("outline", () => {
  test("is one closed line on the shape's boundary", () => {
    fc.assert(
      fc.property(placed, (item) => {
        const pieces = outline(item);
        pieces.forEach((piece, i) => {
          expect(apart(piece.to, pieces[(i + 1) % pieces.length]!.from)).toBeLessThan(1e-12);
          for (const share of [0, 0.13, 0.5, 0.9, 1]) {
            expect(Math.abs(standsOut(pointOf(piece, share), item))).toBeLessThan(1e-9);
          }
          expect(apart(pointOf(piece, 0), piece.from)).toBeLessThan(1e-9);
          expect(apart(pointOf(piece, 1), piece.to)).toBeLessThan(1e-9);
        });
      }),
      runs(500),
    );
  });

  test("bounds the area, counter-clockwise, and is as long as the perimeter", () => {
    fc.assert(
      fc.property(placed, (item) => {
        const pieces = outline(item);
        expect(sum(pieces.map(greenOf))).toBeCloseTo(area(item.shape), 9);
        expect(sum(pieces.map(lengthOf))).toBeCloseTo(perimeter(item.shape), 9);
      }),
      runs(1000),
    );
  });
});

function pointOf(piece: OutlinePiece, share: number) {
  if (piece.kind === "segment") {
    return {
      x: piece.from.x * (1 - share) + piece.to.x * share,
      y: piece.from.y * (1 - share) + piece.to.y * share,
    };
  }
  const { centre, radius, start, sweep } = piece;
  const turn = start + share * sweep;
  return { x: centre.x + radius * Math.cos(turn), y: centre.y + radius * Math.sin(turn) };
}

describe("area and perimeter", () => {
  test("agree with points counted over a grid and with a chain of short chords", () => {
    fc.assert(
      fc.property(placed, (item) => {
        const box = boundingBox(item);
        const cells = 150;
        const pieces = boundaryPieces(item);
        const [width, height] = [box.max.x - box.min.x, box.max.y - box.min.y];
        const corner = (share: number) => ({ x: box.min.x + share * width, y: box.min.y + share * height });
        const within = gridOver([corner], cells).filter((point) => standsOut(point, item) < 0).length;
        // A cell can be counted wrongly only where the boundary passes through it.
        const error = perimeter(item.shape) * (Math.hypot(width, height) / cells);
        expect(Math.abs((within / cells ** 2) * width * height - area(item.shape))).toBeLessThan(error);

        const chords = pieces.map((piece) =>
          sum(Array.from({ length: 500 }, (_, i) => apart(piece(i / 500), piece((i + 1) / 500)))),
        );
        expect(sum(chords)).toBeCloseTo(perimeter(item.shape), 4);
      }),
      runs(60),
    );
  });

  test("do not depend on which way round a polygon was written", () => {
    fc.assert(
      fc.property(shape, (item) => {
        fc.pre(item.kind === "polygon");
        const back: Shape = { kind: "polygon", points: [...item.points].reverse() };
        expect(area(back)).toBeCloseTo(area(item), 12);
        expect(area(item)).toBeGreaterThan(0);
        expect(perimeter(back)).toBeCloseTo(perimeter(item), 12);
      }),
      runs(300),
    );
  });

  test("of the same shape said differently", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 9, noNaN: true }),
        fc.double({ min: 0, max: 9, noNaN: true }),
        (w, more) => {
          const slot: Shape = { kind: "slot", length: w + more, width: w };
          const rectangle: Shape = { kind: "rectangle", width: w + more, height: w, cornerRadius: w / 2 };
          const round: Shape = { kind: "slot", length: w, width: w };
          const circle: Shape = { kind: "circle", diameter: w };
          for (const [a, b] of [
            [slot, rectangle],
            [round, circle],
          ] as const) {
            expect(area(a)).toBeCloseTo(area(b), 11);
            expect(perimeter(a)).toBeCloseTo(perimeter(b), 11);
            expect(smallestCornerRadius(a)).toBe(smallestCornerRadius(b));
          }
        },
      ),
      runs(500),
    );
  });

  test("keep their digits far from the origin", () => {
    const far = 1e6 / 3;
    const points = [
      { x: far, y: far },
      { x: far + 1, y: far },
      { x: far, y: far + 1 },
    ];
    expect(area({ kind: "polygon", points })).toBeCloseTo(0.5, 8);
  });
});

test("smallest corner radius", () => {
  expect(smallestCornerRadius({ kind: "circle", diameter: 3 })).toBe(1.5);
  expect(smallestCornerRadius({ kind: "slot", length: 3, width: 1 })).toBe(0.5);
  expect(smallestCornerRadius({ kind: "rectangle", width: 3, height: 2, cornerRadius: 0.25 })).toBe(0.25);
  expect(smallestCornerRadius({ kind: "rectangle", width: 3, height: 2, cornerRadius: 0 })).toBe(0);
  const points = [
    { x: 0, y: 0 },
    { x: 1, y: 0 },
    { x: 0, y: 1 },
  ];
  expect(smallestCornerRadius({ kind: "polygon", points })).toBe(0);
});

test("bounding box: the boundary reaches each side and none of it stands out", () => {
  fc.assert(
    fc.property(placed, (item) => {
      const { min, max } = boundingBox(item);
      const pieces = boundaryPieces(item);
      for (const room of [
        leastAlong(pieces, (point) => point.x - min.x),
        leastAlong(pieces, (point) => point.y - min.y),
        leastAlong(pieces, (point) => max.x - point.x),
        leastAlong(pieces, (point) => max.y - point.y),
      ]) {
        expect(Math.abs(room)).toBeLessThan(1e-9);
      }
    }),
    runs(300),
  );
});

test("the random shapes of these tests are without problems", () => {
  fc.assert(
    fc.property(shape, (item) => {
      expect(shapeProblems(item)).toEqual([]);
    }),
    runs(2000),
  );
});

describe("circle overlap area", () => {
  test("agrees with thin strips", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 7, noNaN: true }),
        (r1, r2, gap) => {
          const strips = 20_000;
          const half = (r: number, x: number) => Math.sqrt(Math.max(0, r * r - x * x));
          const width = (2 * r1) / strips;
          const strip = (i: number) => {
            const x = -r1 + (i + 0.5) * width;
            return 2 * Math.min(half(r1, x), half(r2, x - gap)) * width;
          };
          const counted = sum(Array.from({ length: strips }, (_, i) => strip(i)));
          expect(circleOverlapArea(r1, r2, gap)).toBeCloseTo(counted, 4);
          expect(circleOverlapArea(r2, r1, gap)).toBeCloseTo(circleOverlapArea(r1, r2, gap), 12);
        },
      ),
      runs(100),
    );
  });

  test("is nothing when apart or touching, and the smaller circle when it lies within", () => {
    expect(circleOverlapArea(1, 2, 3)).toBe(0);
    expect(circleOverlapArea(1, 2, 4)).toBe(0);
    expect(circleOverlapArea(1, 2, 1)).toBe(Math.PI);
    expect(circleOverlapArea(2, 1, 0)).toBe(Math.PI);
    expect(circleOverlapArea(1, 1, 0)).toBe(Math.PI);
  });
});
