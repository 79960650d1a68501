import { assumed, derive, type Value } from "../../graph/value";

/** The limit of things that nobody gives a distance for: they may touch, and not share room. */
export function nothingShared({ subject, unit }: Value): Value {
  return derive({
    subject,
    quantity: "least-clearance",
    unit,
    formula: "c",
    operands: {
      c: assumed("clearance", 0, unit, "No distance to be kept is recorded: only shared room is a fault."),
    },
    compute: ({ c }) => c,
  })!;
}
