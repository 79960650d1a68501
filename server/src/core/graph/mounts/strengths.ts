import { bearingStrength } from "../../methods/fastener-group";
import { inUnit, type Quantity } from "../../quantities";
import type { Mount, Shelf } from "../../records/types";
import type { Written } from "../../records/written";
import type { Source } from "../../source";
import { fastenerEdgeDistance } from "../../tables/fastener-edge-distance";
import {
  fastenerShear,
  fastenerTension,
  leastThicknessRatio,
  sheetBearing,
} from "../../tables/fastener-strengths";
import type { Lookup } from "../../tables/lookup";
import { derive, type Keep, type Operand, type Subject, tabled, type Value, written } from "../value";

/** What one fastener of a mount holds, in lbf; a strength that nobody gives is undefined. */
export interface Strengths {
  readonly shear: Value | undefined;
  readonly tension: Value | undefined;
  readonly bearing: Value | undefined;
  /** Thickness of the sheet over diameter, and the least that a bearing strength counts from. */
  readonly thickness: Held | undefined;
  /** Distance to the sheet's edge, and the least that it may be. */
  readonly edge: Held | undefined;
}

export interface Held {
  readonly value: Value;
  readonly limit: Value;
}

/**
 * The strengths of a mount's fastener. `standIns` are sources from memory that the load rests on: what is held
 * against these strengths then only warns.
 */
export function strengthsOf(
  mount: Mount,
  shelf: Shelf | undefined,
  subject: Subject,
  standIns: readonly Source[],
  keep: Keep,
): Strengths {
  const strengths = new FastenerStrengths(mount, shelf, subject, standIns);
  return {
    shear: keep(strengths.own("fastener-shear-strength", "shear")),
    tension: keep(strengths.own("fastener-tension-strength", "tension")),
    bearing: keep(strengths.bearing()),
    thickness: keepHeld(strengths.thickness(), keep),
    edge: keepHeld(strengths.edge(), keep),
  };
}

function keepHeld(held: Held | undefined, keep: Keep): Held | undefined {
  keep(held?.value);
  keep(held?.limit);
  return held;
}

class FastenerStrengths {
  constructor(
    private readonly mount: Mount,
    private readonly shelf: Shelf | undefined,
    private readonly subject: Subject,
    private readonly standIns: readonly Source[],
  ) {}

  /** Shear or tension: the record's own figure, or that of its kind and size. */
  own(quantity: "fastener-shear-strength" | "fastener-tension-strength", which: "shear" | "tension") {
    const { fastener } = this.mount;
    const recorded = fastener?.[which];
    if (recorded) {
      const data = fastener.data;
      return this.strength(quantity, written(`${which} strength`, recorded, "lbf"), [
        data ? { document: data.value, standing: "record" } : { document: "fastener", standing: "record" },
      ]);
    }
    const { kind, diameter } = fastener ?? {};
    if (!kind || !diameter) return undefined;
    const size = inUnit(diameter.value, "in");
    const found = which === "shear" ? fastenerShear(kind.value, size) : fastenerTension(kind.value, size);
    return this.strength(
      quantity,
      tabled(`${which} strength of its kind and size`, found, "lbf", [kind.place, diameter.place]),
      [found.source],
    );
  }

  private strength(
    quantity: "fastener-shear-strength" | "fastener-tension-strength",
    P: Operand,
    sources: readonly Source[],
  ): Value | undefined {
    return derive({
      subject: this.subject,
      quantity,
      unit: "lbf",
      formula: "P",
      operands: { P },
      compute: ({ P }) => P,
      sources: [...sources, ...this.standIns],
    });
  }

  /** Only from the least ratio of thickness to diameter on; below, a test is needed. */
  bearing(): Value | undefined {
    const ratio = this.thickness();
    const diameter = this.mount.fastener?.diameter;
    if (!ratio || !diameter || ratio.value.value < ratio.limit.value * (1 - 1e-9)) return undefined;
    const { stress, sources } = this.stress(inUnit(diameter.value, "in"));
    return derive({
      subject: this.subject,
      quantity: "bearing-strength",
      unit: "lbf",
      formula: "F * d * t",
      operands: {
        F: stress,
        d: written("fastener diameter", diameter, "in"),
        t: written("thickness of the sheet", this.shelf?.thickness, "in"),
      },
      compute: ({ F, d, t }) => bearingStrength(F, d, t),
      sources: [...sources, leastThicknessRatio.source, ...this.standIns],
    });
  }

  private stress(diameter: number): { stress: Operand; sources: readonly Source[] } {
    const { bearingStrength: recorded, material, thickness, data } = this.shelf ?? {};
    if (recorded) {
      return {
        stress: written("bearing strength of the sheet", recorded, "psi"),
        sources: data ? [{ document: data.value, standing: "record" }] : [],
      };
    }
    const edge = this.mount.edgeDistance;
    if (!material || !thickness || !edge) return { stress: undefined, sources: [] };
    const found: Lookup<number> = sheetBearing(
      material.value,
      inUnit(thickness.value, "in"),
      inUnit(edge.value, "in") / diameter,
    );
    return {
      stress: tabled("bearing strength of the material", found, "psi", [
        material.place,
        thickness.place,
        edge.place,
      ]),
      sources: [found.source],
    };
  }

  thickness(): Held | undefined {
    const value = derive({
      subject: this.subject,
      quantity: "thickness-ratio",
      unit: "1",
      formula: "t / d",
      operands: {
        t: written("thickness of the sheet", this.shelf?.thickness, "in"),
        d: written("fastener diameter", this.mount.fastener?.diameter, "in"),
      },
      compute: ({ t, d }) => t / d,
    });
    return this.held(
      value,
      derive({
        subject: this.subject,
        quantity: "least-thickness-ratio",
        unit: "1",
        formula: "k",
        operands: { k: tabled("least thickness over diameter", leastThicknessRatio, "1", []) },
        compute: ({ k }) => k,
        sources: [leastThicknessRatio.source],
      }),
    );
  }

  edge(): Held | undefined {
    const { fastener, edgeDistance } = this.mount;
    const head: Written<"protruding" | "countersunk"> | undefined = fastener?.head;
    const factor = fastenerEdgeDistance(head?.value ?? "protruding");
    return this.held(
      derive({
        subject: this.subject,
        quantity: "fastener-edge-distance",
        unit: "in",
        formula: "e",
        operands: { e: written("edge distance", edgeDistance satisfies Written<Quantity> | undefined, "in") },
        compute: ({ e }) => e,
      }),
      derive({
        subject: this.subject,
        quantity: "least-edge-distance",
        unit: "in",
        formula: "k * D",
        operands: {
          k: tabled(`diameters for a ${head?.value ?? "protruding"} head`, factor, "1", [head?.place]),
          D: written("fastener diameter", fastener?.diameter, "in"),
        },
        compute: ({ k, D }) => k * D,
        sources: [factor.source],
      }),
    );
  }

  private held(value: Value | undefined, limit: Value | undefined): Held | undefined {
    return value && limit && { value, limit };
  }
}
