import { holds } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { convert, formatMeasure, roundDown, roundUp } from "../../quantities";
import { hoseShortening, hoseSlack as limits } from "../../tables/fluid-lines";
import { defineRule, rewrite } from "../rule";
import { apart } from "../wires/recorded";
import { lineExample } from "./line-example";

export const hoseSlack = defineRule<{
  line: string;
  slack: number;
  limit: number;
  isShort: boolean;
  shortening?: number | undefined;
}>({
  id: "hose-slack",
  severity: "error",
  area: "lines",
  title: "A hose has too little slack, or too much",
  why:
    "Under pressure a hose may shorten by 4 % or lengthen by 2 %. Drawn taut it pulls out of its fittings; with far too " +
    "much it sways and chafes. Slack is the flexible length beyond the way that it has to go, 5 to 8 % of that way; the " +
    "end fittings do not count.",
  sources: [limits.source, hoseShortening.source],
  say: ({ line, slack, limit, isShort, shortening }) => {
    const [is, asked] = apart(slack, limit, "in");
    const takes =
      shortening === undefined ? "" : ` Pressure may take ${formatMeasure(shortening, "in")} of it.`;
    return {
      what: `Hose ${line} has ${is} of slack; ${isShort ? "at least" : "at most"} ${asked} is wanted.${takes}`,
      todo: isShort
        ? "Fit a longer hose, or shorten its way."
        : "Fit a shorter hose, or support it on the way.",
    };
  },
  *check(project) {
    for (const { line, id, slack } of linesOf(project).runs) {
      if (!slack || !line.length) continue;
      const common = {
        rule: "hose-slack",
        subject: { kind: "line", id },
        place: line.length.place,
        value: slack.slack,
        related: line.way ? [{ place: line.way.place, words: "the way that it has to go" }] : [],
      } as const;
      const facts = (limit: number, isShort: boolean) => ({
        line: id,
        slack: slack.slack.value,
        limit,
        isShort,
        shortening: slack.shortening?.value,
      });
      const { least, most } = slack;
      yield {
        ...common,
        limit: least,
        sense: "at-least",
        holds: holds(slack.slack.value, "at-least", least.value),
        facts: facts(least.value, true),
      };
      yield {
        ...common,
        limit: most,
        sense: "at-most",
        holds: holds(slack.slack.value, "at-most", most.value),
        facts: facts(most.value, false),
      };
    }
  },
  *remedies({ subject, limit, sense, place }, project) {
    const line = linesOf(project).runs.find(({ id }) => id === subject.id)?.line;
    if (!line?.length || !line.way) return;
    const unit = line.length.value.unit === "mm" ? "mm" : "in";
    const wanted = convert(convert(line.way.value.si, "m", "in") + limit.value, "in", unit);
    const step = unit === "mm" ? 1 : 0.1;
    const text = `${(sense === "at-least" ? roundUp : roundDown)(wanted, step)} ${unit}`;
    yield rewrite(`Make hose ${subject.id} ${text} long`, place, text);
  },
  examples: () => [
    {
      title: "41 in of hose for a way of 40 in",
      text: lineExample({ line: "kind: hose, fluid: water, dash: 6, length: 41 in, way: 40 in" }),
      finds: ["L1 has 1 in of slack; at least 2 in is wanted. Pressure may take 1.64 in of it"],
    },
    {
      title: "45 in for the same way",
      text: lineExample({ line: "kind: hose, fluid: water, dash: 6, length: 45 in, way: 40 in" }),
      finds: ["L1 has 5 in of slack; at most 3.2 in"],
    },
    {
      title: "43 in",
      text: lineExample({ line: "kind: hose, fluid: water, dash: 6, length: 43 in, way: 40 in" }),
      finds: [],
    },
  ],
});
