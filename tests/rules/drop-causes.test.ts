/** What is asked of the sources because a wire drops too much leads to that wire. */
import { describe, expect, it } from "vitest";
import { existingLoad, sourceExample } from "../../server/src/core/rules/sources/source-example";
import { judge } from "../remedies/support";

/** 500 W are 18 A at 28 V; through a thin wire they take more. */
const record = (draw: string, gauge: string, amps: number) =>
  sourceExample({ draw, gauge, length: "60 ft", existing: [existingLoad("avionics", amps, 8)] });

const leadsOf = (rule: string, text: string) => {
  const { findings, record } = judge(text);
  return findings
    .filter((one) => one.rule === rule)
    .flatMap(({ related }) =>
      related.map(({ place, words }) => {
        const { start, end } = record.reading.spanOf(place.node);
        return `${text.slice(start, end)}: ${words}`;
      }),
    );
};

describe.each([
  ["source-above-share", 31],
  ["source-overloaded", 45],
])("%s", (rule, amps) => {
  it("leads to the wire whose drop makes a load of constant power draw more", () => {
    const [lead, ...more] = leadsOf(rule, record("power: 500 W", "14 AWG", amps));
    expect(lead).toMatch(/^14 AWG: RACK loses \d\.\d+ V on the way, and draws more for it$/);
    expect(more).toEqual([]);
  });

  it("leads nowhere where the load draws the same whatever reaches it, or the drop is kept", () => {
    expect(leadsOf(rule, record("current: 18 A", "14 AWG", amps))).toEqual([]);
    expect(leadsOf(rule, record("power: 500 W", "2 AWG", amps))).toEqual([]);
  });

  it("is found in each of these", () => {
    for (const [draw, gauge] of [
      ["power: 500 W", "14 AWG"],
      ["current: 18 A", "14 AWG"],
      ["power: 500 W", "2 AWG"],
    ] as const)
      expect(judge(record(draw, gauge, amps)).findings.map((one) => one.rule)).toContain(rule);
  });
});
