/** A reinforcement made larger by what is short; it only proposes what is then checked. */
import type { ValueUnit } from "../../graph/value";
import { convert, inUnit, isUnitOf, roundUp } from "../../quantities";
import type { Reinforcement } from "../../records/types";
import { type Remedy, rewrite } from "../rule";
import { lengthText } from "./held";

/** What is larger by just enough for one rule may be too small for the next: then it grows by these, in inches. */
const further = [0, 0.25, 0.5, 0.75, 1] as const;

/**
 * A ring is made wider, a rectangle wider or higher; how another figure grows is for the drawing to say.
 *
 * @param by in `unit`, of a ring and of a side of a rectangle
 */
export function* larger(
  { width: ring, outline }: Reinforcement,
  by: { readonly ring: number; readonly side: number },
  unit: ValueUnit,
): Iterable<Remedy> {
  if (!isUnitOf("length", unit)) return;
  const isRectangle = outline?.shape?.value === "rectangle";
  const sizes = [
    { recorded: outline ? undefined : ring, name: "the ring's width", by: by.ring },
    { recorded: isRectangle ? outline.width : undefined, name: "the doubler's width", by: by.side },
    { recorded: isRectangle ? outline.height : undefined, name: "the doubler's height", by: by.side },
  ];
  for (const { recorded, name, by } of sizes) {
    if (!recorded) continue;
    for (const more of further) {
      const size = inUnit(recorded.value, unit) + by + convert(more, "in", unit, "length");
      const text = lengthText(size, unit, recorded.value.unit, roundUp);
      if (text) yield rewrite(`Make ${name} ${text}`, recorded.place, text, name);
    }
  }
}
