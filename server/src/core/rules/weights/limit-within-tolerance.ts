import { type Assessment, holds } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import type { Subject, Value } from "../../graph/value";
import type { Uncertain } from "../../graph/weights/empty-before";
import { isLateral } from "../../graph/weights/permitted-loadings";
import type { Project } from "../../project";
import { formatApart, type UnitSymbol } from "../../quantities";
import { isBelow } from "../../rounding";
import { placeInAirframe } from "../link-places";
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
    "The weights and arms of the aircraft and of the change are known only within their tolerances. With all of them at their worst ends " +
    "the limit is passed, so the record does not show that it is kept: weigh and measure what decides it.",
  sources: [adverseLoading],
  say: ({ what, kind, value, limit, unit }) => {
    const [there, allowed] = formatApart(value, limit);
    return {
      what: `${what}: in the worst case of the tolerances the ${kind} is ${there} ${unit}, past the limit of ${allowed} ${unit}.`,
      todo: "Weigh what is least certain and measure its arm, and write the smaller tolerance; or leave more room to the limit.",
    };
  },
  *check(project): Iterable<Assessment> {
    const { phases, permitted, takeoffLimit, units } = weightsOf(project);
    const judge = (
      subject: Subject,
      what: string,
      kind: "CG" | "weight",
      value: Value,
      limit: Value,
      sense: Assessment["sense"],
      isKept: boolean,
      /** Arm about which weights pull; none where the limit is no arm. */
      about?: number,
    ): Assessment => ({
      rule: "limit-within-tolerance",
      subject,
      ...whereLeastCertain(project, about),
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
          limit.value,
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
          side === "aft" || side === "right" ? "at-most" : "at-least",
          !isBeyond(tolerance),
          isLateral(side) ? undefined : tolerance.limit.value,
        );
      }
    }
  },
  examples: () => [
    {
      title: "A rack of which nobody knows quite where its weight is",
      text: everyLoadingExample({ rack: "31.2 ± 3 lb", arm: "100.0 ± 60 in" }),
      finds: [
        "^The worst permitted loading in envelope normal: in the worst case of the tolerances the CG is",
      ],
    },
    {
      title: "An aircraft whose empty weight statement is a rough one",
      text: everyLoadingExample().replace("arm: 87.0 in", "arm: 87.0 ± 1.5 in"),
      finds: [
        "^The worst permitted loading in envelope normal: in the worst case of the tolerances the CG is",
      ],
    },
    {
      title: "An aircraft weighed on rough scales, with no statement since",
      text: everyLoadingExample().replace(
        / {2}empty: .*/,
        "  weighing: { scales: [{ id: NOSE, reading: 482.4 ± 30 lb, arm: 17.0 in }, " +
          "{ id: MAINS, reading: 1929.6 ± 60 lb, arm: 104.5 in }] }",
      ),
      finds: [
        "^The worst permitted loading in envelope normal: in the worst case of the tolerances the CG is",
      ],
    },
    {
      title: "A pod on the right-hand wing of which nobody knows quite what it weighs",
      text: everyLoadingExample({ rack: "31.2 ± 20 lb", butt: "110 in" }),
      finds: [
        "^The worst permitted loading in envelope normal: in the worst case of the tolerances the CG is 2.* past the limit of 2 in",
      ],
    },
    {
      title: "A rack that was weighed",
      text: everyLoadingExample({ rack: "31.2 ± 0.1 lb", arm: "100.0 ± 0.1 in" }),
      finds: [],
    },
  ],
});

/** At the item of the change that leaves most open, or at the empty weight statement or a scale where that does. */
function whereLeastCertain(
  project: Project,
  about: number | undefined,
): Pick<Assessment, "place" | "related"> {
  const { before, items } = weightsOf(project).change;
  const least = leastCertain<Uncertain>([...before.parts, ...items], about);
  const part = before.parts.find((one) => one === least);
  if (part?.place) return placeInAirframe(project, part.place, part.words);
  return { place: items.find((one) => one === least)?.place ?? changePlace(project), related: [] };
}
