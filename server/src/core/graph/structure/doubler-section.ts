/** The section of a doubler or ring beside its opening: what is left of it, and how thick it has to be. */
import { beside, extentAlong, type Placed } from "../../methods/geometry";
import type { Source } from "../../source";
import { asRecorded } from "../recorded";
import { derive, derived, written } from "../value";
import { geometrySource } from "./figures";
import type { ReinforcementParts, ReinforcementResult } from "./reinforcement";
import { doublerOperands } from "./reinforcement-operands";
import { holesInSection } from "./section-holes";

/** AC 43.13-1B asks that what is put on has at least the section of what is taken out. */
const sectionSource: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98",
  at: "par. 4-58k and fig. 4-20",
  standing: "published",
};

/**
 * The section that is left beside the opening, fastener holes taken off, has to replace the one cut out. It is that
 * of the narrowest cut through the opening: a doubler that is wide elsewhere carries nothing past it.
 */
export function doublerSection(parts: ReinforcementParts): Pick<ReinforcementResult, "thickness" | "net"> {
  const { reinforcement, unit, keep, subject, opening, path, fasteners, outline } = parts;
  const { panel } = opening;
  const width = written("width of the ring", reinforcement.width, unit);
  const W = derived("width of the opening", path.opening);
  const d = written("fastener diameter", fasteners?.diameter, unit);
  const t = written("thickness of the panel", panel.thickness, unit);
  const h = holesInSection(parts);
  const net = keep(
    outline
      ? derive({
          subject,
          quantity: "doubler-net-width",
          unit,
          formula: "B - h * d",
          operands: { B: derived("width of the doubler beside the opening", besideWidth(parts)), h, d },
          compute: (n) => n.B - n.h * n.d,
          sources: [sectionSource],
        })
      : derive({
          subject,
          quantity: "doubler-net-width",
          unit,
          formula: "2 * w - h * d",
          operands: { w: width, h, d },
          compute: (n) => 2 * n.w - n.h * n.d,
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

/**
 * Undefined where the opening is not within the doubler. An opening that lies askew to the load takes out more in all
 * than in any one section: it counts in each as so much wider.
 */
function besideWidth(parts: ReinforcementParts) {
  const { subject, unit, path, keep, opening, outline, standing } = parts;
  if (!outline || standing?.kind !== "inside") return undefined;
  return keep(
    derive({
      subject,
      quantity: "doubler-width",
      unit,
      method: path.direction
        ? "least width of the doubler beside the opening, of all sections across the load that cut it, less what the opening is wider in all than in any of them"
        : "twice the least distance between the outlines of opening and doubler",
      operands: doublerOperands(parts),
      compute: () =>
        path.direction ? besideAcross(opening.placed, outline, path.across) : 2 * standing.distance,
      sources: [geometrySource],
      notes: path.direction
        ? []
        : [
            "The panel's record gives no direction of its load: the doubler counts as a ring of its least width.",
          ],
    }),
  );
}

function besideAcross(opening: Placed, outline: Placed, across: number): number {
  const { together, widest } = beside(opening, outline, across);
  return together - (extentAlong(opening, across) - widest);
}
