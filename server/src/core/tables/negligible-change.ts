import { isAtMost, isBelow, sameWithinRounding } from "../rounding";
import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, notCovered, range } from "./lookup";

export type AircraftKind = "fixed-wing" | "rotary-wing";

/** One change of equipment. The paragraph judges one change: it lets no small changes pile up unrecorded. */
export interface WeightAndBalanceChange {
  readonly aircraft: AircraftKind;
  /** lb */
  readonly emptyWeight: number;
  /** Net, in lb, either sign. */
  readonly weightChange: number;
  /** Either sign, in the unit of length of `reference`. */
  readonly cgChange: number;
  /** Fixed wing: mean aerodynamic chord. Rotary wing: maximum allowable CG range. Undefined if not known. */
  readonly reference: number | undefined;
}

export interface NegligibleVerdict {
  /** Both parts hold. Undefined when the parts that can be judged do not decide it. */
  readonly negligible: boolean | undefined;
  /** Largest negligible weight change in lb: "or less". */
  readonly weightLimit: Lookup<number>;
  /** A CG change must stay below this, in the unit of length given: "less than". */
  readonly cgLimit: number | undefined;
}

export const negligibleChangeSource = advisoryCircular(
  "chapter 10, par. 10-2c",
  "published",
  "the middle band is misprinted as “more than 5,000 and 50,000 pounds”, read as between the two",
);

/** Largest negligible weight change (lb) above `from` lb of empty weight, up to the next band. */
const weightBands = [
  { from: 0, change: 1 },
  { from: 5_000, change: 2 },
  { from: 50_000, change: 5 },
] as const;

/** A CG change is negligible below this per cent of a length that differs with the kind of aircraft. */
export const negligibleCgChange = {
  "fixed-wing": { percent: 0.05, of: "mean aerodynamic chord" },
  "rotary-wing": { percent: 0.2, of: "maximum allowable CG range" },
} as const satisfies Record<AircraftKind, { percent: number; of: string }>;

/** Largest negligible weight change, in lb, for an empty weight in lb. */
export function negligibleWeightChange(emptyWeight: number): Lookup<number> {
  const band = weightBands.findLast(({ from }) => isBelow(from, emptyWeight));
  if (band === undefined || !Number.isFinite(emptyWeight)) {
    return notCovered(
      {
        quantity: "empty weight",
        asked: emptyWeight,
        unit: "lb",
        covers: range(0, Number.POSITIVE_INFINITY),
      },
      negligibleChangeSource,
    );
  }
  const onEdge = weightBands.some(({ from }) => sameWithinRounding(emptyWeight, from));
  return covered(
    band.change,
    negligibleChangeSource,
    onEdge
      ? ["The paragraph gives exactly this empty weight to neither band; the stricter limit counts."]
      : [],
  );
}

/**
 * Whether a change is negligible by par. 10-2c: its weight and its CG change both. The paragraph defines the
 * two apart; that both must hold is our reading, the stricter one.
 */
export function judgeNegligible(change: WeightAndBalanceChange): NegligibleVerdict {
  const weightLimit = negligibleWeightChange(change.emptyWeight);
  const { percent } = negligibleCgChange[change.aircraft];
  const cgLimit =
    change.reference !== undefined && change.reference > 0 ? (percent / 100) * change.reference : undefined;

  const parts = [
    weightLimit.covered ? isAtMost(Math.abs(change.weightChange), weightLimit.value) : undefined,
    cgLimit !== undefined ? isBelow(Math.abs(change.cgChange), cgLimit) : undefined,
  ];
  const negligible = parts.includes(false) ? false : parts.includes(undefined) ? undefined : true;
  return { negligible, weightLimit, cgLimit };
}
