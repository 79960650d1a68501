/** Doublers and rings around openings: thickness, fasteners and their places. */
import { containment, type Placed, shapeProblems } from "../../methods/geometry";
import { fastenersNeeded } from "../../methods/rivet-count";
import { inUnit, roundUp } from "../../quantities";
import type { DoublerFasteners, Reinforcement } from "../../records/types";
import type { Source } from "../../source";
import { fastenerEdgeDistance } from "../../tables/fastener-edge-distance";
import type { CoverageGap } from "../../tables/lookup";
import { diameterRange, leastPitch, leastRowPitch, widestPitch } from "../../tables/rivet-spacing";
import {
  jointFactorSource,
  jointFactors,
  type RivetTable,
  rivetsPerInch,
  rivetTablesFor,
} from "../../tables/rivets-per-inch";
import type { CutoutResult, Distance } from "../openings";
import { asRecorded, countAsRecorded, counted } from "../recorded";
import {
  assumed,
  derive,
  derived,
  type Keep,
  type Operand,
  type Subject,
  tabled,
  type Value,
  written,
} from "../value";
import { doublerLines, type Fastener, fastenersOf } from "./fasteners";
import { figureOperands, placedFigure, type Unit, unitOf } from "./figures";
import { type LoadPath, widthAcross } from "./load-path";
import { type NearFastener, nearestEdge, nearestFasteners } from "./near-fasteners";

export interface ReinforcementResult {
  readonly opening: CutoutResult;
  readonly reinforcement: Reinforcement;
  /** Outline of a doubler; undefined for a ring, and where it is no figure. */
  readonly outline: Placed | undefined;
  /** False where an opening is not wholly inside its doubler. */
  readonly surrounds: boolean;
  readonly thickness: Distance;
  /** Width that is left beside the opening for its section; nothing or less where holes and opening take it all. */
  readonly net: Value | undefined;
  /** What the panel's record lacks for its checks. */
  readonly lacks: readonly ("material" | "thickness")[];
  /** Undefined where the record gives no count. */
  readonly count: Distance;
  /** Why no table gives a count, one for each table that was asked; or that none names the sheet. */
  readonly notCovered: readonly CountGap[];
  readonly edge: Distance;
  readonly pitch: Distance & { readonly widest: Value | undefined };
  readonly rowPitch: Distance;
  readonly diameter: Distance & { readonly largest: Value | undefined };
  /** The least room between a fastener of the reinforcement and one of the panel. */
  readonly near: NearFastener | undefined;
}

export type CountGap =
  | { readonly kind: "sheet"; readonly material: string }
  | { readonly kind: "table"; readonly table: RivetTable["name"]; readonly gap: CoverageGap };

/** AC 43.13-1B asks that what is put on has at least the section of what is taken out. */
const sectionSource: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98",
  at: "par. 4-58k and fig. 4-20",
  standing: "published",
};

/** What is derived of the reinforcement of one opening. */
export class ReinforcementDerivation {
  private readonly subject: Subject;
  private readonly unit: Unit;
  private readonly fasteners: DoublerFasteners | undefined;

  constructor(
    private readonly opening: CutoutResult,
    private readonly reinforcement: Reinforcement,
    private readonly path: LoadPath,
    private readonly keep: Keep,
  ) {
    this.subject = { kind: "cutout", id: opening.id };
    this.unit = unitOf(opening.panel);
    this.fasteners = reinforcement.fasteners;
  }

  run(): ReinforcementResult {
    const { opening, reinforcement } = this;
    const outline = this.outline();
    const found = outline && containment(opening.placed, outline);
    return {
      opening,
      reinforcement,
      outline,
      surrounds: found === undefined || found.kind === "inside",
      ...this.thickness(outline),
      lacks: (["material", "thickness"] as const).filter((key) => !opening.panel[key]),
      ...this.counts(),
      ...this.spacing(),
      edge: this.edge(outline),
      near: this.near(),
    };
  }

  private outline(): Placed | undefined {
    const placed = placedFigure(this.reinforcement.outline, this.unit);
    return placed && shapeProblems(placed.shape).length === 0 ? placed : undefined;
  }

  /** The section that is left beside the opening, fastener holes taken off, has to replace the one cut out. */
  private thickness(outline: Placed | undefined): Pick<ReinforcementResult, "thickness" | "net"> {
    const { reinforcement, unit, keep, subject, opening } = this;
    const { panel } = opening;
    const width = written("width of the ring", reinforcement.width, unit);
    const W = derived("width of the opening", this.path.opening);
    const r: Operand =
      counted("rows on each side", this.fasteners?.rows) ??
      assumed("rows on each side", 1, "1", "The record names no rows: one.");
    const d = written("fastener diameter", this.fasteners?.diameter, unit);
    const t = written("thickness of the panel", panel.thickness, unit);
    const net = keep(
      outline
        ? derive({
            subject,
            quantity: "doubler-net-width",
            unit,
            formula: "B - W - 2 * r * d",
            operands: { B: derived("width of the doubler", this.doublerWidth(outline)), W, r, d },
            compute: (n) => n.B - n.W - 2 * n.r * n.d,
            sources: [sectionSource],
          })
        : derive({
            subject,
            quantity: "doubler-net-width",
            unit,
            formula: "2 * w - 2 * r * d",
            operands: { w: width, r, d },
            compute: (n) => 2 * n.w - 2 * n.r * n.d,
            sources: [sectionSource],
          }),
    );
    const least = keep(
      derive({
        subject,
        quantity: "least-doubler-thickness",
        unit,
        formula: "t * W / b",
        operands: { t, W, b: derived("net width beside the opening", net) },
        // Fasteners that leave nothing of the section leave no thickness that would do.
        compute: ({ t, W, b }) => (b > 0 ? (t * W) / b : Number.NaN),
        sources: [sectionSource],
      }),
    );
    const value = keep(
      asRecorded(
        subject,
        "doubler-thickness",
        "thickness of the reinforcement",
        reinforcement.thickness,
        unit,
      ),
    );
    return { thickness: { value, least }, net };
  }

  private doublerWidth(outline: Placed): Value | undefined {
    const figure = this.reinforcement.outline!;
    return this.keep(
      derive({
        subject: this.subject,
        quantity: "doubler-width",
        unit: this.unit,
        method: "extent of the doubler's outline across the load",
        operands: figureOperands(figure, this.unit, "doubler "),
        compute: () => widthAcross(outline, this.path),
      }),
    );
  }

  private counts(): Pick<ReinforcementResult, "count" | "notCovered"> {
    const { fasteners, keep, subject, reinforcement, opening } = this;
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
    const W = derived("width of the opening", this.path.opening);
    const inches = this.unit === "in" ? "W" : "W / 25.4";
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
            this.unit === "in" ? numbers.W : numbers.W / 25.4,
            numbers.k,
          ),
        sources: tables.map(({ source }) => source),
      }),
    );
    return { count: { value, least }, notCovered };
  }

  private spacing(): Pick<ReinforcementResult, "pitch" | "rowPitch" | "diameter"> {
    const { fasteners, keep, subject, unit, opening, reinforcement } = this;
    const { diameter, rows, head } = fasteners ?? {};
    const D = written("fastener diameter", diameter, unit);
    const times = (
      quantity: "least-pitch" | "widest-pitch" | "least-row-pitch",
      factor: ReturnType<typeof leastPitch>,
    ) =>
      keep(
        derive({
          subject,
          quantity,
          unit,
          formula: "k * D",
          operands: { k: tabled("diameters", factor, "1", [rows?.place, head?.place]), D },
          compute: (n) => n.k * n.D,
          sources: [factor.source],
        }),
      );
    const sheets = [
      written("thickness of the panel", opening.panel.thickness, unit),
      written("thickness of the reinforcement", reinforcement.thickness, unit),
    ] as const;
    const leastDiameter = () =>
      keep(
        derive({
          subject,
          quantity: "least-fastener-diameter",
          unit,
          formula: "k * max(s, t)",
          operands: {
            k: tabled("sheet thicknesses", diameterRange.least, "1", []),
            s: sheets[0],
            t: sheets[1],
          },
          compute: (n) => n.k * Math.max(n.s, n.t),
          sources: [diameterRange.least.source],
        }),
      );
    const perUnit = unit === "in" ? "32" : "32 / 25.4";
    const inches = unit === "in" ? 1 : 25.4;
    const largestDiameter = () =>
      keep(
        derive({
          subject,
          quantity: "largest-fastener-diameter",
          unit,
          formula: `ceil(k * max(s, t) * ${perUnit}) / (${perUnit})`,
          operands: {
            k: tabled("sheet thicknesses", diameterRange.largest, "1", []),
            s: sheets[0],
            t: sheets[1],
          },
          compute: (n) => roundUp((n.k * Math.max(n.s, n.t)) / inches, 1 / 32) * inches,
          sources: [diameterRange.largest.source],
          notes: ["Rounded up to the next 1/32 in."],
        }),
      );
    const isRivet = fasteners?.kind?.value === "2117-rivet";
    return {
      pitch: {
        value: keep(asRecorded(subject, "pitch", "pitch", fasteners?.pitch, unit)),
        least: times("least-pitch", leastPitch(rows?.value ?? 1, head?.value ?? "protruding")),
        widest: times("widest-pitch", widestPitch),
      },
      rowPitch: {
        value: keep(asRecorded(subject, "row-pitch", "distance between rows", fasteners?.rowPitch, unit)),
        least: times("least-row-pitch", leastRowPitch),
      },
      diameter: {
        value: keep(asRecorded(subject, "fastener-diameter", "fastener diameter", diameter, unit)),
        least: isRivet ? leastDiameter() : undefined,
        largest: isRivet ? largestDiameter() : undefined,
      },
    };
  }

  /** Measured where the places of the fasteners are recorded, as recorded otherwise. */
  private edge(outline: Placed | undefined): Distance {
    const { fasteners, keep, subject, unit, opening } = this;
    if (!fasteners?.diameter) return { value: undefined, least: undefined };
    const factor = fastenerEdgeDistance(fasteners.head?.value ?? "protruding");
    const least = keep(
      derive({
        subject,
        quantity: "least-fastener-edge-distance",
        unit,
        formula: "k * D",
        operands: {
          k: tabled(`diameters for a ${fasteners.head?.value ?? "protruding"} head`, factor, "1", [
            fasteners.head?.place,
          ]),
          D: written("fastener diameter", fasteners.diameter, unit),
        },
        compute: (n) => n.k * n.D,
        sources: [factor.source],
      }),
    );
    const all = doublerLines(fasteners, unit).flat();
    const edges = [opening.placed, outline, opening.within].filter((one) => one !== undefined);
    const measured = nearestEdge(all, edges);
    if (measured === undefined) {
      return {
        value: keep(
          asRecorded(subject, "doubler-edge-distance", "edge distance", fasteners.edgeDistance, unit),
        ),
        least,
      };
    }
    return {
      value: keep(
        derive({
          subject,
          quantity: "doubler-edge-distance",
          unit,
          method:
            "least distance from the fasteners' centres to the outlines of opening, reinforcement and panel",
          operands: {
            ...figureOperands(opening.cutout.opening!, unit),
            ...(this.reinforcement.outline && figureOperands(this.reinforcement.outline, unit, "doubler ")),
            ...linesOperand(all, unit),
          },
          compute: () => measured,
        }),
      ),
      least,
    };
  }

  private near(): NearFastener | undefined {
    if (!this.fasteners) return undefined;
    return nearestFasteners(
      this.subject,
      doublerLines(this.fasteners, this.unit).flat(),
      fastenersOf(this.opening.panel, this.unit),
      this.unit,
      this.keep,
    );
  }
}

const jointWords = {
  "single-lap": "sheet in a single lap",
  stringer: "stringers",
  "intermediate-frame": "intermediate frames",
} as const;

function linesOperand(fasteners: readonly Fastener[], unit: Unit): Readonly<Record<string, Operand>> {
  const places = [...new Set(fasteners.map(({ place }) => place))];
  return {
    lines: {
      name: "places of the fasteners",
      value: fasteners.length,
      unit: "1",
      places,
      notes: [`Measured in ${unit}.`],
    },
  };
}
