/** A breaker that is too large for its wires: what is the odd one is told, and mended first. */
import { describe, expect, it } from "vitest";
import { isPlace } from "../../server/src/core/findings/finding";
import { circuitExample } from "../../server/src/core/rules/wires/circuit-example";
import { judge, titlesFor } from "./support";

const devices = "{ id: CB-50, kind: breaker, rating: 50 A }, { id: CB-20, kind: breaker, rating: 20 A }";
const breaker = ["{ id: CB-RACK, device: CB-50, mounted-on: MAIN }"];
const wire = (id: string, ends: string, gauge: string) =>
  `{ id: ${id}, ${ends}, gauge: ${gauge}, length: 4 ft, rating: 150 degC }`;

/** A load behind a breaker of 50 A, with gauges for the wire there and the wire back. */
const circuit = (there: string, back: string, current = "18 A") =>
  circuitExample({
    current,
    device: devices,
    protection: breaker,
    wires: [wire("P1", "from: CB-RACK, to: RACK", there), wire("P2N", "from: RACK, to: GND-AFT", back)],
  });

describe.each(["protection-above-wire", "protection-above-chart"])("%s", (rule) => {
  /** What stands where a finding does, and at the places that it leads to. */
  const placesIn = (text: string) => {
    const { findings, record } = judge(text);
    return findings
      .filter((one) => one.rule === rule)
      .map(({ subject, anchor, related }) => {
        const written = [anchor, ...related.map(({ place }) => place)].map((one) => {
          const { start, end } = record.reading.spanOf(isPlace(one) ? one.node : record.reading.root);
          return text.slice(start, end);
        });
        return [subject, ...written];
      });
  };

  it("stands at the device where none of its wires suits it, and names a smaller device first", () => {
    const text = circuit("14 AWG", "14 AWG");
    expect(placesIn(text)).toEqual([
      ["wire P1", "CB-50", "14 AWG"],
      ["wire P2N", "CB-50", "14 AWG"],
    ]);
    const titles = titlesFor(rule, text);
    expect(titles[0]).toBe("Take CB-20 for CB-RACK");
    expect(titles[1]).toMatch(/^Make wire P1 \d+ AWG$/);
  });

  it("stands at the wires where these are too thin for their own load", () => {
    const text = circuit("14 AWG", "14 AWG", "48 A");
    expect(placesIn(text).map(([subject, at]) => [subject, at])).toEqual([
      ["wire P1", "14 AWG"],
      ["wire P2N", "14 AWG"],
    ]);
  });

  it("stands at the wire where another suits the device, and names a thicker gauge first", () => {
    const text = circuit("14 AWG", "4 AWG");
    expect(placesIn(text)).toEqual([["wire P1", "14 AWG", "CB-50"]]);
    const titles = titlesFor(rule, text);
    expect(titles[0]).toMatch(/^Make wire P1 \d+ AWG$/);
    expect(titles[1]).toBe("Take CB-20 for CB-RACK");
  });
});
