/**
 * The pages of a weight-and-balance record, as plain data: change table, new empty weight statement, revised
 * equipment list, adverse-loading sheets, loading conditions, every permitted loading, weighing, earlier changes. What they show is
 * what a revision record has to (FAA-H-8083-1B; AC 43.13-1B par. 10-15 and the paragraph after 10-18); the lines
 * that a person fills in are left open.
 */

import { weightsOf } from "../../graph/derivations";
import type { Operand, Value } from "../../graph/value";
import type { Weights } from "../../graph/weights";
import type { AdverseResult } from "../../graph/weights/adverse-sheets";
import type { ChangedItem } from "../../graph/weights/changed-items";
import type { LoadingCondition, LoadingConditions } from "../../graph/weights/loading-conditions";
import type { WeighingSheet } from "../../graph/weights/weighing";
import { adverseLoadingSource } from "../../methods/adverse-loading";
import type { LimitSide } from "../../methods/envelope";
import { loadingConditionSource } from "../../methods/loading-condition";
import type { Project } from "../../project";
import { formatNumber } from "../../quantities";
import type { AirframeRecord } from "../../records/types";
import { citeSource } from "../../source";
import { type Cell, cell, type Page, recorded } from "./page";

/** Every page that the records say enough for; none where nothing changes. Read to more digits than most results. Pure. */
export function balancePages(project: Project): Page[] {
  const weights = weightsOf(project);
  if (weights.change.items.length === 0) return [];
  return [
    changeTable(project, weights),
    statement(project, weights),
    equipmentList(project, weights),
    ...weights.adverse.sheets.map((one) => adversePage(one, weights)),
    ...weights.conditions.map((one) => conditionPage(one, weights)),
    everyLoading(weights),
    boundaries(weights),
    weighingPage(weights),
    historyPage(weights),
  ].flatMap((page) => (page ? { ...page, digits: 6 } : []));
}

function changeTable(project: Project, { change }: Weights): Page {
  const row = (item: ChangedItem): Cell[] => [
    item.sense === "added" ? "+" : "-",
    item.subject.id,
    cell(item.weight),
    item.weightTolerance ? cell(item.weightTolerance) : "",
    cell(item.arm),
    cell(item.moment),
  ];
  const { before } = change;
  return {
    id: "weight-change-table",
    title: "Weight and balance change",
    statements: [documentLine(project)],
    head: ["", "item", "weight", "within", "arm", "moment"],
    rows: [
      [
        "",
        "empty, before",
        cell(before.weight),
        before.weightTolerance ? cell(before.weightTolerance) : "",
        cell(before.arm),
        cell(change.emptyMomentBefore),
      ],
      ...change.items.filter(({ sense }) => sense === "removed").map(row),
      ...change.items.filter(({ sense }) => sense === "added").map(row),
      [
        "=",
        "empty, after",
        cell(change.emptyWeight),
        cell(change.tolerance?.weight),
        cell(change.emptyCg),
        cell(change.emptyMoment),
      ],
    ],
  };
}

function documentLine({ install }: Project): string {
  const { number, revision } = install.document ?? {};
  return `Document ${number?.value ?? "____"}, revision ${revision?.value ?? "____"}.`;
}

function statement(project: Project, { change, usefulLoad, usefulLoadChange, takeoffLimit }: Weights): Page {
  const { aircraft, datum, empty } = project.airframe ?? {};
  const { before, tolerance } = change;
  const dated = empty?.dated?.value ?? before.weighing?.weighing.dated?.value;
  const rows: (readonly [string, Operand | Value, Value | undefined])[] = [
    ["empty weight", before.weight, change.emptyWeight],
    ["empty arm", before.arm, change.emptyCg],
    ["empty moment", change.emptyMomentBefore, change.emptyMoment],
    ["empty CG of the chord", undefined, change.emptyCgMac],
    ["empty butt line", before.buttLine, change.emptyButtLine],
    ["empty water line", before.waterLine, change.emptyWaterLine],
    ["worst forward case of the tolerances", undefined, tolerance?.foremost],
    ["worst aft case of the tolerances", undefined, tolerance?.aftmost],
    ["maximum take-off weight", takeoffLimit, takeoffLimit],
    ["useful load", undefined, usefulLoad],
    ["useful load, change", undefined, usefulLoadChange],
  ];
  const page = { id: "empty-weight-statement", title: "Empty weight statement, revised" };
  if (!change.emptyWeight || !change.emptyCg) {
    const what = change.emptyWeight ? "CG" : "weight";
    const why = `No statement: the new empty ${what} is not known (see the findings).`;
    return { ...page, statements: [], head: [""], rows: [[why]] };
  }
  return {
    ...page,
    statements: [
      `${[aircraft?.maker?.value, aircraft?.type?.value].filter(Boolean).join(" ")}, serial ${aircraft?.serial?.value ?? "____"}.`,
      `Arms from the datum: ${datum?.value ?? "____"}.`,
      includesLine(empty, before.weighing),
      `This statement supersedes the one dated ${dated ?? "____"}; mark that one superseded.`,
      "Date: ____________________  Signature: ________________________________",
      "Kind and number of the certificate: ____________________________________",
    ],
    head: ["", "before", "after"],
    rows: rows.flatMap(([name, was, is]) => (is ? [[name, cell(was), cell(is)]] : [])),
  };
}

/** As recorded; of a weighing that no statement followed, by the definition that it was worked out by. */
function includesLine(empty: AirframeRecord["empty"], weighing: WeighingSheet | undefined): string {
  if (empty?.includes) return `The empty weight includes: ${empty.includes.value}.`;
  const definition = empty ? undefined : weighing?.definition;
  if (!definition) return "The empty weight includes: ____ (not recorded).";
  const oil = definition.includes.includes("drainable-oil") ? "full oil" : "undrainable oil only";
  return `The empty weight includes unusable fuel, ${oil} and what else ${citeSource(definition.source)} names.`;
}

function equipmentList(project: Project, { change }: Weights): Page {
  const removed = new Set(
    change.items.filter(({ sense }) => sense === "removed").map(({ subject }) => subject.id),
  );
  const listed = (project.airframe?.equipment ?? []).map((one): Cell[] => {
    const id = one.id?.value ?? "";
    return [
      removed.has(id) ? "0" : "X",
      id,
      one.part?.value ?? "",
      one.class?.value ?? "",
      recorded(one.weight),
      recorded(one.arm),
    ];
  });
  const added = change.items
    .filter(({ sense }) => sense === "added")
    .map((item): Cell[] => [
      "X",
      item.subject.id,
      item.part?.value ?? "",
      "special",
      cell(item.weight),
      cell(item.arm),
    ]);
  return {
    id: "equipment-list",
    title: "Equipment list, revised",
    statements: [
      "X: in the aircraft; 0: not in it. What the type's own list does not have counts as special.",
    ],
    head: ["", "item", "part", "class", "weight", "arm"],
    rows: [...listed, ...added],
  };
}

const reasons: Readonly<Record<AdverseResult["sheet"]["rows"][number]["reason"], string>> = {
  "empty-weight": "",
  "pilot-required": "required",
  "oil-full": "full",
  "ahead-of-limit": "ahead: most",
  "not-ahead-of-limit": "not ahead: least",
  "behind-limit": "behind: most",
  "not-behind-limit": "not behind: least",
};

const verdicts: Readonly<Record<AdverseResult["sheet"]["verdict"], string>> = {
  within: "within the limit and the maximum weight",
  "beyond-limit": "BEYOND THE LIMIT",
  "above-maximum-weight": "ABOVE THE MAXIMUM WEIGHT",
  "beyond-both": "BEYOND THE LIMIT AND ABOVE THE MAXIMUM WEIGHT",
  "limit-not-given": "no limit is given at this weight",
};

const noteWords: Readonly<Record<AdverseResult["sheet"]["notes"][number], string>> = {
  "sloping-limit":
    "The limit slopes: items are sorted by its arm at the sheet's own weight, and another loading may be worse.",
  "unsettled-split": "No arm of the sloping limit agrees with the weight that it leads to.",
  "fuel-below-minimum": "The tanks can't hold the minimum fuel.",
};

function adversePage({ envelope, side, sheet, weight, cg, limit }: AdverseResult, { units }: Weights): Page {
  return {
    id: `adverse-loading-${side}-${envelope}`,
    title: `Adverse loading, ${side}: envelope ${envelope}`,
    statements: [
      `By ${citeSource(adverseLoadingSource)}: ${verdicts[sheet.verdict]}.`,
      ...sheet.notes.map((note) => noteWords[note]),
    ],
    head: ["item", "weight", "arm", "moment", ""],
    rows: [
      ...sheet.rows.map((row): Cell[] => [
        row.kind === "empty" ? "empty, after" : row.id,
        { value: row.weight, unit: units.weight },
        { value: row.arm, unit: units.arm },
        { value: row.moment, unit: units.moment },
        reasons[row.reason],
      ]),
      ["total", cell(weight), cell(cg), { value: sheet.total.moment, unit: units.moment }, ""],
      [`${side} limit`, "", cell(limit), "", ""],
    ],
  };
}

/** Conditions across, what is on board down. */
function conditionPage({ envelope, always, conditions }: LoadingConditions, { units }: Weights): Page {
  const across = (cellOf: (one: LoadingCondition) => Cell) => conditions.map(cellOf);
  const limit = (side: LimitSide) =>
    across(({ limits }) => cell(limits.find((one) => one.side === side)?.limit));
  const first = conditions[0]?.sheet.rows ?? [];
  const loaded = first.toSorted((a, b) => a.arm - b.arm).map(({ id, arm }) => ({ id, arm }));
  return {
    id: `loading-conditions-${envelope}`,
    title: `Loading conditions: envelope ${envelope}`,
    statements: [
      `By ${citeSource(loadingConditionSource)}: what a condition names is loaded first, the rest as far as the maximum weight lets it. Crew in the foremost of its seats, other seats as many whole persons as the standard weight gives.`,
    ],
    head: ["on board", "arm", ...conditions.map(({ name }) => name)],
    rows: [
      ...always.map(({ id, weight, arm }): Cell[] => [
        id,
        { value: arm, unit: units.arm },
        ...across(() => ({ value: weight, unit: units.weight })),
      ]),
      ...loaded.map(({ id, arm }): Cell[] => [
        id,
        { value: arm, unit: units.arm },
        ...across(({ sheet }) => ({
          value: sheet.rows.find((row) => row.id === id)?.weight ?? 0,
          unit: units.weight,
        })),
      ]),
      ["weight", "", ...across(({ weight }) => cell(weight))],
      ["CG", "", ...across(({ cg }) => cell(cg))],
      ["forward limit", "", ...limit("forward")],
      ["aft limit", "", ...limit("aft")],
      ["", "", ...across(({ verdict }) => conditionVerdicts[verdict])],
    ],
  };
}

const conditionVerdicts: Readonly<Record<LoadingCondition["verdict"], string>> = {
  within: "within",
  "beyond-forward": "BEYOND forward",
  "beyond-aft": "BEYOND aft",
  "above-maximum-weight": "TOO HEAVY",
  "limit-not-given": "no limit given",
};

function everyLoading({ permitted }: Weights): Page | undefined {
  const rows = permitted.flatMap(({ id, sides }) =>
    sides.flatMap(({ side, before, after }): Cell[][] =>
      after
        ? [
            [
              id,
              side,
              cell(before?.cg),
              cell(after.cg),
              cell(after.limit),
              cell(after.weight),
              after.excess > 0 ? "beyond" : "",
            ],
          ]
        : [],
    ),
  );
  if (rows.length === 0) return undefined;
  return {
    id: "every-loading",
    title: "Every permitted loading, the worst on each side",
    statements: [
      "Over all loadings that stations, crew, tanks and weight limits permit, with every state that burning fuel leads to.",
    ],
    head: ["envelope", "side", "CG before", "CG", "limit", "weight", ""],
    rows,
  };
}

/** Both boundary curves, at their corners. */
function boundaries({ permitted, units }: Weights): Page | undefined {
  const rows = permitted.flatMap(({ id, corners }) =>
    corners.map(({ side, weight, cg, loads }): Cell[] => [
      id,
      side,
      { value: weight, unit: units.weight },
      { value: cg, unit: units.arm },
      loads
        .filter((load) => load.weight > 0)
        .map((load) => `${load.id} ${formatNumber(load.weight)}`)
        .join(", "),
    ]),
  );
  if (rows.length === 0) return undefined;
  return {
    id: "loading-boundaries",
    title: "Most forward and most aft loading at each weight",
    statements: [
      `At the corners of both curves; between them weight and moment are straight. Loads in ${units.weight}.`,
    ],
    head: ["envelope", "side", "weight", "CG", "on board"],
    rows,
  };
}

const treatmentWords = {
  remove: "taken off",
  keep: "stays",
  add: "was missing",
  leave: "not there",
} as const;

function weighingPage({ change }: Weights): Page | undefined {
  const sheet = change.before.weighing;
  if (!sheet) return undefined;
  return {
    id: "weighing",
    title: `Weighing${sheet.weighing.dated ? ` of ${sheet.weighing.dated.value}` : ""}`,
    statements: sheet.definition ? [`Empty weight by ${citeSource(sheet.definition.source)}.`] : [],
    head: ["", "reading", "tare", "net", "arm", "moment", ""],
    rows: [
      ...sheet.scales.map((one): Cell[] => [
        one.id,
        recorded(one.scale.reading),
        recorded(one.scale.tare),
        cell(one.net),
        cell(one.arm),
        cell(one.moment),
        "",
      ]),
      ...sheet.items.map((one): Cell[] => [
        one.id,
        "",
        "",
        cell(one.weight),
        recorded(one.item.arm),
        cell(one.moment),
        one.treatment ? treatmentWords[one.treatment] : "",
      ]),
      ["empty", "", "", cell(sheet.emptyWeight), cell(sheet.emptyCg), cell(sheet.emptyMoment), ""],
    ],
  };
}

function historyPage({ history }: Weights): Page | undefined {
  if (!history) return undefined;
  return {
    id: "change-history",
    title: `Changes since the weighing${history.weighed ? ` of ${history.weighed}` : ""}`,
    statements: [],
    head: ["dated", "document", "weight", "arm"],
    rows: [
      ...history.changes.map((one): Cell[] => [
        one.dated?.value ?? "",
        one.document?.value ?? "",
        recorded(one.weight),
        recorded(one.arm),
      ]),
      ["all, this one too", "weight", cell(history.weight), ""],
      ["threshold", "weight", cell(history.weightLimit), ""],
      ...(history.cg
        ? [
            ["all, this one too", "CG of the chord", cell(history.cg), ""],
            ["threshold", "CG of the chord", cell(history.cgLimit), ""],
          ]
        : []),
    ],
  };
}
