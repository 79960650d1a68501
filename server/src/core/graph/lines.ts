/**
 * Hoses and tubes as they are installed: what each may be bent to, held at, filled with and put under, by its
 * maker's limits where the record gives them, else by the published tables; and the holes that they go through.
 */
import type { Project } from "../project";
import type { Line, LineFitting } from "../records/types";
import type { Place } from "../records/written";
import type { Source } from "../source";
import { flareNutTorque } from "../tables/flare-nut-torque";
import {
  type HoseRow,
  hoseBySize,
  hoseShortening,
  hoseSlack,
  hoseSupportSpacing,
  inchesPerDash,
  leastFlattenedShare,
  spacingShareWithFittings,
  tubeBendRadius,
  tubeSupportSpacing,
} from "../tables/fluid-lines";
import { type CoverageGap, covered, type Lookup } from "../tables/lookup";
import { saturationPressure } from "../tables/refrigerant";
import { type DrainResult, deriveDrains } from "./drains";
import { derivePassThroughs, type PassThroughResult } from "./pass-throughs";
import type { QuantityName } from "./quantity-names";
import { Memory } from "./remember";
import {
  assumed,
  derive,
  derived,
  type Keep,
  keeper,
  type Operand,
  type Subject,
  tabled,
  type Value,
  type ValueUnit,
  written,
} from "./value";

export interface Lines {
  readonly runs: readonly LineRun[];
  readonly passThroughs: readonly PassThroughResult[];
  readonly drains: readonly DrainResult[];
  readonly values: readonly Value[];
}

export interface LineRun {
  readonly line: Line;
  readonly id: string;
  /** Outside diameter of the tube, or of the tube that the hose fits, in in. */
  readonly size: Value | undefined;
  readonly leastBendRadius: Value | undefined;
  readonly leastFlattened: Value | undefined;
  readonly widestSupportSpacing: Value | undefined;
  /** In psi. */
  readonly pressureRating: Value | undefined;
  /** In degF. */
  readonly temperatureLimit: Value | undefined;
  /** Pressure that the refrigerant has at the highest temperature, in psi. */
  readonly saturationPressure: Value | undefined;
  readonly slack: HoseSlack | undefined;
  readonly fittings: readonly FittingResult[];
  readonly gaps: readonly LineGap[];
}

/** In the unit of in. */
export interface HoseSlack {
  readonly slack: Value;
  readonly least: Value;
  readonly most: Value;
  /** How much of it the hose takes when it shortens under pressure. */
  readonly shortening: Value | undefined;
}

export interface FittingResult {
  readonly fitting: LineFitting;
  readonly id: string;
  readonly least: Value | undefined;
  readonly most: Value | undefined;
}

/** A number that no table gives and the record does not either. */
export interface LineGap {
  readonly wanted: string;
  readonly place: Place;
  /** Undefined where no table was looked for: no published figure was found at all. */
  readonly table: { readonly reason: CoverageGap; readonly source: Source } | undefined;
}

/** Pure; what is missing in the record is left out of the result. */
export function deriveLines(project: Project): Lines {
  const { keep, list } = keeper();
  const { lines = [] } = project.install;
  const runs = lines.flatMap((line): LineRun[] =>
    line.id ? [remembered.recall(line, line, [], keep, (kept) => new LineDerivation(line, kept).run())] : [],
  );
  return {
    runs,
    passThroughs: derivePassThroughs(project, runs, keep),
    drains: deriveDrains(project, keep),
    values: list(),
  };
}

const remembered = new Memory<Line, Line, LineRun>();

/** What follows from one line's own entry, and from nothing else. */
class LineDerivation {
  private readonly subject: Subject;
  private readonly gaps: LineGap[] = [];
  private readonly size: Value | undefined;
  private readonly hose: HoseRow | undefined;

  constructor(
    private readonly line: Line,
    private readonly keep: Keep,
  ) {
    this.subject = { kind: "line", id: line.id!.value };
    this.size = keep(this.sizeOf());
    const row = this.size && line.specification && hoseBySize(this.size.value);
    this.hose = row?.covered ? row.value : undefined;
  }

  run(): LineRun {
    const { line, size } = this;
    return {
      line,
      id: line.id!.value,
      size,
      leastBendRadius: line.bends && this.leastBendRadius(),
      leastFlattened: line.kind?.value === "tube" ? this.leastFlattened() : undefined,
      widestSupportSpacing: line.supportSpacing && this.widestSupportSpacing(),
      pressureRating: line.pressure || this.isBoiling() ? this.pressureRating() : undefined,
      temperatureLimit: line.hottest && this.temperatureLimit(),
      saturationPressure: this.saturationPressure(),
      slack: line.kind?.value === "hose" ? this.slack() : undefined,
      fittings: (line.fittings ?? []).flatMap((fitting): FittingResult[] =>
        fitting.id ? [this.fitting(fitting, fitting.id.value)] : [],
      ),
      gaps: this.gaps,
    };
  }

  private sizeOf(): Value | undefined {
    const { dash, outsideDiameter } = this.line;
    const common = { subject: this.subject, quantity: "line-size", unit: "in" } as const;
    if (!dash) return this.copy("line-size", "in", written("outside diameter", outsideDiameter, "in"));
    return derive({
      ...common,
      formula: "n / 16",
      operands: {
        n: { name: "dash number", value: dash.value, unit: "1", places: [dash.place], notes: [] },
      },
      compute: ({ n }) => n * inchesPerDash.value,
      sources: [inchesPerDash.source],
    });
  }

  private leastBendRadius(): Value | undefined {
    const { makerLimits, kind, material, bends } = this.line;
    if (makerLimits?.bendRadius) return this.ofMaker("least-line-bend-radius", "in", "bendRadius");
    if (!this.size || !kind || bends?.length === 0) return undefined;
    const lookup =
      kind.value === "hose"
        ? this.ofHose((row) => row.bendRadius)
        : material && tubeBendRadius(material.value, this.size.value);
    return this.ofTable("least-line-bend-radius", "in", "least bend radius", lookup);
  }

  private leastFlattened(): Value | undefined {
    if (!this.line.bends?.some(({ flattened }) => flattened)) return undefined;
    return this.keep(
      derive({
        subject: this.subject,
        quantity: "least-flattened-diameter",
        unit: "in",
        formula: "k * D",
        operands: {
          k: tabled("share of the diameter", ofLimit(leastFlattenedShare), "1", []),
          D: derived("outside diameter", this.size),
        },
        compute: ({ k, D }) => k * D,
        sources: [leastFlattenedShare.source],
      }),
    );
  }

  private widestSupportSpacing(): Value | undefined {
    const { makerLimits, kind, material, carriesFittings } = this.line;
    if (makerLimits?.supportSpacing) {
      return this.ofMaker("widest-line-support-spacing", "in", "supportSpacing");
    }
    if (!this.size || !kind) return undefined;
    if (kind.value === "hose") {
      return this.ofTable(
        "widest-line-support-spacing",
        "in",
        "support spacing",
        ofLimit(hoseSupportSpacing),
      );
    }
    const lookup = material && tubeSupportSpacing(material.value, this.size.value);
    if (!carriesFittings?.value || !lookup?.covered) {
      return this.ofTable("widest-line-support-spacing", "in", "support spacing", lookup);
    }
    return this.keep(
      derive({
        subject: this.subject,
        quantity: "widest-line-support-spacing",
        unit: "in",
        formula: "k * s",
        operands: {
          k: tabled("share where it carries fittings", ofLimit(spacingShareWithFittings), "1", [
            carriesFittings.place,
          ]),
          s: tabled("support spacing of a plain tube", lookup, "in", [material?.place]),
        },
        compute: ({ k, s }) => k * s,
        sources: [lookup.source],
      }),
    );
  }

  private isRefrigerant(): boolean {
    return this.line.fluid?.value === "r-134a" || this.line.fluid?.value === "refrigerant";
  }

  private isBoiling(): boolean {
    return this.line.fluid?.value === "r-134a" && this.line.hottest !== undefined;
  }

  /** That the table's hose suits a refrigerant is not said there. */
  private pressureRating(): Value | undefined {
    const { makerLimits, pressure, hottest, kind } = this.line;
    if (makerLimits?.pressure) return this.ofMaker("line-pressure-rating", "psi", "pressure");
    if (kind?.value === "hose" && !this.isRefrigerant() && this.line.specification) {
      return this.ofTable(
        "line-pressure-rating",
        "psi",
        "operating pressure",
        this.ofHose((row) => row.operating),
      );
    }
    this.gaps.push({ wanted: "working pressure", place: (pressure ?? hottest)!.place, table: undefined });
    return undefined;
  }

  private temperatureLimit(): Value | undefined {
    if (this.line.makerLimits?.temperature) {
      return this.ofMaker("line-temperature-limit", "degF", "temperature");
    }
    if (!this.hose) return undefined;
    return this.ofTable(
      "line-temperature-limit",
      "degF",
      "highest temperature",
      this.ofHose((row) => row.hottest),
    );
  }

  private saturationPressure(): Value | undefined {
    const { hottest } = this.line;
    if (!hottest || !this.isBoiling()) return undefined;
    const T = written("highest temperature", hottest, "degF");
    const lookup = saturationPressure(T!.value);
    if (!lookup.covered) {
      this.gaps.push({ wanted: "pressure of R-134a", place: hottest.place, table: lookup });
      return undefined;
    }
    return this.keep(
      derive({
        subject: this.subject,
        quantity: "saturation-pressure",
        unit: "psi",
        method: "straight line between the points of the table, which lies above the curve",
        operands: { T },
        compute: () => lookup.value,
        sources: [lookup.source],
        notes: lookup.notes,
      }),
    );
  }

  private slack(): HoseSlack | undefined {
    const { length, way } = this.line;
    const L = written("length of the hose", length, "in");
    const w = written("way that it has to go", way, "in");
    const slack = this.keep(
      derive({
        subject: this.subject,
        quantity: "hose-slack",
        unit: "in",
        formula: "L - w",
        operands: { L, w },
        compute: (numbers) => numbers.L - numbers.w,
      }),
    );
    const share = (quantity: QuantityName, name: string, value: number, of: Operand, symbol: Source) =>
      this.keep(
        derive({
          subject: this.subject,
          quantity,
          unit: "in",
          formula: "k * l",
          operands: { k: tabled(name, covered(value, symbol), "1", []), l: of },
          compute: ({ k, l }) => k * l,
          sources: [symbol],
        }),
      );
    const least = share("least-hose-slack", "least share of the way", hoseSlack.least, w, hoseSlack.source);
    const most = share("most-hose-slack", "most of the way", hoseSlack.most, w, hoseSlack.source);
    if (!slack || !least || !most) return undefined;
    const { value, source } = hoseShortening;
    return {
      slack,
      least,
      most,
      shortening: share("hose-shortening", "share of its length", value, L, source),
    };
  }

  private fitting(fitting: LineFitting, id: string): FittingResult {
    const { table, column } = fitting;
    const lookup = table && column && this.size && flareNutTorque(table.value, column.value, this.size.value);
    if (lookup && !lookup.covered) {
      this.gaps.push({ wanted: `torque of ${id}`, place: table.place, table: lookup });
    }
    const end = (quantity: QuantityName, index: 0 | 1) =>
      this.keep(
        derive({
          subject: { kind: "fitting", id },
          quantity,
          unit: "in lb",
          formula: "t",
          operands: {
            t: tabled(
              index === 0 ? "least torque" : "greatest torque",
              lookup?.covered ? covered(lookup.value[index], lookup.source) : undefined,
              "in lb",
              [table?.place, column?.place],
            ),
          },
          compute: ({ t }) => t,
          sources: lookup ? [lookup.source] : [],
        }),
      );
    return { fitting, id, least: end("least-fitting-torque", 0), most: end("most-fitting-torque", 1) };
  }

  /** A number of the hose's row; undefined where no specification names the table. */
  private ofHose(of: (row: HoseRow) => number): Lookup<number> | undefined {
    if (!this.size || !this.line.specification) return undefined;
    const row = hoseBySize(this.size.value);
    return row.covered ? covered(of(row.value), row.source, row.notes) : row;
  }

  private ofMaker(
    quantity: QuantityName,
    unit: "in" | "psi" | "degF",
    key: "bendRadius" | "supportSpacing" | "pressure" | "temperature",
  ): Value | undefined {
    const limits = this.line.makerLimits;
    const source: readonly Source[] = limits?.data
      ? [{ document: limits.data.value, standing: "record" }]
      : [];
    return this.copy(quantity, unit, written("limit of its maker", limits?.[key], unit), source);
  }

  private ofTable(
    quantity: QuantityName,
    unit: ValueUnit,
    wanted: string,
    lookup: Lookup<number> | undefined,
  ): Value | undefined {
    const { line } = this;
    const place = (line.dash ?? line.outsideDiameter ?? line.id)!.place;
    if (!lookup) {
      this.gaps.push({ wanted, place: line.id!.place, table: undefined });
      return undefined;
    }
    if (!lookup.covered) this.gaps.push({ wanted, place, table: lookup });
    const keys = [place, line.material?.place ?? line.specification?.place];
    return this.copy(quantity, unit, tabled(wanted, lookup, unit, keys), [lookup.source]);
  }

  private copy(
    quantity: QuantityName,
    unit: ValueUnit,
    limit: Operand,
    sources: readonly Source[] = [],
  ): Value | undefined {
    const value = derive({
      subject: this.subject,
      quantity,
      unit,
      formula: "x",
      operands: { x: limit },
      compute: ({ x }) => x,
      sources,
    });
    return quantity === "line-size" ? value : this.keep(value);
  }
}

function ofLimit({ value, source }: { readonly value: number; readonly source: Source }): Lookup<number> {
  return covered(value, source);
}

/** A share as a limit in per cent. */
export function percentLimit(subject: Subject, quantity: QuantityName, share: number, source: Source) {
  return derive({
    subject,
    quantity,
    unit: "%",
    formula: "limit",
    operands: { limit: tabled("limit", covered(100 * share, source), "%", []) },
    compute: ({ limit }) => limit,
    sources: [source],
  });
}

/** A length as a limit, in in; nothing is looked up for it. */
export function plainLimit(
  subject: Subject,
  quantity: QuantityName,
  inches: number,
  source: Source,
  words: string,
) {
  return derive({
    subject,
    quantity,
    unit: "in",
    formula: "limit",
    operands: { limit: { ...assumed("limit", inches, "in", words)!, source } },
    compute: ({ limit }) => limit,
    sources: [source],
  });
}
