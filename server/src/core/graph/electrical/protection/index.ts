/** Whether breakers and fuses open when they must and hold when they must, and what contacts and bonds bear. */
import type { DeviceResult } from "../devices";
import type { ElectricalBasis } from "../index";
import type { LoadCurrents } from "../load-currents";
import { type BondResult, deriveBonds } from "./bonds";
import { type ContactResult, deriveContacts } from "./contacts";
import { type FaultResult, Faults, type UncomparedFault } from "./faults";
import { deriveInrushes, type InrushResult } from "./inrushes";
import { deriveOrders, type OrderResult } from "./order";
import { deriveSharing, type SharingResult } from "./sharing";
import { deriveSpares, type SpareResult } from "./spares";
import { Ways } from "./ways";

export interface ProtectionResults {
  readonly faults: readonly FaultResult[];
  readonly uncomparedFaults: readonly UncomparedFault[];
  readonly orders: readonly OrderResult[];
  readonly inrushes: readonly InrushResult[];
  readonly contacts: readonly ContactResult[];
  readonly sharing: readonly SharingResult[];
  readonly spares: readonly SpareResult[];
  readonly bonds: readonly BondResult[];
}

/** Pure; what the record does not tell is left out, with the reason in its result. */
export function deriveProtection(
  basis: ElectricalBasis,
  currents: LoadCurrents,
  devices: readonly DeviceResult[],
): ProtectionResults {
  const ways = new Ways(basis.project, basis.circuit.inlines);
  const faults = new Faults(basis, ways);
  const ofWires = faults.ofWires(devices);
  return {
    faults: ofWires.faults,
    uncomparedFaults: ofWires.uncompared,
    orders: deriveOrders(basis, devices, ways, faults),
    inrushes: deriveInrushes(basis, currents, devices),
    contacts: deriveContacts(basis, currents, devices),
    sharing: deriveSharing(basis, devices),
    spares: deriveSpares(basis, devices),
    bonds: deriveBonds(basis.project.install.bonds ?? [], basis.keep),
  };
}
