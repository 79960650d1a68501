import type { Vector3 } from "./vector";

/** A face of a box in its own axes: front is where x is least, left where y is, bottom where z is. */
export type Face = "top" | "bottom" | "left" | "right" | "front" | "rear";

/** How a box stands: which of its faces is up, then a turn about the vertical, counter-clockwise from above. */
export interface Attitude {
  readonly up: Face;
  /** rad */
  readonly turn: number;
}

/** A direction of the box's own axes in the axes of the aircraft. */
export function turned(own: Vector3, { up, turn }: Attitude): Vector3 {
  const { x, y, z } = quarterTurned(own, up);
  const [cos, sin] = exactTurn(turn);
  return { x: cos * x - sin * y, y: sin * x + cos * y, z };
}

/** A direction of the aircraft in the box's own axes: undoes `turned`. */
export function turnedBack({ x, y, z }: Vector3, { up, turn }: Attitude): Vector3 {
  const [cos, sin] = exactTurn(turn);
  return quarterTurned({ x: cos * x + sin * y, y: cos * y - sin * x, z }, opposite[up]);
}

/** The box's sides along x, y and z once a face is up, before the turn about the vertical. */
export function sidesWhenUp(size: Vector3, up: Face): Vector3 {
  const { x, y, z } = quarterTurned(size, up);
  return { x: Math.abs(x), y: Math.abs(y), z: Math.abs(z) };
}

/** Rotation that brings a face up, about one axis. Source: derived; each is a quarter or half turn. */
function quarterTurned({ x, y, z }: Vector3, up: Face): Vector3 {
  switch (up) {
    case "top":
      return { x, y, z };
    case "bottom":
      return { x, y: -y, z: -z };
    case "left":
      return { x, y: z, z: -y };
    case "right":
      return { x, y: -z, z: y };
    case "front":
      return { x: z, y, z: -x };
    case "rear":
      return { x: -z, y, z: x };
  }
}

/** What undoes each of them. */
const opposite: Readonly<Record<Face, Face>> = {
  top: "top",
  bottom: "bottom",
  left: "right",
  right: "left",
  front: "rear",
  rear: "front",
};

/** Cosine and sine, without binary noise at quarter turns, so that square boxes stay square. */
function exactTurn(turn: number): readonly [number, number] {
  const quarters = turn / (Math.PI / 2);
  const whole = Math.round(quarters);
  if (Math.abs(quarters - whole) > 1e-12) return [Math.cos(turn), Math.sin(turn)];
  const quarter = ((whole % 4) + 4) % 4;
  return [[1, 0, -1, 0][quarter]!, [0, 1, 0, -1][quarter]!];
}
