/** What the heat balance of one space in one condition rests on. */
import { heatBalanceSource } from "../../methods/heat-balance";
import type { Project } from "../../project";
import type { Climate, ClimateCase, Condition, Conditioning, Space } from "../../records/types";
import type { Place } from "../../records/written";
import type { CoverageGap } from "../../tables/lookup";
import type { Electrical } from "../electrical";
import type { QuantityName } from "../quantity-names";
import { derive, type Keep, type Operand, type Subject, sumOf, type Value, written } from "../value";

/** A figure that the balance lacks. */
export interface ClimateGap {
  readonly wanted: string;
  readonly place: Place;
  /** Set where a table ends before it. */
  readonly reason?: CoverageGap;
}

/** Electrical power of a component that warms the space, by the solved network. */
export interface Power {
  readonly id: string;
  readonly share: Operand;
  readonly volts: Value | undefined;
  readonly amps: Value | undefined;
  readonly isRunning: boolean;
  readonly place: Place;
}

export interface CaseBasis {
  readonly entry: Climate;
  readonly climateCase: ClimateCase;
  readonly space: Space;
  readonly condition: Condition;
  readonly powers: readonly Power[];
  readonly serving: readonly Serving[];
}

/** A component that serves the space, by its points in the mode that it runs in. */
export interface Serving {
  readonly id: string;
  readonly points: readonly Conditioning[];
}

export function powersIn(
  { equipment = [] }: Climate,
  condition: Condition,
  electrical: () => Electrical,
): Power[] {
  return equipment.flatMap(({ component, share, place }): Power[] => {
    if (!component) return [];
    const load = electrical().loads.find(({ path }) => path.id === component.value);
    const state = load?.states.find((one) => one.condition === condition);
    return [
      {
        id: component.value,
        share: share
          ? written("share that warms the space", share, "%")
          : { name: "share that warms the space", value: 100, unit: "%", places: [], notes: [] },
        volts: state?.voltage,
        amps: state?.current,
        isRunning: condition.loads?.some(({ key }) => key.value === component.value) ?? false,
        place,
      },
    ];
  });
}

/** What the components that serve the space do in the modes that they run in. */
export function servingIn({ servedBy = [] }: Climate, condition: Condition, { kit }: Project): Serving[] {
  return servedBy.flatMap(({ value: id }) => {
    const mode = condition.loads?.find(({ key }) => key.value === id)?.value?.value;
    const component = kit?.components?.find((one) => one.id?.value === id);
    const points = (component?.conditioning ?? []).filter(
      (one) => mode !== undefined && one.mode?.value === mode,
    );
    return points.length > 0 ? [{ id, points }] : [];
  });
}

/** A balance in the making. */
export interface Balance {
  readonly basis: CaseBasis;
  readonly keep: Keep;
  readonly common: { readonly subject: Subject; readonly condition: string | undefined };
  readonly does: "cool" | "heat" | undefined;
  readonly inside: Operand;
  readonly outside: Operand;
  readonly outsideAir: ClimateCase["outside"];
  /** What it was found to lack. */
  readonly gaps: ClimateGap[];
}

export function beginBalance(basis: CaseBasis, keep: Keep): Balance {
  const { entry, climateCase, space, condition, serving } = basis;
  const outsideAir = climateCase.outside ?? condition.outsideAir;
  return {
    basis,
    keep,
    common: { subject: { kind: "space", id: space.id!.value }, condition: condition.id?.value },
    does: serving[0]?.points[0]?.does?.value,
    inside: written("set point", entry.setPoint, "degC"),
    outside: written("outside air", outsideAir, "degC"),
    outsideAir,
    gaps: outsideAir ? [] : [{ wanted: "temperature of the outside air", place: climateCase.place }],
  };
}

export function sumOfHeats(
  balance: Balance,
  quantity: QuantityName,
  q: readonly Operand[],
): Value | undefined {
  const common = { ...balance.common, quantity, unit: "W", sources: [heatBalanceSource] } as const;
  return balance.keep(
    q.length === 0
      ? derive({ ...common, formula: "0", operands: {}, compute: () => 0 })
      : derive({ ...common, formula: "sum(q)", operands: { q }, compute: (numbers) => sumOf(numbers.q) }),
  );
}

/** A component may share its heat between several spaces, so that its values there have names of their own. */
export function inSpace(balance: Balance, id: string): string {
  return `${id} in ${balance.basis.space.id!.value}`;
}
