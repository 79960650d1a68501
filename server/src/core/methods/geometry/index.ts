/**
 * Exact geometry of cutouts and panels in the plane: areas, clearances, edge distances.
 *
 * Lengths are plain numbers in any one unit; angles are radians. Nothing is approximated by polygons: results
 * are closed forms, good to about 1e-12 of the shapes' size and place; only the narrowest cut beside a shape is
 * closed in on, from the safe side and to 1e-9. Ask `shapeProblems` first.
 */
export { boltCircleSpacing, circleOverlapArea } from "./circles";
export { type Containment, containment } from "./containment";
export { extentAlong, greatestExtent, reachAlong } from "./extent";
export { area, type Box, boundingBox, lengthAround, perimeter, smallestCornerRadius } from "./measures";
export { type Arc, type OutlinePiece, outline } from "./outline";
export type { Point } from "./point";
export { type PointClearance, pointClearance } from "./point-clearance";
export { type Dimension, polygonPointLimit, type ShapeProblem, shapeProblems } from "./problems";
export { type Relation, relation } from "./relation";
export { type Beside, beside, type Passage, passageOf, type Range } from "./sections";
export type { Nearness, Segment } from "./segment";
export type { Placed, Shape } from "./shape";
export { touchTolerance } from "./tolerance";
