import type { Project } from "../../project";
import type { Component, Mount, Shelf } from "../../records/types";
import { isWholeList } from "../entries";
import { derive, type Keep, type Operand, type Subject, type Value, written } from "../value";
import type { Held } from "./strengths";

export interface ShelfResult {
  readonly shelf: Shelf;
  readonly id: string;
  readonly mounts: readonly Mount[];
  /** Everything that stands on it, against what may. */
  readonly load: Held | undefined;
}

interface Mounted {
  readonly mount: Mount;
  readonly component: Component;
}

/** What stands on each shelf: the kit's components, the equipment that stays, and what else is said to. */
export function shelvesOf(project: Project, mounted: readonly Mounted[], keep: Keep): ShelfResult[] {
  const { airframe, install } = project;
  const removed = new Set(install.removed?.map(({ equipment }) => equipment?.value));
  const isWhole = isWholeList(install, "mounts", install.mounts);
  return (airframe?.shelves ?? []).flatMap((shelf) => {
    if (!shelf.id) return [];
    const id = shelf.id.value;
    const here = mounted.filter(({ mount }) => mount.shelf?.value === id);
    if (here.length === 0) return [];
    const equipment = (airframe?.equipment ?? []).filter(
      (one) => one.shelf?.value === id && !removed.has(one.id?.value),
    );
    const weights: Operand[] = [
      ...here.map(({ component }) => written(component.id?.value ?? "", component.weight, "lb")),
      ...equipment.map((one) => written(one.id?.value ?? "", one.weight, "lb")),
      ...(shelf.carried ? [written("carried besides", shelf.carried, "lb")] : []),
    ];
    const subject: Subject = { kind: "shelf", id };
    const value = isWhole
      ? keep(
          derive({
            subject,
            quantity: "shelf-load",
            unit: "lb",
            formula: "sum(w)",
            operands: { w: weights },
            compute: ({ w }) => w.reduce((total, one) => total + one, 0),
          }),
        )
      : undefined;
    const limit = keep(
      derive({
        subject,
        quantity: "shelf-load-limit",
        unit: "lb",
        formula: "w",
        operands: { w: written("load limit", shelf.loadLimit, "lb") },
        compute: ({ w }) => w,
        sources: sourcesOf(shelf),
      }),
    );
    const load = value && limit && { value, limit };
    return [{ shelf, id, mounts: here.map(({ mount }) => mount), load }];
  });
}

/** Weight of a component on the area that its face covers, against what the shelf bears. */
export function floorLoadOf(component: Component, shelf: Shelf | undefined, subject: Subject, keep: Keep) {
  const { size, mount, weight } = component;
  const [a, b] = footprints[mount?.face?.value ?? "bottom"];
  const value = keep(
    derive({
      subject,
      quantity: "floor-load",
      unit: "lb/ft2",
      formula: "w / (a * b)",
      operands: {
        w: written("weight", weight, "lb"),
        a: written(a, size?.[a], "ft"),
        b: written(b, size?.[b], "ft"),
      },
      compute: ({ w, a, b }) => w / (a * b),
    }),
  );
  const limit: Value | undefined =
    shelf &&
    keep(
      derive({
        subject,
        quantity: "floor-load-limit",
        unit: "lb/ft2",
        formula: "p",
        operands: { p: written("floor load limit", shelf.floorLoad, "lb/ft2") },
        compute: ({ p }) => p,
        sources: sourcesOf(shelf),
      }),
    );
  return value && limit && { value, limit };
}

/** The two sides of each face. */
const footprints = {
  bottom: ["length", "width"],
  top: ["length", "width"],
  left: ["length", "height"],
  right: ["length", "height"],
  front: ["width", "height"],
  rear: ["width", "height"],
} as const;

function sourcesOf({ data }: Shelf) {
  return data ? [{ document: data.value, standing: "record" } as const] : [];
}
