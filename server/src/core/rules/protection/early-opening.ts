/** How long a current lasts, against when a device may open at it. */
import { type Assessment, type Facts, holds } from "../../findings/finding";
import type { DeviceResult } from "../../graph/electrical/devices";
import type { Value } from "../../graph/value";
import type { Condition } from "../../records/types";
import { governing } from "../wires/governing";
import { conditionName } from "../wording";

/** A current through a device, how long it lasts, and after how long the device may open; times in s. */
export interface PassingCurrent {
  readonly condition: Condition;
  readonly current: Value;
  readonly time: Value;
  readonly earliest: Value | undefined;
}

/** The state that leaves least time; undefined where none is known, and for a contact, which does not open. */
export function judgeOpening(
  rule: string,
  { id, inline }: DeviceResult,
  states: readonly PassingCurrent[],
  about: Facts = {},
): Assessment | undefined {
  const chosen = inline.kind === "protection" ? inline.record.device : undefined;
  const worst = governing(
    states,
    "at-most",
    ({ time }) => time,
    ({ earliest }) => earliest,
  );
  if (!worst || !chosen) return undefined;
  return {
    rule,
    subject: { kind: "protection", id },
    place: chosen.place,
    value: worst.value,
    limit: worst.limit,
    sense: "at-most",
    holds: holds(worst.value.value, "at-most", worst.limit.value),
    facts: {
      protection: id,
      current: worst.state.current.value,
      time: worst.value.value,
      earliest: worst.limit.value,
      condition: conditionName(worst.state.condition),
      ...about,
    },
    related: [],
  };
}
