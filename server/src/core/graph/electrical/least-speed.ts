import { leastEngineSpeed } from "../../methods/sources";
import { inUnit } from "../../quantities";
import type { Condition, Source } from "../../records/types";
import { isAtMost } from "../../rounding";
import { derive, derived, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { SourceBalance } from "./source-balance";
import { citationOf, outputPoints, type SourceOutputs } from "./source-outputs";

/** The engine speed from which on an alternator holds the loads of a condition on the ground. */
export interface LeastSpeed {
  readonly condition: Condition;
  readonly source: Source;
  readonly demand: Value;
  /** The engine speed that the condition has. */
  readonly engineSpeed: Value | undefined;
  /** Undefined where no recorded speed holds the loads. */
  readonly speed: Value | undefined;
  /** True where the recorded points go no lower, so that a lower speed may do too. */
  readonly isLowestGiven: boolean;
}

/** For taxi on one alternator; empty for any other condition, and while its curve is not known. */
export function leastSpeedOf(
  { condition, demand }: SourceBalance,
  basis: ElectricalBasis,
  outputs: SourceOutputs,
): LeastSpeed[] {
  const [source, ...others] = outputs.running(condition).filter(({ kind }) => kind?.value === "alternator");
  if (condition.phase?.value !== "taxi" || others.length > 0) return [];
  if (!source?.driveRatio || !source.output || !demand) return [];
  const lookup = leastEngineSpeed(
    outputPoints(source),
    source.driveRatio.value,
    demand.value,
    citationOf(source),
  );
  if (!lookup.covered) return [];
  const ratedAmps = source.rating ? inUnit(source.rating.value, "A") : Number.POSITIVE_INFINITY;
  const found = lookup.value;
  const reached = found.isReached && isAtMost(demand.value, ratedAmps) ? found : undefined;
  const common = {
    subject: { kind: "source", id: source.id!.value },
    condition: condition.id?.value,
    unit: "rpm",
  } as const;
  const speed = basis.keep(
    derive({
      ...common,
      quantity: "least-engine-speed",
      method: "lowest engine speed from which on the recorded output holds the demand",
      operands: { demand: derived("demand", demand) },
      compute: () => reached?.engineRpm ?? Number.NaN,
      sources: [lookup.source],
      notes: reached?.isLowestGiven ? ["The recorded points go no lower."] : [],
    }),
  );
  const engineSpeed = basis.keep(
    derive({
      ...common,
      quantity: "engine-speed",
      formula: "n",
      operands: { n: written("engine speed", condition.engineSpeed, "rpm") },
      compute: ({ n }) => n,
    }),
  );
  return [{ condition, source, demand, engineSpeed, speed, isLowestGiven: reached?.isLowestGiven ?? false }];
}
