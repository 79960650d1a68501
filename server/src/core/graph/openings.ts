/**
 * Openings cut in panels: their areas, and their distances to the panel's edge, to fasteners and to each other.
 */
import {
  area,
  containment,
  type Placed,
  perimeter,
  pointClearance,
  relation,
  type ShapeProblem,
  shapeProblems,
  smallestCornerRadius,
} from "../methods/geometry";
import type { Project } from "../project";
import { inUnit, type Quantity } from "../quantities";
import type { Cutout, Figure, Panel } from "../records/types";
import type { Place, Written } from "../records/written";
import { fastenerEdgeDistance } from "../tables/fastener-edge-distance";
import { groupBy } from "./group-by";
import type { QuantityName } from "./quantity-names";
import { Recurring } from "./remember";
import { type Fastener, fastenerOperand, fastenersOf } from "./structure/fasteners";
import {
  figureOperands,
  geometrySource,
  type Operands,
  placedFigure,
  type Unit,
  unitOf,
} from "./structure/figures";
import { derive, type Keep, known, noValues, tabled, type Value, type ValueUnit, written } from "./value";

export { geometrySource };

export interface Openings {
  readonly cutouts: readonly CutoutResult[];
  /** Figures that are no figure, cutouts and panels alike. */
  readonly faulty: readonly FaultyFigure[];
}

export interface FaultyFigure {
  /** The cutout, or the panel, whose figure it is. */
  readonly owner: { readonly kind: "cutout" | "panel"; readonly id: string };
  readonly figure: Figure;
  /** Unit of the problem's lengths. */
  readonly unit: Unit;
  readonly problem: ShapeProblem;
}

export interface CutoutResult {
  readonly cutout: Cutout;
  readonly id: string;
  readonly panel: Panel;
  readonly placed: Placed;
  /** The panel's outline; undefined where it is no figure. */
  readonly within: Placed | undefined;
  readonly area: Value | undefined;
  readonly radius: Distance;
  /** How it lies in its panel; the distance is set only when it lies inside. */
  readonly edge: { readonly kind: "inside" | "crossing" | "outside" } & Partial<Distance>;
  /** The fastener with the least room. */
  readonly fastener: FastenerResult | undefined;
  /** The nearest of the openings recorded before it in the same panel, and all that are too near. */
  readonly neighbours: readonly NeighbourResult[];
}

/** A distance, and the least that it may be where somebody gives one. */
export interface Distance {
  readonly value: Value | undefined;
  readonly least: Value | undefined;
}

export interface FastenerResult extends Distance {
  readonly place: Place;
  readonly at: { readonly x: number; readonly y: number };
}

export interface NeighbourResult extends Distance {
  readonly other: string;
  readonly place: Place;
  readonly isOverlapping: boolean;
}

/** All values of a project's openings. Pure; figures with faults are told and left out. */
export function deriveOpenings(project: Project, keep: Keep): Openings {
  return new OpeningsDerivation(project, keep).run();
}

/** One opening with everything that it has to keep a distance to; lengths in the unit of its panel. */
export interface Surroundings {
  readonly cutout: Cutout;
  readonly unit: Unit;
  readonly placed: Placed;
  readonly panel: { readonly placed: Placed; readonly least: number } | undefined;
  readonly fasteners: readonly { readonly x: number; readonly y: number; readonly least: number }[];
  readonly others: readonly { readonly placed: Placed; readonly least: number }[];
}

/** Where no least distance is given it is 0: the outlines may touch and not cross. */
export function surroundingsOf(cutoutId: string, project: Project): Surroundings | undefined {
  return new OpeningsDerivation(project, noValues).surroundings(cutoutId);
}

interface PlacedCutout {
  readonly cutout: Cutout;
  readonly id: string;
  readonly panel: Panel;
  readonly placed: Placed;
}

class OpeningsDerivation {
  private readonly faulty: FaultyFigure[] = [];

  constructor(
    private readonly project: Project,
    private readonly keep: Keep,
  ) {}

  run(): Openings {
    const { panels, placed } = this.placeAll();
    const cutouts: CutoutResult[] = [];
    for (const [panel, inPanel] of groupBy(placed, (one) => one.panel)) {
      const outline = panels.get(panel.id!.value)!.placed;
      const fasteners = fastenersOf(panel);
      for (const [index, one] of inPanel.entries()) {
        cutouts.push(this.measure(one, outline, fasteners, inPanel.slice(0, index)));
      }
    }
    return { cutouts, faulty: this.faulty };
  }

  surroundings(cutoutId: string): Surroundings | undefined {
    const { panels, placed: all } = this.placeAll();
    const one = all.find(({ id }) => id === cutoutId);
    if (!one) return undefined;
    const { cutout, panel, placed } = one;
    const unit = unitOf(panel);
    const outline = panels.get(panel.id!.value)!.placed;
    const { edge, between } = panel.minimums ?? {};
    const least = (minimum: Written<Quantity> | undefined) => (minimum ? inUnit(minimum.value, unit) : 0);
    return {
      cutout,
      unit,
      placed,
      panel: outline && { placed: outline, least: least(edge) },
      fasteners: fastenersOf(panel).map(({ x, y, head, diameter }) => ({
        x,
        y,
        least: fastenerEdgeDistance(head).value * inUnit(diameter.value, unit),
      })),
      others: all
        .filter((other) => other !== one && other.panel === panel)
        .map((other) => ({ placed: other.placed, least: least(between) })),
    };
  }

  private placeAll() {
    const panels = new Map<string, { panel: Panel; placed: Placed | undefined }>();
    for (const panel of this.project.airframe?.panels ?? []) {
      if (!panel.id) continue;
      panels.set(panel.id.value, {
        panel,
        placed: this.place({ kind: "panel", id: panel.id.value }, panel.outline, unitOf(panel)),
      });
    }
    const placed: PlacedCutout[] = [];
    for (const cutout of this.project.install.cutouts ?? []) {
      const panel = cutout.panel && panels.get(cutout.panel.value)?.panel;
      if (!cutout.id || !panel) continue;
      const figure = this.place({ kind: "cutout", id: cutout.id.value }, cutout.opening, unitOf(panel));
      if (figure) placed.push({ cutout, id: cutout.id.value, panel, placed: figure });
      // Measured with the reinforcement; here it is only told where it is no figure.
      this.place({ kind: "cutout", id: cutout.id.value }, cutout.reinforcement?.outline, unitOf(panel));
    }
    return { panels, placed };
  }

  private measure(
    one: PlacedCutout,
    outline: Placed | undefined,
    fasteners: readonly Fastener[],
    before: readonly PlacedCutout[],
  ): CutoutResult {
    const rests = [one.panel, ...before.map(({ cutout }) => cutout)];
    return results.recall(one.cutout, rests, this.keep, (keep) =>
      new CutoutMeasures(unitOf(one.panel), keep).cutout(one, outline, fasteners, before),
    );
  }

  private place(owner: FaultyFigure["owner"], figure: Figure | undefined, unit: Unit): Placed | undefined {
    const placed = figure && placedFigure(figure, unit);
    if (!placed) return undefined;
    const problems = shapeProblems(placed.shape);
    for (const problem of problems) this.faulty.push({ owner, figure, unit, problem });
    return problems.length > 0 ? undefined : placed;
  }
}

const results = new Recurring<Cutout, CutoutResult>();

/** What is measured on one opening. */
class CutoutMeasures {
  constructor(
    private readonly unit: Unit,
    private readonly keep: Keep,
  ) {}

  cutout(
    one: PlacedCutout,
    panel: Placed | undefined,
    fasteners: readonly Fastener[],
    before: readonly PlacedCutout[],
  ): CutoutResult {
    const { cutout, id, placed } = one;
    const minimums = one.panel.minimums;
    const figure = ownOperands(cutout, this.unit);
    const measure = (quantity: keyof typeof methods, unit: ValueUnit, value: number) =>
      this.keep(measured(value, unit, { id, quantity, method: methods[quantity], operandsOf: figure }));
    const cutoutArea = measure("cutout-area", this.unit === "in" ? "in2" : "mm2", area(placed.shape));
    measure("cutout-perimeter", this.unit, perimeter(placed.shape));
    const radius = measure("corner-radius", this.unit, smallestCornerRadius(placed.shape));
    return {
      cutout,
      id,
      panel: one.panel,
      placed,
      within: panel,
      area: cutoutArea,
      radius: {
        value: radius,
        least: this.least(id, "corner radius", minimums?.cornerRadius, minimums?.data),
      },
      edge: panel ? this.edge(one, panel) : { kind: "inside" },
      fastener: this.fastener(one, fasteners),
      neighbours: this.neighbours(one, before),
    };
  }

  private edge(one: PlacedCutout, panel: Placed): CutoutResult["edge"] {
    const found = containment(one.placed, panel);
    if (found.kind !== "inside") return { kind: found.kind };
    const { minimums, outline } = one.panel;
    const value = this.keep(
      measured(found.distance, this.unit, {
        id: one.id,
        quantity: "edge-distance",
        method: "least distance between the two outlines",
        operandsOf: ownOperands(one.cutout, this.unit, outline, "panel "),
      }),
    );
    return { kind: "inside", value, least: this.least(one.id, "edge", minimums?.edge, minimums?.data) };
  }

  private fastener(one: PlacedCutout, fasteners: readonly Fastener[]): FastenerResult | undefined {
    let worst: { fastener: Fastener; distance: number; room: number } | undefined;
    for (const fastener of fasteners) {
      const found = pointClearance(fastener, one.placed);
      const distance = found.kind === "outside" ? found.distance : -found.depth;
      const room =
        distance - fastenerEdgeDistance(fastener.head).value * inUnit(fastener.diameter.value, this.unit);
      if (!worst || room < worst.room) worst = { fastener, distance, room };
    }
    if (!worst) return undefined;
    const { fastener, distance } = worst;
    const factor = fastenerEdgeDistance(fastener.head);
    const subject = { kind: "cutout", id: one.id } as const;
    const least = this.keep(
      derive({
        subject,
        quantity: "least-distance",
        unit: this.unit,
        formula: "k * D",
        operands: {
          k: tabled(`diameters for a ${fastener.head} head`, factor, "1", [fastener.headPlace]),
          D: written("fastener diameter", fastener.diameter, this.unit),
        },
        compute: ({ k, D }) => k * D,
        sources: [factor.source],
      }),
    );
    const value = this.keep(
      measured(distance, this.unit, {
        id: one.id,
        quantity: "fastener-distance",
        method:
          "least distance from the opening's outline to the fastener's centre, negative inside the opening",
        operandsOf: operandsToFastener(one.cutout, fastener, this.unit),
      }),
    );
    return { place: fastener.place, at: fastener, value, least };
  }

  private neighbours(one: PlacedCutout, before: readonly PlacedCutout[]): NeighbourResult[] {
    const minimums = one.panel.minimums;
    const asked = minimums?.between ? inUnit(minimums.between.value, this.unit) : 0;
    const found = before.map((other) => ({ other, relation: relation(one.placed, other.placed) }));
    const distances = found.map((pair) => (pair.relation.kind === "clear" ? pair.relation.distance : -1));
    const nearest = Math.min(...distances);
    return found
      .filter((_, index) => distances[index]! < asked || distances[index] === nearest)
      .map(({ other, relation: { kind, ...rest } }): NeighbourResult => {
        const place = other.cutout.opening!.place;
        if (!("distance" in rest)) {
          return { other: other.id, place, isOverlapping: true, value: undefined, least: undefined };
        }
        const value = this.keep(
          measured(rest.distance, this.unit, {
            id: one.id,
            quantity: "cutout-distance",
            method: `least distance to the outline of ${other.id}`,
            operandsOf: ownOperands(one.cutout, this.unit, other.cutout.opening, `${other.id} `),
          }),
        );
        const least = this.least(one.id, "between", minimums?.between, minimums?.data);
        return { other: other.id, place, isOverlapping: false, value, least };
      });
  }

  /** A least distance that the panel's own data give. */
  private least(
    id: string,
    name: string,
    minimum: Written<Quantity> | undefined,
    data: Written<string> | undefined,
  ): Value | undefined {
    return derive({
      subject: { kind: "cutout", id },
      quantity: "least-distance",
      unit: this.unit,
      formula: "least",
      operands: { least: written(`the panel's minimum, ${name}`, minimum, this.unit) },
      compute: ({ least }) => least,
      sources: data ? [{ document: data.value, standing: "record" }] : [],
    });
  }
}

/** What was measured on a cutout, and how; its inputs are listed when somebody looks. */
interface Measured {
  readonly id: string;
  readonly quantity: QuantityName;
  readonly method: string;
  readonly operandsOf: () => Operands;
}

function measured(
  value: number,
  unit: ValueUnit,
  { id, quantity, method, operandsOf }: Measured,
): Value | undefined {
  return known(value, unit, () => ({
    subject: { kind: "cutout", id },
    quantity,
    method,
    operands: operandsOf(),
    sources: [geometrySource],
  }));
}

/** The sizes of a cutout, and of another figure beside it. */
function ownOperands({ opening }: Cutout, unit: Unit, other?: Figure, prefix?: string): () => Operands {
  return () => ({
    ...figureOperands(opening!, unit),
    ...(other && figureOperands(other, unit, prefix)),
  });
}

function operandsToFastener({ opening }: Cutout, fastener: Fastener, unit: Unit): () => Operands {
  return () => ({ ...figureOperands(opening!, unit), ...fastenerOperand(fastener, unit) });
}

const methods = {
  "cutout-area": "area within the outline",
  "cutout-perimeter": "length of the outline",
  "corner-radius": "smallest inside radius of the outline",
} as const;
