/** What has to be kept between a route and what it passes: the limits of recorded passes, and of the airframe. */
import type { Bundle, Line, LinePass, Pass, Wire } from "../../records/types";
import type { Place } from "../../records/written";
import type { Source } from "../../source";
import { freeRoomParagraphs } from "../../tables/cockpit-paragraphs";
import { chafingPractice, flammableFluids } from "../../tables/line-installation-limits";
import { covered } from "../../tables/lookup";
import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import type { Neighbour } from "../placement/clearances";
import { derive, type Operand, type Subject, tabled, type Value, written } from "../value";

const { fluidLineSeparation, fluidLineSeparationClamped, controlCableSeparation } = wireInstallationLimits;

export type Passes = readonly (Pass | LinePass)[];

/**
 * Between a bundle and a line. The closer distance holds only where all that is recorded of wire and line passing
 * each other says that they are clamped; of lines of nothing flammable only contact is judged, and not where a
 * clamp or a guard rules it out.
 */
export function lineLimit(subject: Subject, passes: Passes, line: Line): Value | undefined {
  if (!line.fluid) return undefined;
  const fluid = line.fluid.value;
  const keys = [line.fluid.place, ...placesOf(passes)];
  if (flammableFluids.has(fluid)) {
    const { value, source } = isAll(passes, "clamped") ? fluidLineSeparationClamped : fluidLineSeparation;
    return limit(subject, inTable(value, source, keys), source);
  }
  if (passes.length > 0 && passes.every(isHeldClear)) return undefined;
  return limit(subject, inTable(0, chafingPractice, keys), chafingPractice);
}

/**
 * Between a bundle or a line and a control run: what the airframe asks for its room, and what must be kept from
 * control cables unless a guard lies between. What the airframe asks goes first where it is not kept, else the
 * greater of the two.
 *
 * @param separation in in
 */
export function controlLimit(
  subject: Subject,
  passes: Passes,
  control: Neighbour,
  separation: number,
): Value | undefined {
  // As of recorded passes: of a wire only a guard counts, of a line a clamp too.
  const isGuarded =
    subject.kind === "line" ? passes.length > 0 && passes.every(isHeldClear) : isAll(passes, "guarded");
  const asked = control.least
    ? written(`clearance of ${control.id}`, control.least, "in")!
    : inTable(0, freeRoomParagraphs[0]!, [control.place])!;
  const { value, source } = controlCableSeparation;
  if (isGuarded || separation < asked.value || asked.value >= value) {
    return limit(
      subject,
      asked,
      ...(control.least
        ? control.data
          ? [{ document: control.data.value, standing: "record" } as const]
          : []
        : freeRoomParagraphs),
    );
  }
  return limit(subject, inTable(value, source, placesOf(passes)), source);
}

/** Those of a bundle's wires of which passes are recorded: all that a limit looks at. */
export function passingWires(wires: readonly Wire[], bundle: Bundle): Wire[] {
  return wires.filter((wire) => wire.passes && wire.bundle?.value === bundle.id?.value);
}

/** What is recorded of a bundle's wires and a line passing each other. */
export function passesOfLine(wires: readonly Wire[], { fluid, passes = [] }: Line): Passes {
  return [
    ...passes.filter(({ by }) => by?.value === "wire"),
    ...(fluid ? passesBy(wires, `${fluid.value}-line`) : []),
  ];
}

/** What is recorded of wires, or of one line, passing control cables. */
export function passesOfControl(things: readonly (Wire | Line)[]): Passes {
  return passesBy(things, "control-cable");
}

function passesBy(things: readonly (Wire | Line)[], by: string): (Pass | LinePass)[] {
  return things.flatMap(({ passes = [] }) => passes.filter((pass: Pass | LinePass) => pass.by?.value === by));
}

function isAll(passes: Passes, key: "clamped" | "guarded"): boolean {
  return passes.length > 0 && passes.every((pass) => pass[key]?.value === true);
}

function isHeldClear({ clamped, guarded }: Pass | LinePass): boolean {
  return clamped?.value === true || guarded?.value === true;
}

function placesOf(passes: Passes): (Place | undefined)[] {
  return passes.flatMap(({ clamped, guarded }) => [clamped?.place, guarded?.place]);
}

function inTable(inches: number, source: Source, keys: readonly (Place | undefined)[]) {
  return tabled("limit of the document", covered(inches, source), "in", keys);
}

function limit(subject: Subject, least: Operand, ...sources: readonly Source[]): Value | undefined {
  return derive({
    subject,
    quantity: "least-route-separation",
    unit: "in",
    formula: "limit",
    operands: { limit: least },
    compute: (numbers) => numbers.limit,
    sources,
  });
}
