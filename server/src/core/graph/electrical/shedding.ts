import type { ExistingLoad } from "../../records/types";
import { derive, derived, type Value } from "../value";
import type { ElectricalBasis } from "./basis";
import { largestCruise } from "./battery";
import type { SourceBalance } from "./source-balance";

/** One load that is shed after the loss of a source, and the demand that is left then. */
export interface SheddingStep {
  readonly load: ExistingLoad;
  readonly demand: Value;
}

/** Existing loads in the order in which they are shed, from the lasting cruise that asks most. */
export function deriveShedding(basis: ElectricalBasis, balances: readonly SourceBalance[]): SheddingStep[] {
  const cruise = largestCruise(balances);
  const steps: SheddingStep[] = [];
  let before = cruise?.demand;
  for (const load of loadsToShed(basis)) {
    const shed = cruise?.loads.find(({ kind, id }) => kind === "existing-load" && id === load.id?.value);
    if (!shed) continue;
    const demand: Value | undefined = basis.keep(
      derive({
        subject: { kind: "existing-load", id: shed.id },
        quantity: "demand-after-shedding",
        condition: cruise?.condition.id?.value,
        unit: "A",
        formula: "I_before - I_shed",
        operands: {
          I_before: derived("demand before it is shed", before),
          I_shed: derived(`current of ${shed.id}`, shed.current),
        },
        compute: ({ I_before, I_shed }) => I_before - I_shed,
      }),
    );
    if (!demand) continue;
    steps.push({ load, demand });
    before = demand;
  }
  return steps;
}

function loadsToShed({ project }: ElectricalBasis): ExistingLoad[] {
  return (project.airframe?.electrical?.existingLoads ?? [])
    .filter(({ shed }) => shed)
    .toSorted((a, b) => a.shed!.value - b.shed!.value);
}
