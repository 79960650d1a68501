import type { Judgement } from "../../core/check";
import { byMargin, marginOf } from "../../core/findings/finding";
import { valuesOf } from "../../core/graph/derivations";
import { showMeasure } from "../../core/graph/value";
import { shorten } from "../../core/rules/wording";
import { citeSource } from "../../core/source";
import { acceptedWords } from "../../core/views/acceptance-words";
import { caution, nameOf, notesOf, showShare, sourcesOf } from "../../core/views/calculation";
import { pagesOf } from "../../core/views/pages";
import { indent, type Row, table, tableWithin, wrap } from "./layout";
import { renderPage } from "./pages";

/** The worksheet of one install record, for a terminal or a printer of `width` columns. */
export function renderWorksheet(
  judgement: Judgement,
  pathOf: (file: string) => string,
  width: number,
): string {
  const { project, record, assessments, findings } = judgement;
  if (!project) return "";
  const document = project.install.document;
  const head = [
    document?.number?.value,
    document?.revision && `revision ${document.revision.value}`,
    document?.status?.value,
  ];
  const accepted = new Set(findings.flatMap((finding) => (finding.accepted && finding.assessment) ?? []));
  const margins = assessments.toSorted(byMargin).map((one): Row => {
    return [
      one.subject.id,
      one.value.condition ? `${nameOf(one.value)}, ${shorten(one.value.condition)}` : nameOf(one.value),
      showMeasure(one.value.value, one.value.unit),
      one.sense === "at-most" ? "<=" : ">=",
      showMeasure(one.limit.value, one.limit.unit),
      nameOf(one.limit),
      showShare(marginOf(one)),
      one.holds ? "" : accepted.has(one) ? "accepted" : "fails",
    ];
  });
  const all = valuesOf(project);
  const sections = [
    section("Margins, least first", marginsWithin(width, margins)),
    ...pagesOf(project).map((page) => renderPage(page, width)),
    section("Accepted deviations", bullets(deviationsIn(findings), width)),
    section("Sources", bullets(sourcesOf(all).map(citeSource), width)),
    section("Notes", bullets(notesOf(all), width)),
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
  return tableWithin(width, head, narrow);
}

function section(title: string, body: string): string {
  return body === "" ? "" : `${title.toUpperCase()}\n${body}`;
}

function bullets(lines: readonly string[], width: number): string {
  return lines.map((line) => `- ${indent(wrap(line, width - 2), 2).slice(2)}`).join("\n");
}
