/** A point or a direction in space: x aft, y to the right, z up. */
export interface Vector3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export const plus = (a: Vector3, b: Vector3): Vector3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
export const minus = (a: Vector3, b: Vector3): Vector3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const times = (a: Vector3, by: number): Vector3 => ({ x: a.x * by, y: a.y * by, z: a.z * by });
export const dot = (a: Vector3, b: Vector3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const lengthOf = (a: Vector3): number => Math.hypot(a.x, a.y, a.z);
export const cross = (a: Vector3, b: Vector3): Vector3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
