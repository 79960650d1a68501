import { linesOf } from "../../graph/derivations";
import { convert, formatApart, roundDown, roundUp } from "../../quantities";
import { torqueSources } from "../../tables/flare-nut-torque";
import { defineRule, rewrite } from "../rule";
import { holdAgainst } from "../wires/recorded";
import { lineExample } from "./line-example";

export const flareNutTorque = defineRule<{
  fitting: string;
  line: string;
  torque: number;
  limit: number;
  isLoose: boolean;
  table: string;
}>({
  id: "flare-nut-torque",
  severity: "error",
  area: "lines",
  title: "The torque of a flare nut is outside its table",
  why:
    "Too loose a nut leaks; too tight a one thins the flare until it cracks or leaks for good. The published tables " +
    "differ from each other, so a torque is held against the one that the record names.",
  sources: torqueSources,
  say: ({ fitting, line, torque, limit, isLoose, table }) => {
    const [is, asked] = formatApart(torque, limit);
    return {
      what: `Flare nut ${fitting} of line ${line}: ${is} in lb; ${isLoose ? "at least" : "at most"} ${asked} in lb by ${table}.`,
      todo: "Tighten it within the range of the table.",
    };
  },
  *check(project) {
    for (const run of linesOf(project).runs) {
      for (const { fitting, id, least, most } of run.fittings) {
        const recorded = {
          subject: { kind: "fitting", id },
          quantity: "fitting-torque",
          name: "torque",
          written: fitting.torque,
        } as const;
        for (const [bound, limit] of [
          ["least", least],
          ["most", most],
        ] as const) {
          const held = limit && holdAgainst(recorded, "in lb", bound, limit);
          if (!held) continue;
          yield {
            ...held,
            rule: "flare-nut-torque",
            facts: {
              fitting: id,
              line: run.id,
              torque: held.value.value,
              limit: held.limit.value,
              isLoose: bound === "least",
              table: fitting.table?.value,
            },
          };
        }
      }
    }
  },
  *remedies({ subject, limit, sense, place }, project) {
    const fittings = linesOf(project).runs.flatMap((run) => run.fittings);
    const torque = fittings.find(({ id }) => id === subject.id)?.fitting.torque;
    if (!torque) return;
    const unit = torque.value.unit === "N m" ? "N m" : "in lb";
    const wanted = convert(limit.value, "in lb", unit, "torque");
    const text = `${(sense === "at-least" ? roundUp : roundDown)(wanted, unit === "N m" ? 0.1 : 1)} ${unit}`;
    yield rewrite(`Tighten flare nut ${subject.id} to ${text}`, place, text);
  },
  examples: () => [
    {
      title: "A steel tube's torque on an aluminium one",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: aluminium, fittings: [{ id: FN-1, torque: 230 in lb, table: NAVEDTRA 14018 Table 5-9, column: aluminium-tube }]",
      }),
      finds: ["FN-1 of line L1: 230 in lb; at most 130 in lb by NAVEDTRA"],
    },
    {
      title: "The same nut by the other table, too loose",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: steel, fittings: [{ id: FN-1, torque: 230 in lb, table: TM 55-1520-240, column: steel-tube }]",
      }),
      finds: ["FN-1 of line L1: 230 in lb; at least 270 in lb by TM 55-1520-240"],
    },
    {
      title: "Within the range",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: steel, fittings: [{ id: FN-1, torque: 230 in lb, table: NAVEDTRA 14018 Table 5-9, column: steel-tube }]",
      }),
      finds: [],
    },
  ],
});
