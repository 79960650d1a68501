import { describe, expect, it } from "vitest";
import { nearest } from "../../server/src/core/nearest";

const keys = ["id", "from", "to", "gauge", "length", "rating", "material", "bundle"];

describe("nearest", () => {
  it.each([
    { slip: "a swapped pair of letters", word: "guage", meant: ["gauge"] },
    { slip: "a letter too few", word: "lenth", meant: ["length"] },
    { slip: "a letter too many", word: "matterial", meant: ["material"] },
    { slip: "another letter", word: "bandle", meant: ["bundle"] },
    { slip: "other case", word: "RATING", meant: ["rating"] },
  ])("knows $slip", ({ word, meant }) => {
    expect(nearest(word, keys)).toEqual(meant);
  });

  it.each(["colour", "t", "ie", "", "legrthn"])("offers nothing for %j", (word) => {
    expect(nearest(word, keys)).toEqual([]);
  });

  it("offers all that are equally near, up to three", () => {
    expect(nearest("P101A9", ["P101A8", "P102A9", "P200B2"])).toEqual(["P101A8", "P102A9"]);
    expect(nearest("P101A9", ["P101A1", "P101A2", "P101A3", "P101A4"])).toHaveLength(3);
  });

  it("prefers the nearer one", () => {
    expect(nearest("CB-RAK", ["CB-TACK", "CB-RACK"])).toEqual(["CB-RACK"]);
  });

  it("does not compare texts that are no words", () => {
    const long = "x".repeat(100_000);
    expect(nearest(long, [long])).toEqual([]);
    expect(nearest("gauge", [long])).toEqual([]);
  });
});
