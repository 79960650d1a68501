/** How near components come to each other and to what must be kept free. */
import { clearance, extentOf, type Solid } from "../../methods/solids";
import { inUnit, type Quantity } from "../../quantities";
import type { Component, KeepOut, Placement } from "../../records/types";
import type { Place, Written } from "../../records/written";
import { Memory } from "../remember";
import { derive, type Keep, known, type Operand, type Value, written } from "../value";
import { boxOperands, type PlacedComponent, solidsSource, type Unit } from "./boxes";

export interface ClearanceResult {
  readonly placed: PlacedComponent;
  readonly other: Neighbour;
  /** Negative where they share space: the shortest straight move that parts them. */
  readonly value: Value;
  /** What has to be kept; undefined where nobody says. */
  readonly least: Value | undefined;
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

/** Of each component the nearest room that is kept free, the nearest component before it, and all too near. */
export function clearancesOf(
  components: readonly PlacedComponent[],
  keepOuts: readonly Neighbour[],
  unit: Unit,
  keep: Keep,
): ClearanceResult[] {
  const neighbours = components.map((one) => asNeighbour(one, unit));
  return components.flatMap((one, index) => {
    const others = [...keepOuts, ...neighbours.slice(0, index)];
    const basis = [unit, ...others.flatMap(({ identity }) => identity)];
    return measured.recall(one.placement, one.component, basis, keep, (keepOwn) =>
      measure(one, others, unit, keepOwn),
    );
  });
}

const measured = new Memory<Placement, Component, ClearanceResult[]>();

function asNeighbour({ placement, component, id, box }: PlacedComponent, unit: Unit): Neighbour {
  return {
    kind: "component",
    id,
    place: placement.place,
    solids: [box],
    purpose: undefined,
    least: component.clearance?.least,
    data: component.clearance?.data,
    identity: [placement, component],
    operands: () => boxOperands({ placement, component }, unit, `${id} `),
  };
}

function measure(
  one: PlacedComponent,
  neighbours: readonly Neighbour[],
  unit: Unit,
  keep: Keep,
): ClearanceResult[] {
  const nearest = { component: Number.POSITIVE_INFINITY, "keep-out": Number.POSITIVE_INFINITY };
  const found = neighbours.flatMap((other) => {
    const asked = leastOf(one, other);
    const needed = asked ? inUnit(asked.least.value, unit) : 0;
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
        known(distance, unit, () => ({
          subject,
          quantity: "clearance",
          method: `least distance to ${other.id}, negative where they share space`,
          operands: { ...boxOperands(one, unit), ...other.operands() },
          sources: [solidsSource],
        })),
      );
      if (!value) return [];
      const least = asked
        ? derive({
            subject,
            quantity: "least-clearance",
            unit,
            formula: "c",
            operands: { c: written(`clearance of ${asked.of}`, asked.least, unit) },
            compute: ({ c }) => c,
            sources: asked.data ? [{ document: asked.data.value, standing: "record" }] : [],
          })
        : undefined;
      return [{ placed: one, other, value, least }];
    });
}

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
