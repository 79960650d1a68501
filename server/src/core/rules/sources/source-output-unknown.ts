import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { UnknownOutput } from "../../graph/electrical/source-outputs";
import { entryOf } from "../../graph/entries";
import { groupBy } from "../../graph/group-by";
import type { Project } from "../../project";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { conditionName, listWords, shorten } from "../wording";
import { conditionPlace } from "./places";
import { outputAtLowSpeed } from "./references";
import { exampleAlternator, runningIn, sourceExample } from "./source-example";

type Why = UnknownOutput["why"];

const reasons: Readonly<Record<Why, string>> = {
  "no-points": "it has no output points",
  "no-drive-ratio": "it has no drive ratio",
  "no-engine-speed": "the condition has no engine speed",
  "outside-points": "its speed is outside the recorded points",
};

const requests: Readonly<Record<Why, string>> = {
  "no-points": "Add 'output' from its maker's data: current against its own speed, down to idle.",
  "no-drive-ratio": "Add 'drive-ratio': its turns for each turn of the engine.",
  "no-engine-speed": "Add 'engine-speed' to the condition.",
  "outside-points": "Ask its maker for the output at this speed, and add the point.",
};

export const sourceOutputUnknown = defineRule<{
  source: string;
  why: Why;
  conditions: readonly string[];
  isRated: boolean;
}>({
  id: "source-output-unknown",
  severity: "warning",
  area: "sources",
  title: "What an alternator gives in a condition can't be had from the record",
  why:
    "An alternator may give a small part of its rating at idle, or nearly all of it: only its maker's data tell. " +
    "Until they are there the rated output is taken, so that what fails is wrong, but what passes is not shown to be right.",
  sources: [outputAtLowSpeed],
  say: ({ source, why, conditions, isRated }) => ({
    what: `The output of ${source} is not known in ${listWords(conditions.slice(0, 2).map(shorten), "and")}${
      conditions.length > 2 ? " and others" : ""
    }: ${reasons[why]}.`,
    todo: `${requests[why]} ${
      isRated
        ? "Meanwhile its rated output is taken, so the record is not shown to be right."
        : "It has no rating to take meanwhile, so what it gives is not checked."
    }`,
  }),
  *check(project): Iterable<Problem> {
    const unknown = electricalOf(project).sources.unknown.filter((one) => !isWritten(one));
    const alike = groupBy(unknown, ({ source, condition, why }) =>
      isOfCondition(why)
        ? `${source.id?.value} ${why} ${conditionName(condition)}`
        : `${source.id?.value} ${why}`,
    );
    for (const unknowns of alike.values()) yield problemOf(project, unknowns);
  },
  examples: () => [
    {
      title: "A rating, and nothing about lower speeds",
      text: sourceExample({ alternator: "bus: MAIN, rating: 60 A" }),
      finds: ["The output of ALT is not known in cruise: it has no output points"],
    },
    {
      title: "Points of the alternator's own speed, and no drive ratio to tell that speed",
      text: sourceExample({ alternator: exampleAlternator.replace("drive-ratio: 3, ", "") }),
      finds: ["in cruise: it has no drive ratio"],
    },
    {
      title: "A condition without an engine speed",
      text: sourceExample({ conditions: [runningIn("cruise", "duration: 2 h")] }),
      finds: ["in cruise: the condition has no engine speed"],
    },
    {
      title: "An idle slower than the slowest point",
      text: sourceExample({ conditions: [runningIn("taxi", "engine-speed: 600 rpm")] }),
      finds: ["in taxi: its speed is outside the recorded points"],
    },
    {
      title: "An engine speed that is still to be filled in, which is told there",
      text: sourceExample({ conditions: [runningIn("cruise", "engine-speed: ")] }),
      finds: [],
    },
    { title: "Points that reach the condition's speed", text: sourceExample(), finds: [] },
  ],
});

/** Whether the condition lacks something; else the alternator does, in every condition. */
function isOfCondition(why: Why): boolean {
  return why === "no-engine-speed" || why === "outside-points";
}

/** Whether what is lacking stands there, blank or faulty, which is a finding of its own. */
function isWritten({ source, condition, why }: UnknownOutput): boolean {
  switch (why) {
    case "no-engine-speed":
      return entryOf(condition, "engine-speed") !== undefined;
    case "no-drive-ratio":
      return entryOf(source, "drive-ratio") !== undefined;
    default:
      return false;
  }
}

/** Unknown outputs of one source for one reason. */
function problemOf(project: Project, unknowns: readonly [UnknownOutput, ...UnknownOutput[]]): Problem {
  const [{ source, condition, why }] = unknowns;
  const sourcePlace = source.id?.place ?? source.place;
  const where = isOfCondition(why)
    ? {
        place: condition.engineSpeed?.place ?? conditionPlace(condition),
        related: [{ place: sourcePlace, words: "the alternator" }],
      }
    : placeInAirframe(project, sourcePlace, "the alternator");
  return {
    rule: "source-output-unknown",
    subject: { kind: "source", id: source.id?.value ?? "" },
    ...where,
    facts: {
      source: source.id?.value,
      why,
      conditions: unknowns.map((unknown) => conditionName(unknown.condition)),
      isRated: source.rating !== undefined,
    },
  };
}
