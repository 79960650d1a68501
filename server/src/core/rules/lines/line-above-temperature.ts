import { linesOf } from "../../graph/derivations";
import { convert, formatMeasure } from "../../quantities";
import { hoseSource } from "../../tables/fluid-lines";
import { defineRule } from "../rule";
import { holdAgainst } from "../wires/recorded";
import { lineExample } from "./line-example";

export const lineAboveTemperature = defineRule<{ line: string; hottest: number; most: number }>({
  id: "line-above-temperature",
  severity: "error",
  area: "lines",
  title: "A hose or tube gets hotter than it may",
  why:
    "Heat hardens a hose until it cracks at the first bend. Its highest temperature and its highest pressure are not " +
    "meant for the same time.",
  sources: [hoseSource],
  say: ({ line, hottest, most }) => ({
    what: `Line ${line} reaches ${both(hottest)}; it may reach ${both(most)}.`,
    todo: "Route it away from the heat, shield it, or take a line that stands it.",
  }),
  *check(project) {
    for (const { line, id, temperatureLimit } of linesOf(project).runs) {
      const held =
        temperatureLimit &&
        holdAgainst(
          {
            subject: { kind: "line", id },
            quantity: "line-temperature",
            name: "highest temperature",
            written: line.hottest,
          },
          "degF",
          "most",
          temperatureLimit,
        );
      if (!held) continue;
      yield {
        ...held,
        // A share of a temperature depends on where its scale begins.
        scale: { of: undefined },
        rule: "line-above-temperature",
        facts: { line: id, hottest: held.value.value, most: held.limit.value },
      };
    }
  },
  examples: () => [
    {
      title: "A -8 hose at 140 degC",
      text: lineExample({
        line: "kind: hose, fluid: oil, dash: 8, specification: MIL-H-8794, hottest: 140 degC",
      }),
      finds: ["L1 reaches 284 degF \\(140 degC\\); it may reach 250 degF"],
    },
    {
      title: "At its limit",
      text: lineExample({
        line: "kind: hose, fluid: oil, dash: 8, specification: MIL-H-8794, hottest: 250 degF",
      }),
      finds: [],
    },
  ],
});

function both(degreesFahrenheit: number): string {
  const celsius = convert(degreesFahrenheit, "degF", "degC", "temperature");
  return `${formatMeasure(degreesFahrenheit, "degF")} (${formatMeasure(celsius, "degC")})`;
}
