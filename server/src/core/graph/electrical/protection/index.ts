/** Whether breakers and fuses open when they must and hold when they must, and what contacts and bonds bear. */
import type { Project } from "../../../project";
import { part, together } from "../../part";
import { recalled } from "../../recall";
import { derive, type Keep, sumOf, type Value, written } from "../../value";
import { type ElectricalBasis, electricalPart } from "../basis";
import { inlinesOf } from "../layout";
import { chartsOf, currentsOf, devicesOf, ratedOf } from "../parts";
import { type BondResult, deriveBonds } from "./bonds";
import { type ContactResult, deriveContacts } from "./contacts";
import { type FaultResult, Faults, type UncomparedFault } from "./faults";
import { deriveInrushes, type InrushResult } from "./inrushes";
import { deriveOrders, type OrderResult } from "./order";
import { derivePeaks, type PeakResult } from "./peaks";
import { Meshes } from "./shared-faults";
import { deriveSharing, type SharingResult } from "./sharing";
import { deriveSpares, type SpareResult } from "./spares";
import { Ways } from "./ways";

export interface ProtectionResults {
  readonly faults: readonly FaultResult[];
  readonly uncomparedFaults: readonly UncomparedFault[];
  readonly orders: readonly OrderResult[];
  readonly inrushes: readonly InrushResult[];
  readonly peaks: readonly PeakResult[];
  readonly contacts: readonly ContactResult[];
  readonly sharing: readonly SharingResult[];
  readonly spares: readonly SpareResult[];
  readonly bonds: readonly BondResult[];
  /** Undefined unless every source's rating is recorded. */
  readonly sourcesTogether: Value | undefined;
}

const waysOf = recalled((project) => new Ways(project));
const meshesOf = recalled((project) => new Meshes(project, inlinesOf(project)));

const faultsOf = electricalPart((basis) =>
  finderOf(basis).ofWires(chartsOf(basis.project), ratedOf(basis.project)),
);
const ordersOf = electricalPart((basis) =>
  deriveOrders(ratedOf(basis.project), waysOf(basis.project), finderOf(basis), basis.keep),
);
const inrushesOf = electricalPart((basis) =>
  deriveInrushes(basis, currentsOf(basis.project), devicesOf(basis.project)),
);
const peaksOf = part((project, keep) => derivePeaks(devicesOf(project), keep));
const contactsOf = electricalPart((basis) =>
  deriveContacts(basis, currentsOf(basis.project), devicesOf(basis.project)),
);
const sharingOf = electricalPart((basis) => deriveSharing(basis, devicesOf(basis.project)));
const sparesOf = electricalPart((basis) => deriveSpares(basis, devicesOf(basis.project)));
const bondsOf = part((project, keep) => deriveBonds(project.install.bonds ?? [], keep));
const sourcesTogetherOf = part(sourcesTogether);

/** In the order in which a worksheet shows their values. */
export const protectionParts = [
  faultsOf,
  ordersOf,
  inrushesOf,
  peaksOf,
  contactsOf,
  sharingOf,
  sparesOf,
  bondsOf,
  sourcesTogetherOf,
] as const;

/** Pure; what the record does not tell is left out, with the reason in its result. */
export const protectionOf: (project: Project) => ProtectionResults = together({
  faults: (project) => faultsOf(project).faults,
  uncomparedFaults: (project) => faultsOf(project).uncompared,
  orders: ordersOf,
  inrushes: inrushesOf,
  peaks: peaksOf,
  contacts: contactsOf,
  sharing: sharingOf,
  spares: sparesOf,
  bonds: bondsOf,
  sourcesTogether: sourcesTogetherOf,
});

function finderOf(basis: ElectricalBasis): Faults {
  return new Faults(basis, waysOf(basis.project), () => meshesOf(basis.project));
}

function sourcesTogether({ airframe }: Project, keep: Keep): Value | undefined {
  const { aircraft, electrical } = airframe ?? {};
  const sources = electrical?.sources ?? [];
  if (sources.length === 0) return undefined;
  return keep(
    derive({
      subject: { kind: "aircraft", id: aircraft?.serial?.value ?? "aircraft" },
      quantity: "sources-together",
      unit: "A",
      formula: "sum(I)",
      operands: { I: sources.map(({ id, rating }) => written(`rating of ${id?.value}`, rating, "A")) },
      compute: ({ I }) => sumOf(I),
    }),
  );
}
