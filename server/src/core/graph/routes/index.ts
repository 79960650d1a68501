/**
 * Routes of bundles and lines: how near bundles come to lines, and both to control runs, computed from the points
 * that they pass.
 */
import type { Project } from "../../project";
import type { Bundle, KeepOut, Wire } from "../../records/types";
import type { Place } from "../../records/written";
import type { Lines } from "../lines";
import type { LineRun } from "../lines/line-run";
import type { Neighbour } from "../placement/clearances";
import { keepOutNeighbour } from "../placement/keep-outs";
import { Memory } from "../remember";
import type { Keep, Value } from "../value";
import { type Course, courseOf, courseOperands, type Nearest, nearestOf, routeUnit } from "./course";
import { controlLimit, lineLimit, type Passes, passesOfControl, passesOfLine, passingWires } from "./limits";
import { type Half, halfOfBundle, halfOfLine, separation } from "./separation";

/** Of a bundle and a line, or of either and a control run. */
export interface RouteSeparation {
  readonly kind: "bundle" | "line";
  readonly id: string;
  readonly passed: { readonly kind: "line" | "control-run"; readonly id: string; readonly place: Place };
  /** What a line that is passed carries. */
  readonly fluid: string | undefined;
  /** Numbers of the two points between which the route comes nearest, from 1, and the place of the first. */
  readonly between: readonly [number, number];
  readonly place: Place;
  /** Room between the two, in in; negative where they share space. */
  readonly value: Value;
  /** What has to be kept; undefined where a guard or a clamp stands for it, or nobody says. */
  readonly least: Value | undefined;
  /** What is recorded of such things passing each other, whoever measured it. */
  readonly passes: Passes;
}

export interface Routes {
  readonly separations: readonly RouteSeparation[];
}

/** Pure; what has no route, or one that is not whole, is left out. */
export function deriveRoutes({ install, airframe }: Project, { runs }: Lines, keep: Keep): Routes {
  const lines = runs.flatMap((run): RoutedLine[] => {
    const course = courseOf(run.line);
    return course ? [{ run, course }] : [];
  });
  const bundles = (install.bundles ?? []).flatMap((bundle) => {
    const course = bundle.id && courseOf(bundle);
    return course
      ? [{ bundle, id: bundle.id.value, course, wires: passingWires(install.wires ?? [], bundle) }]
      : [];
  });
  const controls =
    lines.length + bundles.length > 0 ? (airframe?.keepOuts ?? []).flatMap((one) => controlOf(one)) : [];
  return {
    separations: [
      ...bundles.flatMap((one) => [
        ...lines.map((line) => bundleToLine(one, line, keep)),
        ...controls.map((control) => bundleToControl(one, control, keep)),
      ]),
      ...lines.flatMap((line) => controls.map((control) => lineToControl(line, control, keep))),
    ].filter((one) => one !== undefined),
  };
}

interface RoutedBundle {
  readonly bundle: Bundle;
  readonly id: string;
  readonly course: Course;
  /** Those of which passes are recorded. */
  readonly wires: readonly Wire[];
}

interface RoutedLine {
  readonly run: LineRun;
  readonly course: Course;
}

interface Control {
  readonly keepOut: KeepOut;
  readonly neighbour: Neighbour;
}

function controlOf(keepOut: KeepOut): Control[] {
  const neighbour = keepOut.kind?.value === "control-run" && keepOutNeighbour(keepOut, routeUnit);
  return neighbour ? [{ keepOut, neighbour }] : [];
}

const linesPassed = new Memory<Bundle, LineRun, RouteSeparation | undefined>();
const controlsPassed = new Memory<Bundle | LineRun, KeepOut, RouteSeparation | undefined>();

function bundleToLine(
  { bundle, id, course, wires }: RoutedBundle,
  { run, course: other }: RoutedLine,
  keep: Keep,
) {
  return linesPassed.recall(bundle, run, wires, keep, (keepOwn): RouteSeparation | undefined => {
    const { line } = run;
    const subject = { kind: "bundle", id: `${id} to ${run.id}` } as const;
    const nearest = nearestOf(course, other.stretches);
    const value = separation(keepOwn, {
      subject,
      distance: nearest.distance,
      method: "least distance of the two centre lines",
      points: () => ({
        ...courseOperands(course, id, nearest.stretch),
        ...courseOperands(other, run.id, nearest.other),
      }),
      halves: [halfOfLine(run), halfOfBundle(bundle)],
    });
    if (!value) return undefined;
    const passes = passesOfLine(wires, line);
    return {
      kind: "bundle",
      id,
      passed: { kind: "line", id: run.id, place: other.points[nearest.other]!.place },
      fluid: line.fluid?.value,
      ...whereOf(course, nearest),
      value,
      least: keepOwn(lineLimit(subject, passes, line)),
      passes,
    };
  });
}

function bundleToControl({ bundle, id, course, wires }: RoutedBundle, control: Control, keep: Keep) {
  return controlsPassed.recall(bundle, control.keepOut, wires, keep, (keepOwn) =>
    toControl(
      "bundle",
      id,
      course,
      passesOfControl(wires),
      [halfOfBundle(bundle)],
      control.neighbour,
      keepOwn,
    ),
  );
}

function lineToControl({ run, course }: RoutedLine, control: Control, keep: Keep) {
  return controlsPassed.recall(run, control.keepOut, [], keep, (keepOwn) =>
    toControl(
      "line",
      run.id,
      course,
      passesOfControl([run.line]),
      [halfOfLine(run)],
      control.neighbour,
      keepOwn,
    ),
  );
}

function toControl(
  kind: RouteSeparation["kind"],
  id: string,
  course: Course,
  passes: Passes,
  halves: readonly (Half | undefined)[],
  control: Neighbour,
  keep: Keep,
): RouteSeparation | undefined {
  const subject = { kind, id: `${id} to ${control.id}` };
  const nearest = nearestOf(course, control.solids);
  const { operands } = control;
  const value = separation(keep, {
    subject,
    distance: nearest.distance,
    method: `least distance of the centre line from ${control.id}, negative inside it`,
    points: () => ({ ...courseOperands(course, id, nearest.stretch), ...operands() }),
    halves,
  });
  if (!value) return undefined;
  return {
    kind,
    id,
    passed: { kind: "control-run", id: control.id, place: control.place },
    fluid: undefined,
    ...whereOf(course, nearest),
    value,
    least: keep(controlLimit(subject, passes, control, value.value)),
    passes,
  };
}

function whereOf({ points }: Course, { stretch }: Nearest): Pick<RouteSeparation, "between" | "place"> {
  return { between: [stretch + 1, stretch + 2], place: points[stretch]!.place };
}
