/** Pages of the worksheet: mounts and where components are. */
import { mountsOf, placementsOf } from "../../graph/derivations";
import type { QuantityName } from "../../graph/quantity-names";
import type { Project } from "../../project";
import { type Cell, cell, type Page, tablePage } from "./page";

/** Mounts, what they stand on, clearances, reach and servicing, each as a table. */
export function mountPages(project: Project): Page[] {
  return [
    mounts(project),
    strengths(project),
    shelves(project),
    clearances(project),
    reach(project),
    servicing(project),
  ];
}

function mounts(project: Project): Page {
  const { mounts: found } = mountsOf(project);
  const values = mountsOf.values(project);
  const pick = (id: string, quantity: QuantityName, direction: string) =>
    values.find((one) => one.subject.id === id && one.quantity === quantity && one.condition === direction);
  const rows = found.flatMap(({ id, cases }) =>
    cases.map(({ direction, load, isStable, shear, tension }): Cell[] => [
      id,
      direction,
      cell(pick(id, "load-factor", direction)),
      cell(load),
      isStable ? cell(shear) : "tips",
      isStable ? cell(tension) : "over",
      cell(pick(id, "margin-of-safety", direction)),
    ]),
  );
  return tablePage(
    "mounts",
    "Mounts, ultimate loads on the worst fastener",
    ["", "loaded", "factor", "load", "shear", "tension", "margin of safety"],
    rows,
  );
}

function strengths(project: Project): Page {
  const rows = mountsOf(project).mounts.map(({ id, strengths: { shear, tension, bearing } }): Cell[] => [
    id,
    cell(shear),
    cell(tension),
    cell(bearing),
  ]);
  return tablePage(
    "mount-strengths",
    "Strength of the mounts' fasteners",
    ["", "shear", "tension", "bearing of the sheet"],
    rows,
  );
}

function shelves(project: Project): Page {
  const { mounts: found, shelves: carrying } = mountsOf(project);
  const rows = [
    ...carrying.flatMap(({ id, load }): Cell[][] =>
      load ? [[id, "carries in all", cell(load.value), cell(load.limit)]] : [],
    ),
    ...found.flatMap(({ id, mount, floorLoad }): Cell[][] =>
      floorLoad
        ? [[mount.shelf?.value ?? "", `under ${id}`, cell(floorLoad.value), cell(floorLoad.limit)]]
        : [],
    ),
  ];
  return tablePage("shelves", "Shelves and floors", ["", "", "is", "may be"], rows);
}

function clearances(project: Project): Page {
  const rows = placementsOf(project)
    .clearances.toSorted((a, b) => a.value.value - b.value.value)
    .map(({ placed, other, value, least }): Cell[] => [placed.id, other.id, cell(value), cell(least)]);
  return tablePage("clearances", "Clearances", ["", "to", "clearance", "to be kept"], rows);
}

function reach(project: Project): Page {
  const rows = placementsOf(project).reaches.map(({ id, seat, distance, most }): Cell[] => [
    id,
    seat.id?.value ?? "",
    cell(distance),
    cell(most),
  ]);
  return tablePage("reach", "Reach", ["", "from", "distance", "reach"], rows);
}

function servicing(project: Project): Page {
  const rows = placementsOf(project).services.flatMap(({ placed, job, ways }) =>
    ways.map(({ through, distance, reach: most }): Cell[] => [
      placed.id,
      job.what?.value ?? "",
      through.value,
      cell(distance),
      cell(most),
    ]),
  );
  return tablePage("servicing", "Servicing through panels", ["", "to", "through", "distance", "reach"], rows);
}
