import { formatNumber } from "../../quantities";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { deviationExample } from "./deviation-example";

/**
 * `several`: it would cover more than one finding. `unbounded`: it covers a value however bad it becomes.
 * `unread`: it would cover that a part of the record can't be read, and so everything in that part.
 */
export type Breadth =
  | { readonly breadth: "several"; readonly fields: readonly string[] }
  | { readonly breadth: "unbounded"; readonly margin: number }
  | { readonly breadth: "unread" };

export const deviationTooBroad = defineRule<{ rule: string; subject: string } & Breadth>({
  id: "deviation-too-broad",
  severity: "warning",
  area: "deviations",
  title: "A deviation accepts more than one known finding",
  why:
    "Somebody accepted one fault of a known size. A deviation that leaves open which one, or how large, also covers " +
    "faults that nobody has looked at. One that would cover several, or a text that can't be read, covers nothing.",
  sources: [],
  say: (facts) => {
    const name = `The deviation of ${facts.rule} for ${facts.subject}`;
    switch (facts.breadth) {
      case "several":
        return {
          what: `${name} would cover ${facts.fields.length} findings, and so covers none.`,
          todo: `Write one deviation for each, with its field: ${listWords(facts.fields, "or")}.`,
        };
      case "unbounded":
        return {
          what: `${name} covers the value however far it goes beyond its limit.`,
          todo: `Write the least margin that was accepted; it is ${percent(facts.margin)} now.`,
        };
      case "unread":
        return {
          what: `${name} would cover what can't be read or checked, and so covers nothing.`,
          todo: "Take it out, and correct the record.",
        };
    }
  },
  examples: () => [
    {
      title: "No least margin is written",
      text: deviationExample({ "least-margin": undefined }),
      finds: ["covers the value however far it goes beyond its limit"],
    },
    {
      title: "A key that is missing can't be accepted",
      text: deviationExample({ rule: "key-missing", subject: "wire P1", "least-margin": undefined }),
      finds: ["would cover what can't be read or checked"],
    },
    { title: "One finding, of a known size", text: deviationExample(), finds: [] },
  ],
});

function percent(share: number): string {
  return `${formatNumber(100 * share, 3)} %`;
}
