import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import { formatMeasure } from "../../quantities";
import { altitudeDeratingSource } from "../../tables/altitude-derating";
import { bundleDeratingSource } from "../../tables/bundle-derating";
import { freeAirReadSource } from "../../tables/free-air";
import { defineRule } from "../rule";
import { conditionName } from "../wording";
import { fewerNeighbours } from "./bundle-split";
import { circuitExample } from "./circuit-example";
import { allowedOf, currentOf, governing, thickerGauges } from "./governing";

export const wireOverAmpacity = defineRule<{
  wire: string;
  current: number;
  allowed: number;
  condition: string;
}>({
  id: "wire-over-ampacity",
  severity: "error",
  area: "wires",
  title: "A wire carries more current than it may carry where it runs",
  why:
    "The current that a wire may carry falls with the heat around it, with the number of loaded wires in its " +
    "bundle and with altitude. Above it the conductor runs hotter than its insulation is rated for, and the wire " +
    "beside it is heated too.",
  sources: [freeAirReadSource, bundleDeratingSource, altitudeDeratingSource],
  say: ({ wire, current, allowed, condition }) => ({
    what:
      `Wire ${wire} carries ${formatMeasure(current, "A")}, above the ${formatMeasure(allowed, "A")} that it may ` +
      `carry here (${condition}).`,
    todo: "Take a thicker gauge, a higher temperature rating, a smaller or less loaded bundle, or a cooler route.",
  }),
  check: ofEach(
    (project) => electricalOf(project).wires,
    function* ({ wire, id, states }) {
      const worst = governing(states, "at-most", currentOf, allowedOf);
      if (!worst || !wire.gauge) return;
      yield {
        rule: "wire-over-ampacity",
        subject: { kind: "wire", id },
        place: wire.gauge.place,
        value: worst.value,
        limit: worst.limit,
        sense: "at-most",
        holds: holds(worst.value.value, "at-most", worst.limit.value),
        facts: {
          wire: id,
          current: worst.value.value,
          allowed: worst.limit.value,
          condition: conditionName(worst.state.condition),
        },
        related: [],
      };
    },
  ),
  *remedies(assessment, project) {
    const found = electricalOf(project).wires.find(({ id }) => id === assessment.subject.id);
    yield* thickerGauges(found?.wire.gauge, assessment.subject.id);
    yield* fewerNeighbours(assessment.subject.id, project);
  },
  examples: () => [
    {
      title: "18 A on 20 AWG in a loaded bundle",
      text: circuitExample({
        gauge: "20 AWG",
        current: "18 A",
        bundle: "{ id: B1, wires: 8, loading: 60 % }",
      }),
      finds: ["carries 18 A"],
    },
    {
      title: "The same load on 10 AWG",
      text: circuitExample({
        gauge: "10 AWG",
        current: "18 A",
        bundle: "{ id: B1, wires: 8, loading: 60 % }",
      }),
      finds: [],
    },
  ],
});
