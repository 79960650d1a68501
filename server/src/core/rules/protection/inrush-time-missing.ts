import type { Problem } from "../../findings/finding";
import { ofEach } from "../../graph/recall";
import { none } from "../../none";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { protectionExample } from "./protection-example";

export const inrushTimeMissing = defineRule<{ component: string; current: number }>({
  id: "inrush-time-missing",
  severity: "information",
  area: "protection",
  title: "An inrush is recorded without its time",
  why:
    "Whether breakers and fuses stay closed while a component switches on, and whether its inrush is a load of its " +
    "own, depends on how long it lasts. Without that neither is checked, and silence says nothing.",
  sources: [],
  say: ({ component, current }) => ({
    what:
      `Not checked: whether breakers and fuses hold the inrush of ${component}, ${formatMeasure(current, "A")}; ` +
      "how long it lasts is not recorded.",
    todo: "Add 'inrush-time' beside 'inrush', from its maker's data.",
  }),
  check: ofEach(
    ({ kit }) => kit?.components ?? none,
    function* ({ id, draws = [] }): Iterable<Problem> {
      for (const { inrush, inrushTime } of draws) {
        if (!id || !inrush || inrushTime) continue;
        yield {
          rule: "inrush-time-missing",
          subject: { kind: "component", id: id.value },
          place: inrush.place,
          facts: { component: id.value, current: inrush.value.si },
        };
      }
    },
  ),
  examples: () => [
    {
      title: "An inrush of 110 A, and nothing more",
      text: withInrush("inrush: 110 A"),
      finds: ["^Not checked: whether breakers and fuses hold the inrush of RACK, 110 A"],
    },
    { title: "With its time", text: withInrush("inrush: 110 A, inrush-time: 50 ms"), finds: [] },
  ],
});

function withInrush(keys: string): string {
  return protectionExample({
    components: [`{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: 15 A, ${keys} }] }`],
  });
}
