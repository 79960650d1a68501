/** What is made anew of the same things is the same, and what an edit does not touch is not made anew. */
import { describe, expect, it } from "vitest";
import { check, type Judgement } from "../../server/src/core/check";
import {
  electricalOf,
  openingsOf,
  structureOf,
  weightsOf,
  wiringOf,
} from "../../server/src/core/graph/derivations";
import { settled } from "../../server/src/core/graph/settled";
import { RecordShelf } from "../../server/src/core/shelf";
import { demo, demoRecords } from "../support/workspace";

describe("settled", () => {
  const [a, b] = [{ name: "a" }, { name: "b" }];

  it.each([
    ["a list", [a, b], [a, b]],
    ["a map", new Map([["x", a]]), new Map([["x", a]])],
    [
      "an object of them",
      { list: [a], map: new Map([[a, b]]), one: b },
      { list: [a], map: new Map([[a, b]]), one: b },
    ],
    ["not a number", Number.NaN, Number.NaN],
  ])("%s of the same things is the one before", (_, before, now) => {
    expect(settled(before, now)).toBe(before);
  });

  it.each([
    ["a list in another order", [a, b], [b, a]],
    ["a longer list", [a], [a, b]],
    ["a shorter list", [a, b], [a]],
    [
      "a map with its keys in another order",
      new Map([
        ["x", a],
        ["y", b],
      ]),
      new Map([
        ["y", b],
        ["x", a],
      ]),
    ],
    ["a map with another value", new Map([["x", a]]), new Map([["x", b]])],
    ["an object with one part more", { one: a }, { one: a, other: undefined }],
    ["an object with one part less", { one: a, other: undefined }, { one: a }],
    ["equal things that are not the same", [{ name: "a" }], [{ name: "a" }]],
    ["a list where there was a map", new Map(), []],
    ["anything where there was nothing", undefined, [a]],
  ])("%s is another", (_, before, now) => {
    expect(settled<unknown>(before, now)).toEqual(now);
    expect(settled<unknown>(before, now)).not.toBe(before);
  });

  it("keeps the parts that are the same in an object that is not", () => {
    const before = { same: [a], other: [a] };
    const now = settled(before, { same: [a], other: [b] });
    expect(now).toEqual({ same: [a], other: [b] });
    expect(now.same).toBe(before.same);
  });
});

describe("an edit leaves alone", () => {
  const parts = {
    weights: weightsOf,
    openings: openingsOf,
    structure: structureOf,
    wiring: wiringOf,
    devices: (project) => electricalOf(project).devices,
    charts: (project) => electricalOf(project).charts,
    balances: (project) => electricalOf(project).sources.balances,
    bonds: (project) => electricalOf(project).protection.bonds,
    wires: (project) => electricalOf(project).wires,
  } satisfies Record<string, (project: Parameters<typeof weightsOf>[0]) => unknown>;

  /** What a check makes of a record of the demo, before and after the edit. */
  function judgedTwice(name: string, edit: (text: string) => string): [before: Judgement, after: Judgement] {
    const texts = new Map(Object.entries(demoRecords()));
    const shelf = new RecordShelf({
      resolve: (_, path) => (texts.has(path) ? path : undefined),
      text: (file) => texts.get(file),
    });
    const before = check(shelf.load(name)!, shelf);
    const edited = edit(texts.get(name)!);
    expect(edited).not.toBe(texts.get(name));
    texts.set(name, edited);
    return [before, check(shelf.load(name)!, shelf)];
  }

  /** Names of the parts that are others after another digit at the place. */
  function changedBy(place: RegExp): string[] {
    const [before, after] = judgedTwice(demo.clean, (text) =>
      text.replace(place, (whole, digit: string) => whole.replace(digit, String((Number(digit) % 9) + 1))),
    ).map(({ project }) => Object.entries(parts).map(([, of]) => of(project!)));
    return Object.keys(parts).filter((_, index) => !Object.is(before![index], after![index]));
  }

  it.each([
    ["a wire's length", / length: (\d)/, ["charts", "wires", "wiring"]],
    ["a condition's altitude", /altitude: (\d)/, ["balances", "devices", "wires"]],
    ["an arm", / arm: (\d)/, ["weights"]],
    ["where an opening stands", / x: (\d)/, ["openings", "structure", "weights"]],
  ])("%s: all that does not rest on it", (_, place, touched) => {
    expect(changedBy(place).sort()).toEqual(touched);
  });

  it("a remark above everything: every finding", () => {
    const [before, after] = judgedTwice(demo.faulty, (text) => `# seen\n${text}`);
    expect(before.findings.length).toBeGreaterThan(20);
    expect(after.findings.map((finding, index) => finding === before.findings[index])).not.toContain(false);
  });
});
