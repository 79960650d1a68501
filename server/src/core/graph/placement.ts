/**
 * Where components are: their boxes in the aircraft, how near they come to each other and to what must be kept
 * free, whether controls are within reach, and whether they pass through their panel.
 */
import { containment, type Placed, shapeProblems } from "../methods/geometry";
import {
  clearance,
  extentOf,
  lengthOf,
  minus,
  plus,
  type Solid,
  type SweptLine,
  sidesWhenUp,
  turned,
  type UprightBox,
  type Vector3,
} from "../methods/solids";
import type { Project } from "../project";
import { inUnit, type Quantity } from "../quantities";
import type { Component, KeepOut, Panel, Placement, Reach, Seat, SpacePoint } from "../records/types";
import type { Place, Written } from "../records/written";
import type { Source } from "../source";
import { attitudeOf } from "./mounts/pattern";
import { Memory } from "./remember";
import { placedFigure } from "./structure/figures";
import { derive, type Keep, keeper, known, type Operand, type Value, written } from "./value";

export interface Placements {
  readonly components: readonly PlacedComponent[];
  /** Of each component the nearest room that is kept free, the nearest component before it, and all too near. */
  readonly clearances: readonly ClearanceResult[];
  readonly reaches: readonly ReachResult[];
  readonly passages: readonly PassageResult[];
  /** Components that would have a place but for data that is not recorded, with the keys. */
  readonly unplaced: readonly {
    readonly placement: Placement;
    readonly id: string;
    readonly missing: readonly string[];
  }[];
  /** Keep-outs whose size is not recorded. */
  readonly shapeless: readonly KeepOut[];
  /** Unit of all lengths here. */
  readonly unit: Unit;
  readonly values: readonly Value[];
}

export interface PlacedComponent {
  readonly placement: Placement;
  readonly component: Component;
  readonly id: string;
  readonly box: UprightBox;
}

export interface ClearanceResult {
  readonly placed: PlacedComponent;
  readonly other: Neighbour;
  /** Negative where they share space: the shortest straight move that parts them. */
  readonly value: Value;
  /** What has to be kept; undefined where nobody says. */
  readonly least: Value | undefined;
}

export interface ReachResult {
  readonly reach: Reach;
  readonly id: string;
  readonly seat: Seat;
  readonly distance: Value;
  readonly most: Value | undefined;
}

export interface PassageResult {
  readonly placement: Placement;
  readonly component: Component;
  readonly id: string;
  readonly panel: Panel;
  /** `unknown` where the component has no size, or the panel no clear opening. */
  readonly fits: "yes" | "no" | "unknown";
  /** Its two smaller sides, and the unit that they are in. */
  readonly sides: readonly [number, number] | undefined;
}

type Unit = "in" | "mm";

/** Distances of solids are derived here. */
export const solidsSource: Source = {
  document: "Solid geometry",
  standing: "derived",
  note: "exact distances of upright boxes and swept lines",
};

/** All values of a project's placement. Pure. */
export function derivePlacements(project: Project): Placements {
  return new PlacementDerivation(project).run();
}

/** Something that a component may come near to. */
export interface Neighbour {
  readonly kind: "component" | "keep-out";
  readonly id: string;
  readonly place: Place;
  readonly solids: readonly Solid[];
  /** What a keep-out is kept free for. */
  readonly purpose: NonNullable<KeepOut["kind"]>["value"] | undefined;
  readonly least: Written<Quantity<"length">> | undefined;
  readonly data: Written<string> | undefined;
  readonly identity: readonly object[];
  readonly operands: () => Readonly<Record<string, Operand>>;
}

class PlacementDerivation {
  private readonly values = keeper();
  private readonly unit: Unit;
  private readonly unplaced: Placements["unplaced"][number][] = [];
  private readonly shapeless: KeepOut[] = [];

  constructor(private readonly project: Project) {
    const written = project.install.placement?.find(({ arm }) => arm)?.arm?.value.unit;
    this.unit = written === undefined || written === "in" || written === "ft" ? "in" : "mm";
  }

  run(): Placements {
    const { kit, airframe, install } = this.project;
    const byId = new Map(kit?.components?.map((one) => [one.id?.value, one]));
    const placements = (install.placement ?? []).flatMap((placement) => {
      const component = placement.component && byId.get(placement.component.value);
      return component?.id ? [{ placement, component, id: component.id.value }] : [];
    });
    const keepOuts = (airframe?.keepOuts ?? []).flatMap((one) => this.keepOut(one) ?? []);
    const components = placements.flatMap((one) => this.placed(one, keepOuts.length > 0) ?? []);
    const neighbours = components.map((one) => this.asNeighbour(one));
    const clearances = components.flatMap((one, index) =>
      this.clearances(one, [...keepOuts, ...neighbours.slice(0, index)]),
    );
    return {
      components,
      clearances,
      reaches: this.reaches(),
      passages: placements.flatMap((one) => this.passage(one) ?? []),
      unplaced: this.unplaced,
      shapeless: this.shapeless,
      unit: this.unit,
      values: this.values.list(),
    };
  }

  /** Undefined, and told where something is to be kept clear of it, while its box is not known. */
  private placed(
    { placement, component, id }: Omit<PlacedComponent, "box">,
    hasKeepOuts: boolean,
  ): PlacedComponent | undefined {
    const { size, cg } = component;
    const missing = [
      ...(size?.length && size.width && size.height ? [] : ["size in the kit"]),
      ...(cg?.fromFront && cg.fromLeft && cg.fromBottom ? [] : ["cg in the kit"]),
      ...(placement.arm ? [] : ["arm"]),
      ...(placement.buttLine ? [] : ["butt-line"]),
      ...(placement.waterLine ? [] : ["water-line"]),
    ];
    const centre = this.point(placement);
    const sides = size && this.vector(size.length, size.width, size.height);
    const middle = cg && this.vector(cg.fromFront, cg.fromLeft, cg.fromBottom);
    if (!centre || !sides || !middle) {
      const isMeant = hasKeepOuts || size !== undefined;
      if (isMeant && missing.length > 0) this.unplaced.push({ placement, id, missing });
      return undefined;
    }
    const attitude = attitudeOf(placement);
    const half = { x: sides.x / 2, y: sides.y / 2, z: sides.z / 2 };
    const box: UprightBox = {
      kind: "box",
      centre: plus(centre, turned(minus(half, middle), attitude)),
      half: sidesWhenUp(half, attitude.up),
      turn: attitude.turn,
    };
    return { placement, component, id, box };
  }

  private keepOut(keepOut: KeepOut): Neighbour | undefined {
    if (!keepOut.id) return undefined;
    const solids = this.solidsOf(keepOut);
    if (!solids) {
      this.shapeless.push(keepOut);
      return undefined;
    }
    return {
      kind: "keep-out",
      id: keepOut.id.value,
      place: keepOut.id.place,
      solids,
      purpose: keepOut.kind?.value,
      least: keepOut.clearance,
      data: keepOut.data,
      identity: [keepOut],
      operands: () => keepOutOperands(keepOut, this.unit),
    };
  }

  private solidsOf({ box, along, radius }: KeepOut): readonly Solid[] | undefined {
    if (box) {
      const from = box.from && this.point(box.from);
      const to = box.to && this.point(box.to);
      if (!from || !to) return undefined;
      const half = { x: (to.x - from.x) / 2, y: (to.y - from.y) / 2, z: (to.z - from.z) / 2 };
      const size = { x: Math.abs(half.x), y: Math.abs(half.y), z: Math.abs(half.z) };
      if (!(size.x > 0 && size.y > 0 && size.z > 0)) return undefined;
      return [{ kind: "box", centre: plus(from, half), half: size, turn: 0 }];
    }
    const points = along?.map((point) => this.point(point));
    if (!radius || !points?.every((point) => point !== undefined) || points.length === 0) return undefined;
    const around = inUnit(radius.value, this.unit);
    return points
      .slice(0, Math.max(1, points.length - 1))
      .map(
        (from, index): SweptLine => ({ kind: "line", from, to: points[index + 1] ?? from, radius: around }),
      );
  }

  private asNeighbour({ placement, component, id, box }: PlacedComponent): Neighbour {
    return {
      kind: "component",
      id,
      place: placement.place,
      solids: [box],
      purpose: undefined,
      least: component.clearance?.least,
      data: component.clearance?.data,
      identity: [placement, component],
      operands: () => boxOperands({ placement, component }, this.unit, `${id} `),
    };
  }

  private clearances(one: PlacedComponent, neighbours: readonly Neighbour[]): ClearanceResult[] {
    const basis = [this.unit, ...neighbours.flatMap(({ identity }) => identity)];
    return measured.recall(one.placement, one.component, basis, this.values.keep, (keep) =>
      this.measure(one, neighbours, keep),
    );
  }

  private measure(one: PlacedComponent, neighbours: readonly Neighbour[], keep: Keep): ClearanceResult[] {
    const nearest = { component: Number.POSITIVE_INFINITY, "keep-out": Number.POSITIVE_INFINITY };
    const found = neighbours.flatMap((other) => {
      const asked = leastOf(one, other);
      const needed = asked ? inUnit(asked.least.value, this.unit) : 0;
      const bound = Math.min(...other.solids.map((solid) => extentGap(one.box, solid)));
      if (bound > Math.max(needed, nearest[other.kind])) return [];
      const distance = Math.min(...other.solids.map((solid) => clearance(one.box, solid)));
      nearest[other.kind] = Math.min(nearest[other.kind], distance);
      return [{ other, asked, needed, distance }];
    });
    return found
      .filter(({ other, distance, needed }) => distance < needed || distance === nearest[other.kind])
      .flatMap(({ other, asked, distance }): ClearanceResult[] => {
        const subject = { kind: "component", id: one.id } as const;
        const value = keep(
          known({
            subject,
            quantity: "clearance",
            unit: this.unit,
            method: `least distance to ${other.id}, negative where they share space`,
            operands: () => ({ ...boxOperands(one, this.unit), ...other.operands() }),
            value: distance,
            sources: [solidsSource],
          }),
        );
        if (!value) return [];
        const least = asked
          ? derive({
              subject,
              quantity: "least-clearance",
              unit: this.unit,
              formula: "c",
              operands: { c: written(`clearance of ${asked.of}`, asked.least, this.unit) },
              compute: ({ c }) => c,
              sources: asked.data ? [{ document: asked.data.value, standing: "record" }] : [],
            })
          : undefined;
        return [{ placed: one, other, value, least }];
      });
  }

  private reaches(): ReachResult[] {
    const seats = new Map(this.project.airframe?.seats?.map((one) => [one.id?.value, one]));
    return (this.project.install.reach ?? []).flatMap((reach) => {
      const seat = reach.from && seats.get(reach.from.value);
      const id = reach.control?.value;
      const at = reach.at && this.point(reach.at);
      const shoulder = seat?.shoulder && this.point(seat.shoulder);
      if (!seat || id === undefined || !at || !shoulder) return [];
      const kind = this.project.names.find(["protection", "contact", "component"], id)[0]?.kind;
      if (!kind) return [];
      const subject = { kind, id };
      const far = lengthOf(minus(at, shoulder));
      const distance = this.values.keep(
        derive({
          subject,
          quantity: "reach-distance",
          unit: this.unit,
          formula: "sqrt((xc - xs)^2 + (yc - ys)^2 + (zc - zs)^2)",
          operands: {
            xc: written("control, arm", reach.at!.arm, this.unit),
            xs: written("shoulder, arm", seat.shoulder!.arm, this.unit),
            yc: written("control, butt line", reach.at!.buttLine, this.unit),
            ys: written("shoulder, butt line", seat.shoulder!.buttLine, this.unit),
            zc: written("control, water line", reach.at!.waterLine, this.unit),
            zs: written("shoulder, water line", seat.shoulder!.waterLine, this.unit),
          },
          compute: () => far,
          sources: [solidsSource],
        }),
      );
      const most = this.values.keep(
        derive({
          subject,
          quantity: "reach-limit",
          unit: this.unit,
          formula: "r",
          operands: { r: written(`reach from ${seat.id?.value ?? "the seat"}`, seat.reach, this.unit) },
          compute: ({ r }) => r,
          sources: seat.data ? [{ document: seat.data.value, standing: "record" }] : [],
        }),
      );
      return distance ? [{ reach, id, seat, distance, most }] : [];
    });
  }

  private passage({ placement, component, id }: Omit<PlacedComponent, "box">): PassageResult | undefined {
    const panel =
      placement.through &&
      this.project.airframe?.panels?.find((one) => one.id?.value === placement.through?.value);
    if (!panel) return undefined;
    const { size } = component;
    const sides = size && this.vector(size.length, size.width, size.height);
    const opening = panel.clearOpening && placedFigure(panel.clearOpening, this.unit);
    if (!sides || !opening || shapeProblems(opening.shape).length > 0) {
      return { placement, component, id, panel, fits: "unknown", sides: undefined };
    }
    const [a, b] = [sides.x, sides.y, sides.z].sort((one, two) => one - two) as [number, number];
    const fits = passes(opening, a, b) ? "yes" : "no";
    return { placement, component, id, panel, fits, sides: [a, b] };
  }

  private point({ arm, buttLine, waterLine }: SpacePoint | Placement): Vector3 | undefined {
    return this.vector(arm, buttLine, waterLine);
  }

  private vector(
    x: Written<Quantity<"length">> | undefined,
    y: Written<Quantity<"length">> | undefined,
    z: Written<Quantity<"length">> | undefined,
  ): Vector3 | undefined {
    if (!x || !y || !z) return undefined;
    const { unit } = this;
    return { x: inUnit(x.value, unit), y: inUnit(y.value, unit), z: inUnit(z.value, unit) };
  }
}

const measured = new Memory<Placement, Component, ClearanceResult[]>();

/** The greater of what the two ask to be kept between them. */
function leastOf({ component, id }: PlacedComponent, other: Neighbour) {
  const own = component.clearance;
  const candidates = [
    ...(own?.least ? [{ of: id, least: own.least, data: own.data }] : []),
    ...(other.least ? [{ of: other.id, least: other.least, data: other.data }] : []),
  ];
  return candidates.sort((a, b) => b.least.value.si - a.least.value.si)[0];
}

/** Never more than the distance of the two: that of the straight boxes around them. */
function extentGap(a: Solid, b: Solid): number {
  const [one, two] = [extentOf(a), extentOf(b)];
  const gap = (axis: "x" | "y" | "z") =>
    Math.max(0, one.min[axis] - two.max[axis], two.min[axis] - one.max[axis]);
  return Math.hypot(gap("x"), gap("y"), gap("z"));
}

/** Whether a rectangle passes through the middle of an opening, along its axes or across. */
function passes(opening: Placed, a: number, b: number): boolean {
  return [0, Math.PI / 2].some((turn) => {
    const shape = { kind: "rectangle", width: a, height: b, cornerRadius: 0 } as const;
    return (
      containment({ shape, at: middleOf(opening), angle: opening.angle + turn }, opening).kind === "inside"
    );
  });
}

/** The centre of a figure; of a polygon, that of its corners. */
function middleOf({ shape, at, angle }: Placed): { x: number; y: number } {
  if (shape.kind !== "polygon") return at;
  const count = shape.points.length;
  const x = shape.points.reduce((sum, point) => sum + point.x, 0) / count;
  const y = shape.points.reduce((sum, point) => sum + point.y, 0) / count;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: at.x + cos * x - sin * y, y: at.y + sin * x + cos * y };
}

function boxOperands(
  { placement, component }: Pick<PlacedComponent, "placement" | "component">,
  unit: Unit,
  prefix = "",
): Record<string, Operand> {
  const { size, cg } = component;
  const operands: Record<string, Operand> = {
    ...pointOperands(placement, unit, prefix),
    [`${prefix}length`]: written(`${prefix}length`, size?.length, unit),
    [`${prefix}width`]: written(`${prefix}width`, size?.width, unit),
    [`${prefix}height`]: written(`${prefix}height`, size?.height, unit),
    [`${prefix}CG from front`]: written(`${prefix}CG from front`, cg?.fromFront, unit),
    [`${prefix}CG from left`]: written(`${prefix}CG from left`, cg?.fromLeft, unit),
    [`${prefix}CG from bottom`]: written(`${prefix}CG from bottom`, cg?.fromBottom, unit),
  };
  if (placement.turn) operands[`${prefix}turn`] = written(`${prefix}turn`, placement.turn, "deg");
  return operands;
}

function pointOperands(
  { arm, buttLine, waterLine }: SpacePoint | Placement,
  unit: Unit,
  prefix: string,
): Record<string, Operand> {
  return {
    [`${prefix}arm`]: written(`${prefix}arm`, arm, unit),
    [`${prefix}butt line`]: written(`${prefix}butt line`, buttLine, unit),
    [`${prefix}water line`]: written(`${prefix}water line`, waterLine, unit),
  };
}

function keepOutOperands({ id, box, along, radius }: KeepOut, unit: Unit): Record<string, Operand> {
  const name = id?.value ?? "";
  const operands: Record<string, Operand> = {};
  for (const [index, point] of (along ?? []).entries()) {
    Object.assign(operands, pointOperands(point, unit, `${name} point ${index + 1} `));
  }
  if (box?.from) Object.assign(operands, pointOperands(box.from, unit, `${name} from `));
  if (box?.to) Object.assign(operands, pointOperands(box.to, unit, `${name} to `));
  if (radius) operands[`${name} radius`] = written(`${name} radius`, radius, unit);
  return operands;
}
