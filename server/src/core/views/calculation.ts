/** A value's calculation in words and numbers, for every view that shows one. */
import { type Input, showMeasure, type Value } from "../graph/value";
import { citeSource, type Source } from "../source";
import type { PlaceNames } from "./place-names";

/** A derived value's name for people: "wire current", "empty CG". */
export function nameOf(value: Value): string {
  return value.quantity
    .replaceAll("-", " ")
    .replace(/\bcg\b/, "CG")
    .replace(/\bmac\b/, "in % MAC");
}

/** The formula as people write it. */
export function formulaOf({ formula }: Value): string {
  return formula.replaceAll(" * ", " × ").replaceAll(" - ", " − ").replace(/sum\(/g, "Σ(");
}

/** The formula with its numbers put in: "18 A × 0.0121 ohm"; a method's name where no line can hold it. */
export function substitutedOf(value: Value): string {
  if (value.isMethod) return value.formula;
  const bySymbol = groupBySymbol(value.inputs);
  const isBareSum = /^sum\(\w+\)$/.test(value.formula);
  const substituted = value.formula.replace(/[A-Za-z_]\w*/g, (word) => {
    const inputs = bySymbol.get(word);
    return inputs ? inputs.map(numberOf).join(" + ") : word;
  });
  const bare = isBareSum ? substituted.slice("sum(".length, -1) : substituted.replace(/\bsum\(/g, "(");
  return bare.replaceAll(" * ", " × ").replaceAll(" - ", " − ");
}

/** A calculation as lines: what it is of, the formula, the numbers put in, the result, then its inputs. */
export function calculationLines(value: Value, places: PlaceNames): string[] {
  const where = [value.subject.id, value.condition].filter((part) => part !== undefined).join(", ");
  const result = showMeasure(value.value, value.unit);
  if (isPlainCopy(value)) {
    const [{ name, places: written }] = value.inputs as [Input];
    const at = written[0] ? `, ${places.nameOf(written[0])}` : "";
    return [`${nameOf(value)} (${where}) = ${result}: ${name}${at}`];
  }
  const steps = value.isMethod
    ? [`  = ${result}, ${value.formula}`]
    : [formulaOf(value), substitutedOf(value), result].map((step) => `  = ${step}`);
  return [
    `${nameOf(value)} (${where})`,
    ...steps.filter((step, at) => step !== steps[at - 1]),
    ...inputLines(value, places),
  ];
}

/** What each symbol is and where it was written; a symbol that stands for many is told in one line. */
function inputLines({ inputs }: Value, places: PlaceNames): string[] {
  const groups = [...groupBySymbol(inputs)].slice(0, mostSymbols);
  const symbolWidth = Math.max(0, ...groups.map(([symbol]) => symbol.length));
  const numberWidth = Math.max(0, ...groups.map(([, group]) => numberWords(group).length));
  return groups.map(([symbol, group]) => {
    const names = [...new Set(group.map(({ name }) => name))].join(", ");
    const at = group.length === 1 && group[0]!.places[0] ? `, ${places.nameOf(group[0]!.places[0])}` : "";
    const words = `${names === symbol ? "" : names}${at}`.replace(/^, /, "");
    return `    ${symbol.padEnd(symbolWidth)}  ${numberWords(group).padStart(numberWidth)}  ${words}`.trimEnd();
  });
}

function numberWords(group: readonly Input[]): string {
  const [only] = group;
  if (group.length === 1 && only) return showMeasure(only.value, only.unit);
  return `${group.length} values`;
}

/** Symbols told of one calculation; a polygon would fill the screen. */
const mostSymbols = 8;

/** True where the formula only names its one input. */
export function isPlainCopy(value: Value): boolean {
  return value.inputs.length === 1 && value.formula === value.inputs[0]!.symbol;
}

function numberOf({ value, unit }: Input): string {
  const text = showMeasure(value, unit);
  return value < 0 ? `(${text})` : text;
}

export function groupBySymbol(inputs: readonly Input[]): Map<string, Input[]> {
  const groups = new Map<string, Input[]>();
  for (const input of inputs) groups.set(input.symbol, [...(groups.get(input.symbol) ?? []), input]);
  return groups;
}

/** A value and everything derived that it rests on, each once, with its depth; the value itself first. */
export function stepsOf(
  value: Value,
  depthLimit = Infinity,
): { readonly value: Value; readonly depth: number }[] {
  const steps: { value: Value; depth: number }[] = [];
  const seen = new Set<Value>();
  const visit = (one: Value, depth: number) => {
    if (seen.has(one) || depth > depthLimit) return;
    seen.add(one);
    steps.push({ value: one, depth });
    for (const input of one.inputs) if (input.derivedFrom) visit(input.derivedFrom, depth + 1);
  };
  visit(value, 0);
  return steps;
}

/** Every source that a value rests on, each once, nearest first. */
export function sourcesOf(values: readonly Value[]): Source[] {
  return sourcesIn(values.flatMap((value) => stepsOf(value).map((step) => step.value)));
}

/** Every source that values name themselves, each once. */
export function sourcesIn(values: readonly Value[]): Source[] {
  const cited = new Map<string, Source>();
  for (const { sources, inputs } of values) {
    for (const source of [...sources, ...inputs.flatMap((input) => input.source ?? [])]) {
      const key = citeSource(source);
      if (!cited.has(key)) cited.set(key, source);
    }
  }
  return [...cited.values()];
}

/** Everything that has to be known besides the numbers, each once. */
export function notesOf(values: readonly Value[]): string[] {
  return notesIn(values.flatMap((value) => stepsOf(value).map((step) => step.value)));
}

/** The same of what values note themselves. */
export function notesIn(values: readonly Value[]): string[] {
  return [
    ...new Set(values.flatMap(({ notes, inputs }) => [...notes, ...inputs.flatMap((input) => input.notes)])),
  ];
}

/** What every worksheet and paper says of itself. */
export const caution =
  "A calculation aid: it supports, and does not replace, approved data, the maker's instructions and a " +
  "licensed person's judgement; local rules prevail.";

/** A margin for people: "12 %", and rounded so that nothing exceeded reads as kept. */
export function showShare(share: number | undefined): string {
  return share === undefined ? "" : `${Math.floor(share * 100 + 1e-9)} %`;
}

/** How much of a limit is used, the other side of its margin: "78 %", and rounded as that is. */
export function showUse(share: number): string {
  return `${Math.ceil(share * 100 - 1e-9)} %`;
}
