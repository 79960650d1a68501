import { placementsOf } from "../../graph/derivations";
import type { Project } from "../../project";
import { isAtMost } from "../../rounding";

/** Whether the record holds a device's distance from a seat against what can be reached from there, and it is no more. */
export function isMeasuredWithin(protection: string, project: Project): boolean {
  return placementsOf(project).reaches.some(
    ({ id, distance, most }) => id === protection && most && isAtMost(distance.value, most.value),
  );
}

/** Sections of an example in which CB-RACK is 23.35 in from a seat that reaches 28 in. */
export const measuredReach = {
  airframe: [
    "seats: [{ id: PILOT, shoulder: { arm: 88 in, butt-line: -10 in, water-line: 32 in }, reach: 28 in, data: B9-25 }]",
  ],
  sections: [
    "reach: [{ control: CB-RACK, from: PILOT, at: { arm: 70 in, butt-line: 0 in, water-line: 21 in } }]",
  ],
} as const;
