import type { RecordFacts } from "../../records/problem-facts";
import type { Whereabouts } from "../../records/whereabouts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { circuitExample } from "../wires/circuit-example";
import { swapEnds } from "../wires/swap-ends";
import { didYouMean, kindName, listWords, nameOf, quote, sentence } from "../wording";
import { meant } from "./meant";

type Facts = RecordFacts["reference-unknown"];

export const referenceUnknown = defineRule<Facts>({
  id: "reference-unknown",
  severity: "error",
  area: "record",
  title: "A name stands for nothing in these records",
  why:
    "What is meant is not known, so whatever rests on it is left out of every sum and check, and what is left looks " +
    "better than it is.",
  sources: [],
  say: ({ id, kinds, known, others, ...where }) => {
    if (isReversedReturn({ others, ...where })) {
      return {
        what: `Wire ${where.ownerId} starts at ground point ${quote(id)}: a return runs from the load to its ground.`,
        todo: `Swap 'from' and 'to' of wire ${where.ownerId}.`,
      };
    }
    const wanted = listWords(kinds.map(kindName), "or");
    const [other] = others;
    return {
      what: other
        ? `${sentence(nameOf(where))} names ${quote(id)}, but that is a ${kindName(other)}, and no ${wanted}.`
        : `${sentence(nameOf(where))} names ${quote(id)}, but there is no such ${wanted}.`,
      todo: [didYouMean(id, known), choice(wanted, known)].filter(Boolean).join(" "),
    };
  },
  *corrections({ facts, place }, project) {
    const { id, known } = facts;
    if (isReversedReturn(facts)) {
      const wire = project?.install.wires?.find(({ from }) => from?.place.node === place.node);
      if (wire) yield* swapEnds(wire);
      return;
    }
    // Ids with other figures are other things: a slip in a letter is mended, a slip in a figure is not guessed.
    const figures = (text: string) => text.replace(/\D+/g, " ").trim();
    const alike = known.filter((one) => figures(one) === figures(id));
    yield* meant(id, alike, place);
  },
  isSafe: true,
  examples: () => [
    {
      title: "A slip in a component's name",
      text: wireExample({ to: "RAKC" }),
      finds: [
        "'to' of wire P101A8 names 'RAKC', but there is no such protection, contact, junction, component or ground point",
      ],
    },
    {
      title: "A return that is written from its ground to the load",
      text: circuitExample({
        wires: [
          "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC }",
          "{ id: P2N, from: GND-AFT, to: RACK, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
        ],
      }),
      finds: ["^Wire P2N starts at ground point 'GND-AFT': a return runs from the load to its ground"],
    },
    { title: "A component of the kit", text: wireExample({ to: "RACK" }), finds: [] },
  ],
});

function isReversedReturn({ ownerKind, path, others }: Whereabouts & Pick<Facts, "others">): boolean {
  return ownerKind === "wire" && path[0] === "from" && others.includes("ground");
}

function choice(wanted: string, known: readonly string[]): string {
  return known.length > 0
    ? `Name one that is there (${listWords(known, "or")}), or add it to its record.`
    : `Add it to its record first: no ${wanted} is there yet.`;
}
