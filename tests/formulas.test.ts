/** What the tool shows of a calculation is what it calculated. */
import { evaluate } from "mathjs";
import { describe, expect, it } from "vitest";
import { check, type Judgement } from "../server/src/core/check";
import { valuesOf } from "../server/src/core/graph/derivations";
import { quantityNames } from "../server/src/core/graph/quantity-names";
import { type Input, showMeasure, type Value, type ValueUnit } from "../server/src/core/graph/value";
import { allDimensions, inUnit, isUnitOf, parseQuantity } from "../server/src/core/quantities";
import type { Node } from "../server/src/core/reading";
import { recordKindOf } from "../server/src/core/records/schema";
import { RecordShelf } from "../server/src/core/shelf";
import { substitutedOf } from "../server/src/core/views/calculation";
import { hoverOn } from "../server/src/core/views/hover";
import { worksheetOf } from "../server/src/core/views/worksheet";
import { exampleFolders } from "./support/examples";
import { demo, demoRecords } from "./support/workspace";

interface Fixture {
  readonly name: string;
  readonly judgement: Judgement;
}

function judge(record: string, files: Readonly<Record<string, string>>): Judgement {
  const shelf = new RecordShelf({
    resolve: (_from, path) => (path.startsWith("../") ? undefined : path),
    text: (file) => files[file],
  });
  return check(shelf.load(record)!, shelf);
}

const fixtures: readonly Fixture[] = [
  ...[demo.clean, demo.faulty].map((name) => ({ name, judgement: judge(name, demoRecords()) })),
  ...exampleFolders
    .filter(({ record }) => recordKindOf(record) === "install")
    .map(({ folder, record, files }) => ({ name: folder, judgement: judge(record, files) })),
].filter(({ judgement }) => judgement.project && valuesOf(judgement.project).length > 0);

/** Values of the graph, and those that only a limit or another value leads to. */
function allValues({ project, assessments }: Judgement): Value[] {
  const found = new Set<Value>();
  const add = (value: Value): void => {
    if (found.has(value)) return;
    found.add(value);
    for (const { derivedFrom } of value.inputs) if (derivedFrom) add(derivedFrom);
  };
  for (const value of valuesOf(project!)) add(value);
  for (const { value, limit } of assessments) {
    add(value);
    add(limit);
  }
  return [...found];
}

/** Symbols of a formula, in the order of the text; names of functions are none. */
function symbolsOf(formula: string): Set<string> {
  return new Set([...formula.matchAll(/[A-Za-z_]\w*(?![\w(])/g)].map(([symbol]) => symbol));
}

function isSummed(symbol: string, formula: string): boolean {
  return formula.includes(`sum(${symbol})`);
}

/** What the formula as it is shown comes to, with the inputs as they are shown. */
function evaluated({ formula, inputs }: Value): number {
  const scope: Record<string, number | number[]> = {};
  for (const symbol of new Set(inputs.map((input) => input.symbol))) {
    const numbers = inputs.filter((input) => input.symbol === symbol).map(({ value }) => value);
    scope[symbol] = isSummed(symbol, formula) ? numbers : numbers[0]!;
  }
  return evaluate(formula, scope) as number;
}

/** A sum of large numbers carries their noise, however small it comes out. */
function isSame(a: number, b: number, inputs: readonly Input[]): boolean {
  const scale = Math.max(Math.abs(a), Math.abs(b), ...inputs.map(({ value }) => Math.abs(value) * 1e-3));
  return a === b || Math.abs(a - b) <= 1e-9 * scale;
}

/** What a line of numbers with units comes to, as a reader would work it out; NaN where it makes no sense. */
function evaluatedText(shown: string, inputs: readonly Input[]): number {
  const measures = inputs
    .map(({ value, unit }) => showMeasure(value, unit))
    .sort((a, b) => b.length - a.length);
  const bare = measures.reduce((text, measure) => text.replaceAll(measure, measure.split(" ")[0]!), shown);
  try {
    return evaluate(bare.replaceAll("×", "*").replaceAll("−", "-")) as number;
  } catch {
    return Number.NaN;
  }
}

/** Four digits of each number are shown, so that a small difference of large ones is known only roughly. */
function isNear({ value, unit, inputs }: Value, evaluated: number): boolean {
  const alike = inputs.filter((input) => input.unit === unit).map((input) => Math.abs(input.value));
  return Math.abs(value - evaluated) <= 1e-2 * Math.abs(value) + 1e-3 * Math.max(0, ...alike);
}

const nameOf = ({ subject, quantity, condition, formula }: Value) =>
  `${subject.kind} ${subject.id} ${quantity} ${condition ?? ""}: ${formula}`;

it("there is something to evaluate: every quantity occurs", () => {
  const found = new Set(
    fixtures.flatMap(({ judgement }) => allValues(judgement).map(({ quantity }) => quantity)),
  );
  expect([...found].sort()).toEqual(Object.keys(quantityNames).sort());
  expect(fixtures.flatMap(({ judgement }) => writtenInputs(allValues(judgement))).length).toBeGreaterThan(
    1000,
  );
});

describe.each(fixtures)("$name", ({ judgement }) => {
  const values = allValues(judgement);
  const worksheet = worksheetOf(judgement, (file) => file);

  it("each formula comes to the value that is shown", () => {
    const wrong = values
      .filter((value) => !value.isMethod)
      .map((value) => ({
        name: nameOf(value),
        shown: value.value,
        evaluated: evaluated(value),
        inputs: value.inputs,
      }))
      .filter(({ shown, evaluated, inputs }) => !isSame(shown, evaluated, inputs));
    expect(wrong).toEqual([]);
  });

  it("each formula with its numbers put in comes to the value, as far as its digits go", () => {
    const wrong = values
      .filter((value) => !value.isMethod)
      .map((value) => ({ name: nameOf(value), shown: substitutedOf(value), value, inputs: value.inputs }))
      .filter(({ shown, value, inputs }) => !isNear(value, evaluatedText(shown, inputs)));
    expect(wrong.map(({ name, shown, value }) => `${name} = ${shown} = ${value.value}`)).toEqual([]);
  });

  it("each formula is written in the symbols of its inputs, all of them and no others", () => {
    for (const value of values.filter(({ isMethod }) => !isMethod)) {
      const given = new Set(value.inputs.map(({ symbol }) => symbol));
      expect({ value: nameOf(value), symbols: symbolsOf(value.formula) }).toEqual({
        value: nameOf(value),
        symbols: given,
      });
      for (const symbol of given) {
        const count = value.inputs.filter((input) => input.symbol === symbol).length;
        if (count > 1)
          expect({ value: nameOf(value), summed: isSummed(symbol, value.formula) }).toMatchObject({
            summed: true,
          });
      }
    }
  });

  it("each quantity is documented, each number is finite, each input has a name", () => {
    for (const value of values) {
      expect(quantityNames[value.quantity]).toMatch(/^[A-Z].*\.$/);
      expect(value.formula).not.toBe("");
      expect(Number.isFinite(value.value)).toBe(true);
      // A modification that adds and removes nothing is the one thing that follows from no number.
      if (value.formula !== "0") expect(value.inputs.length).toBeGreaterThan(0);
      for (const input of value.inputs) {
        expect(Number.isFinite(input.value)).toBe(true);
        expect(input.name).not.toBe("");
      }
    }
  });

  it("each input that is derived is that value, in its unit", () => {
    for (const value of values) {
      for (const input of value.inputs) {
        if (input.derivedFrom) {
          expect([input.value, input.unit]).toEqual([input.derivedFrom.value, input.derivedFrom.unit]);
        }
      }
    }
  });

  it("each input that was written is what stands at its place", () => {
    const wrong = writtenInputs(values).filter(({ used, stands }) => !stands.includes(used));
    expect(wrong).toEqual([]);
  });

  it("hover shows no number that the worksheet does not have", () => {
    const { files } = judgement.project!;
    const known = numbersOf(worksheet);
    let count = 0;
    for (const file of files) {
      for (const node of scalarsOf(file.reading.root)) {
        const hover = hoverOn(file.file, node, [judgement]);
        if (!hover) continue;
        const shown = measuresIn(hover.markdown);
        count += shown.length;
        const strange = shown.filter((measure) => !known.has(measure));
        expect({ file: file.file, node: node.kind === "scalar" && node.text, strange }).toMatchObject({
          strange: [],
        });
      }
    }
    expect(count).toBeGreaterThan(0);
  });
});

/**
 * Inputs that come from one place, with the number that stands there. A place that holds no such quantity, such
 * as that of a row of fasteners, says only where to look.
 */
function writtenInputs(values: readonly Value[]) {
  return values.flatMap((value) =>
    value.inputs.flatMap(({ name, value: used, unit, places, source, derivedFrom }) => {
      const node = places.length === 1 && !source && !derivedFrom ? places[0]!.node : undefined;
      const stands = node?.kind === "scalar" ? numbersAt(node.text, unit) : [];
      return stands.length === 0 ? [] : [{ value: nameOf(value), name, used, stands }];
    }),
  );
}

/** The numbers that a text is in a unit: one for each dimension of the unit, as 12 degC is a rise of 12 K too. */
function numbersAt(text: string, unit: ValueUnit): number[] {
  return allDimensions.flatMap((dimension) => {
    if (unit === "1" || !isUnitOf(dimension, unit)) return [];
    const read = parseQuantity(text, { dimension });
    return "quantity" in read ? [inUnit(read.quantity, unit)] : [];
  });
}

function* scalarsOf(node: Node): Iterable<Node> {
  if (node.kind === "scalar") yield node;
  else if (node.kind === "list") for (const entry of node.entries) yield* scalarsOf(entry);
  else for (const { value } of node.entries) yield* scalarsOf(value);
}

/** Every number that a worksheet holds, as people read it. */
function numbersOf({ values, margins }: ReturnType<typeof worksheetOf>): Set<string> {
  const shown = new Set<string>();
  for (const { value, unit, inputs } of values) {
    shown.add(showMeasure(value, unit as ValueUnit));
    for (const input of inputs) shown.add(showMeasure(input.value, input.unit as ValueUnit));
  }
  for (const { value, limit, unit, margin } of margins) {
    shown.add(showMeasure(value, unit as ValueUnit));
    shown.add(showMeasure(limit, unit as ValueUnit));
    if (margin !== null) shown.add(`${Math.floor(margin * 100 + 1e-9)} %`);
  }
  return shown;
}

/** What the table, the results and the inputs and ends of the calculations show, without the signs around it. */
function measuresIn(markdown: string): string[] {
  const text = markdown.replace(/\\([^\w\s])/g, "$1");
  const [, code = ""] = text.split("```");
  const cells = [...text.matchAll(/^\|(.*)\|$/gm)]
    .flatMap(([, row]) => row!.split("|").slice(1))
    // "11.7 V, **below 22 V**": a value and the limit that it fails
    .flatMap((cell) => cell.split(/, \*\*(?:above|below) /))
    .map((cell) => cell.replace(/\*\*\s*$/, ""));
  const results = [...text.matchAll(/: \*\*(.+?)\*\*/g)].map(([, result]) => result!);
  const inputs = [...code.matchAll(/^ {4}\S.*? {2,}(\S.*?) {2}/gm)].map(([, input]) => input!);
  const ends = [...code.matchAll(/^ {2}= (.*)\n(?! {2}= )/gm)].map(([, end]) => end!.split(", ")[0]!);
  return [...cells, ...results, ...inputs, ...ends]
    .map((measure) => measure.replace(/^\s*[≤≥]?\s*/, "").trim())
    .filter((measure) => /^-?\d/.test(measure) && !/ values$/.test(measure));
}
