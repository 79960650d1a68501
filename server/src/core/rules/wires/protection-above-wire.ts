import { ofEach } from "../../graph/recall";
import { formatMeasure } from "../../quantities";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { conditionName } from "../wording";
import { fewerNeighbours } from "./bundle-split";
import { circuitExample } from "./circuit-example";
import {
  allowedOf,
  type Guard,
  type GuardLimit,
  governing,
  guardRemedies,
  guardsOf,
  holdGuard,
  likelierSlip,
} from "./governing";

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
  check: ofEach(guardsOf, (guard) => holdGuard("protection-above-wire", guard, limitsOf(guard), factsOf)),
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

/** What a wire may carry in the condition in which that is least. */
interface AllowedLimit extends GuardLimit {
  readonly condition: string;
}

function limitsOf({ rating, wires }: Guard): AllowedLimit[] {
  const ratingOf = () => rating;
  const limits: AllowedLimit[] = [];
  for (const { result } of wires) {
    const worst = governing(result.states, "at-most", ratingOf, allowedOf);
    if (worst) limits.push({ result, limit: worst.limit, condition: conditionName(worst.state.condition) });
  }
  return limits;
}

function factsOf({ id, rating }: Guard, { result, limit, condition }: AllowedLimit) {
  return { wire: result.id, protection: id, rating: rating.value, allowed: limit.value, condition };
}
