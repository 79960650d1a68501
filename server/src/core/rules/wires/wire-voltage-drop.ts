import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { LoadState } from "../../graph/electrical/loads";
import { ofEach } from "../../graph/recall";
import { formatMeasure } from "../../quantities";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { conditionName } from "../wording";
import { circuitExample } from "./circuit-example";
import { governing, thickerGauges } from "./governing";

export const wireVoltageDrop = defineRule<{
  component: string;
  drop: number;
  limit: number;
  condition: string;
  wire: string;
  share: number;
}>({
  id: "wire-voltage-drop",
  severity: "error",
  area: "wires",
  title: "Too much voltage is lost between the bus and a load's ground",
  why:
    "Equipment is built for the bus voltage less a small drop. With more drop it may not start or hold its rating, " +
    "and a load of constant power draws more current to make up for it. The wires to the load and back to ground " +
    "count together, at their conductor temperature.",
  sources: [
    advisoryCircular("Table 11-6, par. 11-66", "secondary"),
    advisoryCircular("Table 11-9, p. 11-23", "published"),
  ],
  say: ({ component, drop, limit, condition, wire, share }) => ({
    what:
      `${component} loses ${formatMeasure(drop, "V")} between bus and ground, above the ` +
      `${formatMeasure(limit, "V")} allowed (${condition}); wire ${wire} alone ${formatMeasure(share, "V")}.`,
    todo: `Take a thicker gauge for ${wire}, or a shorter run.`,
  }),
  check: ofEach(
    (project) => electricalOf(project).loads,
    function* ({ path, states }) {
      const worst = governing(states, "at-most", dropOf, limitOf);
      if (!worst) return;
      const { condition, worst: wires } = worst.state;
      const [wire, ...others] = wires;
      if (!wire?.wire.gauge) return;
      const share = wire.states.find((state) => state.condition === condition)?.drop;
      yield {
        rule: "wire-voltage-drop",
        subject: { kind: "component", id: path.id },
        place: wire.wire.gauge.place,
        value: worst.value,
        limit: worst.limit,
        sense: "at-most",
        holds: holds(worst.value.value, "at-most", worst.limit.value),
        facts: {
          component: path.id,
          drop: worst.value.value,
          limit: worst.limit.value,
          condition: conditionName(condition),
          wire: wire.id,
          share: share?.value,
        },
        related: others.flatMap(({ id, wire: { gauge } }) =>
          gauge ? [{ place: gauge.place, words: `wire ${id} is part of the same path` }] : [],
        ),
      };
    },
  ),
  *remedies(assessment, project) {
    const load = electricalOf(project).loads.find((one) => one.path.id === assessment.subject.id);
    const wire = load?.states.find((state) => state.drop === assessment.value)?.worst[0];
    if (wire) yield* thickerGauges(wire.wire.gauge, wire.id);
  },
  examples: () => [
    {
      title: "18 A over 18 ft of 14 AWG and back through 2 ft",
      text: circuitExample({ gauge: "14 AWG", length: "18 ft" }),
      finds: ["loses 1.\\d+ V between bus and ground, above the 1 V allowed"],
    },
    {
      title: "The same run in 10 AWG",
      text: circuitExample({ gauge: "10 AWG", length: "18 ft" }),
      finds: [],
    },
    {
      title: "In a bundle that is misspelt: how warm it gets there is not known",
      text: circuitExample({ gauge: "14 AWG", length: "18 ft", keys: "bundle: B-1" }),
      finds: [],
    },
    {
      title: "For up to two minutes twice the drop is allowed",
      text: circuitExample({ gauge: "14 AWG", length: "18 ft", duration: "90 s" }),
      finds: [],
    },
  ],
});

function dropOf({ drop }: LoadState) {
  return drop;
}

function limitOf({ limit }: LoadState) {
  return limit;
}
