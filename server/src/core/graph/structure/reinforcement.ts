/** Doublers and rings around openings: thickness, fasteners and their places. */
import { type Containment, containment, type Placed } from "../../methods/geometry";
import type { DoublerFasteners, Reinforcement } from "../../records/types";
import type { CutoutResult, Distance } from "../openings";
import type { Keep, Subject, Value } from "../value";
import { doublerSection } from "./doubler-section";
import { type CountGap, fastenerCount } from "./fastener-count";
import { type FastenerPlaces, fastenerPlaces } from "./fastener-places";
import { type FastenerRoom, fastenerRoom } from "./fastener-room";
import { fastenerEdge, fastenerSpacing } from "./fastener-spacing";
import { doublerLines, fastenersOf } from "./fasteners";
import { outlineOf, type Unit, unitOf } from "./figures";
import type { LoadPath } from "./load-path";
import { type NearFastener, nearestFasteners } from "./near-fasteners";
import type { PitchAt } from "./pitch";
import { type Reach, reachOf } from "./reach";

export interface ReinforcementResult {
  readonly opening: CutoutResult;
  readonly reinforcement: Reinforcement;
  /** Outline of a doubler; undefined for a ring, and where it is no figure. */
  readonly outline: Placed | undefined;
  /** False where an opening is not wholly inside its doubler. */
  readonly surrounds: boolean;
  readonly reach: Reach;
  readonly thickness: Distance;
  /** Width that is left beside the opening for its section; nothing or less where holes and opening take it all. */
  readonly net: Value | undefined;
  /** What the panel's record lacks for its checks. */
  readonly lacks: readonly ("material" | "thickness")[];
  /** Undefined where the record gives no count. */
  readonly count: Distance;
  /** Why no table gives a count, one for each table that was asked; or that none names the sheet. */
  readonly notCovered: readonly CountGap[];
  /** Undefined where the record gives no places of fasteners. */
  readonly places: FastenerPlaces | undefined;
  readonly edge: Distance;
  /** Of the rows whose fasteners stand closest and farthest apart, and what holds for the one and the other. */
  readonly pitch: {
    readonly closest?: PitchAt;
    readonly least: Value | undefined;
    readonly widest?: PitchAt;
    readonly most: Value | undefined;
  };
  readonly rowPitch: Distance;
  readonly diameter: Distance & { readonly largest: Value | undefined };
  /** Whether they find room in their rows. */
  readonly room: FastenerRoom;
  /** The least room between a fastener of the reinforcement and one of the panel. */
  readonly near: NearFastener | undefined;
}

/** What everything of one reinforcement is derived from. */
export interface ReinforcementParts {
  readonly opening: CutoutResult;
  readonly reinforcement: Reinforcement;
  readonly fasteners: DoublerFasteners | undefined;
  readonly path: LoadPath;
  /** Outline of a doubler; undefined for a ring, and where it is no figure. */
  readonly outline: Placed | undefined;
  /** How the opening stands in that. */
  readonly standing: Containment | undefined;
  readonly subject: Subject;
  /** That of the panel. */
  readonly unit: Unit;
  readonly keep: Keep;
}

/** What is derived of the reinforcement of one opening. */
export function deriveReinforcement(
  opening: CutoutResult,
  reinforcement: Reinforcement,
  path: LoadPath,
  keep: Keep,
): ReinforcementResult {
  const { fasteners } = reinforcement;
  const unit = unitOf(opening.panel);
  const subject: Subject = { kind: "cutout", id: opening.id };
  const outline = outlineOf(reinforcement.outline, unit);
  const standing = outline && containment(opening.placed, outline);
  const parts: ReinforcementParts = {
    opening,
    reinforcement,
    fasteners,
    path,
    outline,
    standing,
    subject,
    unit,
    keep,
  };
  const spacing = fastenerSpacing(parts);
  const edge = fastenerEdge(parts);
  const least = { pitch: spacing.pitch.least, rowPitch: spacing.rowPitch.least, edge: edge.least };
  const all = fasteners ? doublerLines(fasteners, unit).flat() : [];
  return {
    opening,
    reinforcement,
    outline,
    surrounds: standing === undefined || standing.kind === "inside",
    reach: reachOf(parts),
    ...doublerSection(parts),
    lacks: (["material", "thickness"] as const).filter((key) => !opening.panel[key]),
    ...fastenerCount(parts),
    places: fastenerPlaces(parts),
    ...spacing,
    edge,
    room: fastenerRoom(parts, least),
    near: nearestFasteners(subject, all, fastenersOf(opening.panel), unit, keep),
  };
}
