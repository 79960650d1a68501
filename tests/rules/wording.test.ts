import { describe, expect, it } from "vitest";
import { check } from "../../server/src/core/check";
import { ruleById } from "../../server/src/core/rules";
import {
  didYouMean,
  keyOf,
  listWords,
  nameOf,
  quote,
  sentence,
  shorten,
  withArticle,
} from "../../server/src/core/rules/wording";
import { runExample } from "../../server/src/core/run-example";
import { RecordShelf } from "../../server/src/core/shelf";
import { demo, demoRecords } from "../support/workspace";

describe("listWords", () => {
  it.each([
    { words: [], said: "" },
    { words: ["a"], said: "a" },
    { words: ["a", "b"], said: "a or b" },
    { words: ["a", "b", "c"], said: "a, b or c" },
    { words: [..."abcdefgh"], said: "a, b, c, d, e, f, g or h" },
    { words: [..."abcdefghij"], said: "a, b, c, d, e, f, g, h or 2 more" },
  ])("says $said", ({ words, said }) => {
    expect(listWords(words, "or")).toBe(said);
  });

  it("says and", () => {
    expect(listWords(["a", "b", "c"], "and")).toBe("a, b and c");
  });
});

describe("texts of a record in a message", () => {
  it("stay on one line, without what nobody sees", () => {
    expect(quote("a\n  b\tc")).toBe("'a b c'");
    expect(quote("a\u0000\u202eb\ud800c")).toBe("'a b c'");
  });

  it("are cut to forty letters", () => {
    expect([...shorten("x".repeat(41))]).toHaveLength(40);
    expect(shorten("x".repeat(40))).toBe("x".repeat(40));
    expect(shorten("x".repeat(1_000_000))).toBe(`${"x".repeat(39)}…`);
    expect(shorten("\u{1f6e9}".repeat(41))).toBe(`${"\u{1f6e9}".repeat(39)}…`);
  });
});

describe("nameOf", () => {
  it.each([
    { where: { path: [] }, name: "this record" },
    { where: { path: ["document"] }, name: "'document'" },
    { where: { path: ["limits", "takeoff"] }, name: "'takeoff' of 'limits'" },
    { where: { path: ["placement", "#2"] }, name: "entry 2 in 'placement'" },
    { where: { path: ["placement", "#2", "arm"] }, name: "'arm' of entry 2 in 'placement'" },
    { where: { ownerKind: "wire", ownerId: "P101A8", path: [] }, name: "wire P101A8" },
    {
      where: { ownerKind: "ground", ownerId: "G1", path: ["location"] },
      name: "'location' of ground point G1",
    },
    {
      where: { ownerKind: "cutout", ownerId: "C1", path: ["opening", "points", "#3", "x"] },
      name: "'x' of entry 3 in 'points' of 'opening' of cutout C1",
    },
  ] as const)("says $name", ({ where, name }) => {
    expect(nameOf(where)).toBe(name);
  });
});

it("keyOf tells keys from entries", () => {
  expect(keyOf({ path: ["placement", "#2", "arm"] })).toBe("arm");
  expect(keyOf({ path: ["placement", "#2"] })).toBeUndefined();
  expect(keyOf({ path: [] })).toBeUndefined();
});

it("withArticle hears the vowel", () => {
  expect(withArticle("wire")).toBe("a wire");
  expect(withArticle("envelope")).toBe("an envelope");
});

it("sentence starts with a capital", () => {
  expect(sentence("wire P1")).toBe("Wire P1");
  expect(sentence("'gauge' of wire P1")).toBe("'gauge' of wire P1");
});

it("didYouMean asks only where something is near", () => {
  expect(didYouMean("guage", ["gauge", "length"])).toBe("Did you mean 'gauge'?");
  expect(didYouMean("TB4", ["TB-1", "RACK"])).toBeUndefined();
});

it("opening-time-not-covered names the share of the rating that a point is wanted for", () => {
  const { findings } = runExample(ruleById.get("opening-time-not-covered")!.examples()[1]!);
  const inrush = findings.find(({ what }) => what.includes("inrush of RACK"));
  expect(inrush?.what).toContain("300 A");
  expect(inrush?.todo).toContain("about 1500 % of its rating");
});

it("a condition without a name is told in words", () => {
  const texts = new Map(Object.entries(demoRecords()));
  const [before, after] = texts.get(demo.faulty)!.split(/^(?=placement:)/m);
  const nameless = before!.replace(/^ {2}- id: [a-z0-9-]+\n {4}/gm, "  - ") + after;
  expect(nameless).toMatch(/^conditions:\n {2}- phase:/m);
  texts.set(demo.faulty, nameless);
  const shelf = new RecordShelf({
    resolve: (_, path) => (texts.has(path) ? path : undefined),
    text: (file) => texts.get(file),
  });
  const { findings } = check(shelf.load(demo.faulty)!, shelf);
  const words = findings.flatMap(({ what, todo }) => [what, todo]);
  expect(words.filter((one) => one.includes("undefined"))).toEqual([]);
  expect(words.filter((one) => one.includes("a condition")).length).toBeGreaterThan(3);
});
