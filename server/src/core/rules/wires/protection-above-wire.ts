import { ofEach } from "../../graph/recall";
import { formatMeasure } from "../../quantities";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { fewerNeighbours } from "./bundle-split";
import { circuitExample } from "./circuit-example";
import { governing, guardAssessments, guardRemedies, guardsOf, likelierSlip } from "./governing";

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
    "nothing opens, and the wire overheats for as long as the overload lasts." +
    likelierSlip,
  sources: [advisoryCircular("par. 11-48", "published")],
  say: ({ wire, protection, rating, allowed, condition }) => ({
    what:
      `${protection} is rated ${formatMeasure(rating, "A")}, above the ${formatMeasure(allowed, "A")} that wire ` +
      `${wire} may carry here (${condition}).`,
    todo: "Take a device with a smaller rating that still holds the load, or a thicker gauge or a higher temperature rating.",
  }),
  check: ofEach(guardsOf, function* (guard) {
    const { id, rating } = guard;
    const limits = guard.wires.flatMap(({ result }) => {
      const worst = governing(
        result.states.flatMap(({ condition, allowed }) =>
          allowed ? [{ condition, value: rating, limit: allowed }] : [],
        ),
        "at-most",
      );
      return worst ? [{ result, ...worst }] : [];
    });
    for (const { of, held } of guardAssessments(guard, limits)) {
      yield {
        rule: "protection-above-wire",
        ...held,
        facts: {
          wire: of.result.id,
          protection: id,
          rating: rating.value,
          allowed: of.limit.value,
          condition: of.condition.id?.value,
        },
      };
    }
  }),
  *remedies(assessment, project) {
    yield* guardRemedies(assessment, project);
    yield* fewerNeighbours(assessment.subject.id, project);
  },
  examples: () => [
    {
      title: "A 50 A breaker ahead of 14 AWG",
      text: circuitExample({ gauge: "14 AWG", device: "{ id: CB-20, kind: breaker, rating: 50 A }" }),
      finds: ["CB-RACK is rated 50 A, above the .* that wire P1", "P2N"],
    },
    { title: "A 20 A breaker ahead of 10 AWG", text: circuitExample(), finds: [] },
  ],
});
