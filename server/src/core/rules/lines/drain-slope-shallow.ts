import { holds } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { percentLimit } from "../../graph/lines/limits";
import { formatApart } from "../../quantities";
import { drainSlope } from "../../tables/line-installation-limits";
import { defineRule } from "../rule";
import { shorten } from "../wording";
import { pointHeights, worstStretch } from "./drain-remedies";
import { drainExample } from "./line-example";

export const drainSlopeShallow = defineRule<{
  drain: string;
  ends: readonly [string, string];
  slope: number;
  least: number;
  attitude?: string | undefined;
}>({
  id: "drain-slope-shallow",
  severity: "warning",
  area: "lines",
  title: "A drain falls less than drains usually do",
  why:
    "A drain that is all but level holds water at every sag between its clamps. No published least slope was found for " +
    "aircraft; a quarter of an inch for each foot is a habit from buildings, so this only warns.",
  sources: [drainSlope.source],
  say: ({ drain, ends, slope, least, attitude }) => {
    const [is, usual] = formatApart(slope * inchesPerFoot, least * inchesPerFoot);
    return {
      what: `Drain ${drain} falls ${is} in for each ft from ${shorten(ends[0])} to ${shorten(ends[1])}${attitude ? ` (${attitude})` : ""}; ${usual} in is usual.`,
      todo: "Give it more fall, or show by test that it runs dry.",
    };
  },
  *check(project) {
    for (const { id, stretches } of linesOf(project).drains) {
      // What rises is a fault of its own.
      const falling = stretches.filter(({ fall }) => fall.value >= 0);
      const worst = worstStretch(falling, ({ slope }) => slope?.value);
      const subject = { kind: "drain", id } as const;
      const least = percentLimit(subject, "least-drain-slope", drainSlope.value, drainSlope.source);
      if (!worst?.slope || !least) continue;
      yield {
        rule: "drain-slope-shallow",
        subject,
        place: worst.to.waterLine!.place,
        value: worst.slope,
        limit: least,
        sense: "at-least",
        holds: holds(worst.slope.value, "at-least", least.value),
        facts: {
          drain: id,
          ends: worst.ends,
          slope: worst.slope.value,
          least: least.value,
          attitude: worst.attitude,
        },
        related: [{ place: worst.from.place, words: "the point before" }],
      };
    }
  },
  remedies: ({ subject }, project) => pointHeights(subject.id, project, ({ slope }) => slope?.value),
  examples: () => [
    {
      title: "An eighth of an inch in two feet",
      text: drainExample([
        "at: pan, water-line: 20 in, arm: 130 in, butt-line: 0 in",
        "at: outlet, water-line: 19.875 in, arm: 130 in, butt-line: 24 in",
      ]),
      finds: ["Drain D1 falls 0.0625 in for each ft from pan to outlet; 0.25 in is usual"],
    },
    {
      title: "A quarter of an inch for each foot",
      text: drainExample([
        "at: pan, water-line: 20 in, arm: 130 in",
        "at: outlet, water-line: 19.5 in, arm: 154 in",
      ]),
      finds: [],
    },
  ],
});

/** In in for each ft, for a slope in per cent. */
const inchesPerFoot = 12 / 100;
