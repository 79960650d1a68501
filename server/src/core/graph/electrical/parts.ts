/** The parts of the electrical derivation, each resting on those before it. */
import { part } from "../part";
import { recalled } from "../recall";
import { Basis, circuitOf } from "./basis";
import { deriveBundles } from "./bundles";
import { deriveDevices } from "./devices";
import { deriveCharts, deriveGuards } from "./guards";
import { deriveBusVoltages, deriveLoadCurrents, deriveLoadVoltages } from "./load-currents";
import { deriveLoads } from "./loads";
import { deriveWires } from "./wires";

export const busVoltagesOf = part((project, keep) => deriveBusVoltages(new Basis(project, keep)));

export const voltagesOf = part((project, keep) =>
  deriveLoadVoltages(new Basis(project, keep), busVoltagesOf(project)),
);

export const currentsOf = part((project, keep) =>
  deriveLoadCurrents(new Basis(project, keep), voltagesOf(project)),
);

export const wiresOf = part((project, keep) => deriveWires(new Basis(project, keep), currentsOf(project)));

export const devicesOf = part((project, keep) =>
  deriveDevices(new Basis(project, keep), currentsOf(project)),
);

export const guardsOf = recalled((project) =>
  deriveGuards(devicesOf(project), circuitOf(project), wiresOf(project)),
);

export const chartsOf = part((project, keep) => deriveCharts(devicesOf(project), circuitOf(project), keep));

export const loadsOf = part((project, keep) =>
  deriveLoads(new Basis(project, keep), {
    currents: currentsOf(project),
    voltages: voltagesOf(project),
    ofBuses: busVoltagesOf(project),
    wires: wiresOf(project),
    devices: devicesOf(project),
  }),
);

export const bundlesOf = part((project, keep) => deriveBundles(new Basis(project, keep), wiresOf(project)));
