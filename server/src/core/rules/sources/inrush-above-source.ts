import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { groupBy } from "../../graph/group-by";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { governing } from "../wires/governing";
import { conditionName } from "../wording";
import { runPlace } from "./places";
import { sourceExample } from "./source-example";

export const inrushAboveSource = defineRule<{
  component: string;
  demand: number;
  capacity: number;
  condition: string;
}>({
  id: "inrush-above-source",
  severity: "warning",
  area: "sources",
  title: "Switching a component on asks for more than all sources are rated for",
  why: "The bus voltage falls while it starts: other equipment may reset, and the component itself may not start.",
  sources: [
    {
      document: "Inrush beside the other loads, against the ratings of the sources that run",
      standing: "common-practice",
    },
  ],
  say: ({ component, demand, capacity, condition }) => ({
    what:
      `Switching ${component} on in ${condition} asks for ${formatMeasure(demand, "A")} with the other loads, above the ` +
      `${formatMeasure(capacity, "A")} of all sources.`,
    todo: "Switch it on before other loads, start it softly, or ask its maker for a lower inrush.",
  }),
  *check(project) {
    const ofComponent = groupBy(electricalOf(project).sources.inrushes, ({ component }) => component);
    for (const [component, inrushes] of ofComponent) {
      const worst = governing(
        inrushes,
        "at-most",
        ({ demand }) => demand,
        ({ capacity }) => capacity,
      );
      if (!worst) continue;
      yield {
        rule: "inrush-above-source",
        subject: { kind: "component", id: component },
        place: runPlace(worst.state.condition, component),
        value: worst.value,
        limit: worst.limit,
        sense: "at-most",
        holds: holds(worst.value.value, "at-most", worst.limit.value),
        facts: {
          component,
          demand: worst.value.value,
          capacity: worst.limit.value,
          condition: conditionName(worst.state.condition),
        },
        related: [],
      };
    }
  },
  examples: () => [
    {
      title: "An inrush of 250 A beside 20 A, of an alternator of 60 A and a battery of 200 A",
      text: sourceExample({ draw: "current: 18 A, inrush: 250 A, inrush-time: 40 ms" }),
      finds: ["Switching RACK on in cruise asks for 270 A with the other loads, above the 260 A"],
    },
    {
      title: "An inrush of 90 A of one that then runs half of the time",
      text: sourceExample({ draw: "current: 18 A, duty: 50 %, inrush: 90 A, inrush-time: 40 ms" }),
      finds: [],
    },
  ],
});
