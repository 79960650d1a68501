import { placementExample } from "./placement-example";

/** A rack whose control is 18 in ahead of the pilot's shoulder, 11 in below it, at this butt line. */
export function reachExample(seat: string, buttLine: string): string {
  return placementExample({
    airframe: [
      `seats: [{ id: PILOT, shoulder: { arm: 88 in, butt-line: -10 in, water-line: 32 in }${seat ? `, ${seat}` : ""} }]`,
    ],
    sections: [
      `reach: [{ control: RACK, from: PILOT, at: { arm: 70 in, butt-line: ${buttLine}, water-line: 21 in } }]`,
    ],
  });
}
