/** Solids in the axes of the aircraft, x aft, y to the right, z up; lengths in any one unit, angles in radians. */
export { clearance, extentOf, type Solid, type SweptLine, type UprightBox } from "./clearance";
export { type Axis, leastMove, moved } from "./least-move";
export { lineDistance } from "./line-distance";
export { type Attitude, type Face, sidesWhenUp, turned, turnedBack } from "./turning";
export { lengthOf, minus, plus, times, type Vector3 } from "./vector";
