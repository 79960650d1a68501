/** Ducts that supply air: the flow of every outlet in each condition. */
import {
  type DuctNetwork,
  type DuctProblem,
  type DuctSolution,
  type DuctSegment as Part,
  solveDuct,
} from "../../methods/air/duct-network";
import type { Duct, DuctOutlet, DuctSegment, Fan } from "../../records/types";
import type { Source } from "../../source";
import { fittingLosses } from "../../tables/air-losses";
import type { Distance } from "../openings";
import { derive, derived, type Keep, type Operand, type Subject, type Value, written } from "../value";
import { type ConditionAir, modeIn } from "./conditions";

export interface DuctResult {
  readonly duct: Duct;
  readonly id: string;
  readonly outlets: readonly OutletResult[];
  readonly problem: DuctFault | undefined;
  readonly fromMemory: readonly string[];
}

export interface OutletResult {
  readonly outlet: DuctOutlet;
  readonly id: string;
  /** Flow and need in each condition, cfm. */
  readonly conditions: readonly (Distance & { readonly condition: string })[];
}

export type DuctFault =
  | DuctProblem
  | { readonly kind: "no-supply" }
  | { readonly kind: "section"; readonly segment: string }
  | { readonly kind: "loss"; readonly segment: string };

export interface DuctParts {
  readonly duct: Duct;
  readonly id: string;
  readonly fan: Fan | undefined;
  readonly airs: readonly ConditionAir[];
}

const ductSource: Source = {
  document: "Darcy, Weisbach and Colebrook",
  standing: "derived",
  note: "pressure balance of the whole tree; friction factor at each segment's own flow",
};

export function deriveDuct(parts: DuctParts, keep: Keep): DuctResult {
  const { duct, id, fan } = parts;
  const read = readDuct(duct);
  const fromMemory = (duct.segments ?? []).flatMap((segment) =>
    (segment.fittings ?? [])
      .filter(({ kind, loss }) => kind && kind.value !== "other" && !loss)
      .map(({ kind }) => `${kind!.value} in ${segment.id?.value}`),
  );
  const results = new Map(
    (duct.outlets ?? []).map((outlet) => [outlet, [] as OutletResult["conditions"][number][]]),
  );
  const give = (problem: DuctFault | undefined): DuctResult => ({
    duct,
    id,
    fromMemory,
    problem,
    outlets: [...results].flatMap(([outlet, conditions]) =>
      outlet.id ? [{ outlet, id: outlet.id.value, conditions }] : [],
    ),
  });
  if ("kind" in read) return give(read);
  if (!fan && !duct.flow) return give({ kind: "no-supply" });
  for (const air of parts.airs) {
    const { density, viscosity, condition } = air;
    const isOn = !fan || modeIn(condition, fan.component?.value) !== undefined;
    if (!isOn || !density || viscosity === undefined) continue;
    const supply = supplyOf(duct, fan, density.value);
    if (!supply) return give(undefined);
    const solved = solveDuct({ ...read, supply, density: density.value, viscosity });
    if (solved.kind !== "solved") return give(solved);
    const shown = new Solved(parts, air, solved, keep);
    shown.supply();
    for (const [index, outlet] of (duct.outlets ?? []).entries()) {
      results.get(outlet)?.push({ condition: air.id, ...shown.outlet(outlet, index) });
    }
  }
  return give(undefined);
}

/** Pressure of a fan's curve in thinner or denser air goes with its density; its volume stays. */
function supplyOf(duct: Duct, fan: Fan | undefined, density: number): DuctNetwork["supply"] | undefined {
  if (!fan) return duct.flow && { kind: "flow", flow: duct.flow.value.si };
  const own = fan.density?.value.si;
  const curve = (fan.curve ?? []).flatMap(({ flow, pressure }) =>
    flow && pressure && own ? [{ flow: flow.value.si, pressure: (pressure.value.si * density) / own }] : [],
  );
  return curve.length === fan.curve?.length ? { kind: "fan", curve } : undefined;
}

/** Sizes in SI; a segment or an outlet that is not whole is told. */
function readDuct(duct: Duct): Pick<DuctNetwork, "segments" | "outlets"> | DuctFault {
  const segments = duct.segments ?? [];
  const indexOf = (id: string | undefined) => segments.findIndex((one) => one.id?.value === id);
  const parts: Part[] = [];
  for (const segment of segments) {
    const name = segment.id?.value ?? "";
    const section = sectionOf(segment);
    const after = segment.after && indexOf(segment.after.value);
    if (!section || !segment.length || !segment.roughness) {
      return { kind: "section", segment: name };
    }
    const losses = lossesOf(segment);
    if (losses === undefined) return { kind: "loss", segment: name };
    parts.push({
      after,
      length: segment.length.value.si,
      roughness: segment.roughness.value.si,
      losses,
      ...section,
    });
  }
  const outlets = (duct.outlets ?? []).map(({ on, area, loss }) => {
    const index = indexOf(on?.value);
    return { on: index, area: area?.value.si ?? parts[index]?.area ?? 0, loss: loss?.value ?? 1 };
  });
  return { segments: parts, outlets };
}

/** Area and hydraulic diameter, 4 areas over the perimeter. */
function sectionOf({ diameter, width, height }: DuctSegment): Pick<Part, "area" | "diameter"> | undefined {
  if (diameter) return { area: (Math.PI / 4) * diameter.value.si ** 2, diameter: diameter.value.si };
  if (!width || !height) return undefined;
  const [w, h] = [width.value.si, height.value.si];
  return { area: w * h, diameter: (2 * w * h) / (w + h) };
}

function lossesOf({ fittings }: DuctSegment): number | undefined {
  let total = 0;
  for (const { kind, count, loss } of fittings ?? []) {
    const one = loss?.value ?? (kind && kind.value !== "other" ? fittingLosses[kind.value] : undefined);
    if (one === undefined) return undefined;
    total += one * (count?.value ?? 1);
  }
  return total;
}

/** One solution as values. */
class Solved {
  private readonly network: Readonly<Record<string, Operand>>;

  constructor(
    private readonly parts: DuctParts,
    private readonly air: ConditionAir,
    private readonly solution: DuctSolution,
    private readonly keep: Keep,
  ) {
    const { duct, fan } = parts;
    const sizes: Record<string, Operand> = { rho: derived("density of the air", air.density) };
    for (const segment of duct.segments ?? []) {
      const name = segment.id?.value ?? "";
      const put = (what: string, operand: Operand) => {
        if (operand) sizes[`${name} ${what}`] = operand;
      };
      put("length", written(`length of ${name}`, segment.length, "m"));
      put("diameter", written(`diameter of ${name}`, segment.diameter, "mm"));
      put("width", written(`width of ${name}`, segment.width, "mm"));
      put("height", written(`height of ${name}`, segment.height, "mm"));
    }
    const supply = fan ? undefined : written("flow of the supply", duct.flow, "cfm");
    this.network = supply ? { ...sizes, supply } : sizes;
  }

  supply(): void {
    this.value({ kind: "duct", id: this.parts.id }, "duct-flow", "cfm", this.solution.flow / cfm);
    this.value({ kind: "duct", id: this.parts.id }, "duct-pressure", "Pa", this.solution.pressure);
    for (const [index, segment] of (this.parts.duct.segments ?? []).entries()) {
      const section = sectionOf(segment);
      const flow = this.solution.segments[index]?.flow;
      if (!section || flow === undefined || !segment.id) continue;
      const subject = { kind: "duct-segment", id: segment.id.value } as const;
      this.value(subject, "duct-velocity", "ft/min", flow / section.area / feetPerMinute);
    }
  }

  outlet(outlet: DuctOutlet, index: number): Distance {
    const subject = { kind: "duct-outlet", id: outlet.id?.value ?? "" } as const;
    const value = this.value(subject, "outlet-flow", "cfm", this.solution.outlets[index]! / cfm);
    const segment = this.parts.duct.segments?.find(({ id }) => id?.value === outlet.on?.value);
    const area = outlet.area?.value.si ?? (segment && sectionOf(segment)?.area);
    if (area) {
      const velocity = this.solution.outlets[index]! / area / feetPerMinute;
      this.value(subject, "outlet-velocity", "ft/min", velocity);
    }
    const least = this.keep(
      derive({
        subject,
        quantity: "outlet-need",
        condition: this.air.id,
        unit: "cfm",
        formula: "need",
        operands: { need: written("flow that is needed", outlet.needed, "cfm") },
        compute: ({ need }) => need,
      }),
    );
    return { value, least };
  }

  private value(
    subject: Subject,
    quantity: "duct-flow" | "duct-pressure" | "duct-velocity" | "outlet-flow" | "outlet-velocity",
    unit: "cfm" | "Pa" | "ft/min",
    value: number,
  ): Value | undefined {
    return this.keep(
      derive({
        subject,
        quantity,
        condition: this.air.id,
        unit,
        method: "pressure balance of the whole duct",
        operands: this.network,
        compute: () => value,
        sources: [ductSource],
      }),
    );
  }
}

/** In m3/s and m/s. */
const cfm = 0.3048 ** 3 / 60;
const feetPerMinute = 0.3048 / 60;
