/** How far what is serviced is from the panels that hands come in by. */
import { clearance, minus, plus, type Solid, turned, type Vector3 } from "../../methods/solids";
import type { Component, Panel, Placement, Servicing } from "../../records/types";
import type { Written } from "../../records/written";
import { isAtMost } from "../../rounding";
import { attitudeOf } from "../mounts/pattern";
import { Memory } from "../remember";
import { derive, type Keep, known, type Value, written } from "../value";
import {
  boxOperands,
  type NamedPlacement,
  type PlacedComponent,
  pointIn,
  pointOperands,
  solidsSource,
  spotIn,
  spotOperands,
  type Unit,
} from "./boxes";

/** One job that a component needs, and the panels that it is done through. */
export interface ServiceResult {
  readonly placed: PlacedComponent;
  readonly job: Servicing;
  readonly ways: readonly ServiceWay[];
  /** The panel that leaves the most of its reach; undefined where none is named, or one may yet do better. */
  readonly best: MeasuredWay | undefined;
}

export interface ServiceWay {
  /** The panel's id, where the placement names it. */
  readonly through: Written<string>;
  readonly panel: Panel;
  /** Undefined where the panel does not say where its opening is. */
  readonly distance: Value | undefined;
  readonly reach: Value | undefined;
}

export type MeasuredWay = ServiceWay & { readonly distance: Value; readonly reach: Value };

/** A component whose kit says that it is serviced where it stands. */
export function isServiced({ component }: NamedPlacement): boolean {
  return (component.servicing ?? []).some(({ what }) => what);
}

export function servicesOf(
  placed: PlacedComponent,
  panels: readonly Panel[],
  unit: Unit,
  keep: Keep,
): readonly ServiceResult[] {
  const { placement, component } = placed;
  if (!placement.servedThrough || !isServiced(placed)) return [];
  const named = placement.servedThrough.flatMap((through) => {
    const panel = panels.find(({ id }) => id?.value === through.value);
    return panel ? [{ through, panel }] : [];
  });
  // A panel that is misspelt may be the one that reaches.
  if (named.length < placement.servedThrough.length) return [];
  const basis = [unit, ...named.map(({ panel }) => panel)];
  return measured.recall(placement, component, basis, keep, (keepOwn) =>
    component
      .servicing!.filter(({ what }) => what)
      .map((job): ServiceResult => {
        const ways = named.map((way) => ({ ...way, ...measure(placed, job, way.panel, unit, keepOwn) }));
        return { placed, job, ways, best: bestOf(ways) };
      }),
  );
}

const measured = new Memory<Placement, Component, readonly ServiceResult[]>();

/**
 * Distance of a job from the middle of a panel's opening: straight, to the spot where it is done, or else to the
 * nearest point of the component's box. Undefined while a point is missing.
 *
 * @returns in `unit`
 */
export function serviceDistance(
  { placement, component, box }: PlacedComponent,
  { at }: Servicing,
  { access }: Panel,
  unit: Unit,
): number | undefined {
  const hand = access?.at && pointIn(access.at, unit);
  if (!hand) return undefined;
  const centre = pointIn(placement, unit);
  const middle = spotIn(component.cg, unit);
  const spot = spotIn(at, unit);
  if (at && !(spot && centre && middle)) return undefined;
  const where: Solid = spot ? point(plus(centre!, turned(minus(spot, middle!), attitudeOf(placement)))) : box;
  if (where.kind === "box") return Math.max(0, clearance(where, point(hand)));
  return Math.hypot(...(["x", "y", "z"] as const).map((axis) => hand[axis] - where.from[axis]));
}

function point(at: Vector3) {
  return { kind: "line", from: at, to: at, radius: 0 } as const;
}

function measure(
  placed: PlacedComponent,
  job: Servicing,
  panel: Panel,
  unit: Unit,
  keep: Keep,
): Pick<ServiceWay, "distance" | "reach"> {
  const { access } = panel;
  const name = panel.id?.value ?? "the panel";
  const subject = { kind: "component", id: placed.id } as const;
  const distance = keep(
    known(serviceDistance(placed, job, panel, unit), unit, () => ({
      subject,
      quantity: "service-distance",
      method: `distance from the middle of ${name} to where one has to ${job.what?.value ?? "service it"}`,
      operands: {
        ...boxOperands(placed, unit),
        ...(job.at && spotOperands(job.at, unit, "job ")),
        ...(access?.at && pointOperands(access.at, unit, `${name} `)),
      },
      sources: [solidsSource],
      ...(!job.at && { notes: ["Where on it this is done is not recorded: its nearest point counts."] }),
    })),
  );
  const reach = keep(
    derive({
      subject,
      quantity: "service-reach",
      unit,
      formula: "r",
      operands: { r: written(`reach in through ${name}`, access?.reach, unit) },
      compute: ({ r }) => r,
      sources: access?.data ? [{ document: access.data.value, standing: "record" }] : [],
    }),
  );
  return { distance, reach };
}

/** Where no known panel reaches, one whose reach is not recorded may: nothing is said then. */
function bestOf(ways: readonly ServiceWay[]): MeasuredWay | undefined {
  const known = ways.filter(
    (way): way is MeasuredWay => way.distance !== undefined && way.reach !== undefined,
  );
  const left = ({ distance, reach }: MeasuredWay) => reach.value - distance.value;
  const [best] = known.sort((a, b) => left(b) - left(a));
  if (!best) return undefined;
  return known.length === ways.length || isAtMost(best.distance.value, best.reach.value) ? best : undefined;
}
