/** Other ways to set the fasteners of a side: closer, in more rows, or both. They only propose what is then checked. */
import type { Change } from "../../edits/change";
import { pitchInRow } from "../../graph/structure/fastener-room";
import type { ReinforcementResult } from "../../graph/structure/reinforcement";
import { roundDown, roundUp } from "../../quantities";
import type { Remedy } from "../rule";
import { lengthText } from "./held";

/** With more rows than this the reinforcement wants another design. */
const mostAdded = 3;

/** Sets `count` fasteners on each side: in the rows that there are, then in more of them. */
export function* layoutsFor(result: ReinforcementResult, count: number): Iterable<Remedy> {
  const { fasteners } = result.reinforcement;
  const recorded = fasteners?.rows?.value ?? 1;
  // Where each one stands is for the drawing to say.
  const last = fasteners?.lines?.length ? recorded : recorded + mostAdded;
  for (let rows = recorded; rows <= last; rows++) {
    const series = rows === recorded ? "same rows" : "more rows";
    for (const pitch of [undefined, closerPitch(result, count, rows)]) {
      const remedy = layout(result, { count, rows, pitch });
      if (remedy) yield { ...remedy, series };
    }
  }
}

/** The widest pitch that finds room, in the record's unit; undefined where that is no closer than it is. */
function closerPitch(
  { reinforcement, room }: ReinforcementResult,
  count: number,
  rows: number,
): string | undefined {
  const { row } = room;
  const recorded = reinforcement.fasteners?.pitch;
  if (!row || !recorded) return undefined;
  const widest = pitchInRow(row, Math.ceil(count / rows));
  return widest > 0 && widest < row.pitch
    ? lengthText(widest, row.length.unit, recorded.value.unit, roundDown)
    : undefined;
}

interface Layout {
  readonly count: number;
  readonly rows: number;
  /** Undefined where it stays as it is. */
  readonly pitch: string | undefined;
}

/** Undefined where nothing changes. The total goes along where it would be less than both sides together. */
function layout(
  { reinforcement, rowPitch }: ReinforcementResult,
  { count, rows, pitch }: Layout,
): Remedy | undefined {
  const { fasteners } = reinforcement;
  if (!fasteners?.countPerSide) return undefined;
  const { place, countPerSide, total } = fasteners;
  const changes: Change[] = [];
  const words: string[] = [];
  const isOtherCount = countPerSide.value !== count;
  if (isOtherCount) changes.push({ place: countPerSide.place, text: String(count) });
  if (rows !== (fasteners.rows?.value ?? 1)) {
    const text = String(rows);
    changes.push(
      fasteners.rows ? { place: fasteners.rows.place, text } : { place, key: "rows", value: text },
    );
    const least = fasteners.rowPitch ? undefined : rowPitch.least;
    const apart = least && lengthText(least.value, least.unit, fasteners.diameter?.value.unit, roundUp);
    if (apart) changes.push({ place, key: "row-pitch", value: apart });
    words.push(`in ${rows} rows${apart ? ` ${apart} from each other` : ""}`);
  }
  if (pitch && fasteners.pitch) {
    changes.push({ place: fasteners.pitch.place, text: pitch });
    words.push(`${pitch} apart`);
  }
  if (changes.length === 0) return undefined;
  if (total && total.value < 2 * count) {
    changes.push({ place: total.place, text: String(2 * count) });
    words.push(`${2 * count} in all`);
  }
  if (!isOtherCount) return { title: `Set the fasteners ${words.join(", ")}`, changes };
  return { title: [`Set ${count} fasteners on each side`, ...words].join(", "), changes };
}
