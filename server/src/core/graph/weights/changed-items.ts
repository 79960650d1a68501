/** Everything that the modification adds and removes, each thing with its weight and where that acts. */
import { balanceSources, moment } from "../../methods/balance";
import type { Project } from "../../project";
import type { Quantity } from "../../quantities";
import type { Component, Placement, Station } from "../../records/types";
import type { Place, Written } from "../../records/written";
import { isWholeEntry, isWholeList } from "../entries";
import { groupBy } from "../group-by";
import {
  derive,
  derived,
  type Keep,
  type Operand,
  type Subject,
  toleranceOf,
  type Value,
  written,
} from "../value";
import { harnessSubject } from "../wiring";
import type { BalanceUnits } from "./balance-units";

/** One thing that the modification adds or removes, as the section that knows it hands it in. */
export interface ItemOfChange {
  readonly subject: Subject;
  readonly sense: "added" | "removed";
  /** Where the install record names it. */
  readonly place: Place;
  /** Its arm, where it is the install record that says it. */
  readonly ownArm?: Written<Quantity<"length">> | undefined;
  /** The same to the side. */
  readonly ownButtLine?: Written<Quantity<"length">> | undefined;
  /** Arms that its mounts permit, where the record lists them; none at all where any is. */
  readonly otherArms?: readonly Written<Quantity<"length">>[] | undefined;
  /** In the units of the whole derivation; undefined while not known. Never negative, also for what is removed. */
  readonly weight: Operand;
  readonly arm: Operand;
  /** To the side and in height; undefined where nobody says it. */
  readonly buttLine?: Operand;
  readonly waterLine?: Operand;
  /** How far weight and arm may be off either way; undefined where no tolerance was written. */
  readonly weightTolerance?: Operand;
  readonly armTolerance?: Operand;
  /** Part number or name, for the lists. */
  readonly part?: Written<string> | undefined;
}

/** What one section of a record contributes. */
export interface FoundItems {
  readonly items: readonly ItemOfChange[];
  /** False where the section holds an entry that no item could be made of: then no sum is known. */
  readonly isWhole: boolean;
}

export interface ChangedItem extends ItemOfChange {
  /** Negative weight for what is removed. */
  readonly moment: Value | undefined;
}

export interface ChangedItems {
  readonly items: readonly ChangedItem[];
  readonly isWhole: boolean;
}

/**
 * The items of the install record's own lists (placed components, added things, lines and ducts, ballast, removed equipment), with
 * those that other sections compute between them.
 *
 * `computed` is the door for what no list holds because it follows from a section of its own: the wires of the
 * harness, doublers, the material that cutouts take away. Each such section makes its
 * `FoundItems` where it derives its weights, and they are handed in here: one item for each thing or for all
 * together; `sense: "removed"` for material cut away, its weight still positive; weight and arm as operands in
 * `units` (`derived` of a value that the worksheet shows, or `written`), undefined while not known, so that no
 * total is computed without them; `place` where a reader should look; a subject whose id no other item has, for
 * its moment is published under it. `butt-line` and `water-line` may be left out: then the empty CG to the side
 * or in height is not computed, and a finding names the item.
 */
export function changedItems(
  project: Project,
  units: BalanceUnits,
  computed: readonly FoundItems[],
  keep: Keep,
): ChangedItems {
  const found = [
    components(project, units),
    added(project, units),
    runs(project, units),
    ...computed,
    ballast(project, units),
    removed(project, units),
  ];
  return {
    items: found.flatMap(({ items }) =>
      items.map((item) => ({ ...item, moment: keep(itemMoment(item, units)) })),
    ),
    isWhole: found.every(({ isWhole }) => isWhole),
  };
}

function components({ kit, install }: Project, units: BalanceUnits): FoundItems {
  const listed = kit?.components;
  if (!listed) return { items: [], isWhole: false };
  const placements = groupBy(install.placement ?? [], (placement) => placement.component?.value);
  const items = listed.flatMap((component) => {
    const id = component.id?.value;
    const placed = id === undefined ? [] : (placements.get(id) ?? []);
    return placed.length === 0 && component.weight?.value.si === 0 ? [] : [kitItem(component, placed, units)];
  });
  return { items, isWhole: isWholeList(kit, "components", listed) };
}

/** A component that is placed nowhere, or in two places, leaves open what it does to the aircraft. */
function kitItem(component: Component, placed: readonly Placement[], units: BalanceUnits): ItemOfChange {
  const id = component.id?.value ?? "";
  const placement = placed.length === 1 ? placed[0] : undefined;
  return {
    subject: { kind: "component", id },
    sense: "added",
    place: (placement?.component ?? component).place,
    ownArm: placement?.arm,
    ownButtLine: placement?.buttLine,
    otherArms: placement?.alternatives,
    weight: placement && written(`weight of ${id}`, component.weight, units.weight),
    weightTolerance: toleranceOf(`tolerance of the weight of ${id}`, component.weight, units.weight),
    part: component.part,
    ...whereabouts(id, placement, units),
  };
}

function added({ install }: Project, units: BalanceUnits): FoundItems {
  const items = (install.added ?? []).map((one): ItemOfChange => {
    const id = one.id?.value ?? "";
    return {
      subject: { kind: "added-item", id },
      sense: "added",
      place: (one.id ?? one).place,
      ownArm: one.arm,
      ownButtLine: one.buttLine,
      weight: written(`weight of ${id}`, one.weight, units.weight),
      weightTolerance: toleranceOf(`tolerance of the weight of ${id}`, one.weight, units.weight),
      part: one.part,
      ...whereabouts(id, one, units),
    };
  });
  return { items, isWhole: isWholeList(install, "added", install.added) };
}

/** Lines and ducts of which the record says what they weigh and where; the others are counted as added items. */
function runs({ install }: Project, units: BalanceUnits): FoundItems {
  const { lines = [], ducts = [] } = install;
  const found = [
    ...lines.map((line) => ({ kind: "line", run: line }) as const),
    ...ducts.map((duct) => ({ kind: "duct", run: duct }) as const),
  ];
  const items = found.flatMap(({ kind, run }): ItemOfChange[] => {
    const installed = run.installedWeight;
    if (!installed) return [];
    const id = run.id?.value ?? "";
    return [
      {
        subject: { kind, id },
        sense: "added",
        place: (run.id ?? run).place,
        ownArm: installed.arm,
        ownButtLine: installed.buttLine,
        weight: written(`weight of ${id}`, installed.weight, units.weight),
        weightTolerance: toleranceOf(`tolerance of the weight of ${id}`, installed.weight, units.weight),
        ...whereabouts(id, installed, units),
      },
    ];
  });
  const isWhole =
    isWholeList(install, "lines", install.lines) &&
    isWholeList(install, "ducts", install.ducts) &&
    found.every(({ run }) => isWholeEntry(run, "installed-weight", run.installedWeight));
  return { items, isWhole };
}

/**
 * The wires as one item, where the record has them counted by their computed weight, which is in `units`. Where it
 * has not, nothing here rests on the wires.
 */
export function harnessItems(
  { install }: Project,
  units: BalanceUnits,
  weight: () => Value | undefined,
): FoundItems {
  const { harness } = install;
  const isKnown =
    isWholeEntry(install, "harness", harness) &&
    (harness === undefined || isWholeEntry(harness, "counted", harness.counted));
  if (harness?.counted?.value !== "computed") return { items: [], isWhole: isKnown };
  const { wires = [] } = install;
  const item: ItemOfChange = {
    subject: harnessSubject,
    sense: "added",
    place: harness.counted.place,
    ownArm: harness.arm,
    ownButtLine: harness.buttLine,
    weight: derived("weight of the harness", weight()),
    ...whereabouts("the harness", harness, units),
  };
  return { items: wires.length > 0 ? [item] : [], isWhole: isWholeList(install, "wires", install.wires) };
}

/** Permanent ballast stands where its station does. */
function ballast({ airframe, install }: Project, units: BalanceUnits): FoundItems {
  const stations = groupBy(airframe?.stations ?? [], (one) => one.id?.value);
  const items = (install.ballast ?? []).map((one): ItemOfChange => {
    const id = one.id?.value ?? "";
    const station: Station | undefined = one.station && stations.get(one.station.value)?.[0];
    return {
      subject: { kind: "ballast", id },
      sense: "added",
      place: (one.id ?? one).place,
      weight: written(`weight of ${id}`, one.weight, units.weight),
      part: one.part,
      ...whereabouts(id, station, units),
    };
  });
  return { items, isWhole: isWholeList(install, "ballast", install.ballast) };
}

/** Equipment that is named twice can still be removed only once. */
function removed({ airframe, install }: Project, units: BalanceUnits): FoundItems {
  const equipment = groupBy(airframe?.equipment ?? [], (one) => one.id?.value);
  const named = groupBy(install.removed ?? [], (one) => one.equipment?.value);
  const items = [...named].map(([id = "", [first]]): ItemOfChange => {
    const found = equipment.get(id)?.[0];
    return {
      subject: { kind: "equipment", id },
      sense: "removed",
      place: (first.equipment ?? first).place,
      weight: written(`weight of ${id}`, found?.weight, units.weight),
      weightTolerance: toleranceOf(`tolerance of the weight of ${id}`, found?.weight, units.weight),
      part: found?.part,
      ...whereabouts(id, found, units),
    };
  });
  return { items, isWhole: isWholeList(install, "removed", install.removed) };
}

/** What records say of where something stands. */
interface Positioned {
  readonly arm?: Written<Quantity<"length">>;
  readonly buttLine?: Written<Quantity<"length">>;
  readonly waterLine?: Written<Quantity<"length">>;
}

function whereabouts(id: string, where: Positioned | undefined, units: BalanceUnits) {
  return {
    arm: written(`arm of ${id}`, where?.arm, units.arm),
    armTolerance: toleranceOf(`tolerance of the arm of ${id}`, where?.arm, units.arm),
    buttLine: written(`butt line of ${id}`, where?.buttLine, units.arm),
    waterLine: written(`water line of ${id}`, where?.waterLine, units.arm),
  };
}

function itemMoment(item: ItemOfChange, units: BalanceUnits): Value | undefined {
  const isRemoved = item.sense === "removed";
  return derive({
    subject: item.subject,
    quantity: "item-moment",
    unit: units.moment,
    formula: isRemoved ? "-w * x" : "w * x",
    operands: { w: item.weight, x: item.arm },
    compute: ({ w, x }) => moment({ weight: isRemoved ? -w : w, arm: x }),
    sources: [balanceSources.centreOfGravity],
  });
}
