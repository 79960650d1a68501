/**
 * What the modification does to the empty weight and centre of gravity: along the fuselage, and to the side and in
 * height where everything says where it stands; with the worst case of the tolerances.
 */
import { armOf, armToPercentMac, balanceSources, moment } from "../../methods/balance";
import { addedUpNote, type BalanceRange, balanceRange, type UncertainMass } from "../../methods/tolerance";
import type { Project } from "../../project";
import type { QuantityName } from "../quantity-names";
import { derive, derived, type Keep, type Operand, type Subject, sumOf, type Value, written } from "../value";
import type { BalanceUnits } from "./balance-units";
import { type ChangedItem, changedItems, type FoundItems } from "./changed-items";
import type { EmptyBefore, Uncertain } from "./empty-before";

export interface WeightChange {
  readonly before: EmptyBefore;
  readonly items: readonly ChangedItem[];
  /** Weight added less weight removed. Like every total, undefined while part of the change is not known. */
  readonly weightChange: Value | undefined;
  readonly emptyWeight: Value | undefined;
  readonly emptyMomentBefore: Value | undefined;
  readonly emptyMoment: Value | undefined;
  readonly emptyCg: Value | undefined;
  readonly cgChange: Value | undefined;
  readonly cgChangeMac: Value | undefined;
  readonly emptyCgMac: Value | undefined;
  /** Undefined where the aircraft's data, or an item, do not say where they stand. */
  readonly emptyButtLine: Value | undefined;
  readonly emptyWaterLine: Value | undefined;
  /** What the weights and arms may come to; undefined where no tolerance was written or part is not known. */
  readonly tolerance: EmptyTolerance | undefined;
}

/** The worst case of the tolerances. */
export interface EmptyTolerance {
  /** The empty aircraft and everything changed, each with its tolerance: loads may be put beside them. */
  readonly masses: readonly UncertainMass[];
  /** The same with butt lines for arms; undefined where not everything says where it stands. */
  readonly massesAcross: readonly UncertainMass[] | undefined;
  readonly range: BalanceRange;
  readonly weight: Value | undefined;
  readonly foremost: Value | undefined;
  readonly aftmost: Value | undefined;
}

/**
 * The change of one project; `computed` are the items that other sections hand in (see `changedItems`). Pure; its
 * values go to `keep` in the order in which a reader needs them.
 */
export function deriveWeightChange(
  project: Project,
  units: BalanceUnits,
  before: EmptyBefore,
  computed: readonly FoundItems[],
  keep: Keep,
): WeightChange {
  const { airframe } = project;
  const aircraft = aircraftOf(project);
  const { items, isWhole } = changedItems(project, units, computed, keep);
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
  const { weight: W_0, arm: x_0 } = before;
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
  const emptyCgMac = keep(
    derive({
      subject: aircraft,
      quantity: "empty-cg-mac",
      unit: "%",
      formula: "100 * (x - x_LE) / c",
      operands: {
        x: derived("empty CG", emptyCg),
        x_LE: written("leading edge of the chord", airframe?.mac?.leadingEdge, units.arm),
        c: written("mean aerodynamic chord", airframe?.mac?.length, units.arm),
      },
      compute: ({ x, x_LE, c }) => armToPercentMac(x, { leadingEdge: x_LE, length: c }) ?? Number.NaN,
      sources: [balanceSources.percentOfChord],
    }),
  );
  const across = (key: "buttLine" | "waterLine", quantity: QuantityName) =>
    keep(
      emptyAcross({ aircraft, quantity, units, items, unknown, start: before[key], W_0, emptyWeight }, key),
    );
  for (const item of items) keep(cgEffect(item, units, emptyCg, emptyMoment, emptyWeight));
  return {
    before,
    items,
    weightChange,
    emptyWeight,
    emptyMomentBefore,
    emptyMoment,
    emptyCg,
    cgChange,
    cgChangeMac,
    emptyCgMac,
    emptyButtLine: across("buttLine", "empty-butt-line"),
    emptyWaterLine: across("waterLine", "empty-water-line"),
    tolerance: emptyCg && deriveTolerance(aircraft, units, before, items, keep),
  };
}

interface Across {
  readonly aircraft: Subject;
  readonly quantity: QuantityName;
  readonly units: BalanceUnits;
  readonly items: readonly ChangedItem[];
  readonly unknown: readonly Operand[];
  readonly start: Operand;
  readonly W_0: Operand;
  readonly emptyWeight: Value | undefined;
}

/** Where the empty centre of gravity stands to the side or in height. */
function emptyAcross(
  { aircraft, quantity, units, items, unknown, start, W_0, emptyWeight }: Across,
  key: "buttLine" | "waterLine",
): Value | undefined {
  const signs = items.map(({ sense }) => (sense === "added" ? 1 : -1));
  return derive({
    subject: aircraft,
    quantity,
    unit: units.arm,
    method:
      "moments of the empty aircraft and of every item, added up (removed ones against), over the empty weight",
    operands: {
      W_0,
      y_0: start,
      w: [...unknown, ...items.map(({ weight }) => weight)],
      y: items.map((item) => item[key]),
      W: derived("empty weight", emptyWeight),
    },
    compute: ({ W_0, y_0, w, y, W }) =>
      (W_0 * y_0 + sumOf(w.map((weight, index) => signs[index]! * weight * y[index]!))) / W,
    sources: [balanceSources.centreOfGravity],
  });
}

/** How far the empty CG would move back without this one item. */
function cgEffect(
  { subject, sense, weight, moment }: ChangedItem,
  units: BalanceUnits,
  emptyCg: Value | undefined,
  emptyMoment: Value | undefined,
  emptyWeight: Value | undefined,
): Value | undefined {
  const isRemoved = sense === "removed";
  return derive({
    subject,
    quantity: "item-cg-effect",
    unit: units.arm,
    formula: isRemoved ? "x - (M - m) / (W + w)" : "x - (M - m) / (W - w)",
    operands: {
      x: derived("empty CG", emptyCg),
      M: derived("empty moment", emptyMoment),
      m: derived(`moment of ${subject.id}`, moment),
      W: derived("empty weight", emptyWeight),
      w: weight,
    },
    compute: ({ x, M, m, W, w }) => x - (M - m) / (isRemoved ? W + w : W - w),
    sources: [balanceSources.centreOfGravity],
  });
}

function deriveTolerance(
  aircraft: Subject,
  units: BalanceUnits,
  before: EmptyBefore,
  items: readonly ChangedItem[],
  keep: Keep,
): EmptyTolerance | undefined {
  const { weight: W_0, arm: x_0 } = before;
  const uncertain = [...before.parts, ...items];
  const weightTolerances = uncertain.flatMap(({ weightTolerance }) => weightTolerance ?? []);
  const armTolerances = uncertain.flatMap(({ armTolerance }) => armTolerance ?? []);
  const tolerances = [...weightTolerances, ...armTolerances];
  if (!W_0 || !x_0 || tolerances.length === 0) return undefined;
  const masses: readonly UncertainMass[] = [
    ...before.parts.map((part) => massOf(part, 1)),
    ...items.map((item) => massOf(item, item.sense === "removed" ? -1 : 1)),
  ];
  const range = balanceRange(masses);
  if (!range) return undefined;
  const end = (quantity: QuantityName, way: string, arm: number) =>
    keep(
      derive({
        subject: aircraft,
        quantity,
        unit: units.arm,
        method: `every weight and arm at the end of its tolerance that brings the empty CG farthest ${way}`,
        operands: {
          W_0,
          x_0,
          w: items.map(({ weight }) => weight),
          x: items.map(({ arm }) => arm),
          t: tolerances,
        },
        compute: () => arm,
        sources: [balanceSources.centreOfGravity],
      }),
    );
  const buttLines = uncertain.map(({ buttLine }) => buttLine?.value);
  return {
    masses,
    massesAcross: buttLines.every((one) => one !== undefined)
      ? masses.map((mass, index) => ({ ...mass, arm: buttLines[index]!, armTolerance: 0 }))
      : undefined,
    range,
    weight: keep(
      derive({
        subject: aircraft,
        quantity: "empty-weight-tolerance",
        unit: units.weight,
        formula: weightTolerances.length > 0 ? "sum(t)" : "0",
        operands: { t: weightTolerances },
        compute: ({ t }) => sumOf(t),
        notes: [addedUpNote],
      }),
    ),
    foremost: end("empty-cg-foremost", "forward", range.foremost.arm),
    aftmost: end("empty-cg-aftmost", "aft", range.aftmost.arm),
  };
}

function massOf({ weight, arm, weightTolerance, armTolerance }: Uncertain, sign: 1 | -1): UncertainMass {
  return {
    weight: sign * (weight?.value ?? 0),
    arm: arm?.value ?? 0,
    weightTolerance: weightTolerance?.value ?? 0,
    armTolerance: armTolerance?.value ?? 0,
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
