/** Pages of a worksheet about reinforced openings, cooling air and ducts. */
import type { QuantityName } from "../../core/graph/quantity-names";
import type { Value } from "../../core/graph/value";

/** A table with a row for each subject and condition. */
export interface Page {
  readonly title: string;
  readonly kinds: readonly Value["subject"]["kind"][];
  readonly quantities: readonly QuantityName[];
}

export const openingsPages: readonly Page[] = [
  {
    title: "Reinforcement of openings",
    kinds: ["cutout"],
    quantities: [
      "opening-width",
      "doubler-thickness",
      "least-doubler-thickness",
      "fastener-count",
      "fasteners-needed",
    ],
  },
  {
    title: "Fasteners of reinforcements",
    kinds: ["cutout"],
    quantities: ["fastener-diameter", "pitch", "least-pitch", "row-pitch", "doubler-edge-distance"],
  },
  {
    title: "Stress at openings",
    kinds: ["cutout"],
    quantities: ["net-stress", "stress-concentration", "peak-stress", "allowable-stress"],
  },
  {
    title: "Weight of openings",
    kinds: ["cutout"],
    quantities: ["weight-removed", "reinforcement-weight"],
  },
  {
    title: "Air through openings",
    kinds: ["cutout", "component", "air-path"],
    quantities: [
      "screen-free-area",
      "opening-loss",
      "effective-area",
      "path-effective-area",
      "face-velocity",
      "fan-flow",
    ],
  },
  {
    title: "Cooling air",
    kinds: ["air-path"],
    quantities: ["path-pressure-loss", "air-delivered", "air-needed"],
  },
  {
    title: "Ducts",
    kinds: ["duct", "duct-segment"],
    quantities: ["duct-flow", "duct-pressure", "duct-velocity"],
  },
  {
    title: "Outlets of ducts",
    kinds: ["duct-outlet"],
    quantities: ["outlet-flow", "outlet-need", "outlet-velocity"],
  },
];

/** Column heads that would not fit a terminal in full. */
export const openingsColumns: Partial<Record<QuantityName, string>> = {
  "opening-width": "width cut",
  "doubler-thickness": "thickness",
  "least-doubler-thickness": "least",
  "fastener-count": "each side",
  "fasteners-needed": "needed",
  "fastener-diameter": "diameter",
  "doubler-edge-distance": "to edge",
  "stress-concentration": "factor",
  "weight-removed": "removed",
  "reinforcement-weight": "added",
  "screen-free-area": "free",
  "opening-loss": "loss",
  "effective-area": "effective",
  "path-effective-area": "path",
  "face-velocity": "velocity",
  "fan-flow": "flow",
  "path-pressure-loss": "loss",
  "air-delivered": "delivered",
  "air-needed": "needed",
  "duct-flow": "flow",
  "duct-pressure": "pressure",
  "duct-velocity": "velocity",
  "outlet-flow": "flow",
  "outlet-need": "needed",
  "outlet-velocity": "velocity",
};
