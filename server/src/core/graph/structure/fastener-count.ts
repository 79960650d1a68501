/** Fasteners on each side of an opening, by the tables of rivets. */
import { fastenersNeeded } from "../../methods/rivet-count";
import { inUnit } from "../../quantities";
import type { CoverageGap } from "../../tables/lookup";
import {
  jointFactorSource,
  jointFactors,
  type RivetTable,
  rivetsPerInch,
  rivetTablesFor,
} from "../../tables/rivets-per-inch";
import { countAsRecorded } from "../recorded";
import { assumed, derive, derived, type Operand, tabled } from "../value";
import type { ReinforcementParts, ReinforcementResult } from "./reinforcement";

export type CountGap =
  | { readonly kind: "sheet"; readonly material: string }
  | { readonly kind: "table"; readonly table: RivetTable["name"]; readonly gap: CoverageGap };

/** How many fasteners the tables ask for on each side, and how many the record gives. */
export function fastenerCount(parts: ReinforcementParts): Pick<ReinforcementResult, "count" | "notCovered"> {
  const { fasteners, keep, subject, reinforcement, opening, path, unit } = parts;
  const { panel } = opening;
  const { material, thickness } = panel;
  const { kind, diameter, countPerSide } = fasteners ?? {};
  const value = keep(countAsRecorded(subject, "fastener-count", "fasteners on each side", countPerSide));
  const nothing = { value, least: undefined };
  if (!material || !thickness || !kind || !diameter) return { count: nothing, notCovered: [] };
  const tables = rivetTablesFor(material.value);
  if (tables.length === 0) {
    return { count: nothing, notCovered: [{ kind: "sheet", material: material.value }] };
  }
  const keys = [material.place, thickness.place, kind.place, diameter.place];
  const looked = tables.map((table) => ({
    table,
    found: rivetsPerInch(table, inUnit(thickness.value, "in"), kind.value, inUnit(diameter.value, "in")),
  }));
  const notCovered = looked.flatMap(({ table, found }): CountGap[] =>
    found.covered ? [] : [{ kind: "table", table: table.name, gap: found.reason }],
  );
  // Of two tables that both name the sheet the larger count holds, so that one alone would not do.
  if (notCovered.length > 0) return { count: nothing, notCovered };
  const perInch = looked.map(({ table, found }, index) =>
    keep(
      derive({
        subject,
        quantity: index === 0 ? "fasteners-per-inch" : "fasteners-per-inch-alternative",
        unit: "1",
        formula: "n",
        operands: { n: tabled(`fasteners per inch, Table ${table.name}`, found, "1", keys) },
        compute: ({ n }) => n,
        sources: [table.source],
        notes: tables.length > 1 ? ["Tables 4-9 and 4-10 both name clad 2024-T3: the larger counts."] : [],
      }),
    ),
  );
  const k: Operand = reinforcement.joint
    ? {
        name: `factor for ${jointWords[reinforcement.joint.value]}`,
        value: jointFactors[reinforcement.joint.value],
        unit: "1",
        places: [reinforcement.joint.place],
        source: jointFactorSource,
        notes: [],
      }
    : assumed("no reduction", 1, "1", "The record names no joint that the tables reduce their count for.");
  const [n, m] = perInch.map((one, index) => derived(`per inch, Table ${tables[index]!.name}`, one));
  const W = derived("width of the opening", path.opening);
  const inches = unit === "in" ? "W" : "W / 25.4";
  const operands = { n, ...(m && { m }), W, k } as const;
  const least = keep(
    derive({
      subject,
      quantity: "fasteners-needed",
      unit: "1",
      formula: `ceil(${m ? "max(n, m)" : "n"} * ${inches} * k)`,
      operands,
      compute: (numbers) =>
        fastenersNeeded(
          Math.max(numbers.n, numbers.m ?? 0),
          unit === "in" ? numbers.W : numbers.W / 25.4,
          numbers.k,
        ),
      sources: tables.map(({ source }) => source),
    }),
  );
  return { count: { value, least }, notCovered };
}

const jointWords = {
  "single-lap": "sheet in a single lap",
  stringer: "stringers",
  "intermediate-frame": "intermediate frames",
} as const;
