/** The parts of the electrical derivation, each resting on those before it. */
import { part } from "../part";
import { circuitOf, electricalPart } from "./basis";
import { deriveBundles } from "./bundles";
import { deriveDevices } from "./devices";
import { deriveCharts, deriveGuards } from "./guards";
import { deriveBusVoltages, deriveLoadCurrents, deriveLoadVoltages } from "./load-currents";
import { deriveLoads } from "./loads";
import { rateDevices } from "./rated";
import { deriveWires } from "./wires";

export const busVoltagesOf = electricalPart(deriveBusVoltages);

export const voltagesOf = electricalPart((basis) => deriveLoadVoltages(basis, busVoltagesOf(basis.project)));

export const currentsOf = electricalPart((basis) => deriveLoadCurrents(basis, voltagesOf(basis.project)));

export const wiresOf = electricalPart((basis) => deriveWires(basis, currentsOf(basis.project)));

export const ratedOf = part(rateDevices);

export const devicesOf = electricalPart((basis) =>
  deriveDevices(basis, ratedOf(basis.project), currentsOf(basis.project)),
);

export const chartsOf = part((project, keep) => deriveCharts(ratedOf(project), circuitOf(project), keep));

export const guardsOf = part((project, keep) =>
  deriveGuards(devicesOf(project), chartsOf(project), wiresOf(project), keep),
);

export const loadsOf = electricalPart((basis) =>
  deriveLoads(basis, {
    currents: currentsOf(basis.project),
    voltages: voltagesOf(basis.project),
    ofBuses: busVoltagesOf(basis.project),
    wires: wiresOf(basis.project),
    devices: devicesOf(basis.project),
  }),
);

export const bundlesOf = electricalPart((basis) => deriveBundles(basis, wiresOf(basis.project)));
