/** What leads where is followed again only when an end or a name of the circuit is another. */
import { describe, expect, it } from "vitest";
import { check } from "../../server/src/core/check";
import { electricalOf } from "../../server/src/core/graph/derivations";
import { RecordShelf } from "../../server/src/core/shelf";
import { demo, demoRecords } from "../support/workspace";

/** The trace of the sound demo before and after an edit of one of its records. */
function tracesAround(file: string, place: RegExp, text: string) {
  const texts = new Map(Object.entries(demoRecords()));
  const shelf = new RecordShelf({
    resolve: (_, path) => (texts.has(path) ? path : undefined),
    text: (name) => texts.get(name),
  });
  const traced = () => electricalOf(check(shelf.load(demo.clean)!, shelf).project!).trace;
  const before = traced();
  const edited = texts.get(file)!.replace(place, text);
  expect(edited).not.toBe(texts.get(file));
  texts.set(file, edited);
  return { before, after: traced() };
}

describe("the trace of a circuit", () => {
  it.each([
    ["a length", demo.clean, /length: 3 ft/, "length: 4 ft"],
    ["a gauge", demo.clean, /gauge: 10 AWG/, "gauge: 8 AWG"],
    ["a rating", demo.clean, /rating: 150 degC/, "rating: 200 degC"],
    ["an identification", demo.clean, /id: P101B10N/, "id: P101C10N"],
    ["which breaker is chosen", demo.clean, /device: CB-30/, "device: CB-50"],
    ["a weight in the kit", demo.kit, /weight: \d/, "weight: 9"],
  ])("stays as it is with %s", (_, file, place, text) => {
    const { before, after } = tracesAround(file, place, text);
    expect(after).toBe(before);
  });

  it("leads elsewhere with the end of a wire", () => {
    const { before, after } = tracesAround(demo.clean, /to: RACK\b/, "to: FANS");
    expect(before.paths.map(({ id }) => id)).toEqual(["RACK", "CHILLER", "FANS"]);
    expect(after.paths.map(({ id }) => id)).toEqual(["CHILLER", "FANS"]);
    expect(after.paths.find(({ id }) => id === "FANS")).toMatchObject({ isSingle: false });
  });

  it("is unguarded where a wire starts at the bus", () => {
    const { before, after } = tracesAround(demo.clean, /from: CB-RACK\b/, "from: MAIN");
    expect(before.unguarded.size).toBe(0);
    expect(after.unguarded.size, "the feeder, and the return behind its load").toBe(2);
  });
});
