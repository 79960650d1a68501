/** Remedies of the rules of routes: the stretches that come too near go somewhere else. */
import type { Change } from "../../edits/change";
import type { Assessment } from "../../findings/finding";
import { routesOf } from "../../graph/derivations";
import { keepOutNeighbour } from "../../graph/placement/keep-outs";
import type { RouteSeparation } from "../../graph/routes";
import { type Course, courseOf, nearestOf, routeUnit } from "../../graph/routes/course";
import type { Axis, Solid, Vector3 } from "../../methods/solids";
import type { Project } from "../../project";
import { convert, formatMeasure, roundDown, roundUp } from "../../quantities";
import { flammableFluids } from "../../tables/line-installation-limits";
import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { placeSteps } from "../placement/moves";
import type { Remedy } from "../rule";
import { listWords } from "../wording";

const ways: readonly { readonly axis: "y" | "z"; readonly sign: 1 | -1; readonly words: string }[] = [
  { axis: "z", sign: 1, words: "up" },
  { axis: "z", sign: -1, words: "down" },
  { axis: "y", sign: 1, words: "to the right" },
  { axis: "y", sign: -1, words: "to the left" },
];

/** No detour is longer than this, in in. */
const farthest = 24;

/**
 * Each way the least move of the stretches that come too near that keeps the distance, the shortest first. The ends
 * of a route are where it is connected, and stay.
 */
export function* movesOfRoute(assessment: Assessment, project: Project): Iterable<Remedy> {
  const found = routesOf(project).separations.find(({ value }) => value === assessment.value);
  const course = found && courseOfRoute(found, project);
  const others = found && passedBy(found, project);
  if (!found || !course || !others) return;
  // A control run that its airframe's clearance is kept of is to keep the distance to cables, too.
  const table =
    found.passed.kind === "control-run" ? [wireInstallationLimits.controlCableSeparation.value] : [];
  const halves = nearestOf(course, others).distance - found.value.value;
  // What leaks drips down: no wire is sent below what burns.
  const mayGoDown = !flammableFluids.has(found.fluid ?? "");
  const moves = ways
    .filter(({ words }) => mayGoDown || words !== "down")
    .flatMap((way) =>
      [assessment.limit.value, ...table].flatMap((least) => {
        const needed = least + halves;
        const numbers = tooNear(course, others, needed);
        const by = leastShift(course, numbers, others, needed, way.axis, way.sign);
        return by === undefined || numbers.length === 0 ? [] : [{ ...way, numbers, by }];
      }),
    );
  for (const { axis, sign, words, numbers, by } of moves.sort((a, b) => a.by - b.by)) {
    const changes = numbers.flatMap((number): Change[] => {
      const point = course.points[number - 1]!;
      const at = axis === "y" ? point.buttLine : point.waterLine;
      const step = at && placeSteps[at.value.unit];
      if (!at || step === undefined) return [];
      const wanted = at.value.written + sign * convert(by, routeUnit, at.value.unit, "length");
      return [
        { place: at.place, text: `${(sign > 0 ? roundUp : roundDown)(wanted, step)} ${at.value.unit}` },
      ];
    });
    if (changes.length < numbers.length) continue;
    const points = `point${numbers.length > 1 ? "s" : ""} ${listWords(numbers.map(String), "and")}`;
    yield {
      title: `Move ${points} of the route of ${found.id} ${formatMeasure(by, routeUnit, 3)} ${words}`,
      changes,
      series: words,
    };
  }
}

/** Numbers of the points that may move: those of all stretches that are too near, but for the ends of the route. */
function tooNear({ points, stretches }: Course, others: readonly Solid[], needed: number): number[] {
  const numbers = stretches.flatMap((one, index) =>
    nearestOf({ points, stretches: [one] }, others).distance < needed ? [index + 1, index + 2] : [],
  );
  return [...new Set(numbers)].filter((number) => number > 1 && number < points.length);
}

function courseOfRoute({ kind, id }: RouteSeparation, { install }: Project): Course | undefined {
  const list = kind === "bundle" ? install.bundles : install.lines;
  const owner = list?.find((one) => one.id?.value === id);
  return owner && courseOf(owner);
}

function passedBy({ passed }: RouteSeparation, { install, airframe }: Project): readonly Solid[] | undefined {
  if (passed.kind === "line") {
    const line = install.lines?.find((one) => one.id?.value === passed.id);
    return line && courseOf(line)?.stretches;
  }
  const keepOut = airframe?.keepOuts?.find((one) => one.id?.value === passed.id);
  return keepOut && keepOutNeighbour(keepOut, routeUnit)?.solids;
}

/** Found by halving; undefined where even the farthest move does not do. */
function leastShift(
  course: Course,
  numbers: readonly number[],
  others: readonly Solid[],
  needed: number,
  axis: Axis,
  sign: 1 | -1,
): number | undefined {
  const isClear = (by: number) =>
    nearestOf(shifted(course, numbers, axis, sign * by), others).distance >= needed;
  if (!isClear(farthest)) return undefined;
  let [near, far] = [0, farthest];
  for (let halving = 0; halving < 40; halving++) {
    const middle = (near + far) / 2;
    if (isClear(middle)) far = middle;
    else near = middle;
  }
  return far;
}

function shifted(course: Course, numbers: readonly number[], axis: Axis, by: number): Course {
  const at = (point: Vector3, number: number) =>
    numbers.includes(number) ? { ...point, [axis]: point[axis] + by } : point;
  return {
    points: course.points,
    stretches: course.stretches.map(({ from, to, ...rest }, index) => ({
      ...rest,
      from: at(from, index + 1),
      to: at(to, index + 2),
    })),
  };
}
