import type { Problem } from "../../findings/finding";
import type { DuctFault } from "../../graph/air/ducts";
import { airOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { airExample } from "./air-example";

export const ductNotSolved = defineRule<{ duct: string; reason: string; todo: string }>({
  id: "duct-not-solved",
  severity: "error",
  area: "air",
  title: "The flow of a duct can't be found from its data",
  why: "All its flows depend on each other: a part that is missing, or a tree that bites its tail, leaves every outlet open.",
  sources: [],
  say: ({ duct, reason, todo }) => ({ what: `The flow of duct ${duct} is not known: ${reason}.`, todo }),
  *check(project): Iterable<Problem> {
    for (const { duct, id, problem } of airOf(project).ducts) {
      if (!problem) continue;
      yield {
        rule: "duct-not-solved",
        subject: { kind: "duct", id },
        place: (duct.id ?? duct).place,
        facts: { duct: id, ...words(problem, duct) },
      };
    }
  },
  examples: () => [
    {
      title: "Two segments that feed each other",
      text: airExample({
        hasPath: false,
        ducts:
          "[{ id: SUPPLY, flow: 60 cfm, segments: [{ id: D1, after: D2, length: 4 ft, diameter: 4 in, roughness: 0.15 mm }, { id: D2, after: D1, length: 4 ft, diameter: 4 in, roughness: 0.15 mm }], outlets: [{ id: O1, on: D2 }] }]",
      }),
      finds: ["is not known: segment D1 feeds itself"],
    },
    {
      title: "An outlet on a segment of another duct",
      text: airExample({
        hasPath: false,
        ducts:
          "[{ id: S1, flow: 60 cfm, segments: [{ id: D1, length: 4 ft, diameter: 4 in, roughness: 0.15 mm }], outlets: [{ id: O1, on: D2 }] }, { id: S2, flow: 60 cfm, segments: [{ id: D2, length: 4 ft, diameter: 4 in, roughness: 0.15 mm }], outlets: [{ id: O2, on: D2 }] }]",
      }),
      finds: ["S1 is not known: it names a segment that it does not have"],
    },
    {
      title: "A fan that turns in no condition",
      text: airExample({
        hasPath: false,
        loads: "{ CHILLER: run }",
        ducts:
          "[{ id: SUPPLY, fan: FAN-1, segments: [{ id: D1, length: 4 ft, diameter: 4 in, roughness: 0.15 mm }], outlets: [{ id: O1, on: D1 }] }]",
      }),
      finds: ["it is fed in no condition"],
    },
    {
      title: "Neither fan nor flow",
      text: airExample({
        hasPath: false,
        ducts:
          "[{ id: SUPPLY, segments: [{ id: D1, length: 4 ft, diameter: 4 in, roughness: 0.15 mm }], outlets: [{ id: O1, on: D1 }] }]",
      }),
      finds: ["it has neither fan nor flow"],
    },
    {
      title: "A fan that feeds one outlet",
      text: airExample({
        hasPath: false,
        ducts:
          "[{ id: SUPPLY, fan: FAN-1, segments: [{ id: D1, length: 4 ft, diameter: 4 in, roughness: 0.15 mm }], outlets: [{ id: O1, on: D1 }] }]",
      }),
      finds: [],
    },
  ],
});

type Names = { readonly segments?: readonly { readonly id?: { readonly value: string } }[] } & {
  readonly outlets?: readonly { readonly id?: { readonly value: string } }[];
};

function words(
  fault: DuctFault,
  { segments, outlets }: Names,
): { readonly reason: string; readonly todo: string } {
  switch (fault.kind) {
    case "no-supply":
      return { reason: "it has neither fan nor flow", todo: "Name the fan that feeds it, or its flow." };
    case "no-condition":
      return {
        reason: "it is fed in no condition",
        todo: "Record a condition in which its fan's component runs.",
      };
    case "section":
      return {
        reason: `segment ${fault.segment} lacks a size`,
        todo: "Give its length, its roughness, and a diameter or width and height.",
      };
    case "loss":
      return {
        reason: `a fitting of segment ${fault.segment} has no loss coefficient`,
        todo: "Record the loss of fittings of another kind.",
      };
    case "no-such-segment":
      return {
        reason: "it names a segment that it does not have",
        todo: "Check 'after' and 'on' against the names of its segments.",
      };
    case "loop":
      return {
        reason: `segment ${segments?.[fault.segment]?.id?.value} feeds itself`,
        todo: "Let 'after' name the segment nearer to the supply.",
      };
    case "no-way-out":
      return { reason: "no outlet lets air out", todo: "Check which segments its outlets are on." };
    case "no-resistance":
      return {
        reason: `outlet ${outlets?.[fault.outlet]?.id?.value} has a loss coefficient of 0`,
        todo: "Leave the loss out, or record what was measured.",
      };
    case "outside-curve":
      return {
        reason: `it meets the fan's curve ${fault.side === "before-curve" ? "before its first" : "beyond its last"} point`,
        todo: "Add points to the fan's curve, from its maker's data.",
      };
    case "curve-not-falling":
      return {
        reason: `the fan's curve does not fall at its point ${fault.index + 1}`,
        todo: "Give flow rising and pressure falling from point to point; leave a stalled part out.",
      };
    case "not-converged":
      return { reason: "its balance does not settle", todo: "Check its sizes for a slip in a unit." };
  }
}
