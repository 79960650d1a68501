/**
 * What may bring a CG back inside a limit: a component moved to an arm that it is permitted, or to another butt line
 * where the limit is one to the side, ballast at a ballast station, a placard that lowers a station's limit. These are candidates: each is offered only when the record,
 * checked again with it, has lost the finding and gained none.
 */

import { weightsOf } from "../../graph/derivations";
import type { ChangedItem } from "../../graph/weights/changed-items";
import { isLateral, type Side, type WhatIf } from "../../graph/weights/permitted-loadings";
import { leastSteps } from "../../methods/least-step";
import type { Project } from "../../project";
import {
  convert,
  formatNumber,
  inUnit,
  type Quantity,
  roundDown,
  roundUp,
  type UnitSymbol,
} from "../../quantities";
import type { Written } from "../../records/written";
import type { Remedy } from "../rule";
import { rewrite } from "../rule";
import { pullsTo } from "./pull";

export interface Past {
  readonly side: Side;
  /** The limit's arm or butt line, in the unit of the derivation. */
  readonly limit: number;
  /** Whether the limit would be kept if things were otherwise; undefined if unknown. */
  readonly keepsIf: (what: WhatIf) => boolean | undefined;
  /** Stations whose limit may be lowered: what the loading has there. None for a recorded loading. */
  readonly loads: readonly { readonly id: string; readonly weight: number }[];
}

/** Items that are tried, those that pull most. */
const mostItems = 3;

/** Steps to which an arm is rounded when one is proposed; none for units that nobody measures an arm in. */
const armSteps: Readonly<Partial<Record<UnitSymbol<"length">, number>>> = {
  in: 0.1,
  ft: 0.01,
  mm: 1,
  cm: 0.1,
  m: 0.001,
};

/** What is weighed off for ballast, and the step of a placard, in lb or kg. */
const weightStep = { ballast: 0.1, placard: 1 } as const;

/** One change alone where that does it, the gentlest kind first; else a permitted move with ballast or a placard. */
export function* balanceRemedies(project: Project, past: Past): Iterable<Remedy> {
  let isFound = false;
  for (const remedy of [...moves(project, past), ...ballast(project, past), ...placards(project, past)]) {
    isFound = true;
    yield remedy;
  }
  if (!isFound) yield* combined(project, past);
}

export function titlesOf(remedies: Iterable<Remedy>): string[] {
  return Array.from(remedies, ({ title }) => title);
}

/** To the nearest arm that does it: one of those listed, or any that is aboard where none is. */
function* moves(project: Project, past: Past): Iterable<Remedy> {
  for (const [rank, item] of pulling(project, past).entries()) {
    const isKeptAt = (to: number) =>
      past.keepsIf({ weight: 0, moment: momentOfMove(project, past.side, item, to) }) ?? false;
    const listed = listedPlaces(item, past.side);
    // Small things are not moved through the whole aircraft for want of weight.
    const to =
      listed?.find(isKeptAt) ??
      (listed || rank > 0
        ? undefined
        : steppedPlace(project, ownPlace(item, past.side)!, past.side, isKeptAt));
    if (to !== undefined) yield moved(item, past.side, to);
  }
}

/** What is left after a permitted move is done by ballast or a placard. */
function* combined(project: Project, past: Past): Iterable<Remedy> {
  for (const item of pulling(project, past)) {
    for (const to of listedPlaces(item, past.side) ?? []) {
      const gain = momentOfMove(project, past.side, item, to);
      if (isPastHigh(past.side) !== gain < 0) continue;
      const rest: Past = {
        ...past,
        keepsIf: (what) => past.keepsIf({ ...what, moment: what.moment + gain }),
      };
      const move = moved(item, past.side, to);
      for (const remedy of [...ballast(project, rest), ...placards(project, rest)]) {
        const second = remedy.title.charAt(0).toLowerCase() + remedy.title.slice(1);
        yield {
          title: `${move.title} and ${second}`,
          series: `move ${item.subject.id} and ${remedy.series}`,
          changes: [...move.changes, ...remedy.changes],
        };
      }
    }
  }
}

/** Whether a limit bounds arms or butt lines from above. */
function isPastHigh(side: Side): boolean {
  return side === "aft" || side === "right";
}

/** Where something stands along the limit's own axis. */
function along<T>(side: Side, { arm, buttLine }: { readonly arm: T; readonly buttLine: T }): T {
  return isLateral(side) ? buttLine : arm;
}

function ownPlace({ ownArm, ownButtLine }: ChangedItem, side: Side): Written<Quantity<"length">> | undefined {
  return along(side, { arm: ownArm, buttLine: ownButtLine });
}

/** The added items that pull most and whose place the install record has. */
function pulling(project: Project, { limit, side }: Past): ChangedItem[] {
  return pullsTo(weightsOf(project).change.items, limit, side)
    .filter((item) => item.sense === "added" && ownPlace(item, side))
    .slice(0, mostItems);
}

/** Arms that are listed for an item, the nearest first, in the unit of its arm; mounts that list them permit no other butt line. */
function listedPlaces({ ownArm, otherArms }: ChangedItem, side: Side): readonly number[] | undefined {
  if (!ownArm || !otherArms) return undefined;
  if (isLateral(side)) return [];
  const { unit, written } = ownArm.value;
  return otherArms
    .map(({ value }) => inUnit(value, unit))
    .toSorted((a, b) => Math.abs(a - written) - Math.abs(b - written));
}

/** `to` in the unit of the item's own place; the moment in that of the derivation. */
function momentOfMove(project: Project, side: Side, item: ChangedItem, to: number): number {
  const { units } = weightsOf(project);
  const own = ownPlace(item, side);
  const at = along(side, { arm: item.arm, buttLine: item.buttLine });
  if (!own || !item.weight || !at) return 0;
  return item.weight.value * (convert(to, own.value.unit, units.arm, "length") - at.value);
}

function moved(item: ChangedItem, side: Side, to: number): Remedy {
  const { id } = item.subject;
  const own = ownPlace(item, side)!;
  const text = `${formatNumber(to, 8)} ${own.value.unit}`;
  const title = along(side, { arm: `Move ${id} to ${text}`, buttLine: `Move ${id} to butt line ${text}` });
  return rewrite(title, own.place, text, `move ${id}`);
}

/** Nothing outside everything that the records place: no aircraft may be there. */
function steppedPlace(
  project: Project,
  own: Written<Quantity<"length">>,
  side: Side,
  isKeptAt: (place: number) => boolean,
): number | undefined {
  const unit = own.value.unit;
  const step = armSteps[unit];
  if (step === undefined) return undefined;
  const { stations = [], equipment = [] } = project.airframe ?? {};
  const places = [...stations, ...equipment].flatMap(({ arm, buttLine }) => {
    const place = along(side, { arm, buttLine });
    return place ? [inUnit(place.value, unit)] : [];
  });
  const from = own.value.written;
  const isHigh = isPastHigh(side);
  const end = isHigh ? Math.min(...places) : Math.max(...places);
  const at = (steps: number) =>
    isHigh ? roundDown(from - steps * step, step) : roundUp(from + steps * step, step);
  const isOutward = isHigh ? end > from : end < from;
  if (isOutward || !Number.isFinite(end)) return undefined;
  const steps = leastSteps(Math.abs(end - from) / step, (count) => isKeptAt(at(count)));
  return steps === undefined ? undefined : at(steps);
}

/** The lightest ballast first; what is carried already is made heavier. */
function* ballast(project: Project, { side, keepsIf }: Past): Iterable<Remedy> {
  const { units } = weightsOf(project);
  const { install, airframe } = project;
  const carried = install.ballast ?? [];
  const found = (airframe?.stations ?? []).flatMap((station) => {
    const id = station.id?.value;
    const place = along<typeof station.arm>(side, { arm: station.arm, buttLine: station.buttLine });
    if (station.kind?.value !== "ballast" || id === undefined || !place || !station.limit) return [];
    const arm = inUnit(place.value, units.arm);
    const there = carried.filter((one) => one.station?.value === id);
    const old = there.reduce((sum, { weight }) => sum + (weight ? inUnit(weight.value, units.weight) : 0), 0);
    const room = inUnit(station.limit.value, units.weight) - old;
    const steps = leastSteps(room / weightStep.ballast, (count) => {
      const weight = roundUp(count * weightStep.ballast, weightStep.ballast);
      return keepsIf({ weight, moment: weight * arm }) ?? false;
    });
    if (!steps) return [];
    return [{ id, there, more: roundUp(steps * weightStep.ballast, weightStep.ballast) }];
  });
  for (const { id, there, more } of found.toSorted((a, b) => a.more - b.more)) {
    const [first] = there;
    if (first?.weight) {
      const all = roundUp(inUnit(first.weight.value, units.weight) + more, weightStep.ballast);
      const text = `${formatNumber(all, 8)} ${units.weight}`;
      yield rewrite(`Make the ballast at ${id} ${text}`, first.weight.place, text, "ballast");
      continue;
    }
    const text = `${formatNumber(more, 8)} ${units.weight}`;
    const ids = new Set(carried.map((one) => one.id?.value));
    const entry = { id: freeId("BALLAST", ids), station: id, weight: text };
    yield {
      title: `Add ${text} of ballast at ${id}`,
      series: "ballast",
      changes: [{ place: install.place, list: "ballast", entries: [entry] }],
    };
  }
}

/** The placard that takes least away first. */
function* placards(project: Project, { keepsIf, loads }: Past): Iterable<Remedy> {
  const { units, stationLimits } = weightsOf(project);
  const { install, airframe } = project;
  const crew = new Set(airframe?.crew?.stations?.map(({ value }) => value));
  const found = loads.flatMap(({ id, weight }) => {
    const limit = stationLimits.get(id);
    const most = limit?.after?.value;
    const isLowerable = limit?.station.kind?.value !== "fuel" && !crew.has(id);
    if (!limit || most === undefined || weight <= 0 || !isLowerable) return [];
    const at = (steps: number) =>
      Math.max(0, roundDown(most - steps * weightStep.placard, weightStep.placard));
    const steps = leastSteps(Math.ceil(most / weightStep.placard), (count) => {
      return keepsIf({ weight: 0, moment: 0, most: new Map([[id, at(count)]]) }) ?? false;
    });
    return steps ? [{ limit, id, to: at(steps), less: most - at(steps) }] : [];
  });
  for (const { limit, id, to } of found.toSorted((a, b) => a.less - b.less)) {
    const text = `${formatNumber(to, 8)} ${units.weight}`;
    const title = `Placard ${id} at ${text}`;
    const [first] = limit.placards;
    if (first?.limit) {
      yield rewrite(title, first.limit.place, text, "placard");
      continue;
    }
    const ids = new Set(install.placards?.map((one) => one.id?.value));
    const entry = { id: freeId("PLACARD", ids), station: id, limit: text };
    yield {
      title,
      series: "placard",
      changes: [{ place: install.place, list: "placards", entries: [entry] }],
    };
  }
}

function freeId(stem: string, taken: ReadonlySet<string | undefined>): string {
  let number = 1;
  while (taken.has(`${stem}-${number}`)) number++;
  return `${stem}-${number}`;
}
