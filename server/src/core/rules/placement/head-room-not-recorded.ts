import type { Problem } from "../../findings/finding";
import { placementsOf } from "../../graph/derivations";
import { freeRoomParagraphs } from "../../tables/cockpit-paragraphs";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { placementExample } from "./placement-example";

export const headRoomNotRecorded = defineRule<{ seat: string }>({
  id: "head-room-not-recorded",
  severity: "information",
  area: "placement",
  title: "No head room is recorded over a seat",
  why:
    "What stands where a head moves injures. The rule asks for the room and gives no radius, so that it comes from the " +
    "aircraft's data; without it nothing is held clear of that seat.",
  sources: freeRoomParagraphs,
  say: ({ seat }) => ({
    what: `No head room is recorded over seat ${seat}: no component is held clear of it.`,
    todo: `Add it to the airframe's keep-outs, from its data: kind: head-room, seat: ${seat}.`,
  }),
  *check(project): Iterable<Problem> {
    if (placementsOf(project).components.length === 0) return;
    const { seats = [], keepOuts = [] } = project.airframe ?? {};
    for (const { id } of seats) {
      if (!id) continue;
      const isOver = ({ kind, seat }: (typeof keepOuts)[number]) =>
        kind?.value === "head-room" && seat?.value === id.value;
      if (keepOuts.some(isOver)) continue;
      yield {
        rule: "head-room-not-recorded",
        subject: { kind: "seat", id: id.value },
        ...placeInAirframe(project, id.place, "the seat"),
        facts: { seat: id.value },
      };
    }
  },
  examples: () => [
    {
      title: "Over one of two seats",
      text: seated("OBSERVER"),
      finds: ["^No head room is recorded over seat PILOT"],
    },
    { title: "Over the only one", text: seated(), finds: [] },
  ],
});

/** Two seats, or one; head room is over the one that is named, or the pilot's. */
function seated(other?: string): string {
  const shoulder = "shoulder: { arm: 86 in, butt-line: -10 in, water-line: 42 in }";
  return placementExample({
    airframe: [
      `seats: [{ id: PILOT, ${shoulder} }${other ? `, { id: ${other}, ${shoulder} }` : ""}]`,
      `keep-outs: [{ id: HEAD, kind: head-room, seat: ${other ?? "PILOT"}, radius: 9 in, along: [{ arm: 86 in, butt-line: -10 in, water-line: 52 in }], clearance: 2 in, data: B9-25 }]`,
    ],
  });
}
