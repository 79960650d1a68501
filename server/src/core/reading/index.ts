export { type LineIndex, lineIndex, type Position } from "./lines";
export { nodeAt, type Step } from "./place";
export { read } from "./read";
export type {
  Entry,
  Item,
  ListNode,
  MapNode,
  Node,
  Reading,
  ReadingFeature,
  ReadingProblem,
  ReadingRule,
  ScalarNode,
  Span,
} from "./tree";
