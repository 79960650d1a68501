import { structureOf } from "../../graph/derivations";
import { geometrySource } from "../../graph/structure/figures";
import { inUnit, roundUp } from "../../quantities";
import { defineRule } from "../rule";
import { shorten } from "../wording";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold } from "./held";

/** Step of a proposed shift, in the opening's unit. */
const steps = { in: 0.05, mm: 1 } as const;

export const cutoutStiffenerDistance = defineRule<HeldFacts & { stiffener: string }>({
  id: "cutout-stiffener-distance",
  severity: "error",
  area: "structure",
  title: "An opening comes nearer to a stiffener than the panel's data allow",
  why:
    "The strip between opening and stiffener takes the load of both. How narrow it may be is for the maker's data to say: " +
    "held against the panel's minimum where one is recorded, and told without a limit otherwise.",
  sources: [geometrySource],
  say: (facts) => {
    const [is, asked] = both(facts);
    return {
      what: `Cutout ${facts.cutout} leaves ${is} to ${shorten(facts.stiffener)}; the panel's data ask for ${asked}.`,
      todo: "Move the opening away from the stiffener or make it smaller.",
    };
  },
  *check(project) {
    for (const { stiffeners } of structureOf(project).openings) {
      for (const { opening, stiffener, value, least } of stiffeners) {
        const { cutout, id } = opening;
        const place = (cutout.opening?.at ?? cutout.opening ?? cutout).place;
        const facts = { stiffener: stiffener.name?.value ?? "a stiffener" };
        const related = [{ place: stiffener.place, words: "the stiffener" }];
        yield* hold("cutout-stiffener-distance", id, place, value, least, "at-least", facts, related);
      }
    }
  },
  /** Straight away from the stiffener's middle line, by what is missing. */
  *remedies({ subject, value, limit }, project) {
    const found = structureOf(project).openings.find(({ opening }) => opening.id === subject.id);
    const stiffener = found?.stiffeners.find((one) => one.value === value)?.stiffener;
    const at = found?.opening.cutout.opening?.at;
    const [from, to] = [stiffener?.from, stiffener?.to];
    if (!at?.x || !at.y || !from?.x || !from.y || !to?.x || !to.y) return;
    const unit = value.unit === "mm" ? "mm" : "in";
    const [dx, dy] = [to.x.value.si - from.x.value.si, to.y.value.si - from.y.value.si];
    const side = Math.sign(dx * (at.y.value.si - from.y.value.si) - dy * (at.x.value.si - from.x.value.si));
    const long = Math.hypot(dx, dy);
    const missing = limit.value - value.value;
    /** No change along an axis in which it does not have to move. */
    const shifted = (name: string, written: typeof at.x, share: number) => {
      const away = Math.sign(share) * roundUp(Math.abs(share) * missing, steps[unit]);
      if (away === 0) return [];
      const text = `${Number((inUnit(written.value, unit) + away).toFixed(6))} ${unit}`;
      return [{ name, place: written.place, text }];
    };
    const moved = [...shifted("x", at.x, (-dy / long) * side), ...shifted("y", at.y, (dx / long) * side)];
    yield {
      title: `Move the opening to ${moved.map(({ name, text }) => `${name} ${text}`).join(", ")}`,
      changes: moved.map(({ place, text }) => ({ place, text })),
    };
  },
  examples: () => [
    {
      title: "Half an inch left where 0.75 in is asked for",
      text: doublerExample({
        panel: [
          "stiffeners: [{ name: stringer 4, from: { x: -9 in, y: 2.375 in }, to: { x: 9 in, y: 2.375 in }, width: 0.75 in }]",
          "minimums: { edge: 1 in, stiffener: 0.75 in, data: Repair data B9-51 }",
        ],
      }),
      finds: ["leaves 0.5 in to stringer 4; the panel's data ask for 0.75 in"],
    },
    {
      title: "Far enough",
      text: doublerExample({
        panel: [
          "stiffeners: [{ name: stringer 4, from: { x: -9 in, y: 3 in }, to: { x: 9 in, y: 3 in }, width: 0.75 in }]",
          "minimums: { edge: 1 in, stiffener: 0.75 in, data: Repair data B9-51 }",
        ],
      }),
      finds: [],
    },
  ],
});
