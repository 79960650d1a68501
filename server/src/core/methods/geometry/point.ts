/** A point, or a vector, of the plane: any one length unit, x to the right, y up, angles counter-clockwise. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });

export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });

export const times = (a: Point, factor: number): Point => ({ x: a.x * factor, y: a.y * factor });

export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;

/** Positive when `b` points to the left of `a`. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

export const length = (a: Point): number => Math.hypot(a.x, a.y);

export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** The vector of length 1 in the same direction; nothing stays nothing. */
export function unit(a: Point): Point {
  const most = Math.max(Math.abs(a.x), Math.abs(a.y));
  if (most === 0) return a;
  // Brought to the size of 1 first: the reciprocal of a length near the smallest number would be infinite.
  const [x, y] = [a.x / most, a.y / most];
  const long = Math.hypot(x, y);
  return { x: x / long, y: y / long };
}

/** The point at `angle` on the circle around `centre`. */
export const onCircle = (centre: Point, radius: number, angle: number): Point => ({
  x: centre.x + radius * Math.cos(angle),
  y: centre.y + radius * Math.sin(angle),
});

export function rotated(a: Point, angle: number): Point {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return { x: a.x * cos - a.y * sin, y: a.x * sin + a.y * cos };
}
