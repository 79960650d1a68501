/** How full each hole is that wires and lines go through. */
import type { Project } from "../../project";
import type { PassThrough } from "../../records/types";
import { isWholeList } from "../entries";
import { derive, derived, type Keep, type Operand, type Subject, sumOf, type Value, written } from "../value";
import type { LineRun } from "./line-run";
import { outsideOf } from "./outside";

export interface PassThroughResult {
  readonly passThrough: PassThrough;
  readonly id: string;
  /** In per cent; undefined while a diameter of what goes through is not known. */
  readonly fill: Value | undefined;
  /** What goes through it without a known outside diameter. */
  readonly unknown: readonly string[];
}

/** Pure; what is missing in the record is left out of the result. */
export function derivePassThroughs(
  { install }: Project,
  runs: readonly LineRun[],
  keep: Keep,
): PassThroughResult[] {
  return (install.passThroughs ?? []).flatMap((passThrough): PassThroughResult[] => {
    const { wires = [], lines = [] } = passThrough;
    if (!passThrough.id) return [];
    const contents = [
      ...wires.map(({ value: id }): Content => {
        const wire = install.wires?.find((one) => one.id?.value === id);
        return {
          subject: { kind: "wire", id },
          isNamed: wire !== undefined,
          outside: written("outside diameter", wire?.outsideDiameter, "in"),
        };
      }),
      ...lines.map(({ value: id }): Content => {
        const run = runs.find((one) => one.id === id);
        return { subject: { kind: "line", id }, isNamed: run !== undefined, outside: run && outsideOf(run) };
      }),
    ];
    return [
      {
        passThrough,
        id: passThrough.id.value,
        fill: fillOf(passThrough, passThrough.id.value, contents, keep),
        // A name that names nothing is a finding of its own.
        unknown: contents.flatMap(({ subject, isNamed, outside }) =>
          isNamed && !outside ? [subject.id] : [],
        ),
      },
    ];
  });
}

/** One thing that goes through. */
interface Content {
  readonly subject: Subject;
  readonly isNamed: boolean;
  readonly outside: Operand;
}

function fillOf(
  passThrough: PassThrough,
  hole: string,
  contents: readonly Content[],
  keep: Keep,
): Value | undefined {
  const isWhole =
    isWholeList(passThrough, "wires", passThrough.wires) &&
    isWholeList(passThrough, "lines", passThrough.lines);
  if (contents.length === 0 || !isWhole) return undefined;
  const D = written("inside diameter of the hole", passThrough.hole, "in");
  const shares = contents.map(({ subject: { kind, id }, outside }) =>
    derived(
      `share of ${id}`,
      keep(
        derive({
          subject: { kind, id: `${id} in ${hole}` },
          quantity: "hole-share",
          unit: "%",
          formula: "100 * (d / D) ^ 2",
          operands: { d: outside, D },
          compute: (numbers) => 100 * (numbers.d / numbers.D) ** 2,
        }),
      ),
    ),
  );
  return keep(
    derive({
      subject: { kind: "pass-through", id: hole },
      quantity: "pass-through-fill",
      unit: "%",
      formula: "sum(s)",
      operands: { s: shares },
      compute: ({ s }) => sumOf(s),
    }),
  );
}
