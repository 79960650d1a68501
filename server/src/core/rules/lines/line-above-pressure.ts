import { holds } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { formatApart } from "../../quantities";
import { hoseSource } from "../../tables/fluid-lines";
import { refrigerantCautions, saturationSource } from "../../tables/refrigerant";
import { defineRule } from "../rule";
import { holdAgainst } from "../wires/recorded";
import { lineExample } from "./line-example";

export const lineAbovePressure = defineRule<{
  line: string;
  pressure: number;
  most: number;
  isAtRest: boolean;
}>({
  id: "line-above-pressure",
  severity: "error",
  area: "lines",
  title: "A hose or tube has more pressure in it than it may work at",
  why:
    "A line above its rating may burst. A refrigerant has, even at rest, the pressure that belongs to its temperature: a " +
    `hot soak decides it, not the compressor. ${refrigerantCautions.join(" ")}`,
  sources: [hoseSource, saturationSource],
  say: ({ line, pressure, most, isAtRest }) => {
    const [is, allowed] = formatApart(pressure, most);
    return {
      what: isAtRest
        ? `In line ${line} R-134a stands at ${is} psi when it is hottest; the line may work at ${allowed} psi.`
        : `Line ${line} works at ${is} psi; it may work at ${allowed} psi.`,
      todo: "Take a line that is rated for it, by its maker's data.",
    };
  },
  *check(project) {
    for (const { line, id, pressureRating, saturationPressure } of linesOf(project).runs) {
      if (!pressureRating) continue;
      const subject = { kind: "line", id } as const;
      const most = pressureRating.value;
      const held = holdAgainst(
        { subject, quantity: "line-pressure", name: "working pressure", written: line.pressure },
        "psi",
        "most",
        pressureRating,
      );
      if (held) {
        yield {
          ...held,
          rule: "line-above-pressure",
          facts: { line: id, pressure: held.value.value, most, isAtRest: false },
        };
      }
      if (!saturationPressure || !line.hottest) continue;
      yield {
        rule: "line-above-pressure",
        subject,
        place: line.hottest.place,
        value: saturationPressure,
        limit: pressureRating,
        sense: "at-most",
        holds: holds(saturationPressure.value, "at-most", most),
        facts: { line: id, pressure: saturationPressure.value, most, isAtRest: true },
        related: [],
      };
    }
  },
  examples: () => [
    {
      title: "A -16 hose at 900 psi",
      text: lineExample({
        line: "kind: hose, fluid: hydraulic, dash: 16, specification: MIL-H-8794, pressure: 900 psi",
      }),
      finds: ["L1 works at 900 psi; it may work at 800 psi"],
    },
    {
      title: "R-134a that soaks to 140 degF in a hose for 200 psi",
      text: lineExample({
        line: "kind: hose, fluid: r-134a, dash: 6, hottest: 140 degF, maker-limits: { pressure: 200 psi, data: Hose sheet }",
      }),
      finds: ["R-134a stands at 229.2 psi when it is hottest; the line may work at 200 psi"],
    },
    {
      title: "Both within the rating",
      text: lineExample({
        line: "kind: hose, fluid: r-134a, dash: 6, hottest: 140 degF, pressure: 250 psi, maker-limits: { pressure: 500 psi, data: Hose sheet }",
      }),
      finds: [],
    },
  ],
});
