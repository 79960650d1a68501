import { inUnit } from "../../quantities";
import type { Wire } from "../../records/types";
import type { Lookup } from "../../tables/lookup";
import { type StrandDamage, strandDamage } from "../../tables/strand-damage";

/** How many strands may be damaged in a wire of which some are recorded; undefined where none are, or no gauge. */
export function strandDamageOf(wire: Wire): Lookup<StrandDamage> | undefined {
  const { gauge, material, strands, nickedStrands, brokenStrands } = wire;
  if (!gauge || !(nickedStrands || brokenStrands)) return undefined;
  return strandDamage(material?.value ?? "copper", inUnit(gauge.value, "AWG"), strands?.value);
}
