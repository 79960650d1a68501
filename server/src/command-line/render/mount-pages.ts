import { mountsOf, placementsOf } from "../../core/graph/derivations";
import type { QuantityName } from "../../core/graph/quantity-names";
import { showMeasure, type Value } from "../../core/graph/value";
import type { Project } from "../../core/project";
import { type Row, table } from "./layout";

/** A page of the worksheet; its body is empty where the record has nothing for it. */
interface Page {
  readonly title: string;
  readonly body: string;
}

/** Mounts, what they stand on, clearances and reach, each as a table. */
export function mountPages(project: Project): readonly Page[] {
  return [
    { title: "Mounts, ultimate loads on the worst fastener", body: mounts(project) },
    { title: "Strength of the mounts' fasteners", body: strengths(project) },
    { title: "Shelves and floors", body: shelves(project) },
    { title: "Clearances", body: clearances(project) },
    { title: "Reach", body: reach(project) },
  ];
}

function mounts(project: Project): string {
  const { mounts: found, values } = mountsOf(project);
  const pick = (id: string, quantity: QuantityName, direction: string) =>
    values.find((one) => one.subject.id === id && one.quantity === quantity && one.condition === direction);
  const rows = found.flatMap(({ id, cases }) =>
    cases.map(
      ({ direction, load, isStable, shear, tension }): Row => [
        id,
        direction,
        show(pick(id, "load-factor", direction)),
        show(load),
        isStable ? show(shear) : "tips",
        isStable ? show(tension) : "over",
        show(pick(id, "margin-of-safety", direction), 3),
      ],
    ),
  );
  return table(["", "loaded", "factor", "load", "shear", "tension", "margin of safety"], rows);
}

function strengths(project: Project): string {
  const rows = mountsOf(project).mounts.map(
    ({ id, strengths: { shear, tension, bearing } }): Row => [id, show(shear), show(tension), show(bearing)],
  );
  return table(["", "shear", "tension", "bearing of the sheet"], rows);
}

function shelves(project: Project): string {
  const { mounts: found, shelves: carrying } = mountsOf(project);
  const rows = [
    ...carrying.flatMap(({ id, load }): Row[] =>
      load ? [[id, "carries in all", show(load.value), show(load.limit)]] : [],
    ),
    ...found.flatMap(({ id, mount, floorLoad }): Row[] =>
      floorLoad
        ? [[mount.shelf?.value ?? "", `under ${id}`, show(floorLoad.value), show(floorLoad.limit)]]
        : [],
    ),
  ];
  return table(["", "", "is", "may be"], rows);
}

function clearances(project: Project): string {
  const rows = placementsOf(project)
    .clearances.toSorted((a, b) => a.value.value - b.value.value)
    .map(({ placed, other, value, least }): Row => [placed.id, other.id, show(value), show(least)]);
  return table(["", "to", "clearance", "to be kept"], rows);
}

function reach(project: Project): string {
  const rows = placementsOf(project).reaches.map(
    ({ id, seat, distance, most }): Row => [id, seat.id?.value ?? "", show(distance), show(most)],
  );
  return table(["", "from", "distance", "reach"], rows);
}

function show(value: Value | undefined, digits?: number): string {
  return value ? showMeasure(value.value, value.unit, digits) : "";
}
