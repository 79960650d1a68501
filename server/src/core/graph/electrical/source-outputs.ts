import { alternatorOutput, type OutputPoint } from "../../methods/sources";
import type { Project } from "../../project";
import { inUnit } from "../../quantities";
import type { Condition, Source } from "../../records/types";
import type { Source as Citation } from "../../source";
import { derive, derived, type Keep, type Value, written } from "../value";

/** A condition in which an alternator's output could not be had, and why. */
export interface UnknownOutput {
  readonly source: Source;
  readonly condition: Condition;
  readonly why: "no-points" | "no-drive-ratio" | "no-engine-speed" | "outside-points";
}

/** Outputs of the sources by condition, as far as the record gives them. */
export class SourceOutputs {
  /** Those that have a name and a voltage. */
  readonly sources: readonly Source[];
  readonly unknown: UnknownOutput[] = [];
  private readonly outputs = new Map<Source, Map<Condition, Value | undefined>>();

  constructor(
    { airframe }: Project,
    conditions: readonly Condition[],
    private readonly keep: Keep,
  ) {
    this.sources = (airframe?.electrical?.sources ?? []).filter(({ id, voltage }) => id && voltage);
    for (const condition of conditions) {
      for (const source of this.running(condition)) {
        if (source.kind?.value !== "alternator") continue;
        const known = this.outputs.get(source) ?? new Map<Condition, Value | undefined>();
        this.outputs.set(source, known.set(condition, this.computeOutput(source, condition)));
      }
    }
  }

  isOn(source: Source, condition: Condition): boolean {
    if (condition.failed?.some((failed) => failed.value === source.id?.value)) return false;
    switch (source.kind?.value) {
      case "ground-power":
        return condition.phase?.value === "ground-power";
      case "alternator":
        return condition.phase?.value !== "ground-power" && condition.phase?.value !== "start";
      default:
        return true;
    }
  }

  /** Sources that run in a condition, in the order of the record. */
  running(condition: Condition): readonly Source[] {
    return this.sources.filter((source) => this.isOn(source, condition));
  }

  /** Most that a source gives, in A; undefined while it is off, and Infinity where none is recorded. */
  limitOf(source: Source, condition: Condition): number | undefined {
    if (!this.isOn(source, condition)) return undefined;
    const output = source.kind?.value === "alternator" ? this.outputOf(source, condition) : undefined;
    return output?.value ?? source.rating?.value.si ?? Number.POSITIVE_INFINITY;
  }

  /** Output of an alternator that runs, never above its rating; undefined where the record does not tell it. */
  outputOf(source: Source, condition: Condition): Value | undefined {
    return this.outputs.get(source)?.get(condition);
  }

  private computeOutput(source: Source, condition: Condition): Value | undefined {
    const unknown = (why: UnknownOutput["why"]): undefined => {
      this.unknown.push({ source, condition, why });
    };
    const speed = condition.engineSpeed;
    const ratio = source.driveRatio;
    if (!source.output || source.output.length === 0) return unknown("no-points");
    if (!ratio) return unknown("no-drive-ratio");
    if (!speed) return unknown("no-engine-speed");
    const subject = { kind: "source", id: source.id!.value } as const;
    const about = { subject, condition: condition.id?.value } as const;
    const n = this.keep(
      derive({
        ...about,
        quantity: "source-speed",
        unit: "rpm",
        formula: "n_engine * r",
        operands: {
          n_engine: written("engine speed", speed, "rpm"),
          r: { name: "drive ratio", value: ratio.value, unit: "1", places: [ratio.place], notes: [] },
        },
        compute: ({ n_engine, r }) => n_engine * r,
      }),
    );
    const lookup = n && alternatorOutput(outputPoints(source), n.value, citationOf(source));
    if (!lookup?.covered) return unknown("outside-points");
    const points = completePoints(source);
    const atSpeed = this.keep(
      derive({
        ...about,
        quantity: "source-output-at-speed",
        unit: "A",
        method: "straight line between the recorded points",
        operands: {
          n: derived("speed of its own shaft", n),
          n_points: points.map((point) => written("speed of a point", point.speed, "rpm")),
          I_points: points.map((point) => written("output of a point", point.current, "A")),
        },
        compute: () => lookup.value,
        sources: [lookup.source],
      }),
    );
    return this.keep(
      derive({
        ...about,
        quantity: "source-output",
        unit: "A",
        ...(source.rating ? { formula: "min(I_n, I_rated)" } : { formula: "I_n" }),
        operands: {
          I_n: derived("output at this speed", atSpeed),
          ...(source.rating && { I_rated: written("rated output", source.rating, "A") }),
        },
        compute: ({ I_n, I_rated = Number.POSITIVE_INFINITY }) => Math.min(I_n, I_rated),
      }),
    );
  }
}

/** The points of an alternator's curve that are complete, in rpm of its own shaft and A. */
export function outputPoints(source: Source): OutputPoint[] {
  return completePoints(source).map(({ speed, current }) => ({
    rpm: inUnit(speed.value, "rpm"),
    amps: inUnit(current.value, "A"),
  }));
}

function completePoints({ output = [] }: Source) {
  return output.flatMap(({ speed, current }) => (speed && current ? [{ speed, current }] : []));
}

/** Whose figures an alternator's points are. */
export function citationOf(source: Source): Citation {
  return {
    document: source.data?.value ?? `source ${source.id?.value} of the airframe record`,
    standing: "record",
  };
}
