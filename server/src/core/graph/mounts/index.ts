/**
 * Mounts: the load factors that hold for each, the forces in its fasteners, what these hold, and the margins of
 * safety in each direction. Forces are ultimate and in lbf, lengths in inches, as the strengths are published.
 */
import {
  type FastenerForce,
  fastenerForces,
  marginOfSafety,
  shearTensionInteraction,
} from "../../methods/fastener-group";
import type { Project } from "../../project";
import type { Component, Mount, Placement, Shelf } from "../../records/types";
import {
  factorOfSafety,
  fittingFactor,
  frequentRemovalFactor,
  type LoadDirection,
  loadDirections,
} from "../../tables/load-factors";
import type { Lookup } from "../../tables/lookup";
import { byIdOf } from "../by-id";
import { Memory } from "../remember";
import {
  assumed,
  derive,
  derived,
  type Keep,
  known,
  type Operand,
  type Subject,
  tabled,
  type Value,
  written,
} from "../value";
import { airLoadOf } from "./air-load";
import { type LoadFactors, loadFactorsOf } from "./load-factors";
import { attitudeOf, type MountPlane, mountPlaneOf, pullsOn } from "./pattern";
import { floorLoadOf, type ShelfResult, shelvesOf } from "./shelves";
import { type Held, type Strengths, strengthsOf } from "./strengths";

export interface Mounts {
  readonly mounts: readonly MountResult[];
  readonly shelves: readonly ShelfResult[];
}

export interface MountResult {
  readonly mount: Mount;
  readonly component: Component;
  readonly id: string;
  readonly shelf: Shelf | undefined;
  /** Why no emergency load factor is known. */
  readonly gap: Lookup<unknown> | undefined;
  /** What has to be recorded before all of it can be checked: keys, each with what it belongs to. */
  readonly missing: readonly string[];
  readonly strengths: Strengths;
  readonly floorLoad: Held | undefined;
  readonly cases: readonly MountCase[];
}

/** A mount under the load of one direction. */
export interface MountCase {
  readonly direction: LoadDirection;
  readonly load: Value;
  /** False where the fasteners can't hold the load at all: they stand in one line and it tips over that. */
  readonly isStable: boolean;
  /** Shear and tension of the fastener that takes most of each. */
  readonly shear: Value | undefined;
  readonly tension: Value | undefined;
  /** Of the fastener with the greatest; only of bolts that are sheared and pulled. */
  readonly interaction: Value | undefined;
}

/** All values of a project's mounts. Pure. */
export function deriveMounts(project: Project, keepValue: Keep): Mounts {
  const { install, kit, airframe } = project;
  if (!install.mounts) return { mounts: [], shelves: [] };
  const components = byIdOf(kit?.components);
  const placements = new Map(install.placement?.map((one) => [one.component?.value, one]));
  const shelves = byIdOf(airframe?.shelves);
  const mounted = install.mounts.flatMap((mount) => {
    const component = mount.component && components.get(mount.component.value);
    return component?.id ? [{ mount, component }] : [];
  });
  const shared = [
    airframe?.aircraft,
    airframe?.limits?.takeoff?.place.node,
    install.document?.loadFactors?.place.node,
    ...(airframe?.loadFactors ?? []),
  ];
  const mounts = mounted.map(({ mount, component }) => {
    const placement = placements.get(component.id!.value);
    const shelf = mount.shelf && shelves.get(mount.shelf.value);
    return derivedMounts.recall(mount, component, [placement, shelf, ...shared], keepValue, (keep) =>
      new MountDerivation(project, mount, component, shelf, keep).run(placement),
    );
  });
  return { mounts, shelves: shelvesOf(project, mounted, keepValue) };
}

const derivedMounts = new Memory<Mount, Component, MountResult>();

class MountDerivation {
  private readonly subject: Subject;
  private readonly missing: string[] = [];

  constructor(
    private readonly project: Project,
    private readonly mount: Mount,
    private readonly component: Component,
    private readonly shelf: Shelf | undefined,
    private readonly keep: Keep,
  ) {
    this.subject = { kind: "component", id: component.id!.value };
  }

  run(placement: Placement | undefined): MountResult {
    const { mount, component, shelf, subject, keep } = this;
    const factors = loadFactorsOf(this.project, mount, subject, keep);
    const air = airLoadOf(mount, subject, keep);
    const strengths = strengthsOf(mount, shelf, subject, [...factors.standIns, ...air.standIns], keep);
    const plane = mountPlaneOf(component);
    const id = subject.id;
    if ("missing" in plane) this.missing.push(...plane.missing.map((key) => `${key} of ${id} in the kit`));
    this.missing.push(...air.missing);
    const cases = "missing" in plane ? [] : this.cases(factors, air.value, plane, placement, strengths);
    this.noteMissing(strengths, cases);
    return {
      mount,
      component,
      id,
      shelf,
      gap: factors.gap,
      missing: this.missing,
      strengths,
      floorLoad: floorLoadOf(component, shelf, subject, keep),
      cases,
    };
  }

  private noteMissing(strengths: Strengths, cases: readonly MountCase[]): void {
    const { mount, shelf } = this;
    if (mount.fastener && !strengths.shear) this.missing.push("fastener: shear");
    if (mount.fastener && !strengths.tension && cases.some(({ tension }) => tension)) {
      this.missing.push("fastener: tension");
    }
    if (!mount.shelf) this.missing.push("shelf");
    else if (shelf && !shelf.thickness) this.missing.push(`thickness of shelf ${mount.shelf.value}`);
    else if (shelf && !strengths.bearing && isThickEnough(strengths)) {
      this.missing.push(
        shelf.material && !mount.edgeDistance
          ? "edge-distance"
          : `bearing-strength of shelf ${mount.shelf.value}`,
      );
    }
  }

  private cases(
    { byDirection }: LoadFactors,
    air: Value | undefined,
    plane: MountPlane,
    placement: Placement | undefined,
    strengths: Strengths,
  ): MountCase[] {
    const attitude = attitudeOf(placement);
    const stance = { "face up": placement?.up, turn: placement?.turn };
    const isLoaded = (direction: LoadDirection) => byDirection.has(direction) || (air && direction === "aft");
    return loadDirections.filter(isLoaded).flatMap((direction): MountCase[] => {
      const load = this.keep(
        this.load(direction, byDirection.get(direction), direction === "aft" ? air : undefined),
      );
      if (!load) return [];
      const solved = pullsOn(plane, attitude, direction).map((pull) =>
        fastenerForces(plane.fasteners, {
          force: { u: pull.u * load.value, v: pull.v * load.value, n: pull.n * load.value },
          at: plane.cg,
        }),
      );
      const forces = solved.flatMap((one) => one ?? []);
      if (solved.includes(undefined)) {
        return [
          { direction, load, isStable: false, shear: undefined, tension: undefined, interaction: undefined },
        ];
      }
      const operands = () => ({
        F: derived("load at the centre of gravity", load),
        ...plane.operands(),
        ...(stance.turn && { turn: written("turn", stance.turn, "deg") }),
      });
      const shear = this.keep(
        this.worst("fastener-shear", direction, shearMethod, Math.max(...forces.map(shearOf)), operands),
      );
      const tension = this.keep(
        this.worst(
          "fastener-tension",
          direction,
          tensionMethod,
          Math.max(...forces.map(tensionOf)),
          operands,
        ),
      );
      const interaction = this.keep(this.interaction(direction, forces, strengths));
      this.keep(this.margin(direction, shear, tension, strengths));
      return [{ direction, load, isStable: true, shear, tension, interaction }];
    });
  }

  /** The weight times the factor, with the air's pull, and times the fitting factor where it applies. */
  private load(
    direction: LoadDirection,
    factor: Value | undefined,
    air: Value | undefined,
  ): Value | undefined {
    const { fitting, frequentlyRemoved } = this.mount;
    const isFactored = (fitting?.value ?? "factored") === "factored";
    const basis = this.project.airframe?.aircraft?.certificationBasis?.value;
    const isRemovedOften = frequentlyRemoved?.value === true && basis === "14 CFR 25";
    const factors = [
      ...(isFactored ? [["f", "fitting factor", fittingFactor, fitting?.place] as const] : []),
      ...(isRemovedOften
        ? [["r", "factor of frequent removal", frequentRemovalFactor, frequentlyRemoved.place] as const]
        : []),
    ];
    const operands: Record<string, Operand> = {
      ...(factor && {
        n: derived("ultimate load factor", factor),
        W: written("weight", this.component.weight, "lb"),
      }),
      ...(air && {
        s: tabled("factor of safety", factorOfSafety, "1", []),
        D: derived("air load, limit", air),
      }),
    };
    const pulls = [factor && "n * W", air && "s * D"].filter((one) => one !== undefined);
    for (const [symbol, name, found, place] of factors) operands[symbol] = tabled(name, found, "1", [place]);
    return derive({
      subject: this.subject,
      quantity: "mount-load",
      condition: direction,
      unit: "lbf",
      formula: [
        pulls.length > 1 ? `(${pulls.join(" + ")})` : pulls[0],
        ...factors.map(([symbol]) => symbol),
      ].join(" * "),
      operands,
      compute: ({ n = 0, W = 0, s = 0, D = 0, f = 1, r = 1 }) => (n * W + s * D) * f * r,
      sources: [...(air ? [factorOfSafety.source] : []), ...factors.map(([, , { source }]) => source)],
    });
  }

  /** Nothing where the worst fastener takes none. */
  private worst(
    quantity: "fastener-shear" | "fastener-tension",
    direction: LoadDirection,
    method: string,
    value: number,
    operands: () => Readonly<Record<string, Operand>>,
  ): Value | undefined {
    if (!(value > 1e-9)) return undefined;
    return known(value, "lbf", () => ({
      subject: this.subject,
      quantity,
      condition: direction,
      method,
      operands: operands(),
      sources: [staticsSource],
      notes: quantity === "fastener-tension" ? [pullThrough] : [],
    }));
  }

  private interaction(
    direction: LoadDirection,
    forces: readonly FastenerForce[],
    { shear, tension }: Strengths,
  ): Value | undefined {
    if (!shear || !tension || this.mount.fastener?.kind?.value === "ad-rivet") return undefined;
    const shareOf = (force: FastenerForce) =>
      shearTensionInteraction(shearOf(force) / shear.value, tensionOf(force) / tension.value);
    const worst = forces.toSorted((a, b) => shareOf(b) - shareOf(a))[0];
    if (!worst || !(tensionOf(worst) > 1e-9) || !(shearOf(worst) > 1e-9)) return undefined;
    return derive({
      subject: this.subject,
      quantity: "shear-tension-interaction",
      condition: direction,
      unit: "1",
      formula: "(V / Vs)^3 + (T / Ts)^2",
      operands: {
        V: assumed("shear of the fastener that takes most of both", shearOf(worst), "lbf", ofOneFastener),
        Vs: derived("shear strength", shear),
        T: assumed("tension of the same fastener", tensionOf(worst), "lbf", ofOneFastener),
        Ts: derived("tension strength", tension),
      },
      compute: ({ V, Vs, T, Ts }) => shearTensionInteraction(V / Vs, T / Ts),
    });
  }

  /** The least of the margins in shear, bearing and tension. */
  private margin(
    direction: LoadDirection,
    shear: Value | undefined,
    tension: Value | undefined,
    strengths: Strengths,
  ): Value | undefined {
    const terms: string[] = [];
    const operands: Record<string, Operand> = {};
    const add = (strength: Value | undefined, symbol: string, force: Value | undefined, by: string) => {
      if (!strength || !force) return;
      operands[symbol] = derived(strength.quantity.replaceAll("-", " "), strength);
      operands[by] = derived(force.quantity.replaceAll("-", " "), force);
      terms.push(`${symbol} / ${by}`);
    };
    add(strengths.shear, "Vs", shear, "V");
    add(strengths.bearing, "Vb", shear, "V");
    add(strengths.tension, "Ts", tension, "T");
    if (terms.length === 0) return undefined;
    return derive({
      subject: this.subject,
      quantity: "margin-of-safety",
      condition: direction,
      unit: "1",
      formula: terms.length === 1 ? `${terms[0]} - 1` : `min(${terms.join(", ")}) - 1`,
      operands,
      compute: ({ Vs, Vb, Ts, V = 0, T = 0 }) =>
        Math.min(
          ...[Vs, Vb].map((strength) => (strength === undefined ? Infinity : marginOfSafety(strength, V))),
          Ts === undefined ? Infinity : marginOfSafety(Ts, T),
        ),
    });
  }
}

function isThickEnough({ thickness }: Strengths): boolean {
  return !thickness || thickness.value.value >= thickness.limit.value;
}

const shearOf = ({ u, v }: FastenerForce): number => Math.hypot(u, v);
const tensionOf = ({ tension }: FastenerForce): number => Math.max(0, tension);

const shearMethod =
  "shear of the worst fastener: its share of the force, and of the moment in the plane by the polar moment of the group";
const tensionMethod =
  "tension of the worst fastener: its share of the pull, and of the overturning moment by the second moments of the group";
const pullThrough =
  "That the fastener's head pulls through the sheet is not checked: no published figure was found.";
const ofOneFastener = "Interaction is judged fastener by fastener.";

/** How a group shares a load is derived here. */
export const staticsSource = {
  document: "Statics of a fastener group",
  standing: "derived",
  note: "rigid base on equal fasteners",
} as const;
