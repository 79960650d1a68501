import { ofEach } from "../../graph/recall";
import { formatMeasure } from "../../quantities";
import { wireChartSource } from "../../tables/wire-chart";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { type Guard, type GuardLimit, guardRemedies, guardsOf, holdGuard, likelierSlip } from "./governing";

export const protectionAboveChart = defineRule<{
  wire: string;
  gauge: number;
  protection: string;
  kind: string;
  rating: number;
  chart: number;
}>({
  id: "protection-above-chart",
  severity: "warning",
  area: "wires",
  title: "A breaker or fuse is larger than the wire chart gives for the gauge",
  why:
    "The chart gives, for ordinary installations, the largest device that still opens before a wire of this gauge is " +
    "harmed. It calls itself a guide, generally conservative: a single wire in open air may take the next larger " +
    "breaker. That is a judgement for whoever is responsible for the data, so this warns." +
    likelierSlip,
  sources: [wireChartSource],
  say: ({ wire, gauge, protection, kind, rating, chart }) => ({
    what:
      `${protection} is rated ${formatMeasure(rating, "A")}; the wire chart gives a ${kind} of at most ` +
      `${formatMeasure(chart, "A")} for wire ${wire} (${formatMeasure(gauge, "AWG")}).`,
    todo: "Take a device with a smaller rating that still holds the load, or a thicker gauge.",
  }),
  check: ofEach(guardsOf, (guard) => holdGuard("protection-above-chart", guard, limitsOf(guard), factsOf)),
  remedies: guardRemedies,
  examples: () => [
    {
      title: "A 50 A breaker on 10 AWG",
      text: circuitExample({ device: "{ id: CB-20, kind: breaker, rating: 50 A }" }),
      finds: ["at most 40 A for wire P1 \\(10 AWG\\)", "P2N"],
    },
    {
      title: "Fuses have a column of their own",
      text: circuitExample({ device: "{ id: CB-20, kind: fuse, rating: 40 A }" }),
      finds: ["a fuse of at most 30 A", "P2N"],
    },
    { title: "A 20 A breaker on 10 AWG", text: circuitExample(), finds: [] },
  ],
});

function limitsOf({ wires }: Guard): GuardLimit[] {
  const limits: GuardLimit[] = [];
  for (const { result, chart } of wires) if (chart) limits.push({ result, limit: chart });
  return limits;
}

function factsOf({ id, device, rating }: Guard, { result, limit }: GuardLimit) {
  return {
    wire: result.id,
    gauge: result.wire.gauge!.value.si,
    protection: id,
    kind: device.kind?.value,
    rating: rating.value,
    chart: limit.value,
  };
}
