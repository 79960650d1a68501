import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { paragraphFor } from "../../graph/electrical/protection/basis";
import { formatMeasure, inUnit } from "../../quantities";
import { citeSource } from "../../source";
import { protectionParagraph } from "../../tables/protection-paragraphs";
import { defineRule, rewrite } from "../rule";
import { protectionExample } from "./protection-example";

export const fuseSparesTooFew = defineRule<{
  rating: number;
  used: number;
  carried: number;
  needed: number;
  paragraph: string;
}>({
  id: "fuse-spares-too-few",
  severity: "error",
  area: "protection",
  title: "Too few spare fuses are carried for those that are replaced in flight",
  why: "A fuse that must be replaced in flight is worth nothing without its spare within the pilot's reach.",
  sources: [protectionParagraph({ certificationBasis: "14 CFR 23 before Amdt 23-64" }, "e")],
  say: ({ rating, used, carried, needed, paragraph }) => ({
    what:
      `${carried === 0 ? "No spare fuse" : `${carried} spare ${carried === 1 ? "fuse" : "fuses"}`} of ` +
      `${formatMeasure(rating, "A")} for ${used} replaced in flight: ${needed} needed.`,
    todo: `Carry one spare of each rating or 50 %, whichever is greater, as in spares: [{ device: F-10, count: ${needed} }]: ${paragraph}.`,
  }),
  *check(project) {
    for (const { device, used, spares, carried, needed } of electricalOf(project).protection.spares) {
      const place = spares[0]?.count?.place ?? used[0]?.device?.place;
      if (!place || !device.rating) continue;
      yield {
        rule: "fuse-spares-too-few",
        subject: carried.subject,
        place,
        value: carried,
        limit: needed,
        sense: "at-least",
        holds: holds(carried.value, "at-least", needed.value),
        facts: {
          rating: inUnit(device.rating.value, "A"),
          used: used.length,
          carried: carried.value,
          needed: needed.value,
          paragraph: citeSource(paragraphFor(project, "e")),
        },
        related: [],
      };
    }
  },
  *remedies(assessment, project) {
    const found = electricalOf(project).protection.spares.find(({ carried }) => carried === assessment.value);
    const count = found?.spares[0]?.count;
    if (!found || !count) return;
    const missing = found.needed.value - found.carried.value;
    yield rewrite(`Carry ${found.needed.value} of them`, count.place, String(count.value + missing));
  },
  examples: () => [
    {
      title: "Three fuses of one rating and one spare",
      text: protectionExample({
        devices: ["{ id: CB-20, kind: fuse, rating: 20 A }"],
        protection: ["CB-RACK", "F-2", "F-3"].map(
          (id) => `{ id: ${id}, device: CB-20, mounted-on: MAIN, reset-in-flight: true, within-reach: true }`,
        ),
        sections: ["spares: [{ device: CB-20, count: 1 }]"],
      }),
      finds: ["^1 spare fuse of 20 A for 3 replaced in flight: 2 needed"],
    },
    {
      title: "No spares in the record",
      text: protectionExample({
        devices: ["{ id: CB-20, kind: fuse, rating: 20 A }"],
        protection: [
          "{ id: CB-RACK, device: CB-20, mounted-on: MAIN, reset-in-flight: true, within-reach: true }",
        ],
      }),
      finds: ["^No spare fuse of 20 A for 1"],
    },
    {
      title: "One fuse and its spare",
      text: protectionExample({
        devices: ["{ id: CB-20, kind: fuse, rating: 20 A }"],
        protection: [
          "{ id: CB-RACK, device: CB-20, mounted-on: MAIN, reset-in-flight: true, within-reach: true }",
        ],
        sections: ["spares: [{ device: CB-20, count: 1 }]"],
      }),
      finds: [],
    },
  ],
});
