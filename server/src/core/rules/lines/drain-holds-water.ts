import { holds } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { plainLimit } from "../../graph/lines/limits";
import { formatNumber } from "../../quantities";
import { drainPhysics } from "../../tables/line-installation-limits";
import { defineRule } from "../rule";
import { shorten } from "../wording";
import { pointHeights, worstStretch } from "./drain-remedies";
import { drainExample } from "./line-example";

export const drainHoldsWater = defineRule<{
  drain: string;
  ends: readonly [string, string];
  fall: number;
  attitude?: string | undefined;
}>({
  id: "drain-holds-water",
  severity: "error",
  area: "lines",
  title: "A drain rises on its way, so that water stands in it",
  why:
    "Water that can't run out freezes, corrodes, or slops back into the equipment. A drain has to fall all the way from " +
    "the pan to the outlet, without a trap, in each attitude that the aircraft is parked and flown in.",
  sources: [drainPhysics],
  say: ({ drain, ends, fall, attitude }) => ({
    what: `Drain ${drain} rises by ${formatNumber(-fall)} in from ${shorten(ends[0])} to ${shorten(ends[1])}${attitude ? ` in the attitude ${attitude}` : ""}.`,
    todo: "Lower the later point or raise the earlier one, until it falls all the way.",
  }),
  *check(project) {
    for (const { id, stretches } of linesOf(project).drains) {
      const worst = worstStretch(stretches, ({ fall }) => fall.value);
      const subject = { kind: "drain", id } as const;
      const least = plainLimit(subject, "least-drain-fall", 0, drainPhysics, "Level at least.");
      if (!worst || !least) continue;
      yield {
        rule: "drain-holds-water",
        subject,
        place: worst.to.waterLine!.place,
        value: worst.fall,
        limit: least,
        sense: "at-least",
        holds: holds(worst.fall.value, "at-least", 0),
        scale: { of: undefined },
        facts: { drain: id, ends: worst.ends, fall: worst.fall.value, attitude: worst.attitude },
        related: [{ place: worst.from.place, words: "the point before" }],
      };
    }
  },
  remedies: ({ subject }, project) => pointHeights(subject.id, project, ({ fall }) => fall.value),
  examples: () => [
    {
      title: "A loop on the way",
      text: drainExample([
        "at: pan, water-line: 20 in",
        "at: bulkhead, water-line: 16 in",
        "at: elbow, water-line: 17.5 in",
        "at: outlet, water-line: 12 in",
      ]),
      finds: ["Drain D1 rises by 1.5 in from bulkhead to elbow"],
    },
    {
      title: "Falls when level, but not when parked nose up",
      text: drainExample(
        ["at: pan, water-line: 20 in, arm: 150 in", "at: outlet, water-line: 18 in, arm: 130 in"],
        "[{ name: flight, pitch: 0 deg }, { name: parked, pitch: 11 deg }]",
      ),
      finds: ["Drain D1 rises by 1.853 in from pan to outlet in the attitude parked"],
    },
    {
      title: "Falls all the way",
      text: drainExample([
        "at: pan, water-line: 20 in, arm: 150 in",
        "at: outlet, water-line: 12 in, arm: 152 in",
      ]),
      finds: [],
    },
  ],
});
