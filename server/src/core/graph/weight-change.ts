/**
 * What the modification adds and removes, and the empty weight and centre of gravity that come of it.
 */
import { armOf, balanceSources, moment } from "../methods/balance";
import type { Project } from "../project";
import type { Quantity } from "../quantities";
import type { Component, Placement } from "../records/types";
import type { Place, Written } from "../records/written";
import type { BalanceUnits } from "./balance-units";
import { isWholeEntry, isWholeList } from "./entries";
import { groupBy } from "./group-by";
import { derive, derived, type Keep, type Operand, type Subject, sumOf, type Value, written } from "./value";
import { harnessSubject } from "./wiring";

export interface WeightChange {
  readonly items: readonly ChangedItem[];
  /** Weight added less weight removed. Like every total, undefined while part of the change is not known. */
  readonly weightChange: Value | undefined;
  readonly emptyWeight: Value | undefined;
  readonly emptyMomentBefore: Value | undefined;
  readonly emptyMoment: Value | undefined;
  readonly emptyCg: Value | undefined;
  readonly cgChange: Value | undefined;
  readonly cgChangeMac: Value | undefined;
}

/** One thing that the modification adds or removes. */
export interface ChangedItem {
  readonly subject: Subject;
  readonly sense: "added" | "removed";
  /** Where the install record names it. */
  readonly place: Place;
  /** Its arm, where it is the install record that says it. */
  readonly ownArm?: Written<Quantity<"length">> | undefined;
  /** In the units of the whole derivation; undefined while not known. Never negative, also for what is removed. */
  readonly weight: Operand;
  readonly arm: Operand;
  /** Negative weight for what is removed. */
  readonly moment: Value | undefined;
}

/**
 * The change of one project, with its wires where they are counted by their computed weight, which is in the
 * same units. Pure; its values go to `keep` in the order in which a reader needs them.
 */
export function deriveWeightChange(
  project: Project,
  units: BalanceUnits,
  harnessWeight: Value | undefined,
  keep: Keep,
): WeightChange {
  const { airframe } = project;
  const aircraft = aircraftOf(project);
  const { items, isWhole } = changedItems(project, units, harnessWeight, keep);
  const unknown: readonly Operand[] = isWhole ? [] : [undefined];
  const weightsOf = (sense: ChangedItem["sense"]) =>
    items.filter((item) => item.sense === sense).map((item) => item.weight);
  const source = { sources: [balanceSources.centreOfGravity] };

  const added = weightsOf("added");
  const removed = weightsOf("removed");
  const weightChange = keep(
    derive({
      subject: aircraft,
      quantity: "weight-change",
      unit: units.weight,
      formula: terms(added.length > 0 && "sum(w_added)", removed.length > 0 && "- sum(w_removed)"),
      operands: { w_added: [...unknown, ...added], w_removed: removed },
      compute: ({ w_added, w_removed }) => sumOf(w_added) - sumOf(w_removed),
      ...source,
    }),
  );
  const W_0 = written("empty weight before", airframe?.empty?.weight, units.weight);
  const x_0 = written("empty arm before", airframe?.empty?.arm, units.arm);
  const emptyWeight = keep(
    derive({
      subject: aircraft,
      quantity: "empty-weight",
      unit: units.weight,
      formula: "W_0 + dW",
      operands: { W_0, dW: derived("weight change", weightChange) },
      compute: (numbers) => numbers.W_0 + numbers.dW,
      ...source,
    }),
  );
  const emptyMomentBefore = keep(
    derive({
      subject: aircraft,
      quantity: "empty-moment-before",
      unit: units.moment,
      formula: "W_0 * x_0",
      operands: { W_0, x_0 },
      compute: (numbers) => moment({ weight: numbers.W_0, arm: numbers.x_0 }),
      ...source,
    }),
  );
  const emptyMoment = keep(
    derive({
      subject: aircraft,
      quantity: "empty-moment",
      unit: units.moment,
      formula: terms("M_0", items.length > 0 && "+ sum(m)"),
      operands: {
        M_0: derived("empty moment before", emptyMomentBefore),
        m: [...unknown, ...items.map((item) => derived(`moment of ${item.subject.id}`, item.moment))],
      },
      compute: ({ M_0, m }) => M_0 + sumOf(m),
      ...source,
    }),
  );
  const emptyCg = keep(
    derive({
      subject: aircraft,
      quantity: "empty-cg",
      unit: units.arm,
      formula: "M / W",
      operands: { M: derived("empty moment", emptyMoment), W: derived("empty weight", emptyWeight) },
      compute: ({ M, W }) => armOf(W, M) ?? Number.NaN,
      ...source,
    }),
  );
  const cgChange = keep(
    derive({
      subject: aircraft,
      quantity: "cg-change",
      unit: units.arm,
      formula: "x - x_0",
      operands: { x: derived("empty CG", emptyCg), x_0 },
      compute: (numbers) => numbers.x - numbers.x_0,
    }),
  );
  const cgChangeMac = keep(
    derive({
      subject: aircraft,
      quantity: "cg-change-mac",
      unit: "%",
      formula: "100 * dx / c",
      operands: {
        dx: derived("shift of the empty CG", cgChange),
        c: written("mean aerodynamic chord", airframe?.mac?.length, units.arm),
      },
      compute: ({ dx, c }) => (100 * dx) / c,
      sources: [balanceSources.percentOfChord],
    }),
  );
  return {
    items,
    weightChange,
    emptyWeight,
    emptyMomentBefore,
    emptyMoment,
    emptyCg,
    cgChange,
    cgChangeMac,
  };
}

/** The whole aircraft, by its serial number. */
export function aircraftOf({ airframe }: Project): Subject {
  return { kind: "aircraft", id: airframe?.aircraft?.serial?.value ?? "" };
}

/** A sum as text, of the terms that it has; "0" without any. */
export function terms(...parts: readonly (string | false)[]): string {
  const kept = parts.filter((part) => part !== false);
  return kept.length > 0 ? kept.join(" ").replace(/^\+ /, "") : "0";
}

interface ChangedItems {
  readonly items: readonly ChangedItem[];
  /** False where the record holds an entry that no item could be made of. */
  readonly isWhole: boolean;
}

function changedItems(
  project: Project,
  units: BalanceUnits,
  harnessWeight: Value | undefined,
  keep: Keep,
): ChangedItems {
  const make = (item: Omit<ChangedItem, "moment">): ChangedItem => ({
    ...item,
    moment: keep(itemMoment(item, units)),
  });
  const found = [
    components(project, units),
    added(project, units),
    harness(project, units, harnessWeight),
    removed(project, units),
  ];
  return {
    items: found.flatMap(({ items }) => items.map(make)),
    isWhole: found.every(({ isWhole }) => isWhole),
  };
}

interface Found {
  readonly items: readonly Omit<ChangedItem, "moment">[];
  readonly isWhole: boolean;
}

function components({ kit, install }: Project, units: BalanceUnits): Found {
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
function kitItem(
  component: Component,
  placed: readonly Placement[],
  units: BalanceUnits,
): Found["items"][number] {
  const id = component.id?.value ?? "";
  const placement = placed.length === 1 ? placed[0] : undefined;
  return {
    subject: { kind: "component", id },
    sense: "added",
    place: (placement?.component ?? component).place,
    ownArm: placement?.arm,
    weight: placement && written(`weight of ${id}`, component.weight, units.weight),
    arm: written(`arm of ${id}`, placement?.arm, units.arm),
  };
}

function added({ install }: Project, units: BalanceUnits): Found {
  const items = (install.added ?? []).map((one) => {
    const id = one.id?.value ?? "";
    return {
      subject: { kind: "added-item", id },
      sense: "added",
      place: (one.id ?? one).place,
      ownArm: one.arm,
      weight: written(`weight of ${id}`, one.weight, units.weight),
      arm: written(`arm of ${id}`, one.arm, units.arm),
    } as const;
  });
  return { items, isWhole: isWholeList(install, "added", install.added) };
}

/** The wires as one item, where the record has them counted by their computed weight. */
function harness({ install }: Project, units: BalanceUnits, weight: Value | undefined): Found {
  const { harness, wires = [] } = install;
  const isKnown =
    isWholeEntry(install, "harness", harness) &&
    (harness === undefined || isWholeEntry(harness, "counted", harness.counted));
  if (harness?.counted?.value !== "computed") return { items: [], isWhole: isKnown };
  const item = {
    subject: harnessSubject,
    sense: "added",
    place: harness.counted.place,
    ownArm: harness.arm,
    weight: derived("weight of the harness", weight),
    arm: written("arm of the harness", harness.arm, units.arm),
  } as const;
  return { items: wires.length > 0 ? [item] : [], isWhole: isWholeList(install, "wires", install.wires) };
}

/** Equipment that is named twice can still be removed only once. */
function removed({ airframe, install }: Project, units: BalanceUnits): Found {
  const equipment = groupBy(airframe?.equipment ?? [], (one) => one.id?.value);
  const named = groupBy(install.removed ?? [], (one) => one.equipment?.value);
  const items = [...named].map(([id = "", [first]]) => {
    const found = equipment.get(id)?.[0];
    return {
      subject: { kind: "equipment", id },
      sense: "removed",
      place: (first.equipment ?? first).place,
      weight: written(`weight of ${id}`, found?.weight, units.weight),
      arm: written(`arm of ${id}`, found?.arm, units.arm),
    } as const;
  });
  return { items, isWhole: isWholeList(install, "removed", install.removed) };
}

function itemMoment(item: Omit<ChangedItem, "moment">, units: BalanceUnits): Value | undefined {
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
