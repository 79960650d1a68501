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
  type Shape,
  type ShapeProblem,
  shapeProblems,
  smallestCornerRadius,
} from "../methods/geometry";
import type { Project } from "../project";
import { inUnit, type Quantity } from "../quantities";
import type { Cutout, Figure, Panel, Point as PointRecord } from "../records/types";
import type { Place, Written } from "../records/written";
import type { Source } from "../source";
import { fastenerEdgeDistance } from "../tables/fastener-edge-distance";
import { groupBy } from "./group-by";
import { Memory } from "./remember";
import { derive, type Keep, type Operand, tabled, type Value, type ValueUnit, written } from "./value";

export interface Openings {
  readonly cutouts: readonly CutoutResult[];
  /** Figures that are no figure, cutouts and panels alike. */
  readonly faulty: readonly FaultyFigure[];
  readonly values: readonly Value[];
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

/** Geometry is derived here, by closed forms for circles, slots, rounded rectangles and polygons. */
export const geometrySource: Source = {
  document: "Plane geometry",
  standing: "derived",
  note: "closed forms, no approximation by polygons",
};

/** All values of a project's openings. Pure; figures with faults are told and left out. */
export function deriveOpenings(project: Project): Openings {
  return new OpeningsDerivation(project).run();
}

interface PlacedCutout {
  readonly cutout: Cutout;
  readonly id: string;
  readonly panel: Panel;
  readonly placed: Placed;
}

interface Fastener {
  readonly x: number;
  readonly y: number;
  readonly place: Place;
  readonly diameter: Written<Quantity>;
  readonly head: "protruding" | "countersunk";
  readonly headPlace: Place | undefined;
}

/** Units in which an opening is measured: those of its panel's outline. */
type Unit = "in" | "mm";

function unitOf({ outline }: Panel): Unit {
  const size = outline?.width ?? outline?.diameter ?? outline?.length ?? outline?.points?.[0]?.x;
  const imperial: readonly (string | undefined)[] = [undefined, "in", "ft", "mil"];
  return imperial.includes(size?.value.unit) ? "in" : "mm";
}

class OpeningsDerivation {
  private readonly values: Value[] = [];
  private readonly faulty: FaultyFigure[] = [];

  constructor(private readonly project: Project) {}

  run(): Openings {
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
    }
    const cutouts: CutoutResult[] = [];
    for (const [panel, inPanel] of groupBy(placed, (one) => one.panel)) {
      const outline = panels.get(panel.id!.value)!.placed;
      const fasteners = fastenersOf(panel, unitOf(panel));
      for (const [index, one] of inPanel.entries()) {
        cutouts.push(this.measure(one, outline, fasteners, inPanel.slice(0, index)));
      }
    }
    return { cutouts, faulty: this.faulty, values: this.values };
  }

  private measure(
    one: PlacedCutout,
    outline: Placed | undefined,
    fasteners: readonly Fastener[],
    before: readonly PlacedCutout[],
  ): CutoutResult {
    const rests = before.map(({ cutout }) => cutout);
    const keepValue: Keep = (value) => {
      if (value) this.values.push(value);
      return value;
    };
    return measured.recall(one.cutout, one.panel, rests, keepValue, (keep) =>
      new CutoutMeasures(unitOf(one.panel), keep).cutout(one, outline, fasteners, before),
    );
  }

  private place(owner: FaultyFigure["owner"], figure: Figure | undefined, unit: Unit): Placed | undefined {
    const shape = figure && shapeOf(figure, unit);
    if (!shape) return undefined;
    const problems = shapeProblems(shape);
    for (const problem of problems) this.faulty.push({ owner, figure, unit, problem });
    if (problems.length > 0) return undefined;
    const at = figure.at ? pointOf(figure.at, unit) : { x: 0, y: 0 };
    return at && { shape, at, angle: figure.angle?.value.si ?? 0 };
  }
}

const measured = new Memory<Cutout, Panel, CutoutResult>();

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
    const figure = figureOperands(cutout.opening!, this.unit);
    const minimums = one.panel.minimums;
    const common = { subject: { kind: "cutout", id }, sources: [geometrySource] } as const;
    const measure = (
      quantity: "cutout-area" | "cutout-perimeter" | "corner-radius",
      of: ValueUnit,
      value: number,
    ) =>
      this.keep(
        derive({
          ...common,
          quantity,
          unit: of,
          method: methods[quantity],
          operands: figure,
          compute: () => value,
        }),
      );
    measure("cutout-area", this.unit === "in" ? "in2" : "mm2", area(placed.shape));
    measure("cutout-perimeter", this.unit, perimeter(placed.shape));
    const radius = measure("corner-radius", this.unit, smallestCornerRadius(placed.shape));
    return {
      cutout,
      id,
      panel: one.panel,
      radius: {
        value: radius,
        least: this.least(id, "corner radius", minimums?.cornerRadius, minimums?.data),
      },
      edge: panel ? this.edge(one, panel, figure) : { kind: "inside" },
      fastener: this.fastener(one, fasteners, figure),
      neighbours: this.neighbours(one, before, figure),
    };
  }

  private edge(one: PlacedCutout, panel: Placed, figure: Operands): CutoutResult["edge"] {
    const found = containment(one.placed, panel);
    if (found.kind !== "inside") return { kind: found.kind };
    const { minimums, outline } = one.panel;
    const value = this.keep(
      derive({
        subject: { kind: "cutout", id: one.id },
        quantity: "edge-distance",
        unit: this.unit,
        method: "least distance between the two outlines",
        operands: { ...figure, ...figureOperands(outline!, this.unit, "panel ") },
        compute: () => found.distance,
        sources: [geometrySource],
      }),
    );
    return { kind: "inside", value, least: this.least(one.id, "edge", minimums?.edge, minimums?.data) };
  }

  private fastener(
    one: PlacedCutout,
    fasteners: readonly Fastener[],
    figure: Operands,
  ): FastenerResult | undefined {
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
      derive({
        subject,
        quantity: "fastener-distance",
        unit: this.unit,
        method:
          "least distance from the opening's outline to the fastener's centre, negative inside the opening",
        operands: { ...figure, ...fastenerOperand(fastener, this.unit) },
        compute: () => distance,
        sources: [geometrySource],
      }),
    );
    return { place: fastener.place, at: fastener, value, least };
  }

  private neighbours(
    one: PlacedCutout,
    before: readonly PlacedCutout[],
    figure: Operands,
  ): NeighbourResult[] {
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
          derive({
            subject: { kind: "cutout", id: one.id },
            quantity: "cutout-distance",
            unit: this.unit,
            method: `least distance to the outline of ${other.id}`,
            operands: { ...figure, ...figureOperands(other.cutout.opening!, this.unit, `${other.id} `) },
            compute: () => rest.distance,
            sources: [geometrySource],
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

const methods = {
  "cutout-area": "area within the outline",
  "cutout-perimeter": "length of the outline",
  "corner-radius": "smallest inside radius of the outline",
} as const;

type Operands = Readonly<Record<string, Operand>>;

/** Every size and coordinate of a figure, as inputs of what is measured on it. */
function figureOperands(figure: Figure, unit: Unit, prefix = ""): Operands {
  const sizes: [string, Written<Quantity> | undefined][] = [
    ["diameter", figure.diameter],
    ["length", figure.length],
    ["width", figure.width],
    ["height", figure.height],
    ["corner radius", figure.cornerRadius],
    ["x", figure.at?.x],
    ["y", figure.at?.y],
    ...(figure.points ?? []).flatMap((point, index): [string, Written<Quantity> | undefined][] => [
      [`point ${index + 1} x`, point.x],
      [`point ${index + 1} y`, point.y],
    ]),
  ];
  const operands: Record<string, Operand> = {};
  for (const [name, size] of sizes) {
    if (size) operands[`${prefix}${name}`] = written(`${prefix}${name}`, size, unit);
  }
  if (figure.angle) operands[`${prefix}angle`] = written(`${prefix}angle`, figure.angle, "deg");
  return operands;
}

function fastenerOperand({ x, y, place }: Fastener, unit: Unit): Operands {
  const operand = (name: string, value: number): Operand => ({
    name,
    value,
    unit,
    places: [place],
    notes: [],
  });
  return { "fastener x": operand("fastener x", x), "fastener y": operand("fastener y", y) };
}

/** A figure where it lies, in a unit of length, faulty or not; undefined while a size is missing. */
export function placedFigure(figure: Figure, unit: Unit): Placed | undefined {
  const shape = shapeOf(figure, unit);
  const at = figure.at ? pointOf(figure.at, unit) : { x: 0, y: 0 };
  return shape && at && { shape, at, angle: figure.angle?.value.si ?? 0 };
}

/** The shape that a figure describes, in a unit of length; undefined while a size is missing. */
function shapeOf(figure: Figure, unit: Unit): Shape | undefined {
  const size = (length: Written<Quantity>) => inUnit(length.value, unit);
  const { diameter, length, width, height, cornerRadius, points } = figure;
  switch (figure.shape?.value) {
    case "circle":
      return diameter && { kind: "circle", diameter: size(diameter) };
    case "slot":
      return length && width && { kind: "slot", length: size(length), width: size(width) };
    case "rectangle":
      return (
        width &&
        height &&
        cornerRadius && {
          kind: "rectangle",
          width: size(width),
          height: size(height),
          cornerRadius: size(cornerRadius),
        }
      );
    case "polygon": {
      const corners = points?.map((point) => pointOf(point, unit));
      if (!corners?.every((corner) => corner !== undefined)) return undefined;
      return { kind: "polygon", points: corners };
    }
    default:
      return undefined;
  }
}

function pointOf({ x, y }: PointRecord, unit: Unit): { x: number; y: number } | undefined {
  return x && y && { x: inUnit(x.value, unit), y: inUnit(y.value, unit) };
}

/** Single fasteners and rows of a panel, one by one. */
function fastenersOf(panel: Panel, unit: Unit): Fastener[] {
  const single = (panel.fasteners ?? []).flatMap(({ at, diameter, head, place }) => {
    const centre = at && pointOf(at, unit);
    if (!centre || !diameter) return [];
    return [
      { ...centre, place, diameter, head: head?.value ?? "protruding", headPlace: head?.place } as const,
    ];
  });
  const rows = (panel.fastenerRows ?? []).flatMap(({ from, to, count, diameter, head, place }) => {
    const start = from && pointOf(from, unit);
    const end = to && pointOf(to, unit);
    if (!start || !end || !count || !diameter) return [];
    return Array.from({ length: count.value }, (_, index) => {
      const share = index / (count.value - 1);
      return {
        x: start.x + share * (end.x - start.x),
        y: start.y + share * (end.y - start.y),
        place,
        diameter,
        head: head?.value ?? "protruding",
        headPlace: head?.place,
      } as const;
    });
  });
  return [...single, ...rows];
}
