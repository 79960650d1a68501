/** What an opening with its screen lets through. */
import { freeArea, meshLoss, plateLoss, screenSources } from "../../methods/air/screens";
import { inUnit } from "../../quantities";
import type { AirPath, Screen } from "../../records/types";
import type { Source } from "../../source";
import { exitLoss, fittingLosses, lossSource } from "../../tables/air-losses";
import { covered } from "../../tables/lookup";
import type { CutoutResult } from "../openings";
import { counted } from "../recorded";
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

export interface ThroughOpening {
  readonly opening: CutoutResult;
  readonly side: "inlet" | "outlet";
  /** Area that a loss of one velocity pressure would have, in2; undefined while the screen's data are missing. */
  readonly effective: Value | undefined;
  /** Coefficients that rest on memory, by what they are of. */
  readonly fromMemory: readonly string[];
}

export function throughOpening(
  opening: CutoutResult,
  side: ThroughOpening["side"],
  path: AirPath,
  keep: Keep,
): ThroughOpening {
  const subject: Subject = { kind: "cutout", id: opening.id };
  const { screen } = opening.cutout;
  const recorded = side === "inlet" ? path.inletLoss : path.outletLoss;
  const data: Source | undefined = path.data && { document: path.data.value, standing: "record" };
  const bare: Operand = recorded
    ? counted(`loss of the bare ${side}`, recorded)
    : side === "inlet"
      ? tabled("loss of a sharp entry", covered(fittingLosses["sharp-entry"], lossSource), "1", [])
      : tabled("velocity pressure that is lost", exitLoss, "1", []);
  const loss = screen && screenLoss(subject, screen, keep);
  const total = keep(
    derive({
      subject,
      quantity: "opening-loss",
      unit: "1",
      ...(screen
        ? { formula: "k + z", operands: { k: bare, z: derived("loss of the screen", loss) } }
        : { formula: "k", operands: { k: bare } }),
      compute: (n: Readonly<Record<string, number>>) => n.k! + (n.z ?? 0),
      sources: recorded && data ? [data] : [],
    }),
  );
  const isInch = opening.area?.unit === "in2";
  const effective = keep(
    derive({
      subject,
      quantity: "effective-area",
      unit: "in2",
      formula: isInch ? "A / sqrt(k)" : "A / 645.16 / sqrt(k)",
      operands: { A: derived("area of the opening", opening.area), k: derived("loss coefficient", total) },
      compute: (n) => n.A / (isInch ? 1 : 645.16) / Math.sqrt(n.k),
    }),
  );
  const fromMemory = [
    ...(recorded || side === "outlet" ? [] : [`bare inlet ${opening.id}`]),
    ...(screen && !screen.loss && loss ? [`screen of ${opening.id}`] : []),
  ];
  return { opening, side, effective, fromMemory };
}

function screenLoss(subject: Subject, screen: Screen, keep: Keep): Value | undefined {
  const { kind, opening, wire, pitch, freeArea: recordedShare, loss, data } = screen;
  const source: Source[] = data ? [{ document: data.value, standing: "record" }] : [];
  const a = written(kind?.value === "square-mesh" ? "clear width" : "diameter of the holes", opening, "mm");
  const free = keep(
    kind?.value === "square-mesh"
      ? derive({
          subject,
          quantity: "screen-free-area",
          unit: "%",
          formula: "100 * (a / (a + d))^2",
          operands: { a, d: written("diameter of the wires", wire, "mm") },
          compute: (n) => 100 * freeArea("square-mesh", n.a, n.d),
        })
      : kind?.value === "other"
        ? derive({
            subject,
            quantity: "screen-free-area",
            unit: "%",
            formula: "f",
            operands: { f: written("free area", recordedShare, "%") },
            compute: ({ f }) => f,
            sources: source,
          })
        : kind &&
          derive({
            subject,
            quantity: "screen-free-area",
            unit: "%",
            formula:
              kind.value === "holes-square" ? "78.5398163397448 * (a / p)^2" : "90.6899682117109 * (a / p)^2",
            operands: { a, p: written("distance between centres", pitch, "mm") },
            compute: (n) => 100 * freeArea(kind.value as "holes-square", n.a, n.p),
          }),
  );
  if (loss) {
    return keep(
      derive({
        subject,
        quantity: "screen-loss",
        unit: "1",
        formula: "z",
        operands: { z: counted("loss coefficient of the screen", loss) },
        compute: ({ z }) => z,
        sources: source,
      }),
    );
  }
  if (kind?.value === "other") return undefined;
  const isMesh = kind?.value === "square-mesh";
  return keep(
    derive({
      subject,
      quantity: "screen-loss",
      unit: "1",
      formula: isMesh
        ? "1.3 * (1 - f / 100) + (100 / f - 1)^2"
        : "((0.707 * sqrt(1 - f / 100) + 1 - f / 100) / (f / 100))^2",
      operands: { f: derived("free area", free) },
      compute: ({ f }) => (isMesh ? meshLoss(f / 100) : plateLoss(f / 100)),
      sources: [isMesh ? screenSources.mesh : screenSources.plate],
    }),
  );
}

/** Diameter of the wires in m, where the loss of a mesh comes from the formula that asks for fast air. */
export function meshWire({ cutout }: CutoutResult): number | undefined {
  const { screen } = cutout;
  if (screen?.kind?.value !== "square-mesh" || screen.loss || !screen.wire) return undefined;
  return inUnit(screen.wire.value, "m");
}
