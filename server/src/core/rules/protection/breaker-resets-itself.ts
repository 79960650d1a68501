import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { protectionExample } from "./protection-example";

export const breakerResetsItself = defineRule<{ protection: string; device: string }>({
  id: "breaker-resets-itself",
  severity: "warning",
  area: "protection",
  title: "A breaker that resets itself protects a circuit",
  why: "It closes onto the fault again and again, and heats the wire each time.",
  sources: [advisoryCircular("par. 11-51", "memory")],
  say: ({ protection, device }) => ({
    what: `${protection} is a ${device}, which resets itself.`,
    todo: "Take a breaker that is reset by hand and is trip-free.",
  }),
  *check(project): Iterable<Problem> {
    for (const { inline, device, id } of electricalOf(project).devices) {
      if (inline.kind !== "protection" || device?.reset?.value !== "automatic") continue;
      yield {
        rule: "breaker-resets-itself",
        subject: { kind: "protection", id },
        place: inline.record.device!.place,
        facts: { protection: id, device: device.id?.value },
      };
    }
  },
  examples: () => [
    {
      title: "An automatic breaker on the bus",
      text: protectionExample({
        devices: ["{ id: CB-20, kind: breaker, rating: 20 A, reset: automatic }"],
      }),
      finds: ["CB-RACK is a CB-20, which resets itself"],
    },
    {
      title: "A breaker that is reset by hand",
      text: protectionExample({ devices: ["{ id: CB-20, kind: breaker, rating: 20 A, reset: manual }"] }),
      finds: [],
    },
  ],
});
