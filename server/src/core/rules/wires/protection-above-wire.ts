import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import { formatMeasure } from "../../quantities";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { fewerNeighbours } from "./bundle-split";
import { circuitExample } from "./circuit-example";
import { governing, guardsOf, smallerDevices, thickerGauges } from "./governing";

export const protectionAboveWire = defineRule<{
  wire: string;
  protection: string;
  rating: number;
  allowed: number;
  condition: string;
}>({
  id: "protection-above-wire",
  severity: "error",
  area: "wires",
  title: "A breaker or fuse is rated above what its wire may carry where it runs",
  why:
    "The device must open before the wire is overloaded. Between the wire's allowed current and the device's rating " +
    "nothing opens, and the wire overheats for as long as the overload lasts.",
  sources: [advisoryCircular("par. 11-48", "published")],
  say: ({ wire, protection, rating, allowed, condition }) => ({
    what:
      `${protection} is rated ${formatMeasure(rating, "A")}, above the ${formatMeasure(allowed, "A")} that wire ` +
      `${wire} may carry here (${condition}).`,
    todo: "Take a thicker gauge or a higher temperature rating, or a device with a smaller rating that still holds the load.",
  }),
  check: ofEach(guardsOf, function* ({ place, id, rating, wires }) {
    for (const result of wires) {
      const worst = governing(
        result.states.flatMap(({ condition, allowed }) =>
          allowed ? [{ condition, value: rating, limit: allowed }] : [],
        ),
        "at-most",
      );
      if (!worst || !result.wire.gauge) continue;
      yield {
        rule: "protection-above-wire",
        subject: { kind: "wire", id: result.id },
        place: result.wire.gauge.place,
        value: rating,
        limit: worst.limit,
        sense: "at-most",
        holds: holds(rating.value, "at-most", worst.limit.value),
        facts: {
          wire: result.id,
          protection: id,
          rating: rating.value,
          allowed: worst.limit.value,
          condition: worst.condition.id?.value,
        },
        related: [{ place, words: `${id} is chosen here` }],
      };
    }
  }),
  *remedies(assessment, project) {
    const wire = electricalOf(project).wires.find(({ id }) => id === assessment.subject.id)?.wire;
    yield* thickerGauges(wire?.gauge, assessment.subject.id);
    const device = guardsOf(project).find(({ rating }) => rating === assessment.value);
    if (device) yield* smallerDevices(device, project);
    yield* fewerNeighbours(assessment.subject.id, project);
  },
  examples: [
    {
      title: "A 50 A breaker ahead of 14 AWG",
      text: circuitExample({ gauge: "14 AWG", device: "{ id: CB-20, kind: breaker, rating: 50 A }" }),
      finds: ["CB-RACK is rated 50 A, above the .* that wire P1", "P2N"],
    },
    { title: "A 20 A breaker ahead of 10 AWG", text: circuitExample(), finds: [] },
  ],
});
