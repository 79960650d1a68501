/** Which serial numbers lie in a range, and which way into the kit's groups is the nearest. */

import { describe, expect, it } from "vitest";
import { compareSerials } from "../../server/src/core/graph/eligibility";
import { ruleById } from "../../server/src/core/rules";
import { eligibilityExample } from "../../server/src/core/rules/eligibility/eligibility-example";
import { runExample } from "../../server/src/core/run-example";
import { fc } from "../support/random";

describe("serial numbers", () => {
  it.each([
    ["B9-0417", "B9-0300", 1],
    ["B9-0417", "B9-417", 0],
    ["b9-0299", "B9-0300", -1],
    ["417", "1000", -1],
    ["12345678901234567890", "12345678901234567891", -1],
    ["9-17A", "9-16A", 1],
  ])("%s against %s: %d", (a, b, order) => {
    expect(compareSerials(a, b)).toBe(order);
  });

  it.each([
    ["B9-0417", "417"],
    ["B9-0417", "C9-0417"],
    ["9-17A", "9-17B"],
    ["Prototype", "B9-0001"],
  ])("%s can't be held against %s", (a, b) => {
    expect(compareSerials(a, b)).toBeUndefined();
  });

  it("are in the order of their numbers, however many noughts stand before them", () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat(), fc.nat(5), (a, b, noughts) => {
        const written = `B9-${"0".repeat(noughts)}${a}`;
        expect(compareSerials(written, `B9-${b}`)).toBe(Math.sign(a - b));
      }),
    );
  });
});

function findingsOf(text: string) {
  const areas = new Set(["eligibility"]);
  return runExample({ title: "", text, finds: [] })
    .findings.filter(({ rule }) => areas.has(ruleById.get(rule)?.area ?? ""))
    .map(({ rule, todo }) => ({ rule, todo }));
}

describe("an aircraft that does not qualify", () => {
  it("is told all that would make it eligible, and the other way", () => {
    const text = eligibilityExample({
      serial: "B9-0117",
      groups: [
        "{ type: Type 9, serials: [{ from: B9-0100 }], modifications: [MOD-9, MOD-10], equipment: [aft-access-panel] }",
        "{ type: Type 9, serials: [{ from: B9-0100, to: B9-0199 }], modifications: [MOD-7], equipment: [aft-access-panel] }",
        "{ type: Type 9, serials: [{ from: B9-0300 }] }",
      ],
    });
    const todo =
      "MOD-7 and equipment aft-access-panel would make B9-0117 eligible. " +
      "Another way: MOD-9, MOD-10 and equipment aft-access-panel.";
    expect(findingsOf(text)).toEqual([
      { rule: "equipment-required", todo },
      { rule: "modification-required", todo },
    ]);
  });

  it("is not sent a way that asks for something to be undone while there is another", () => {
    const text = eligibilityExample({
      groups: [
        "{ type: Type 9, incompatible: [MOD-31] }",
        "{ type: Type 9, modifications: [MOD-7, MOD-8], equipment: [a, b, c] }",
      ],
      airframe: ["modifications: [{ id: MOD-31 }]"],
    });
    expect(new Set(findingsOf(text).map(({ rule }) => rule))).toEqual(
      new Set(["equipment-required", "modification-required"]),
    );
  });

  it("says nothing where the kit names no aircraft", () => {
    expect(findingsOf(eligibilityExample({ groups: [] }).replace("  eligibility:\n", ""))).toEqual([]);
  });
});
