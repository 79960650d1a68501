/** Pages of the worksheet: the load analysis and the list of wires. */
import { electricalOf } from "../../graph/derivations";
import { loadAnalysisSource } from "../../graph/electrical/load-analysis";
import type { Project } from "../../project";
import { citeSource } from "../../source";
import { type Cell, cell, type Page, recorded, tablePage } from "./page";

export function electricalPages(project: Project): Page[] {
  return [loadAnalysis(project), wireList(project)];
}

/** Conditions across, loads down, totals below. */
function loadAnalysis(project: Project): Page {
  const { analysis, sourceLoads, busDemands } = electricalOf(project).sources;
  const { columns, rows } = analysis;
  const buses = [...new Set(busDemands.map(({ bus }) => bus.id!.value))];
  const sources = [...new Set(sourceLoads.map(({ source }) => source.id!.value))];
  const ofBus = (id: string, { condition }: (typeof columns)[number]) =>
    busDemands.find((one) => one.bus.id!.value === id && one.condition === condition)?.demand;
  const ofSource = (id: string, { condition }: (typeof columns)[number]) =>
    sourceLoads.find((one) => one.source.id!.value === id && one.condition === condition);
  return tablePage(
    "load-analysis",
    `Load analysis (${citeSource(loadAnalysisSource)})`,
    ["load", "bus", ...columns.map(({ condition }) => condition.id?.value ?? "")],
    columns.length === 0
      ? []
      : [
          ["", "", ...columns.map(({ standard }) => standard?.split(" ")[0] ?? "")],
          ...rows.map(({ id, buses, currents }): Cell[] => [id, buses.join(" "), ...currents.map(cell)]),
          ["demand", "", ...columns.map(({ demand }) => cell(demand))],
          ["capacity", "", ...columns.map(({ capacity }) => cell(capacity))],
          ["margin", "", ...columns.map(({ margin }) => cell(margin))],
          ...buses.map((id): Cell[] => ["demand on", id, ...columns.map((one) => cell(ofBus(id, one)))]),
          ...sources.flatMap((id): Cell[][] => [
            ["given by", id, ...columns.map((one) => cell(ofSource(id, one)?.current))],
            ["margin of", id, ...columns.map((one) => cell(ofSource(id, one)?.margin))],
          ]),
        ],
  );
}

/** What a shop cuts and routes from. */
function wireList(project: Project): Page {
  const wires = project.install.wires ?? [];
  const { circuit } = electricalOf(project);
  return tablePage(
    "wire-list",
    "Wire list",
    ["wire", "from", "to", "gauge", "length", "rating", "bundle", "guarded by"],
    wires.map((wire): Cell[] => {
      const guards = [...(circuit.protecting.get(wire) ?? [])].flatMap(({ id }) => id?.value ?? []);
      return [
        wire.id?.value ?? "",
        wire.from?.value ?? "",
        wire.to?.value ?? "",
        recorded(wire.gauge),
        recorded(wire.length),
        recorded(wire.rating),
        wire.bundle?.value ?? "",
        guards.join(" "),
      ];
    }),
  );
}
