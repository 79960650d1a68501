import { type Assessment, holds } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import type { Subject, Value } from "../../graph/value";
import { formatApart, type UnitSymbol } from "../../quantities";
import { isBelow } from "../../rounding";
import { defineRule } from "../rule";
import { everyLoadingExample } from "./every-loading-example";
import { changePlace, isBeyond } from "./permitted-limit";
import { leastCertain } from "./pull";
import { adverseLoading } from "./sources";

export const limitWithinTolerance = defineRule<{
  what: string;
  kind: "CG" | "weight";
  value: number;
  limit: number;
  unit: UnitSymbol;
}>({
  id: "limit-within-tolerance",
  severity: "warning",
  area: "weights",
  title: "A limit is kept, but not in the worst case of the tolerances",
  why:
    "The weights and arms of the change are known only within their tolerances. With all of them at their worst ends " +
    "the limit is passed, so the record does not show that it is kept: weigh and measure what decides it.",
  sources: [adverseLoading],
  say: ({ what, kind, value, limit, unit }) => {
    const [there, allowed] = formatApart(value, limit);
    return {
      what: `${what}: in the worst case of the tolerances the ${kind} is ${there} ${unit}, past the limit of ${allowed} ${unit}.`,
      todo: "Weigh the parts and measure their arms, and write the smaller tolerance; or leave more room to the limit.",
    };
  },
  *check(project): Iterable<Assessment> {
    const { phases, permitted, change, takeoffLimit, units } = weightsOf(project);
    const judge = (
      subject: Subject,
      what: string,
      kind: "CG" | "weight",
      value: Value,
      limit: Value,
      sense: Assessment["sense"],
      isKept: boolean,
    ): Assessment => ({
      rule: "limit-within-tolerance",
      subject,
      place:
        leastCertain(change.items, kind === "CG" ? limit.value : undefined)?.place ?? changePlace(project),
      value,
      limit,
      sense,
      holds: isKept,
      ...(kind === "CG" && { scale: { of: undefined } }),
      facts: {
        what,
        kind,
        value: value.value,
        limit: limit.value,
        unit: kind === "CG" ? units.arm : units.weight,
      },
      related: [],
    });
    for (const { loading, tolerance, heaviest } of phases) {
      const subject = { kind: "loading", id: loading.id } as const;
      const { weight, cg } = loading.after;
      for (const { side, cg: worst, limit, excess } of tolerance) {
        const nominal = loading.after[side];
        const isPast =
          cg &&
          nominal &&
          isBelow(0, side === "aft" ? cg.value - nominal.value : nominal.value - cg.value, nominal.value);
        if (isPast !== false) continue; // a finding of its own
        const isKept = !isBelow(0, excess, Math.abs(limit.value));
        yield judge(
          subject,
          `Loading ${loading.id}`,
          "CG",
          worst,
          limit,
          side === "aft" ? "at-most" : "at-least",
          isKept,
        );
      }
      if (heaviest && weight && takeoffLimit && holds(weight.value, "at-most", takeoffLimit.value)) {
        const isKept = holds(heaviest.value, "at-most", takeoffLimit.value);
        yield judge(subject, `Loading ${loading.id}`, "weight", heaviest, takeoffLimit, "at-most", isKept);
      }
    }
    for (const { id, sides } of permitted) {
      for (const { side, before, after, tolerance } of sides) {
        if (!tolerance || isBeyond(after) || isBeyond(before)) continue;
        yield judge(
          { kind: "envelope", id },
          `The worst permitted loading in envelope ${id}`,
          "CG",
          tolerance.cg,
          tolerance.limit,
          side === "aft" ? "at-most" : "at-least",
          !isBeyond(tolerance),
        );
      }
    }
  },
  examples: [
    {
      title: "A rack of which nobody knows quite where its weight is",
      text: everyLoadingExample({ rack: "31.2 ± 3 lb", arm: "100.0 ± 60 in" }),
      finds: [
        "^The worst permitted loading in envelope normal: in the worst case of the tolerances the CG is",
      ],
    },
    {
      title: "A rack that was weighed",
      text: everyLoadingExample({ rack: "31.2 ± 0.1 lb", arm: "100.0 ± 0.1 in" }),
      finds: [],
    },
  ],
});
