import { wireMethods } from "../../methods/wires";
import type { Feeder, Source } from "../../records/types";
import { mainPowerDropShare, mainPowerDropSource } from "../../tables/voltage-drop-limits";
import { derive, derived, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { SourceOutputs } from "./source-outputs";

/** A main power wire: the drop at its source's rated current, and what is allowed. */
export interface FeederResult {
  readonly feeder: Feeder;
  readonly source: Source;
  readonly rating: Value;
  readonly drop: Value;
  readonly limit: Value;
}

/** Feeders that lead from an alternator or a battery to a bus. */
export function deriveFeeders(basis: ElectricalBasis, outputs: SourceOutputs): FeederResult[] {
  const feeders = basis.project.airframe?.electrical?.feeders ?? [];
  return feeders.flatMap((feeder) => {
    const source = outputs.sources.find(({ id }) => id!.value === feeder.from?.value);
    const isMain = source?.kind?.value === "alternator" || source?.kind?.value === "battery";
    return feeder.id && isMain ? mainFeeder(feeder, feeder.id.value, source, basis) : [];
  });
}

function mainFeeder(feeder: Feeder, id: string, source: Source, basis: ElectricalBasis): FeederResult[] {
  const subject = { kind: "feeder", id } as const;
  const rating = basis.keep(
    derive({
      subject,
      quantity: "feeder-current",
      unit: "A",
      formula: "I_rated",
      operands: { I_rated: written(`rating of ${source.id!.value}`, source.rating, "A") },
      compute: ({ I_rated }) => I_rated,
      notes:
        source.kind?.value === "battery"
          ? ["The battery's greatest current is taken for its 5-minute rate."]
          : [],
    }),
  );
  const drop = basis.keep(
    derive({
      subject,
      quantity: "feeder-drop",
      unit: "V",
      formula: "I * R",
      operands: {
        I: derived("current of the feeder", rating),
        R: written("resistance of the feeder", feeder.resistance, "ohm"),
      },
      compute: ({ I, R }) => I * R,
      sources: [wireMethods.voltageDrop.source],
    }),
  );
  const limit = basis.keep(
    derive({
      subject,
      quantity: "feeder-drop-limit",
      unit: "V",
      formula: "s * V",
      operands: {
        s: {
          name: "share of the voltage that main power wires may drop",
          value: mainPowerDropShare,
          unit: "1",
          places: [],
          source: mainPowerDropSource,
          notes: [],
        },
        V: written(`voltage of ${source.id!.value}`, source.voltage, "V"),
      },
      compute: ({ s, V }) => s * V,
      sources: [mainPowerDropSource],
    }),
  );
  return rating && drop && limit ? [{ feeder, source, rating, drop, limit }] : [];
}
