import type { Project } from "../../project";
import { inUnit } from "../../quantities";
import type { Mount, PlaceFactors } from "../../records/types";
import { isStandIn, type Source } from "../../source";
import {
  emergencyFactors,
  factorOfSafety,
  type LoadDirection,
  loadDirections,
  type MountPlace,
  manoeuvreFactors,
  staticTestFactor,
} from "../../tables/load-factors";
import { covered, type Lookup } from "../../tables/lookup";
import {
  derive,
  derived,
  type Keep,
  type Operand,
  type Subject,
  tabled,
  type Value,
  written,
} from "../value";

export interface LoadFactors {
  /** The ultimate factor of each direction that anything is prescribed for. */
  readonly byDirection: ReadonlyMap<LoadDirection, Value>;
  /** Why no emergency factor is known at all. */
  readonly gap: Lookup<unknown> | undefined;
  /** Sources from memory that the factors rest on: what is judged by them only warns. */
  readonly standIns: readonly Source[];
}

const inAllDirections =
  "Loads of gusts and of landing are not computed: record the maker's where they are greater.";

/** What a mount has to hold in each direction: the greater of emergency landing and manoeuvre, as ultimate. */
export function loadFactorsOf(project: Project, mount: Mount, subject: Subject, keep: Keep): LoadFactors {
  const where = mount.where?.value;
  if (!where) return { byDirection: new Map(), gap: undefined, standIns: [] };
  const emergencies = new EmergencyFactors(project, mount, where, subject);
  const byDirection = new Map<LoadDirection, Value>();
  const standIns = new Set<Source>();
  for (const direction of loadDirections) {
    const emergency = keep(emergencies.of(direction));
    const manoeuvre = keep(manoeuvreFactor(project, direction, subject));
    const factor = keep(greatest(subject, direction, emergency, manoeuvre));
    if (factor) byDirection.set(direction, factor);
    for (const source of [...(emergency?.sources ?? []), ...(manoeuvre?.sources ?? [])]) {
      if (isStandIn(source)) standIns.add(source);
    }
  }
  return { byDirection, gap: emergencies.gap, standIns: [...standIns] };
}

/** Emergency-landing factors: the record's own, or those of the document or of the certification basis. */
class EmergencyFactors {
  private readonly recorded: PlaceFactors | undefined;

  constructor(
    private readonly project: Project,
    private readonly mount: Mount,
    private readonly where: MountPlace,
    private readonly subject: Subject,
  ) {
    this.recorded = project.airframe?.loadFactors?.find((one) => one.where?.value === where);
  }

  of(direction: LoadDirection): Value | undefined {
    const recorded = this.recorded?.[direction];
    const common = {
      subject: this.subject,
      quantity: "emergency-load-factor",
      condition: direction,
      unit: "g",
    } as const;
    if (this.recorded && recorded) {
      const { stated, data } = this.recorded;
      const sources: Source[] = data ? [{ document: data.value, standing: "record" }] : [];
      const n = written(`recorded factor, ${direction}`, recorded, "g");
      if (stated?.value === "limit") {
        return derive({
          ...common,
          formula: "s * n",
          operands: { s: tabled("factor of safety", factorOfSafety, "1", [stated.place]), n },
          compute: ({ s, n }) => s * n,
          sources: [...sources, factorOfSafety.source],
        });
      }
      return derive({ ...common, formula: "n", operands: { n }, compute: ({ n }) => n, sources });
    }
    const found = this.lookUp(direction);
    if (!found?.covered) return undefined;
    return derive({
      ...common,
      formula: "n",
      operands: { n: tabled(`factor of ${found.source.document}`, found, "g", this.keys()) },
      compute: ({ n }) => n,
      sources: [found.source],
      notes: ["Prescribed as ultimate: not multiplied by 1.5 again."],
    });
  }

  /** Set where neither record nor document gives any. */
  get gap(): Lookup<unknown> | undefined {
    if (this.recorded) return undefined;
    const { airframe } = this.project;
    const found = this.usesStaticTests
      ? staticTestFactor(airframe?.aircraft?.category?.value, this.where, "forward")
      : emergencyFactors(airframe?.aircraft?.certificationBasis?.value, this.where);
    return found.covered ? undefined : found;
  }

  private get usesStaticTests(): boolean {
    return this.project.install.document?.loadFactors !== undefined;
  }

  private lookUp(direction: LoadDirection): Lookup<number> | undefined {
    const aircraft = this.project.airframe?.aircraft;
    if (this.usesStaticTests) return staticTestFactor(aircraft?.category?.value, this.where, direction);
    const row = emergencyFactors(aircraft?.certificationBasis?.value, this.where);
    const factor = row.covered ? row.value[direction] : undefined;
    return factor === undefined ? undefined : covered(factor, row.source);
  }

  private keys() {
    const { install, airframe } = this.project;
    const { certificationBasis, category } = airframe?.aircraft ?? {};
    const document = install.document?.loadFactors;
    return [this.mount.where?.place, (document ? category : certificationBasis)?.place, document?.place];
  }
}

/** The limit manoeuvre factor: it loads a mount down, and up where it is negative. */
function manoeuvreFactor(
  { airframe }: Project,
  direction: LoadDirection,
  subject: Subject,
): Value | undefined {
  if (direction !== "up" && direction !== "down") return undefined;
  const { certificationBasis, category } = airframe?.aircraft ?? {};
  const takeoff = airframe?.limits?.takeoff;
  const basis = certificationBasis?.value;
  const found = manoeuvreFactors(basis, category?.value, takeoff && inUnit(takeoff.value, "lb"));
  if (!found?.positive.covered || !found.negative.covered) return undefined;
  const { source } = found.positive;
  const keys = [certificationBasis?.place, category?.place];
  const common = { subject, quantity: "manoeuvre-load-factor", condition: direction, unit: "g" } as const;
  const { negative } = found;
  if (direction === "up" && "factor" in negative.value) {
    return derive({
      ...common,
      formula: "n",
      operands: { n: tabled("negative factor", covered(negative.value.factor, source), "g", keys) },
      compute: ({ n }) => n,
      sources: [source],
    });
  }
  const isByWeight = basis === "14 CFR 25" || category?.value === "normal" || category?.value === "commuter";
  const positive: Operand = isByWeight
    ? written("maximum take-off weight", takeoff, "lb")
    : tabled("positive factor", found.positive, "g", keys);
  const formula = !isByWeight ? "n" : basis === "14 CFR 25" ? `max(2.5, ${byWeight})` : byWeight;
  const value = found.positive.value;
  if (direction === "down") {
    const operands: Record<string, Operand> = isByWeight ? { W: positive } : { n: positive };
    return derive({ ...common, formula, operands, compute: () => value, sources: [source] });
  }
  const share = "share" in negative.value ? negative.value.share : 0;
  const k = tabled("negative over positive", covered(share, source), "1", keys);
  const operands: Record<string, Operand> = isByWeight ? { k, W: positive } : { k, n: positive };
  return derive({
    ...common,
    formula: `k * ${formula}`,
    operands,
    compute: () => share * value,
    sources: [source],
  });
}

const byWeight = "min(3.8, 2.1 + 24000 / (W + 10000))";

function greatest(
  subject: Subject,
  direction: LoadDirection,
  emergency: Value | undefined,
  manoeuvre: Value | undefined,
): Value | undefined {
  if (!emergency && !manoeuvre) return undefined;
  const e = derived("emergency landing, ultimate", emergency);
  const n = derived("manoeuvre, limit", manoeuvre);
  const s = tabled("factor of safety", factorOfSafety, "1", []);
  const common = {
    subject,
    quantity: "load-factor",
    condition: direction,
    unit: "g",
    notes: manoeuvre ? [inAllDirections] : [],
  } as const;
  if (e && n) {
    return derive({
      ...common,
      formula: "max(e, s * n)",
      operands: { e, s, n },
      compute: ({ e, s, n }) => Math.max(e, s * n),
    });
  }
  if (n) {
    return derive({ ...common, formula: "s * n", operands: { s, n }, compute: ({ s, n }) => s * n });
  }
  return derive({ ...common, formula: "e", operands: { e }, compute: ({ e }) => e });
}
