import type { Problem } from "../../findings/finding";
import { ofEach } from "../../graph/recall";
import { defineRule } from "../rule";
import { guardsOf } from "../wires/governing";
import { breakerPointsToFaults, protectionExample } from "./protection-example";

export const openingPointsMissing = defineRule<{ protection: string; device: string }>({
  id: "opening-points-missing",
  severity: "information",
  area: "protection",
  title: "A breaker or fuse is recorded without its opening times",
  why:
    "Whether it opens before a short harms the wires behind it, and whether it stays closed at an inrush, rests on " +
    "its maker's opening times. Without them these checks are not made, and silence says nothing.",
  sources: [],
  say: ({ protection, device }) => ({
    what: `Not checked: whether ${protection} opens in time at a short; ${device} has no opening times.`,
    todo: `Add the maker's points to ${device} in the kit, as in opening: [{ at: 200 %, earliest: 8 s, latest: 40 s }].`,
  }),
  check: ofEach(guardsOf, function* ({ id, device, wires, place }): Iterable<Problem> {
    if (wires.length === 0 || (device.opening?.length ?? 0) > 0) return;
    yield {
      rule: "opening-points-missing",
      subject: { kind: "protection", id },
      place,
      facts: { protection: id, device: device.id?.value },
    };
  }),
  examples: () => [
    {
      title: "A breaker with nothing but its rating",
      text: protectionExample({ devices: ["{ id: CB-20, kind: breaker, rating: 20 A }"] }),
      finds: ["Not checked: whether CB-RACK opens in time"],
    },
    {
      title: "A breaker with its maker's points",
      text: protectionExample({
        devices: [`{ id: CB-20, kind: breaker, rating: 20 A, ${breakerPointsToFaults} }`],
      }),
      finds: [],
    },
  ],
});
