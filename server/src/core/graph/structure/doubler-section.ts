/** The section of a doubler or ring beside its opening: what is left of it, and how thick it has to be. */
import type { Placed } from "../../methods/geometry";
import type { Source } from "../../source";
import { asRecorded, counted } from "../recorded";
import { assumed, derive, derived, type Operand, type Value, written } from "../value";
import { figureOperands } from "./figures";
import { widthAcross } from "./load-path";
import type { ReinforcementParts, ReinforcementResult } from "./reinforcement";

/** AC 43.13-1B asks that what is put on has at least the section of what is taken out. */
const sectionSource: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98",
  at: "par. 4-58k and fig. 4-20",
  standing: "published",
};

/** The section that is left beside the opening, fastener holes taken off, has to replace the one cut out. */
export function doublerSection(
  parts: ReinforcementParts,
  outline: Placed | undefined,
): Pick<ReinforcementResult, "thickness" | "net"> {
  const { reinforcement, unit, keep, subject, opening, path, fasteners } = parts;
  const { panel } = opening;
  const width = written("width of the ring", reinforcement.width, unit);
  const W = derived("width of the opening", path.opening);
  const r: Operand =
    counted("rows on each side", fasteners?.rows) ??
    assumed("rows on each side", 1, "1", "The record names no rows: one.");
  const d = written("fastener diameter", fasteners?.diameter, unit);
  const t = written("thickness of the panel", panel.thickness, unit);
  const net = keep(
    outline
      ? derive({
          subject,
          quantity: "doubler-net-width",
          unit,
          formula: "B - W - 2 * r * d",
          operands: { B: derived("width of the doubler", doublerWidth(parts, outline)), W, r, d },
          compute: (n) => n.B - n.W - 2 * n.r * n.d,
          sources: [sectionSource],
        })
      : derive({
          subject,
          quantity: "doubler-net-width",
          unit,
          formula: "2 * w - 2 * r * d",
          operands: { w: width, r, d },
          compute: (n) => 2 * n.w - 2 * n.r * n.d,
          sources: [sectionSource],
        }),
  );
  const least = keep(
    derive({
      subject,
      quantity: "least-doubler-thickness",
      unit,
      formula: "t * W / b",
      operands: { t, W, b: derived("net width beside the opening", net) },
      // Fasteners that leave nothing of the section leave no thickness that would do.
      compute: ({ t, W, b }) => (b > 0 ? (t * W) / b : Number.NaN),
      sources: [sectionSource],
    }),
  );
  const value = keep(
    asRecorded(subject, "doubler-thickness", "thickness of the reinforcement", reinforcement.thickness, unit),
  );
  return { thickness: { value, least }, net };
}

function doublerWidth(
  { reinforcement, subject, unit, path, keep }: ReinforcementParts,
  outline: Placed,
): Value | undefined {
  const figure = reinforcement.outline!;
  return keep(
    derive({
      subject: subject,
      quantity: "doubler-width",
      unit: unit,
      method: "extent of the doubler's outline across the load",
      operands: figureOperands(figure, unit, "doubler "),
      compute: () => widthAcross(outline, path),
    }),
  );
}
