/**
 * A weighing worked to the empty weight: each scale less its tare, less what was on board and does not belong to
 * the empty weight, plus what belongs to it and was missing. What belongs to it, the certification basis says.
 */
import { armOf, balanceSources, moment } from "../../methods/balance";
import { addedUpNote } from "../../methods/tolerance";
import type { AirframeRecord, Scale, Weighing, WeighingItem } from "../../records/types";
import {
  type EmptyWeightDefinition,
  emptyWeightDefinitions,
  emptyWeightSource,
} from "../../tables/empty-weight-definitions";
import { isWholeList } from "../entries";
import {
  derive,
  derived,
  type Keep,
  type Operand,
  type Subject,
  sumOf,
  toleranceOf,
  type Value,
  written,
} from "../value";
import type { BalanceUnits } from "./balance-units";

/**
 * - `remove`: was on board and does not belong to the empty weight
 * - `keep`: was on board and belongs to it
 * - `add`: belongs to it and was missing
 * - `leave`: does not belong to it and was not there
 */
export type Treatment = "remove" | "keep" | "add" | "leave";

export interface ScaleResult {
  readonly id: string;
  readonly scale: Scale;
  readonly arm: Value | undefined;
  /** reading - tare */
  readonly net: Value | undefined;
  /** How far the reading may be off either way; undefined where it is written without a tolerance. */
  readonly tolerance: Operand;
  readonly moment: Value | undefined;
}

export interface WeighedItemResult {
  readonly id: string;
  readonly item: WeighingItem;
  readonly treatment: Treatment | undefined;
  /** As it counts: negative when taken off, zero when kept. */
  readonly weight: Value | undefined;
  readonly moment: Value | undefined;
}

export interface WeighingSheet {
  readonly weighing: Weighing;
  readonly definition: EmptyWeightDefinition | undefined;
  readonly scales: readonly ScaleResult[];
  readonly items: readonly WeighedItemResult[];
  readonly weighedWeight: Value | undefined;
  /** Undefined where no scale has a tolerance. */
  readonly weighedTolerance: Value | undefined;
  readonly emptyWeight: Value | undefined;
  readonly emptyMoment: Value | undefined;
  readonly emptyCg: Value | undefined;
  /** Where the empty CG stands to the side; undefined unless every scale and item says where it stands. */
  readonly emptyButtLine: Value | undefined;
}

/** The weighing of an airframe; undefined where it has none. Pure; its values go to `keep` in reading order. */
export function deriveWeighing(
  airframe: AirframeRecord | undefined,
  units: BalanceUnits,
  keep: Keep,
): WeighingSheet | undefined {
  const weighing = airframe?.weighing;
  if (!airframe || !weighing) return undefined;
  const basis = airframe.aircraft?.certificationBasis?.value;
  const definition = basis && emptyWeightDefinitions[basis];
  const scales = (weighing.scales ?? []).map((scale) => deriveScale(scale, weighing, units, keep));
  const items = (weighing.items ?? []).map((item) => deriveItem(item, definition, units, keep));
  const unknown: readonly Operand[] =
    isWholeList(weighing, "scales", weighing.scales) && isWholeList(weighing, "items", weighing.items)
      ? []
      : [undefined];
  const subject = { kind: "aircraft", id: airframe.aircraft?.serial?.value ?? "" } as const;
  const nets = scales.map(({ id, net }) => derived(`net weight on ${id}`, net));
  const corrections = items.map(({ id, weight }) => derived(`correction for ${id}`, weight));

  const weighedWeight = keep(
    derive({
      subject,
      quantity: "weighed-weight",
      unit: units.weight,
      formula: "sum(w)",
      operands: { w: [...unknown, ...nets] },
      compute: ({ w }) => sumOf(w),
      sources: [balanceSources.weighing],
    }),
  );
  // A reading without a tolerance counts as exact; one that is not there is not known.
  const tolerances = scales.flatMap(({ scale, tolerance }) =>
    scale.reading ? (tolerance ?? []) : [undefined],
  );
  const weighedTolerance = scales.some(({ tolerance }) => tolerance)
    ? keep(
        derive({
          subject,
          quantity: "weighed-weight-tolerance",
          unit: units.weight,
          formula: "sum(t)",
          operands: { t: [...unknown, ...tolerances] },
          compute: ({ t }) => sumOf(t),
          notes: [addedUpNote],
        }),
      )
    : undefined;
  const emptyWeight = keep(
    derive({
      subject,
      quantity: "weighed-empty-weight",
      unit: units.weight,
      formula: items.length > 0 ? "W_s + sum(c)" : "W_s",
      operands: { W_s: derived("weight on the scales", weighedWeight), c: corrections },
      compute: ({ W_s, c }) => W_s + sumOf(c),
      sources: [emptyWeightSource, ...(definition ? [definition.source] : [])],
      notes: definition?.notes ?? [],
    }),
  );
  const emptyMoment = keep(
    derive({
      subject,
      quantity: "weighed-empty-moment",
      unit: units.moment,
      formula: items.length > 0 ? "sum(m) + sum(n)" : "sum(m)",
      operands: {
        m: [...unknown, ...scales.map((one) => derived(`moment of ${one.id}`, one.moment))],
        n: items.map((one) => derived(`correction for ${one.id}`, one.moment)),
      },
      compute: ({ m, n }) => sumOf(m) + sumOf(n),
      sources: [balanceSources.weighing],
    }),
  );
  const emptyCg = keep(
    derive({
      subject,
      quantity: "weighed-empty-cg",
      unit: units.arm,
      formula: "M / W",
      operands: { M: derived("moment", emptyMoment), W: derived("weight", emptyWeight) },
      compute: ({ M, W }) => armOf(W, M) ?? Number.NaN,
      sources: [balanceSources.weighing],
    }),
  );
  const emptyButtLine = keep(
    derive({
      subject,
      quantity: "weighed-empty-butt-line",
      unit: units.arm,
      method: "moments to the side of all scales and items, added up, over the empty weight",
      operands: {
        w: [...unknown, ...nets, ...corrections],
        y: [
          ...scales.map(({ id, scale }) => written(`butt line of ${id}`, scale.buttLine, units.arm)),
          ...items.map(({ id, item }) => written(`butt line of ${id}`, item.buttLine, units.arm)),
        ],
        W: derived("weight", emptyWeight),
      },
      compute: ({ w, y, W }) => sumOf(w.map((weight, index) => weight * y[index]!)) / W,
      sources: [balanceSources.centreOfGravity],
    }),
  );
  return {
    weighing,
    definition,
    scales,
    items,
    weighedWeight,
    weighedTolerance,
    emptyWeight,
    emptyMoment,
    emptyCg,
    emptyButtLine,
  };
}

function deriveScale(scale: Scale, weighing: Weighing, units: BalanceUnits, keep: Keep): ScaleResult {
  const id = scale.id?.value ?? "";
  const subject = { kind: "scale", id } as const;
  const source = { sources: [balanceSources.weighing] };
  const own = written(`arm of ${id}`, scale.arm, units.arm);
  const arm = keep(
    derive({
      subject,
      quantity: "weighing-arm",
      unit: units.arm,
      formula: own ? "x" : "x_r + d",
      operands: own
        ? { x: own }
        : {
            x_r: written("arm of the reference point", weighing.reference, units.arm),
            d: written(`distance of ${id}`, scale.offset, units.arm),
          },
      compute: (numbers: { x?: number; x_r?: number; d?: number }) =>
        numbers.x ?? (numbers.x_r ?? Number.NaN) + (numbers.d ?? Number.NaN),
      ...source,
    }),
  );
  const net = keep(
    derive({
      subject,
      quantity: "net-weight",
      unit: units.weight,
      formula: scale.tare ? "R - T" : "R",
      operands: {
        R: written(`reading of ${id}`, scale.reading, units.weight),
        ...(scale.tare && { T: written(`tare of ${id}`, scale.tare, units.weight) }),
      },
      compute: ({ R, T = 0 }: { R: number; T?: number }) => R - T,
      ...source,
    }),
  );
  const product = momentOf(subject, derived("net weight", net), derived("arm", arm), units);
  const tolerance = toleranceOf(`tolerance of ${id}`, scale.reading, units.weight);
  return { id, scale, arm, net, tolerance, moment: keep(product) };
}

const signs: Readonly<Record<Treatment, -1 | 0 | 1>> = { remove: -1, keep: 0, add: 1, leave: 0 };

function deriveItem(
  item: WeighingItem,
  definition: EmptyWeightDefinition | undefined,
  units: BalanceUnits,
  keep: Keep,
): WeighedItemResult {
  const id = item.id?.value ?? "";
  const subject = { kind: "weighing-item", id } as const;
  const treatment = treatmentOf(item, definition);
  const sign = treatment === undefined ? undefined : signs[treatment];
  const what = { remove: "taken off", keep: "kept", add: "added", leave: "not there" };
  const factor: Operand =
    treatment === undefined
      ? undefined
      : { name: what[treatment], value: signs[treatment], unit: "1", places: [], notes: [] };
  const source = { sources: [emptyWeightSource, ...(definition ? [definition.source] : [])] };
  const own = written(`weight of ${id}`, item.weight, units.weight);
  const weight = keep(
    derive({
      subject,
      quantity: "weighing-correction",
      unit: units.weight,
      formula: own ? "k * w" : "k * V * rho",
      operands: own
        ? { k: factor, w: own }
        : {
            k: factor,
            V: written(`volume of ${id}`, item.volume, units.volume),
            rho: written(`density of ${id}`, item.density, units.density),
          },
      compute: ({ w, V = 0, rho = 0 }: { w?: number; V?: number; rho?: number }) =>
        (sign ?? Number.NaN) * (w ?? V * rho) + 0,
      ...source,
    }),
  );
  const arm = written(`arm of ${id}`, item.arm, units.arm);
  const product = momentOf(subject, derived("correction", weight), arm, units);
  return { id, item, treatment, weight, moment: keep(product) };
}

function momentOf(subject: Subject, weight: Operand, arm: Operand, units: BalanceUnits): Value | undefined {
  return derive({
    subject,
    quantity: "weighing-moment",
    unit: units.moment,
    formula: "w * x",
    operands: { w: weight, x: arm },
    // Nothing, and not minus nothing, for what is kept.
    compute: ({ w, x }) => moment({ weight: w, arm: x }) + 0,
    sources: [balanceSources.weighing],
  });
}

/** Undefined while the basis, or what the item is, is not known. */
function treatmentOf(
  item: WeighingItem,
  definition: EmptyWeightDefinition | undefined,
): Treatment | undefined {
  const what = item.what?.value;
  if (!definition || what === undefined) return undefined;
  const belongs = definition.includes.includes(what);
  const isAboard = item.onBoard?.value ?? true;
  if (isAboard) return belongs ? "keep" : "remove";
  return belongs ? "add" : "leave";
}
