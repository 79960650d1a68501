import { lengthOfRow } from "../../graph/structure/fastener-room";
import { geometrySource } from "../../graph/structure/figures";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, reinforcementsOf, resultOf } from "./held";
import { larger } from "./larger-reinforcement";
import { layoutsFor } from "./row-layouts";

export const doublerFastenersTooMany = defineRule<HeldFacts & { rows: number }>({
  id: "doubler-fasteners-too-many",
  severity: "error",
  area: "structure",
  title: "The fasteners of a side find no room in their rows",
  why:
    "A row is as long as its pitches and an edge distance at each end, and the doubler is only so wide. Straight rows " +
    "are held against its edges where the rows stand next to the opening. Around a ring, a doubler that is a circle or a " +
    "slot, and where nobody says which way the load runs, a row has half the way around the opening. Where the record " +
    "leaves out pitch or edge distance, the least that they may be counts; where it gives the places of the fasteners, " +
    "those are measured instead.",
  sources: [geometrySource],
  say: (facts) => {
    const [is, most] = both(facts);
    const { cutout, rows } = facts;
    return {
      what: `Cutout ${cutout} has ${is} fasteners on each side; ${rows === 1 ? "its row has" : `its ${rows} rows have`} room for ${most}.`,
      todo: "Space them closer, set more rows or take a larger reinforcement; where they stand otherwise, record their 'lines'.",
    };
  },
  *check(project) {
    for (const { opening, reinforcement, count, room } of reinforcementsOf(project)) {
      const { countPerSide, rows } = reinforcement.fasteners ?? {};
      const place = (rows ?? countPerSide ?? reinforcement).place;
      const facts = { rows: rows?.value ?? 1 };
      yield* hold("doubler-fasteners-too-many", opening.id, place, count.value, room.most, "at-most", facts);
    }
  },
  *remedies(assessment, project) {
    const result = resultOf(assessment, project);
    if (!result) return;
    const count = assessment.value.value;
    yield* layoutsFor(result, count);
    const { reinforcement, room } = result;
    const rows = reinforcement.fasteners?.rows?.value ?? 1;
    const short = room.row && lengthOfRow(room.row, Math.ceil(count / rows)) - room.row.length.value;
    // A ring's row grows by half of pi times what the ring does.
    if (short)
      yield* larger(reinforcement, { ring: (2 / Math.PI) * short, side: short }, room.row.length.unit);
  },
  examples: () => [
    {
      title: "Fourteen in one row at 0.6 in: 8.4 in, where half the way around has 7.85 in",
      text: roomExample("count-per-side: 14, pitch: 0.6 in"),
      finds: ["has 14 fasteners on each side; its row has room for 13"],
    },
    {
      title: "Across 7 in of doubler one row at 0.6 in has room for 11",
      text: roomExample("count-per-side: 14, pitch: 0.6 in", true),
      finds: ["its row has room for 11"],
    },
    {
      title: "31 in two rows at 0.75 in",
      text: roomExample("count-per-side: 31, rows: 2, pitch: 0.75 in, row-pitch: 0.6 in", true),
      finds: ["has 31 fasteners on each side; its 2 rows have room for 18"],
    },
    {
      title: "A ring: half of its innermost row",
      text: doublerExample({
        doubler: "kind: ring, material: 2024-T3 clad, thickness: 0.050 in, joint: single-lap, width: 1.5 in",
        fasteners:
          "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 22, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 0.3 in }",
      }),
      finds: ["has 22 fasteners on each side; its 2 rows have room for 20"],
    },
    { title: "Seven in each of two rows", text: doublerExample(), finds: [] },
    {
      title: "Their places are recorded",
      text: roomExample(
        "count-per-side: 14, pitch: 0.6 in, lines: [{ from: { x: 3 in, y: -3 in }, to: { x: 3 in, y: 3 in }, count: 14 }, { from: { x: -3 in, y: -3 in }, to: { x: -3 in, y: 3 in }, count: 14 }]",
        true,
      ),
      finds: [],
    },
  ],
});

/** The doubler of 7 by 7 in, with a load along x or one that nobody knows. */
function roomExample(keys: string, isAlongX = false): string {
  return doublerExample({
    panel: isAlongX ? ["load: { direction: 0 deg }"] : [],
    fasteners: `{ kind: 2117-rivet, diameter: 1/8 in, edge-distance: 0.3 in, ${keys} }`,
  });
}
