import type { Judgement } from "../../core/check";
import { byMargin, marginOf } from "../../core/findings/finding";
import { electricalOf, valuesOf, weightsOf } from "../../core/graph/derivations";
import { loadAnalysisSource } from "../../core/graph/electrical/load-analysis";
import { groupBy } from "../../core/graph/group-by";
import type { QuantityName } from "../../core/graph/quantity-names";
import { showMeasure, type Value } from "../../core/graph/value";
import type { Project } from "../../core/project";
import type { Quantity } from "../../core/quantities";
import type { Written } from "../../core/records/written";
import { citeSource } from "../../core/source";
import { acceptedWords } from "../../core/views/acceptance-words";
import { balancePages } from "../../core/views/balance-pages";
import { caution, nameOf, notesOf, sourcesOf } from "../../core/views/calculation";
import { indent, type Row, table, wrap } from "./layout";
import { mountPages } from "./mount-pages";
import { openingsColumns, openingsPages } from "./openings-pages";
import { renderPage } from "./pages";
import { installationPages } from "./worksheet-installation";

/** The worksheet of one install record, for a terminal or a printer of `width` columns. */
export function renderWorksheet(
  judgement: Judgement,
  pathOf: (file: string) => string,
  width: number,
): string {
  const { project, record, assessments, findings } = judgement;
  if (!project) return "";
  const sheet = new Sheet(valuesOf(project));
  const document = project.install.document;
  const head = [
    document?.number?.value,
    document?.revision && `revision ${document.revision.value}`,
    document?.status?.value,
  ];
  const accepted = new Set(findings.flatMap((finding) => (finding.accepted && finding.assessment) ?? []));
  const margins = assessments.toSorted(byMargin).map((one): Row => {
    const margin = marginOf(one);
    return [
      one.subject.id,
      nameOf(one.value),
      showMeasure(one.value.value, one.value.unit),
      one.sense === "at-most" ? "<=" : ">=",
      showMeasure(one.limit.value, one.limit.unit),
      nameOf(one.limit),
      margin === undefined ? "" : `${Math.round(margin * 100)} %`,
      one.holds ? "" : accepted.has(one) ? "accepted" : "fails",
    ];
  });
  const all = valuesOf(project);
  const sections = [
    section("Margins, least first", marginsWithin(width, margins)),
    section(`Load analysis (${citeSource(loadAnalysisSource)})`, loadAnalysis(project)),
    section("Wire list", wireList(project)),
    section(
      "Wires",
      sheet.table("wire", [
        "wire-current",
        "allowed-current",
        "conductor-temperature",
        "wire-resistance",
        "wire-drop",
      ]),
    ),
    section(
      "Loads, bus to ground",
      sheet.table("component", ["load-current", "load-voltage", "path-drop", "drop-limit"]),
    ),
    section("Breakers and fuses", sheet.table("protection", ["device-rating", "device-current"])),
    section("Bundles", sheet.table("bundle", ["bundle-loading"])),
    section("Weight of the wires", sheet.table(["wire", "harness"], ["wire-weight", "harness-weight"])),
    section(
      "Weight and balance: items",
      sheet.table(
        ["component", "added-item", "line", "duct", "ballast", "harness", "equipment"],
        ["item-moment", "item-cg-effect"],
      ),
    ),
    section("Weight and balance: aircraft", new Sheet(weightsOf(project).values).list("aircraft")),
    section(
      "Loadings",
      sheet.table("loading", [
        "loading-weight",
        "loading-cg-before",
        "loading-cg",
        "forward-limit",
        "aft-limit",
      ]),
    ),
    section(
      "Cutouts",
      sheet.table("cutout", [
        "cutout-area",
        "cutout-perimeter",
        "corner-radius",
        "edge-distance",
        "fastener-distance",
      ]),
    ),
    ...installationPages(project).map(([title, body]) => section(title, body)),
    ...mountPages(project).map(({ title, body }) => section(title, body)),
    ...balancePages(project).map((page) => renderPage(page, width)),
    ...openingsPages.map(({ title, kinds, quantities }) => section(title, sheet.table(kinds, quantities))),
    section("Accepted deviations", bullets(deviationsIn(findings), width)),
    section("Sources", bullets(sourcesOf(...all).map(citeSource), width)),
    section("Notes", bullets(notesOf(...all), width)),
  ].filter((one) => one !== "");
  return `${[
    `WORKSHEET  ${head.filter((part) => part !== undefined).join(", ")}`,
    [document?.title?.value, ...project.files.map((file) => pathOf(file.file))]
      .filter((part) => part)
      .join("\n"),
    wrap(
      `${findings.length === 0 ? "No findings" : `${findings.length} findings: see 'tailcone check ${pathOf(record.file)}'`}.`,
      width,
    ),
    ...sections,
    wrap(caution, width),
  ].join("\n\n")}\n`;
}

/** What is accepted is never silent: the finding, and who accepted it until when. */
function deviationsIn(findings: Judgement["findings"]): string[] {
  return findings.flatMap(({ rule, what, accepted }) =>
    accepted ? [`${rule}: ${what} It is ${acceptedWords(accepted)}.`] : [],
  );
}

/** The margins with the names of their limits, or without them where they would not fit. */
function marginsWithin(width: number, margins: readonly Row[]): string {
  const whole = table(["", "value", "is", "", "limit", "", "left", ""], margins);
  if (whole.split("\n").every((line) => line.length <= width)) return whole;
  const narrow = margins.map((row) => row.filter((_, column) => column !== 5));
  const head = ["", "value", "is", "", "limit", "left", ""];
  const excess =
    Math.max(
      ...table(head, narrow)
        .split("\n")
        .map((line) => line.length),
    ) - width;
  if (excess <= 0) return table(head, narrow);
  const room = Math.max(...narrow.map((row) => row[1]!.length)) - excess;
  return table(
    head,
    narrow.map((row) => row.map((cell, column) => (column === 1 ? shortened(cell, room) : cell))),
  );
}

/** The beginning of a name that has no room for the whole. */
function shortened(name: string, room: number): string {
  return name.length <= room ? name : `${name.slice(0, room - 1)}…`;
}

/** Conditions across, loads down, totals below. */
function loadAnalysis(project: Project): string {
  const { columns, rows } = electricalOf(project).sources.analysis;
  if (columns.length === 0) return "";
  const amps = (value: Value | undefined) => (value ? showMeasure(value.value, value.unit) : "");
  return table(
    ["load", "bus", ...columns.map(({ condition }) => condition.id?.value ?? "")],
    [
      ["", "", ...columns.map(({ standard }) => standard?.split(" ")[0] ?? "")],
      ...rows.map(({ id, buses, currents }): Row => [id, buses.join(" "), ...currents.map(amps)]),
      ["demand", "", ...columns.map(({ demand }) => amps(demand))],
      ["capacity", "", ...columns.map(({ capacity }) => amps(capacity))],
      ["margin", "", ...columns.map(({ margin }) => amps(margin))],
    ],
  );
}

/** What a shop cuts and routes from. */
function wireList(project: Project): string {
  const wires = project.install.wires ?? [];
  const { circuit } = electricalOf(project);
  const measure = (quantity: Written<Quantity> | undefined) =>
    quantity ? showMeasure(quantity.value.written, quantity.value.unit) : "";
  return table(
    ["wire", "from", "to", "gauge", "length", "rating", "bundle", "guarded by"],
    wires.map((wire): Row => {
      const guards = [...(circuit.protecting.get(wire) ?? [])].flatMap(({ id }) => id?.value ?? []);
      return [
        wire.id?.value ?? "",
        wire.from?.value ?? "",
        wire.to?.value ?? "",
        measure(wire.gauge),
        measure(wire.length),
        measure(wire.rating),
        wire.bundle?.value ?? "",
        guards.join(" "),
      ];
    }),
  );
}

function section(title: string, body: string): string {
  return body === "" ? "" : `${title.toUpperCase()}\n${body}`;
}

function bullets(lines: readonly string[], width: number): string {
  return lines.map((line) => `- ${indent(wrap(line, width - 2), 2).slice(2)}`).join("\n");
}

/** Values by subject and condition, to be laid out in rows. */
class Sheet {
  constructor(private readonly values: readonly Value[]) {}

  /** A row for each subject and condition, a column for each quantity; empty columns are left out. */
  table(
    kinds: Value["subject"]["kind"] | readonly Value["subject"]["kind"][],
    quantities: readonly QuantityName[],
  ): string {
    const rows = new Map<string, { readonly head: string[]; readonly cells: Map<QuantityName, Value> }>();
    for (const value of this.values) {
      if (![kinds].flat().includes(value.subject.kind) || !quantities.includes(value.quantity)) continue;
      const key = `${value.subject.kind} ${value.subject.id} ${value.condition ?? ""}`;
      const row = rows.get(key) ?? { head: [value.subject.id, value.condition ?? ""], cells: new Map() };
      row.cells.set(value.quantity, value);
      rows.set(key, row);
    }
    const lines = [...groupBy([...rows.values()], ({ head }) => head[0]).values()].flat();
    const used = quantities.filter((quantity) => lines.some((row) => row.cells.has(quantity)));
    if (used.length === 0) return "";
    return table(
      ["", "", ...used.map((quantity) => shortNames[quantity] ?? quantity.replaceAll("-", " "))],
      lines.map(
        (row): Row => [
          ...row.head,
          ...used.map((quantity) => {
            const value = row.cells.get(quantity);
            return value ? showMeasure(value.value, value.unit) : "";
          }),
        ],
      ),
    );
  }

  /** A line for each value of one kind of subject. */
  list(kind: Value["subject"]["kind"]): string {
    const lines = this.values.filter((value) => value.subject.kind === kind);
    return table(
      [],
      lines.map((value): Row => [nameOf(value), showMeasure(value.value, value.unit, 6)]),
    );
  }
}

/** Column heads that would not fit a terminal in full. */
const shortNames: Partial<Record<QuantityName, string>> = {
  "wire-current": "current",
  "allowed-current": "allowed",
  "conductor-temperature": "conductor",
  "wire-resistance": "resistance",
  "wire-drop": "drop",
  "load-current": "draws",
  "load-voltage": "voltage",
  "path-drop": "drop",
  "drop-limit": "allowed",
  "device-rating": "rating",
  "device-current": "carries",
  "bundle-loading": "loading",
  "item-moment": "moment",
  "item-cg-effect": "moves the CG",
  "loading-weight": "weight",
  "loading-cg": "CG",
  "loading-cg-before": "CG before",
  "forward-limit": "forward",
  "aft-limit": "aft",
  "cutout-area": "area",
  "cutout-perimeter": "edge length",
  "edge-distance": "to edge",
  "fastener-distance": "to fastener",
  ...openingsColumns,
};
