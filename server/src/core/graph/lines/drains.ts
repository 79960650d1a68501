/** How far each drain falls from point to point, level and in every recorded attitude of the aircraft. */
import type { Project } from "../../project";
import type { Attitude, Drain, DrainPoint } from "../../records/types";
import { isWholeList } from "../entries";
import { Memory } from "../remember";
import { derive, derived, type Keep, type Operand, type Value, written } from "../value";

export interface DrainResult {
  readonly drain: Drain;
  readonly id: string;
  readonly stretches: readonly DrainStretch[];
}

/** From one point to the next, in one attitude. */
export interface DrainStretch {
  readonly from: DrainPoint;
  readonly to: DrainPoint;
  /** What stands at its two ends, in the words of the record. */
  readonly ends: readonly [string, string];
  /** Name of the attitude; undefined where the aircraft stands level. */
  readonly attitude: string | undefined;
  /** In in; negative where it rises. */
  readonly fall: Value;
  /** Fall for each length of its run, in per cent; undefined while the run is not known. */
  readonly slope: Value | undefined;
}

/** Pure; what is missing in the record is left out of the result. */
export function deriveDrains({ install, airframe }: Project, keep: Keep): DrainResult[] {
  const attitudes = (airframe?.attitudes ?? []).filter(({ name, pitch }) => name && pitch);
  return (install.drains ?? []).flatMap((drain): DrainResult[] =>
    drain.id && isWholeList(drain, "points", drain.points)
      ? [
          remembered.recall(drain, drain, attitudes, keep, (kept) => ({
            drain,
            id: drain.id!.value,
            stretches: stretchesOf(drain, attitudes, kept),
          })),
        ]
      : [],
  );
}

const remembered = new Memory<Drain, Drain, DrainResult>();

function stretchesOf(drain: Drain, attitudes: readonly Attitude[], keep: Keep): DrainStretch[] {
  const points = drain.points ?? [];
  return points.slice(1).flatMap((to, index) => {
    const from = points[index]!;
    const isLong = from.arm && to.arm && attitudes.length > 0;
    return (isLong ? attitudes : [undefined]).flatMap((attitude): DrainStretch[] => {
      const stretch = new Stretch(drain, from, to, index + 1, attitude);
      const fall = keep(stretch.fall());
      const slope = fall && keep(stretch.slope(fall, keep));
      return fall ? [{ from, to, ends: stretch.ends, attitude: attitude?.name?.value, fall, slope }] : [];
    });
  });
}

class Stretch {
  readonly ends: readonly [string, string];

  constructor(
    private readonly drain: Drain,
    private readonly from: DrainPoint,
    private readonly to: DrainPoint,
    private readonly number: number,
    private readonly attitude: Attitude | undefined,
  ) {
    this.ends = [from.at?.value ?? `point ${number}`, to.at?.value ?? `point ${number + 1}`];
  }

  /** Nose up, what lies farther aft lies lower. */
  fall(): Value | undefined {
    const h = { h1: this.operand(this.from, "waterLine"), h2: this.operand(this.to, "waterLine") };
    if (!this.attitude) {
      return derive({
        ...this.common("drain-fall"),
        unit: "in",
        formula: "h1 - h2",
        operands: h,
        compute: ({ h1, h2 }) => h1 - h2,
      });
    }
    return derive({
      ...this.common("drain-fall"),
      unit: "in",
      formula: "(h1 - h2) * cos(p) + (a2 - a1) * sin(p)",
      operands: { ...h, ...this.along() },
      compute: ({ h1, h2, a1, a2, p }) => (h1 - h2) * Math.cos(p) + (a2 - a1) * Math.sin(p),
    });
  }

  slope(fall: Value, keep: Keep): Value | undefined {
    const run = keep(this.run());
    if (!run || run.value === 0) return undefined;
    return derive({
      ...this.common("drain-slope"),
      unit: "%",
      formula: "100 * f / r",
      operands: { f: derived("fall", fall), r: derived("level run", run) },
      compute: ({ f, r }) => (100 * f) / r,
    });
  }

  /** Length of the stretch as seen from above. */
  private run(): Value | undefined {
    const b1 = this.operand(this.from, "buttLine");
    const b2 = this.operand(this.to, "buttLine");
    const isBeside = b1 !== undefined && b2 !== undefined;
    if (!this.attitude) {
      const { a1, a2 } = this.along();
      return derive({
        ...this.common("drain-run"),
        unit: "in",
        formula: isBeside ? "sqrt((a2 - a1) ^ 2 + (b2 - b1) ^ 2)" : "abs(a2 - a1)",
        operands: { a1, a2, ...(isBeside && { b1, b2 }) } as Readonly<Record<string, Operand>>,
        compute: (n) => Math.hypot(at(n, "a2") - at(n, "a1"), at(n, "b2") - at(n, "b1")),
      });
    }
    const h = { h1: this.operand(this.from, "waterLine"), h2: this.operand(this.to, "waterLine") };
    return derive({
      ...this.common("drain-run"),
      unit: "in",
      formula: isBeside
        ? "sqrt(((a2 - a1) * cos(p) - (h1 - h2) * sin(p)) ^ 2 + (b2 - b1) ^ 2)"
        : "abs((a2 - a1) * cos(p) - (h1 - h2) * sin(p))",
      operands: { ...this.along(), ...h, ...(isBeside && { b1, b2 }) } as Readonly<Record<string, Operand>>,
      compute: (n) => {
        const along =
          (at(n, "a2") - at(n, "a1")) * Math.cos(at(n, "p")) -
          (at(n, "h1") - at(n, "h2")) * Math.sin(at(n, "p"));
        return Math.hypot(along, at(n, "b2") - at(n, "b1"));
      },
    });
  }

  private along() {
    return {
      a1: this.operand(this.from, "arm"),
      a2: this.operand(this.to, "arm"),
      p: written("pitch", this.attitude?.pitch, "rad"),
    };
  }

  private operand(point: DrainPoint, key: "waterLine" | "arm" | "buttLine"): Operand {
    const which = point === this.from ? "first" : "next";
    return written(`${names[key]} of the ${which} point`, point[key], "in");
  }

  private common<Q extends "drain-fall" | "drain-run" | "drain-slope">(quantity: Q) {
    return {
      subject: { kind: "drain", id: `${this.drain.id!.value} points ${this.number}-${this.number + 1}` },
      quantity,
      condition: this.attitude?.name?.value,
      notes: [],
    } as const;
  }
}

const names = { waterLine: "height", arm: "arm", buttLine: "butt line" } as const;

function at(numbers: Readonly<Record<string, unknown>>, symbol: string): number {
  return (numbers[symbol] as number | undefined) ?? 0;
}
