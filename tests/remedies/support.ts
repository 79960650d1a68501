import { check, type Judgement } from "../../server/src/core/check";
import { applyEdits } from "../../server/src/core/edits/text-edit";
import type { RecordSource } from "../../server/src/core/project";
import { loadRecord } from "../../server/src/core/records/record";
import { recordKindOf } from "../../server/src/core/records/schema";
import { provenRemedies } from "../../server/src/core/remedies";
import { circuitExample } from "../../server/src/core/rules/wires/circuit-example";

export const alone: RecordSource = { resolve: () => undefined, load: () => undefined };

export function judge(text: string, file = "test.install.yaml"): Judgement {
  return check(loadRecord(file, recordKindOf(file)!, text), alone);
}

/** Rules of all findings but those that only inform. */
export function faultsIn(text: string, file?: string): string[] {
  return judge(text, file)
    .findings.filter(({ severity }) => severity !== "information")
    .map(({ rule }) => rule);
}

/** The proven remedies of the first finding of a rule, each with the text that it leaves. */
export function remediesFor(rule: string, text: string, file?: string) {
  const judgement = judge(text, file);
  const finding = judgement.findings.find((one) => one.rule === rule);
  if (!finding) throw new Error(`${rule} is not found`);
  return [...provenRemedies(finding, judgement, alone)].map(({ title, edits, revealed }) => ({
    title,
    edits,
    revealed,
    text: applyEdits(text, edits),
  }));
}

export function titlesFor(rule: string, text: string, file?: string): string[] {
  return remediesFor(rule, text, file).map(({ title }) => title);
}

export const bundledWire = (id: string, from: string, to: string, gauge = "12 AWG") =>
  `{ id: ${id}, from: ${from}, to: ${to}, gauge: ${gauge}, length: 4 ft, rating: 150 degC, bundle: B1 }`;

/** A rack whose feeder shares a bundle with its return and with the pair of a small load. */
export const fullBundle = (bundle = "{ id: B1, wires: 4, loading: 60 % }", current = "40 A") =>
  circuitExample({
    device: "{ id: CB-40, kind: breaker, rating: 40 A }, { id: CB-5, kind: breaker, rating: 5 A }",
    components: [
      `{ id: RACK, weight: 31.2 lb, draws: [{ mode: survey, current: ${current} }] }`,
      "{ id: FAN, weight: 1 lb, draws: [{ mode: run, current: 1 A }] }",
    ],
    loads: "{ RACK: survey, FAN: run }",
    protection: [
      "{ id: CB-RACK, device: CB-40, mounted-on: MAIN }",
      "{ id: CB-FAN, device: CB-5, mounted-on: MAIN }",
    ],
    bundle,
    wires: [
      bundledWire("P1", "CB-RACK", "RACK"),
      bundledWire("P1N", "RACK", "GND-AFT"),
      bundledWire("P2", "CB-FAN", "FAN"),
      bundledWire("P2N", "FAN", "GND-AFT"),
    ],
  });
