/** Whether controls are within reach from a seat. */
import { lengthOf, minus } from "../../methods/solids";
import type { Project } from "../../project";
import type { Reach, Seat } from "../../records/types";
import { byIdOf } from "../by-id";
import { derive, type Keep, type Value, written } from "../value";
import { pointIn, solidsSource, type Unit } from "./boxes";

export interface ReachResult {
  readonly reach: Reach;
  readonly id: string;
  readonly seat: Seat;
  readonly distance: Value;
  readonly most: Value | undefined;
}

export function reachesOf(project: Project, unit: Unit, keep: Keep): ReachResult[] {
  const seats = byIdOf(project.airframe?.seats);
  return (project.install.reach ?? []).flatMap((reach) => {
    const seat = reach.from && seats.get(reach.from.value);
    const id = reach.control?.value;
    const at = reach.at && pointIn(reach.at, unit);
    const shoulder = seat?.shoulder && pointIn(seat.shoulder, unit);
    if (!seat || id === undefined || !at || !shoulder) return [];
    const kind = project.names.find(["protection", "contact", "component"], id)[0]?.kind;
    if (!kind) return [];
    const subject = { kind, id };
    const far = lengthOf(minus(at, shoulder));
    const distance = keep(
      derive({
        subject,
        quantity: "reach-distance",
        unit,
        formula: "sqrt((xc - xs)^2 + (yc - ys)^2 + (zc - zs)^2)",
        operands: {
          xc: written("control, arm", reach.at!.arm, unit),
          xs: written("shoulder, arm", seat.shoulder!.arm, unit),
          yc: written("control, butt line", reach.at!.buttLine, unit),
          ys: written("shoulder, butt line", seat.shoulder!.buttLine, unit),
          zc: written("control, water line", reach.at!.waterLine, unit),
          zs: written("shoulder, water line", seat.shoulder!.waterLine, unit),
        },
        compute: () => far,
        sources: [solidsSource],
      }),
    );
    const most = keep(
      derive({
        subject,
        quantity: "reach-limit",
        unit,
        formula: "r",
        operands: { r: written(`reach from ${seat.id?.value ?? "the seat"}`, seat.reach, unit) },
        compute: ({ r }) => r,
        sources: seat.data ? [{ document: seat.data.value, standing: "record" }] : [],
      }),
    );
    return distance ? [{ reach, id, seat, distance, most }] : [];
  });
}
