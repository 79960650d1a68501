import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { paragraphFor } from "../../graph/electrical/protection/basis";
import { citeSource } from "../../source";
import { protectionParagraph } from "../../tables/protection-paragraphs";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { protectionExample } from "./protection-example";

export const essentialCircuitShared = defineRule<{
  essential: string;
  protection: string;
  others: readonly string[];
  paragraph: string;
}>({
  id: "essential-circuit-shared",
  severity: "error",
  area: "protection",
  title: "The breaker or fuse of an essential circuit protects another circuit too",
  why: "A fault in the other circuit opens the device, and takes the essential one with it.",
  sources: [protectionParagraph({ certificationBasis: "14 CFR 23 before Amdt 23-64" }, "b")],
  say: ({ essential, protection, others, paragraph }) => ({
    what: `${protection} protects ${essential}, which is essential, and ${listWords(others, "and")} too.`,
    todo: `Give ${essential} a device of its own: ${paragraph}.`,
  }),
  *check(project) {
    for (const { id, device, others, count, allowed } of electricalOf(project).protection.sharing) {
      if (device.inline.kind !== "protection") continue;
      yield {
        rule: "essential-circuit-shared",
        subject: { kind: "protection", id: device.id },
        place: device.inline.record.id!.place,
        value: count,
        limit: allowed,
        sense: "at-most",
        holds: holds(count.value, "at-most", allowed.value),
        facts: {
          essential: id,
          protection: device.id,
          others,
          paragraph: citeSource(paragraphFor(project, "b")),
        },
        related: [],
      };
    }
  },
  examples: () => [
    {
      title: "A radio and a rack on one breaker",
      text: protectionExample({
        components: [
          "{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: 5 A }] }",
          "{ id: RADIO, weight: 5.2 lb, essential: true, draws: [{ mode: run, current: 3 A }] }",
        ],
        loads: "{ RACK: run, RADIO: run }",
        wires: [
          "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
          "{ id: P2, from: CB-RACK, to: RADIO, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
        ],
      }),
      finds: ["CB-RACK protects RADIO, which is essential, and RACK too"],
    },
    {
      title: "An essential load with a breaker of its own",
      text: protectionExample({
        components: ["{ id: RACK, weight: 31.2 lb, essential: true, draws: [{ mode: run, current: 15 A }] }"],
      }),
      finds: [],
    },
  ],
});
