/** Which of the two currents a value belongs to. */
export type Extreme = "smallest" | "largest";

export const names = {
  smallest: {
    run: "hot-resistance",
    loop: "loop-resistance",
    current: "fault-current",
    inWire: "wire-fault-current",
    opening: "opening-time",
    withstand: "withstand-time",
  },
  largest: {
    run: "cold-resistance",
    loop: "least-loop-resistance",
    current: "largest-fault-current",
    inWire: "largest-wire-fault-current",
    opening: "largest-fault-opening-time",
    withstand: "largest-fault-withstand-time",
  },
} as const satisfies Record<Extreme, object>;
