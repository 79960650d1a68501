/** Pages of the worksheet that lay out derived values: a row for each subject and condition. */
import { groupBy } from "../../graph/group-by";
import type { QuantityName } from "../../graph/quantity-names";
import type { Value } from "../../graph/value";
import { nameOf } from "../calculation";
import { type Cell, cell, type Page, tablePage } from "./page";

/** Which values a page has, of what, in the order of its columns. */
interface Layout {
  readonly id: string;
  readonly title: string;
  readonly kinds: readonly Value["subject"]["kind"][];
  readonly quantities: readonly QuantityName[];
}

/** Electrical values and the weights that come of wires and items. */
export const circuitLayouts: readonly Layout[] = [
  {
    id: "wires-values",
    title: "Wires",
    kinds: ["wire"],
    quantities: ["wire-current", "allowed-current", "conductor-temperature", "wire-resistance", "wire-drop"],
  },
  {
    id: "loads-bus-to-ground-values",
    title: "Loads, bus to ground",
    kinds: ["component"],
    quantities: ["load-current", "load-voltage", "path-drop", "drop-limit"],
  },
  {
    id: "breakers-and-fuses-values",
    title: "Breakers and fuses",
    kinds: ["protection"],
    quantities: ["device-rating", "device-current", "device-drop"],
  },
  {
    id: "bundles-values",
    title: "Bundles",
    kinds: ["bundle"],
    quantities: ["bundle-loading"],
  },
  {
    id: "weight-of-the-wires-values",
    title: "Weight of the wires",
    kinds: ["wire", "harness"],
    quantities: ["wire-weight", "harness-weight"],
  },
  {
    id: "weight-and-balance-items-values",
    title: "Weight and balance: items",
    kinds: ["component", "added-item", "line", "duct", "ballast", "harness", "equipment"],
    quantities: ["item-moment", "item-cg-effect"],
  },
];

export const openingLayouts: readonly Layout[] = [
  {
    id: "loadings-values",
    title: "Loadings",
    kinds: ["loading"],
    quantities: ["loading-weight", "loading-cg-before", "loading-cg", "forward-limit", "aft-limit"],
  },
  {
    id: "cutouts-values",
    title: "Cutouts",
    kinds: ["cutout"],
    quantities: ["cutout-area", "cutout-perimeter", "corner-radius", "edge-distance", "fastener-distance"],
  },
  {
    id: "reinforcement-of-openings-values",
    title: "Reinforcement of openings",
    kinds: ["cutout"],
    quantities: [
      "opening-width",
      "doubler-thickness",
      "least-doubler-thickness",
      "fastener-count",
      "fasteners-needed",
      "most-fasteners",
    ],
  },
  {
    id: "fasteners-of-reinforcements-values",
    title: "Fasteners of reinforcements",
    kinds: ["cutout"],
    quantities: ["fastener-diameter", "pitch", "least-pitch", "row-pitch", "doubler-edge-distance"],
  },
  {
    id: "stress-at-openings-values",
    title: "Stress at openings",
    kinds: ["cutout"],
    quantities: ["net-stress", "stress-concentration", "peak-stress", "allowable-stress"],
  },
  {
    id: "weight-of-openings-values",
    title: "Weight of openings",
    kinds: ["cutout"],
    quantities: ["weight-removed", "reinforcement-weight"],
  },
  {
    id: "air-through-openings-values",
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
    id: "cooling-air-values",
    title: "Cooling air",
    kinds: ["air-path"],
    quantities: ["path-pressure-loss", "air-delivered", "air-needed"],
  },
  {
    id: "ducts-values",
    title: "Ducts",
    kinds: ["duct", "duct-segment"],
    quantities: ["duct-flow", "duct-pressure", "duct-velocity"],
  },
  {
    id: "outlets-of-ducts-values",
    title: "Outlets of ducts",
    kinds: ["duct-outlet"],
    quantities: ["outlet-flow", "outlet-need", "outlet-velocity"],
  },
];

/** A row for each subject and condition, a column for each quantity; empty columns are left out. */
export function valuePage(values: readonly Value[], { id, title, kinds, quantities }: Layout): Page {
  const rows = new Map<
    string,
    { readonly head: readonly [string, string]; readonly cells: Map<QuantityName, Value> }
  >();
  for (const value of values) {
    if (!kinds.includes(value.subject.kind) || !quantities.includes(value.quantity)) continue;
    const key = `${value.subject.kind} ${value.subject.id} ${value.condition ?? ""}`;
    const row = rows.get(key) ?? { head: [value.subject.id, value.condition ?? ""], cells: new Map() };
    row.cells.set(value.quantity, value);
    rows.set(key, row);
  }
  const lines = [...groupBy([...rows.values()], ({ head }) => head[0]).values()].flat();
  const used = quantities.filter((quantity) => lines.some((row) => row.cells.has(quantity)));
  return tablePage(
    id,
    title,
    ["", "", ...used.map((quantity) => columnHeads[quantity] ?? quantity.replaceAll("-", " "))],
    lines.map(({ head, cells }): Cell[] => [...head, ...used.map((quantity) => cell(cells.get(quantity)))]),
  );
}

/** A line for each value of the aircraft as a whole. */
export function aircraftPage(values: readonly Value[]): Page {
  const own = values.filter(({ subject }) => subject.kind === "aircraft");
  const rows = own.map((value): Cell[] => [nameOf(value), value.condition ?? "", cell(value)]);
  return tablePage("aircraft-values", "Aircraft", ["", "", ""], rows, 6);
}

/** Column heads that would not fit a terminal in full. */
const columnHeads: Partial<Record<QuantityName, string>> = {
  "wire-current": "current",
  "allowed-current": "allowed",
  "conductor-temperature": "conductor",
  "wire-resistance": "resistance",
  "wire-drop": "drop",
  "load-current": "draws",
  "load-voltage": "voltage",
  "path-drop": "drop",
  "drop-limit": "allowed",
  "device-rating": "rating",
  "device-current": "carries",
  "device-drop": "drop",
  "bundle-loading": "loading",
  "item-moment": "moment",
  "item-cg-effect": "moves the CG",
  "loading-weight": "weight",
  "loading-cg": "CG",
  "loading-cg-before": "CG before",
  "forward-limit": "forward",
  "aft-limit": "aft",
  "cutout-area": "area",
  "cutout-perimeter": "edge length",
  "edge-distance": "to edge",
  "fastener-distance": "to fastener",
  "opening-width": "width cut",
  "doubler-thickness": "thickness",
  "least-doubler-thickness": "least",
  "fastener-count": "each side",
  "fasteners-needed": "needed",
  "most-fasteners": "room for",
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
