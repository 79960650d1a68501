/** One hose or tube by itself: its size, and what it may be bent to, held at and put under. */
import type { Line } from "../../records/types";
import type { Place } from "../../records/written";
import type { Source } from "../../source";
import {
  type HoseRow,
  hoseBySize,
  hoseSupportSpacing,
  inchesPerDash,
  leastFlattenedShare,
  spacingShareWithFittings,
  tubeBendRadius,
  tubeSupportSpacing,
} from "../../tables/fluid-lines";
import { type CoverageGap, covered, type Lookup } from "../../tables/lookup";
import { saturationPressure } from "../../tables/refrigerant";
import type { QuantityName } from "../quantity-names";
import {
  derive,
  derived,
  type Keep,
  type Operand,
  type Subject,
  tabled,
  type Value,
  type ValueUnit,
  written,
} from "../value";
import { type FittingResult, fittingOf } from "./fittings";
import { type HoseSlack, hoseSlackOf } from "./hose-slack";

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

/** A number that no table gives and the record does not either. */
export interface LineGap {
  readonly wanted: string;
  readonly place: Place;
  /** Undefined where no table was looked for: no published figure was found at all. */
  readonly table: { readonly reason: CoverageGap; readonly source: Source } | undefined;
}

/** What follows from one line's own entry, and from nothing else. */
export class LineDerivation {
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
      slack: line.kind?.value === "hose" ? hoseSlackOf(line, this.subject, this.keep) : undefined,
      fittings: (line.fittings ?? []).flatMap((fitting): FittingResult[] =>
        fitting.id ? [fittingOf(fitting, fitting.id.value, size, this.gaps, this.keep)] : [],
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
