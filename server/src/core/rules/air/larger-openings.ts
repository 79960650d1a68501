/** Openings made larger until a path passes enough air. */
import { airOf } from "../../graph/derivations";
import type { Project } from "../../project";
import { type Quantity, roundUp, type UnitSymbol } from "../../quantities";
import type { Figure } from "../../records/types";
import type { Written } from "../../records/written";
import { type Remedy, rewrite } from "../rule";

/** Steps in which an opening is laid out: a shop's habit, and only tried. */
const steps: Readonly<Partial<Record<UnitSymbol<"length">, number>>> = { in: 0.5, mm: 10, cm: 1 };
const mostSteps = 12;

/** Each size of each opening of a path, a step larger at a time. */
export function* largerOpenings(path: string, project: Project): Iterable<Remedy> {
  const found = airOf(project).paths.find(({ id }) => id === path);
  for (const { opening } of found?.openings ?? []) {
    const figure = opening.cutout.opening;
    for (const [name, size] of figure ? sizesOf(figure) : []) {
      const { unit, written } = size.value;
      const step = steps[unit];
      if (step === undefined) continue;
      for (let count = 1; count <= mostSteps; count++) {
        const text = `${roundUp(written + (count - 0.5) * step, step)} ${unit}`;
        yield rewrite(`Make the ${name} of ${opening.id} ${text}`, size.place, text, `${opening.id} ${name}`);
      }
    }
  }
}

function sizesOf({ diameter, length, width, height }: Figure): [string, Written<Quantity<"length">>][] {
  const sizes = { diameter, length, width, height };
  return Object.entries(sizes).flatMap(([name, size]): [string, Written<Quantity<"length">>][] =>
    size ? [[name, size]] : [],
  );
}
